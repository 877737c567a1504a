//! From arguments to what is printed.

use crate::args::{self, Asked, From, USAGE};
use crate::language;
use std::ffi::OsString;
use std::fs::File;
use std::io::{self, Read};
use thinwright_catalog::Catalog;
use thinwright_core::{Outcome, advise, read};
use thinwright_jobfile::{ENGINE, JobFile, Sample, encode, samples};
use thinwright_quantity::UnitSystem;
use thinwright_words::{Speaker, plain};

/// A strategy was found.
const FEASIBLE: u8 = 0;
/// There is none.
const REFUSED: u8 = 1;
/// Something is wrong with the input.
const BAD_INPUT: u8 = 2;
/// More bytes than any job file has; what follows is not read.
const ENOUGH_BYTES: u64 = 2_000_000;

/// What is to be printed, and the exit status.
pub(crate) struct Done {
    pub(crate) out: String,
    pub(crate) err: String,
    pub(crate) status: u8,
}

fn printed(out: String) -> Done {
    Done {
        out,
        err: String::new(),
        status: FEASIBLE,
    }
}

fn wrong(err: String) -> Done {
    Done {
        out: String::new(),
        err,
        status: BAD_INPUT,
    }
}

/// Does what the arguments ask for.
pub(crate) fn run(args: impl Iterator<Item = OsString>) -> Done {
    match args::read(args) {
        Err(error) => wrong(format!("thinwright: {error}\n\n{USAGE}")),
        Ok(Asked::Help) => printed(USAGE.to_owned()),
        Ok(Asked::Version) => printed(format!("{ENGINE}\n")),
        Ok(Asked::Samples) => {
            let lines = samples()
                .iter()
                .map(|s| format!("{}: {}\n", s.id, s.job().name()));
            printed(lines.collect())
        }
        Ok(Asked::Advise {
            from,
            json,
            units,
            language,
        }) => match open(&from) {
            Err(error) => wrong(format!("{}: {error}\n", name(&from))),
            Ok(file) => {
                language::begin(language);
                work(&name(&from), &file, json, units)
            }
        },
    }
}

fn name(from: &From) -> String {
    match from {
        From::File(path) => path.to_string_lossy().into_owned(),
        From::StandardInput => "standard input".to_owned(),
        From::Sample(id) => format!("sample {id}"),
    }
}

fn open(from: &From) -> Result<JobFile, String> {
    let bytes = match from {
        From::Sample(id) => {
            let sample =
                Sample::by_id(id).ok_or("there is no such sample; --samples lists them")?;
            return Ok(sample.job());
        }
        From::File(path) => File::open(path).and_then(read_some),
        From::StandardInput => read_some(io::stdin().lock()),
    };
    let bytes = bytes.map_err(|e| e.to_string())?;
    JobFile::read(&bytes).map_err(|e| e.to_string())
}

fn read_some(from: impl Read) -> io::Result<Vec<u8>> {
    let mut bytes = Vec::new();
    from.take(ENOUGH_BYTES).read_to_end(&mut bytes)?;
    Ok(bytes)
}

fn work(name: &str, file: &JobFile, json: bool, units: Option<UnitSystem>) -> Done {
    let catalog = Catalog::builtin();
    let units = units.unwrap_or(file.answers.units);
    let speaker = Speaker::new(units, &catalog, &file.answers);
    let job = match read(&file.answers, &catalog) {
        Ok(job) => job,
        Err(problems) => {
            let lines = problems.iter().map(|p| {
                format!(
                    "{name}: {} ({}): {}\n",
                    p.field.key(),
                    speaker.place(p.field),
                    speaker.problem(p)
                )
            });
            return wrong(lines.collect());
        }
    };
    let outcome = advise(&job);
    let status = match outcome {
        Outcome::Feasible(_) => FEASIBLE,
        Outcome::Refused(_) => REFUSED,
    };
    let out = if json {
        encode(&outcome) + "\n"
    } else {
        plain(&speaker, &outcome)
    };
    Done {
        out,
        err: String::new(),
        status,
    }
}
