//! Damaged files: each gives the error that names the place, and no bytes whatever make it panic.

use super::full;
use crate::{FromWorker, JobFile, JobFileError, Store, ToWorker, Wanted, decode};

const GOOD: &str = r#"{"thinwright_job":2,"title":"t","units":"mm","answers":{"part.web":{"text":"4","known":"measured"}},
"records":[{"step":1,"values":{"n":"18000 rpm"},"note":"ok","outcome":"held","judged":{"depth":0.5},
"learned":[{"field":"machine.stiffness","before":"","after":"2"}],"taken_back":true}],"confirmed":["dust"]}"#;

/// The error after a piece of a good file was put in place of another.
fn check(from: &str, to: &str, expected: JobFileError) {
    let text = GOOD.replacen(from, to, 1);
    assert_ne!(text, GOOD, "{from}");
    assert_eq!(JobFile::read(text.as_bytes()), Err(expected), "{text}");
}

fn not(place: &str, wanted: Wanted) -> JobFileError {
    JobFileError::Not {
        place: place.to_owned(),
        wanted,
    }
}

#[test]
fn what_is_no_job_file_is_told_so() {
    assert!(JobFile::read(GOOD.as_bytes()).is_ok());
    assert_eq!(
        JobFile::read(b"\"\xff\""),
        Err(JobFileError::NotText { at: 1 })
    );
    assert_eq!(
        JobFile::read(b""),
        Err(JobFileError::NotJson { line: 1, column: 0 })
    );
    assert_eq!(
        JobFile::read(b"{\n  oops"),
        Err(JobFileError::NotJson { line: 2, column: 3 })
    );
    let else_ = JobFileError::SomethingElse {
        wanted: "thinwright_job",
    };
    for text in ["[]", "3", "null", "{}", r#"{"thinwright_store":1}"#] {
        assert_eq!(JobFile::read(text.as_bytes()), Err(else_.clone()), "{text}");
    }
    let big = vec![b' '; 1_000_001];
    assert_eq!(
        JobFile::read(&big),
        Err(JobFileError::TooLarge {
            bytes: 1_000_001,
            most: 1_000_000
        })
    );
    assert!(JobFile::read("[".repeat(100_000).as_bytes()).is_err());
}

#[test]
fn versions_are_looked_at_first() {
    let newer = JobFileError::Newer {
        version: 3,
        newest: 2,
    };
    check("_job\":2", "_job\":3", newer.clone());
    check("_job\":2,", "_job\":3,\"new\":1,", newer);
    check(
        "_job\":2",
        "_job\":0",
        JobFileError::Older {
            version: 0,
            oldest: 1,
        },
    );
    check(
        "_job\":2",
        "_job\":\"1\"",
        not("thinwright_job", Wanted::WholeUpTo(u32::MAX)),
    );
    check(
        "_job\":2,",
        "_job\":2,\"thinwright_job\":2,",
        JobFileError::Twice {
            place: "thinwright_job".to_owned(),
        },
    );
    // What version 2 has added means nothing in a file that says it is of version 1.
    check(
        "_job\":2",
        "_job\":1",
        JobFileError::UnknownKey {
            place: "records.1.judged".to_owned(),
        },
    );
}

#[test]
fn what_was_run_names_its_place_when_it_is_wrong() {
    let outcomes = Wanted::OneOf(&["held", "sang", "bent", "broke", "other"]);
    check("\"held\"", "\"flew\"", not("records.1.outcome", outcomes));
    check(
        "0.5",
        "\"0.5\"",
        not("records.1.judged.depth", Wanted::Number),
    );
    check("true", "1", not("records.1.taken_back", Wanted::Flag));
    check(
        "\"machine.stiffness\"",
        "\"machine.softness\"",
        not("records.1.learned.1.field", Wanted::KnownName),
    );
    check(
        "\"after\"",
        "\"since\"",
        JobFileError::UnknownKey {
            place: "records.1.learned.1.since".to_owned(),
        },
    );
    check("\"dust\"", "7", not("confirmed.1", Wanted::Text));
    check("[\"dust\"]", "\"dust\"", not("confirmed", Wanted::List));
}

fn place(p: &str) -> String {
    p.to_owned()
}

#[test]
fn keys_that_are_wrong_name_their_place() {
    let unknown = |p: &str| JobFileError::UnknownKey { place: place(p) };
    let missing = |p: &str| JobFileError::Missing { place: place(p) };
    let twice = |p: &str| JobFileError::Twice { place: place(p) };
    check("\"title\"", "\"titel\"", unknown("titel"));
    check("part.web", "part.wab", unknown("answers.part.wab"));
    check("\"note\"", "\"nota\"", unknown("records.1.nota"));
    check("\"text\"", "\"txt\"", missing("answers.part.web.text"));
    check("\"known\"", "\"knwon\"", missing("answers.part.web.known"));
    check("\"units\":\"mm\",", "", missing("units"));
    let doubled = r#""part.web":{"text":"4","known":"measured"},"part.web":"#;
    check("\"part.web\":", doubled, twice("answers.part.web"));
    check("\"n\":", "\"n\":\"1\",\"n\":", twice("records.1.values.n"));
}

#[test]
fn values_that_are_wrong_name_their_place() {
    check(
        "\"mm\"",
        "\"cm\"",
        not("units", Wanted::OneOf(&["mm", "in"])),
    );
    check("\"4\"", "4", not("answers.part.web.text", Wanted::Text));
    let words = Wanted::OneOf(&["measured", "data-sheet", "estimated"]);
    check(
        "\"measured\"",
        "\"guessed\"",
        not("answers.part.web.known", words),
    );
    let answer = r#"{"text":"4","known":"measured"}"#;
    check(answer, "\"4\"", not("answers.part.web", Wanted::Object));
    for wrong in ["1.5", "1e300", "-1", "\"1\"", "null"] {
        let step = format!("\"step\":{wrong}");
        check(
            "\"step\":1",
            &step,
            not("records.1.step", Wanted::WholeUpTo(10_000)),
        );
    }
    check(
        "\"18000 rpm\"",
        "18000",
        not("records.1.values.n", Wanted::Text),
    );
}

#[test]
fn too_much_is_refused() {
    let most = 60;
    let cutters = JobFileError::TooMany {
        place: place("answers.cutter"),
        most,
    };
    check("part.web", "cutter.61.diameter", cutters);
    let long = format!("\"{}\"", "x".repeat(8_001));
    let most = 8_000;
    check(
        "\"4\"",
        &long,
        JobFileError::TooLong {
            place: place("answers.part.web.text"),
            most,
        },
    );
    let many = format!("\"records\":[{}", "{\"step\":1},".repeat(500));
    let most = 500;
    check(
        "\"records\":[",
        &many,
        JobFileError::TooMany {
            place: place("records"),
            most,
        },
    );
}

#[test]
fn numbers_that_are_none_are_not_json() {
    for bad in ["NaN", "Infinity", "1e999", "0x10", "01"] {
        let text = GOOD.replacen("\"step\":1", &format!("\"step\":{bad}"), 1);
        let error = JobFile::read(text.as_bytes()).unwrap_err();
        assert!(
            matches!(error, JobFileError::NotJson { line: 2, .. }),
            "{bad}: {error:?}"
        );
    }
}

#[test]
fn errors_read_as_sentences() {
    let error = not("records.1.step", Wanted::WholeUpTo(10_000));
    assert_eq!(
        error.to_string(),
        "records.1.step: this must be a whole number from 0 to 10000"
    );
    let error = JobFileError::Newer {
        version: 2,
        newest: 1,
    };
    assert_eq!(
        error.to_string(),
        "written by a newer program: format 2, this one reads up to 1"
    );
}

/// A small generator of numbers: enough to stir bytes (Knuth's multiplier).
struct Stir(u64);

impl Stir {
    fn below(&mut self, most: usize) -> usize {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        usize::try_from(self.0 >> 33).unwrap() % most.max(1)
    }
}

/// Bytes changed in a few places: flipped, cut out, doubled, or pieces of JSON put in.
fn mutated(good: &[u8], stir: &mut Stir) -> Vec<u8> {
    const PIECES: &[&str] = &[
        "\"", "{", "}", "[", "]", ":", ",", "null", "1e308", "-0", "\\u0000", "\\ud800", "\u{FEFF}",
    ];
    let mut bytes = good.to_vec();
    for _ in 0..=stir.below(4) {
        let at = stir.below(bytes.len());
        match stir.below(5) {
            0 => {
                if let Some(byte) = bytes.get_mut(at) {
                    *byte ^= 1 << stir.below(8);
                }
            }
            1 => {
                let end = (at + stir.below(30)).min(bytes.len());
                bytes.drain(at..end);
            }
            2 => {
                let end = (at + stir.below(60)).min(bytes.len());
                let piece = bytes[at..end].to_vec();
                let to = stir.below(bytes.len());
                bytes.splice(to..to, piece);
            }
            3 => {
                let piece = PIECES[stir.below(PIECES.len())].bytes();
                bytes.splice(at..at, piece);
            }
            _ => bytes.truncate(at),
        }
    }
    bytes
}

#[test]
fn no_bytes_make_it_panic() {
    let job = JobFile::new("fuzz", full()).write();
    let store = Store {
        job: JobFile::new("fuzz", full()),
        machines: Vec::new(),
    }
    .write();
    let message = ToWorker {
        generation: 1,
        order: crate::Order::Work(full()),
    }
    .encode();
    let mut stir = Stir(25);
    let (mut read, mut refused) = (0, 0);
    for round in 0..20_000 {
        let good = [GOOD, &job, &store, &message][if round % 4 == 0 { stir.below(4) } else { 0 }];
        let bytes = mutated(good.as_bytes(), &mut stir);
        let text = String::from_utf8_lossy(&bytes);
        match JobFile::read(&bytes) {
            // What can be read can be written, and means the same.
            Ok(file) => {
                read += 1;
                let again = JobFile::read(file.write().as_bytes()).unwrap();
                assert_eq!(again.answers.units, file.answers.units);
                assert_eq!(crate::digest(&again.answers), crate::digest(&file.answers));
                assert_eq!(again.records, file.records);
                assert_eq!(again.confirmed, file.confirmed);
            }
            Err(error) => {
                refused += 1;
                assert!(!error.to_string().is_empty());
            }
        }
        if let Err(damaged) = Store::read(&text) {
            assert_eq!(damaged.text, text);
        }
        let _ = (
            ToWorker::decode(&text),
            FromWorker::decode(&text),
            decode(&text),
        );
    }
    assert!(
        read > 100 && refused > 10_000,
        "{read} read, {refused} refused"
    );
}
