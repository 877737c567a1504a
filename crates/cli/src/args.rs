//! What was asked for on the command line.

use std::ffi::OsString;
use thinwright_quantity::UnitSystem;
use thinwright_words::language::Language;

/// How to use it.
pub(crate) const USAGE: &str = "\
thinwright JOBFILE [--json] [--units mm|inch] [--language de|en|es]
                                                 work out a job file; - reads standard input
thinwright --sample NAME [...]                   work out a sample
thinwright --samples                             list the samples
thinwright --help | --version

  --json           the outcome as JSON, numbers in SI
  --units mm|inch  units of what is printed; without it, those of the job
  --language de|en|es
                   language of what is said of the job; without it, English

exit status: 0 a strategy, 1 no strategy (and why), 2 something is wrong with the input
";

/// Where the job comes from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum From {
    File(OsString),
    StandardInput,
    Sample(String),
}

/// What to do.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Asked {
    Help,
    Version,
    Samples,
    Advise {
        from: From,
        json: bool,
        units: Option<UnitSystem>,
        language: Language,
    },
}

/// Reads the arguments; an error says what is wrong with them.
pub(crate) fn read(args: impl Iterator<Item = OsString>) -> Result<Asked, String> {
    let mut args = args;
    let mut from: Option<From> = None;
    let (mut json, mut units, mut language) = (false, None, Language::English);
    while let Some(arg) = args.next() {
        let next = match arg.to_str() {
            Some("--help" | "-h") => return Ok(Asked::Help),
            Some("--version") => return Ok(Asked::Version),
            Some("--samples") => return Ok(Asked::Samples),
            Some("--json") => {
                json = true;
                continue;
            }
            Some("--units") => {
                units = Some(unit_system(args.next())?);
                continue;
            }
            Some("--language") => {
                language = spoken(args.next())?;
                continue;
            }
            Some("--sample") => {
                let name = args.next().and_then(|n| n.into_string().ok());
                From::Sample(name.ok_or("--sample needs a name; --samples lists them")?)
            }
            Some("-") => From::StandardInput,
            Some(flag) if flag.starts_with('-') => return Err(format!("{flag} is not known")),
            _ => From::File(arg),
        };
        if from.replace(next).is_some() {
            return Err("one job at a time".to_owned());
        }
    }
    let from = from.ok_or("which job file?")?;
    Ok(Asked::Advise {
        from,
        json,
        units,
        language,
    })
}

fn spoken(arg: Option<OsString>) -> Result<Language, String> {
    let language = arg.as_ref().and_then(|a| Language::by_tag(a.to_str()?));
    language.ok_or_else(|| "--language takes de, en or es".to_owned())
}

fn unit_system(arg: Option<OsString>) -> Result<UnitSystem, String> {
    match arg.as_ref().and_then(|a| a.to_str()) {
        Some("mm") => Ok(UnitSystem::Metric),
        Some("inch" | "in") => Ok(UnitSystem::Inch),
        _ => Err("--units takes mm or inch".to_owned()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(args: &[&str], expected: Result<Asked, &str>) {
        let read = read(args.iter().map(OsString::from));
        assert_eq!(read, expected.map_err(str::to_owned), "{args:?}");
    }

    #[test]
    fn arguments_in_any_order() {
        let from = From::File("a.json".into());
        let asked = |json, units| {
            Ok(Asked::Advise {
                from: from.clone(),
                json,
                units,
                language: Language::English,
            })
        };
        check(&["a.json"], asked(false, None));
        check(&["--json", "a.json"], asked(true, None));
        check(
            &["--units", "inch", "a.json", "--json"],
            asked(true, Some(UnitSystem::Inch)),
        );
        let from = From::Sample("grille-frame".to_owned());
        check(
            &["--sample", "grille-frame"],
            Ok(Asked::Advise {
                from,
                json: false,
                units: None,
                language: Language::English,
            }),
        );
        check(
            &["-"],
            Ok(Asked::Advise {
                from: From::StandardInput,
                json: false,
                units: None,
                language: Language::English,
            }),
        );
        let german = Asked::Advise {
            from: From::StandardInput,
            json: false,
            units: None,
            language: Language::German,
        };
        check(&["--language", "de", "-"], Ok(german));
        check(&["--samples"], Ok(Asked::Samples));
    }

    #[test]
    fn slips_are_told() {
        check(&[], Err("which job file?"));
        check(&["a", "b"], Err("one job at a time"));
        check(&["a", "--jsn"], Err("--jsn is not known"));
        check(
            &["a", "--units", "furlong"],
            Err("--units takes mm or inch"),
        );
        check(&["a", "--units"], Err("--units takes mm or inch"));
        check(
            &["a", "--language", "la"],
            Err("--language takes de, en or es"),
        );
        check(&["a", "--language"], Err("--language takes de, en or es"));
        check(
            &["--sample"],
            Err("--sample needs a name; --samples lists them"),
        );
    }
}
