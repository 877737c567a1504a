//! Files read and written: nothing is lost, nothing depends on the moment.

use super::full;
use crate::{
    Damaged, JobFile, JobFileError, Learned, Order, Ran, Record, Sample, SavedMachine, Store,
    ToWorker, Wanted, digest, samples, untaught,
};
use thinwright_core::answers::Answers;
use thinwright_core::estimate::Known;
use thinwright_core::field::Field;
use thinwright_core::learn::is_machines;
use thinwright_quantity::UnitSystem;

fn file() -> JobFile {
    let mut file = JobFile::new("Title \u{201C}quoted\u{201D}", full());
    file.records.push(Record {
        date: "a wet Tuesday".to_owned(),
        step: 3,
        task: "Open recess A".to_owned(),
        method: "peeling loops, cutter 2".to_owned(),
        outcome: Some(Ran::Sang),
        values: vec![
            ("n".to_owned(), "18k rpm".to_owned()),
            ("vf".to_owned(), "400 mm/min".to_owned()),
        ],
        note: "sang at first, quiet from 0.3 mm".to_owned(),
        judged: vec![
            ("depth".to_owned(), 0.1 + 0.2),
            ("limit".to_owned(), 5e-324),
        ],
        learned: vec![Learned {
            field: Field::Stiffness.into(),
            before: String::new(),
            after: "1.2 N/um".to_owned(),
        }],
        taken_back: true,
        elsewhere: true,
    });
    for outcome in [Ran::Held, Ran::Bent, Ran::Broke, Ran::Other] {
        file.records.push(Record {
            outcome: Some(outcome),
            ..Record::default()
        });
    }
    file.records.push(Record::default());
    file.confirmed = vec!["magnesium".to_owned(), "a \"slug\"".to_owned()];
    file
}

#[test]
fn a_file_comes_back_as_it_was() {
    let file = file();
    let text = file.write();
    assert_eq!(JobFile::read(text.as_bytes()), Ok(file.clone()));
    assert_eq!(
        JobFile::read(text.as_bytes()).map(|f| f.write()),
        Ok(text.clone())
    );
    let marked = format!("\u{FEFF}{text}");
    assert_eq!(JobFile::read(marked.as_bytes()), Ok(file));
}

/// A file as version 1 wrote it.
const FIRST_VERSION: &str = r#"{
  "thinwright_job": 1,
  "title": "Plate",
  "units": "mm",
  "engine": "thinwright 0.1.0",
  "digest": "c9f2d2ae2caa88aa",
  "answers": {
    "part.web": {"text":"4","known":"measured"}
  },
  "records": [
    {"date":"a wet Tuesday","step":3,"values":{"n":"18k rpm"},"note":"sang"}
  ]
}
"#;

#[test]
fn a_file_of_the_first_version_is_read_and_written_as_the_second() {
    let file = JobFile::read(FIRST_VERSION.as_bytes()).unwrap();
    assert_eq!(file.answers.text(Field::Web.into()), "4");
    assert_eq!(
        file.records,
        [Record {
            date: "a wet Tuesday".to_owned(),
            step: 3,
            values: vec![("n".to_owned(), "18k rpm".to_owned())],
            note: "sang".to_owned(),
            ..Record::default()
        }]
    );
    assert!(file.confirmed.is_empty());
    let text = file.write();
    assert!(text.contains("\"thinwright_job\": 2,"), "{text}");
    assert_eq!(JobFile::read(text.as_bytes()), Ok(file));
}

#[test]
fn a_number_that_json_cannot_hold_is_left_out() {
    let mut file = file();
    file.records[0].judged.push(("none".to_owned(), f64::NAN));
    let read = JobFile::read(file.write().as_bytes()).unwrap();
    assert_eq!(read.records[0].judged, file.records[0].judged[..2]);
}

#[test]
fn a_person_can_read_it() {
    let mut answers = Answers::new(UnitSystem::Metric);
    answers.set(Field::Web, "1/4 in", Known::Measured);
    let text = JobFile::new("Plate", answers).write();
    let lines: Vec<&str> = text.lines().collect();
    assert_eq!(lines[1], r#"  "thinwright_job": 2,"#);
    assert_eq!(lines[2], r#"  "title": "Plate","#);
    assert_eq!(lines[3], r#"  "units": "mm","#);
    assert_eq!(
        lines[7],
        r#"    "part.web": {"text":"1/4 in","known":"measured"}"#
    );
}

#[test]
fn edits_by_hand_show() {
    let file = file();
    assert!(!file.edited());
    let text = file.write().replacen("1/6", "1/7", 1);
    assert_ne!(text, file.write());
    let read = JobFile::read(text.as_bytes()).unwrap();
    assert!(read.edited());
    assert_eq!(
        digest(&JobFile::read(read.write().as_bytes()).unwrap().answers),
        digest(&read.answers)
    );
}

#[test]
fn every_sample_is_read_and_written_alike() {
    for sample in samples() {
        let file =
            JobFile::read(sample.text.as_bytes()).unwrap_or_else(|e| panic!("{}: {e}", sample.id));
        assert_eq!(file.write(), sample.text, "{}", sample.id);
        assert!(!file.edited() && !file.name().is_empty(), "{}", sample.id);
        assert_eq!(Sample::by_id(sample.id).map(Sample::job), Some(file));
    }
    assert_eq!(Sample::by_id("none"), None);
}

#[test]
fn a_store_comes_back_and_a_damaged_one_keeps_its_text() {
    let machine = SavedMachine::of("the old mill", &full());
    assert!(machine.answers.iter().all(|(id, _)| is_machines(id.field)));
    let store = Store {
        job: file(),
        machines: vec![machine],
    };
    let text = store.write();
    assert_eq!(Store::read(&text), Ok(store));
    for cut in [0, 1, text.len() / 2, text.len() - 2] {
        let cut = (cut..text.len())
            .find(|i| text.is_char_boundary(*i))
            .unwrap();
        let damaged = Store::read(&text[..cut]).unwrap_err();
        assert_eq!(damaged.text, text[..cut]);
    }
}

#[test]
fn a_saved_machine_has_answers_about_machines_only() {
    let mut store = Store {
        job: file(),
        machines: vec![SavedMachine::of("mine", &full())],
    };
    store.machines[0]
        .answers
        .set(Field::Web, "4", Known::Measured);
    let place = "machines.1.answers.part.web".to_owned();
    let text = store.write();
    assert_eq!(
        Store::read(&text),
        Err(Damaged {
            error: JobFileError::UnknownKey { place },
            text
        })
    );
}

#[test]
fn a_saved_machine_changes_the_machine_only() {
    let machine = SavedMachine::of("mine", &full());
    let mut answers = Answers::new(UnitSystem::Inch);
    answers.set(Field::Web, "0.1", Known::Measured);
    assert!(machine.put_into(&mut answers));
    assert_eq!(answers.text(Field::Web.into()), "0.1");
    assert_eq!(
        answers.text(Field::Power.into()),
        full().text(Field::Power.into())
    );
    let mut metric = Answers::new(UnitSystem::Metric);
    assert!(!machine.put_into(&mut metric));
    assert_eq!(metric, Answers::new(UnitSystem::Metric));
}

#[test]
fn a_message_to_the_worker_comes_back() {
    for order in [Order::Work(full()), Order::Stop] {
        let message = ToWorker {
            generation: u32::MAX,
            order,
        };
        assert_eq!(ToWorker::decode(&message.encode()), Ok(message));
    }
    let wanted = Wanted::WholeUpTo(u32::MAX);
    let text = ToWorker {
        generation: 7,
        order: Order::Work(full()),
    }
    .encode()
    .replacen(":7,", ":-7,", 1);
    assert_eq!(
        ToWorker::decode(&text),
        Err(JobFileError::Not {
            place: "generation".to_owned(),
            wanted
        })
    );
}

#[test]
fn what_was_taught_is_counted_from_before_the_first_record() {
    let low: thinwright_core::FieldId = Field::LearnedStiffnessLow.into();
    let learned = |before: &str, after: &str| Record {
        learned: vec![Learned {
            field: low,
            before: before.to_owned(),
            after: after.to_owned(),
        }],
        judged: vec![("at-kc".to_owned(), 1.0)],
        ..Record::default()
    };
    let mut answers = Answers::new(UnitSystem::Metric);
    answers.set(low, "0.9", Known::Estimated);
    let mut records = vec![learned("0.6", "0.8"), learned("0.8", "0.9")];
    assert_eq!(untaught(&records, &answers).text(low), "0.6");
    assert_eq!(untaught(&[], &answers), answers);
    // Nobody had taught anything before.
    records[0].learned[0].before = String::new();
    assert_eq!(
        untaught(&records, &answers),
        Answers::new(UnitSystem::Metric)
    );
    // What was run elsewhere is given.
    records[0].elsewhere = true;
    assert_eq!(untaught(&records, &answers).text(low), "0.8");
    assert!(records[1].counts() && !records[0].counts());
    records[1].taken_back = true;
    assert!(!records[1].counts() && !Record::default().counts());
}
