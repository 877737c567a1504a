//! Jobs as links: what comes back, how long they are, and what is told of those that came to harm.

use super::*;
use crate::error::{JobFileError, Wanted};
use crate::samples;
use crate::tests::full;
use thinwright_core::estimate::Known;
use thinwright_core::field::{Field, FieldId};
use thinwright_quantity::UnitSystem;

fn linked(title: &str, answers: Answers) -> LinkedJob {
    LinkedJob::of(&JobFile::new(title, answers))
}

/// Writes and reads, and holds that nothing was lost.
fn check(job: &LinkedJob) -> String {
    let text = job.write().unwrap();
    let read = LinkedJob::read(&text).unwrap();
    assert_eq!(read.write().as_ref(), Ok(&text));
    assert_eq!(read.digest(), job.digest());
    assert_eq!((&read.title, &read.engine), (&job.title, &job.engine));
    assert_eq!(read.answers.units, job.answers.units);
    text
}

/// The lines of a link in the letters of a link, whole as far as the check can tell.
fn sent(lines: &str) -> String {
    let packed = pack::pack(lines.as_bytes());
    let mut bytes = super::check(&packed).to_vec();
    bytes.extend(packed);
    let mut out = format!("{LINK_START}1");
    letters::put(&bytes, &mut out);
    out.push('Z');
    out
}

const HEAD: &str = "t\nmm\nthinwright 0.4.0\n";

/// What is told of these lines behind a good head.
fn told(lines: &str) -> JobFileError {
    match LinkedJob::read(&sent(&format!("{HEAD}{lines}"))) {
        Err(LinkError::Content { error, engine }) => {
            assert_eq!(engine, "thinwright 0.4.0");
            error
        }
        other => panic!("{other:?}"),
    }
}

#[test]
fn samples_come_back_and_are_short() {
    for sample in samples() {
        let job = LinkedJob::of(&sample.job());
        let text = check(&job);
        assert_eq!(LinkedJob::read(&text), Ok(job));
        // Alphanumeric letters of a QR code of version 13 with correction M (ISO/IEC 18004, table 7; from memory).
        assert!(text.len() < 483, "{}: {}", sample.id, text.len());
    }
}

#[test]
fn whatever_was_typed_comes_back() {
    check(&linked("", Answers::new(UnitSystem::Inch)));
    check(&linked("tab\there, line\nthere, \\n\\", full()));
    let mut answers = Answers::new(UnitSystem::Metric);
    answers.set(Field::Name, "\t\n\r\\t \u{1F600}\0", Known::Measured);
    // The second cutter has a diameter only, the first and the fourth none.
    for (row, known) in [(1, Known::Estimated), (2, Known::Measured)] {
        answers.set(FieldId::in_row(Field::CutterDiameter, row), "6", known);
    }
    answers.set(
        FieldId::in_row(Field::CutterFlutes, 3),
        "",
        Known::DataSheet,
    );
    answers.set(FieldId::in_row(Field::PinCutter, 0), "2", Known::Estimated);
    let job = linked("odd", answers);
    check(&job);
    let read = LinkedJob::read(&job.write().unwrap()).unwrap();
    assert_eq!(read, job);
}

#[test]
fn records_and_confirmations_stay_behind() {
    let job = JobFile::new("t", full());
    assert_eq!(LinkedJob::of(&job).file(), job);
    assert!(!LinkedJob::of(&job).other_engine());
}

#[test]
fn links_that_came_to_harm_are_told_so() {
    let good = LinkedJob::of(&samples()[0].job()).write().unwrap();
    let read = |text: &str| LinkedJob::read(text).map(|_| ());
    assert_eq!(read(&format!("#{good}")), Ok(()));
    assert_eq!(read(&good.replace('+', "%2B").replace(':', "%3a")), Ok(()));
    assert_eq!(read(&format!("{} {}", &good[..40], &good[40..])), Ok(()));
    for none in ["", "#", "strategy", "J=1Z"] {
        assert_eq!(read(none), Err(LinkError::NoJob));
        assert!(!LinkedJob::is_meant(none));
    }
    assert_eq!(read("j="), Err(LinkError::CutOff));
    assert_eq!(read("j=2ABCZ"), Err(LinkError::Version { found: '2' }));
    assert_eq!(read("j=1Z"), Err(LinkError::CutOff));
    for cut in 3..good.len() {
        let error = read(&good[..cut]).unwrap_err();
        assert!(
            matches!(error, LinkError::CutOff | LinkError::Damaged),
            "{cut}: {error:?}"
        );
    }
    let lower = good.replacen("j=1", "j=1q", 1);
    let found = 'q';
    assert_eq!(read(&lower), Err(LinkError::Letter { at: 2, found }));
    let (letters, most) = (40_000, 12_000);
    assert_eq!(
        read(&"j".repeat(letters)),
        Err(LinkError::TooLong { letters, most })
    );
}

#[test]
fn every_single_letter_that_changes_is_noticed() {
    let good = LinkedJob::of(&samples()[2].job()).write().unwrap();
    for at in 3..good.len() - 1 {
        for other in ["0", "Z", ":"] {
            let mut bad = good.clone();
            bad.replace_range(at..=at, other);
            if bad != good {
                let error = LinkedJob::read(&bad).unwrap_err();
                assert_eq!(error, LinkError::Damaged, "{at} {other}");
            }
        }
    }
    let swapped = format!("{}{}{}", &good[..60], &good[63..66], &good[60..63]) + &good[66..];
    assert_eq!(LinkedJob::read(&swapped), Err(LinkError::Damaged));
}

#[test]
fn what_is_not_known_here_is_named() {
    let place = |p: &str| p.to_owned();
    let unknown = |p: &str| JobFileError::UnknownKey { place: place(p) };
    let missing = |p: &str| JobFileError::Missing { place: place(p) };
    let not = |p: &str, wanted| JobFileError::Not {
        place: place(p),
        wanted,
    };
    let known = Wanted::OneOf(&["m", "d", "e"]);
    assert_eq!(told("part.wab\te\t4\n"), unknown("answers.part.wab"));
    assert_eq!(
        told("cutter.1.diameter\te\t4\n"),
        unknown("answers.cutter.1.diameter")
    );
    assert_eq!(told("part.web\te\t4\t5\n"), unknown("answers.part.web"));
    assert_eq!(told("part.web\n"), missing("answers.part.web.known"));
    assert_eq!(told("part.web\te\n"), missing("answers.part.web.text"));
    assert_eq!(
        told("part.web\tx\t4\n"),
        not("answers.part.web.known", known)
    );
    assert_eq!(
        told("part.web\t\t4\n"),
        not("answers.part.web.known", known)
    );
    assert_eq!(
        told("cutter.flutes\td-\t1\t2\n"),
        not("answers.cutter.flutes.known", known)
    );
    assert_eq!(
        told("part.web\te\t\\x\n"),
        not("answers.part.web", Wanted::Text)
    );
}

#[test]
fn what_is_too_much_or_twice_is_named() {
    let place = |p: &str| p.to_owned();
    let missing = |p: &str| JobFileError::Missing { place: place(p) };
    let not = |p: &str, wanted| JobFileError::Not {
        place: place(p),
        wanted,
    };
    let twice = "part.web\te\t4\npart.web\te\t4\n";
    let error = JobFileError::Twice {
        place: place("answers.part.web"),
    };
    assert_eq!(told(twice), error);
    let many = format!("cutter.flutes\td{}\n", "\t1".repeat(61));
    let error = JobFileError::TooMany {
        place: place("answers.cutter"),
        most: 60,
    };
    assert_eq!(told(&many), error);
    let long = format!("part.name\te\t{}\n", "x".repeat(8_001));
    let error = JobFileError::TooLong {
        place: place("answers.part.name"),
        most: 8_000,
    };
    assert_eq!(told(&long), error);
    let inch = LinkedJob::read(&sent("t\ncm\n\n"));
    let error = not("units", Wanted::OneOf(&["mm", "in"]));
    assert_eq!(
        inch,
        Err(LinkError::Content {
            error,
            engine: String::new()
        })
    );
    let short = LinkedJob::read(&sent("t\n"));
    let error = missing("units");
    assert_eq!(
        short,
        Err(LinkError::Content {
            error,
            engine: String::new()
        })
    );
}

#[test]
fn what_is_too_long_is_not_made() {
    let mut answers = Answers::new(UnitSystem::Metric);
    answers.set(Field::Name, "x".repeat(70_000), Known::Estimated);
    assert!(matches!(
        linked("", answers).write(),
        Err(LinkError::TooMuch { .. })
    ));
    // Texts that will not pack.
    let mut answers = Answers::new(UnitSystem::Metric);
    for row in 0..6_u8 {
        let noise = (0..400_u32).map(|i| fnv1a(&(1000 * u32::from(row) + i).to_le_bytes()));
        let noise: String = noise.map(|n| format!("{n:016x}")).collect();
        answers.set(
            FieldId::in_row(Field::CutterKind, row),
            noise,
            Known::Estimated,
        );
    }
    let error = linked("", answers).write();
    assert!(matches!(error, Err(LinkError::TooLong { .. })), "{error:?}");
    let mut answers = Answers::new(UnitSystem::Metric);
    answers.set(Field::Name, "x".repeat(8_001), Known::Estimated);
    let error = linked("", answers).write();
    assert!(matches!(error, Err(LinkError::Content { .. })), "{error:?}");
}

#[test]
fn the_preset_text_is_the_one_of_its_version() {
    // Links on paper depend on every byte of it: what should be in another goes into a text of the next version.
    assert_eq!(
        format!("{:016x}", fnv1a(pack::PRESET.as_bytes())),
        "5b42c94e98c8eb7a"
    );
}
