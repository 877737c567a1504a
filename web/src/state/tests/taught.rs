//! Notes of what was run: they teach, are taken back to the letter, and stay behind when the job goes to another machine.

use super::*;
use thinwright_core::learn::{Give, LEARNED, Seen, World};
use thinwright_jobfile::Ran;

/// A note that the machine gives this share of what was reckoned.
fn gave(state: &State, share: f64) -> Record {
    let at = World::likely(&state.job.as_ref().unwrap().estimates);
    let (tip, force) = (0.1e-6, 30.0);
    let seen = Seen {
        at,
        tip,
        song: None,
        give: Some(Give {
            give: share * force * (tip + 1.0 / at.stiffness),
            force,
            share: 0.1,
        }),
        edge: None,
        force: None,
    };
    Record {
        step: 1,
        outcome: Some(Ran::Bent),
        judged: seen.numbers(),
        ..Record::default()
    }
}

fn learned(state: &State) -> Vec<String> {
    let fields = LEARNED.iter().flat_map(|(_, low, high)| [*low, *high]);
    fields
        .map(|field| state.answers.text(field.into()).to_owned())
        .collect()
}

fn low(state: &State) -> String {
    state
        .answers
        .text(Field::LearnedStiffnessLow.into())
        .to_owned()
}

#[test]
fn a_note_teaches_and_is_taken_back_to_the_letter() {
    let mut page = sample();
    let before = page.answers.clone();
    let note = gave(&page, 0.7);
    page.apply(Action::NoteRun(Box::new(note.clone())));
    let once = low(&page);
    assert!(!once.is_empty());
    assert_eq!(page.records[0].learned[0].after, once);
    page.apply(Action::NoteRun(Box::new(note)));
    let twice = low(&page);
    let number = |text: &str| text.parse::<f64>().unwrap();
    assert!(number(&twice) >= number(&once));
    let both = learned(&page);
    page.apply(Action::Count(0, false));
    assert_eq!(low(&page), once);
    assert!(page.records[0].taken_back);
    page.apply(Action::Count(1, false));
    assert_eq!(page.answers, before);
    // Taken back out of order, counted again in another order: the same to the letter.
    page.apply(Action::Count(1, true));
    page.apply(Action::Count(0, true));
    assert_eq!(learned(&page), both);
    // And all of it can be undone.
    for _ in 0..6 {
        page.apply(Action::Undo);
    }
    assert_eq!(page.answers, before);
    assert!(page.records.is_empty());
    page.apply(Action::Count(7, false));
    assert!(page.records.is_empty());
}

#[test]
fn what_was_learned_goes_with_the_file_and_stays_with_the_machine() {
    let mut page = sample();
    let note = gave(&page, 0.7);
    page.apply(Action::NoteRun(Box::new(note)));
    let file = page.file();
    assert_eq!(JobFile::read(file.write().as_bytes()), Ok(file.clone()));
    let again = State::new(Rc::new(Catalog::builtin()), file, Vec::new());
    assert_eq!(learned(&again), learned(&page));
    assert_eq!(again.records, page.records);
    // Another class of machine: what was learned is left behind, the note stays in the history.
    let class = |answers: &Answers| answers.text(Field::Machine.into()).to_owned();
    let other = match class(&page.answers).as_str() {
        "knee_mill" => "screw_router",
        _ => "knee_mill",
    };
    page.apply(Action::Type(Field::Machine.into(), other.to_owned()));
    assert!(learned(&page).iter().all(String::is_empty));
    assert!(page.records[0].elsewhere && !page.records[0].counts());
    page.apply(Action::Undo);
    assert!(!page.records[0].elsewhere && !low(&page).is_empty());
}

#[test]
fn another_material_keeps_what_is_the_machines() {
    let mut page = sample();
    let note = gave(&page, 0.6);
    page.apply(Action::NoteRun(Box::new(note)));
    page.apply(Action::Keep(vec![(
        Field::LearnedKcHigh.into(),
        "1.1".to_owned(),
    )]));
    let stiffness = low(&page);
    page.apply(Action::Type(
        Field::Material.into(),
        "brass_cuzn39pb3".to_owned(),
    ));
    assert_eq!(low(&page), stiffness);
    assert!(page.answers.text(Field::LearnedKcHigh.into()).is_empty());
    assert!(page.records[0].elsewhere);
}

#[test]
fn all_of_it_can_be_let_go_of() {
    let mut page = sample();
    let note = gave(&page, 0.7);
    page.apply(Action::NoteRun(Box::new(note.clone())));
    page.apply(Action::ForgetTaught);
    assert!(learned(&page).iter().all(String::is_empty));
    assert_eq!(page.records.len(), 1);
    // What is noted from now on begins anew.
    page.apply(Action::NoteRun(Box::new(note)));
    assert!(page.records[1].learned.iter().all(|l| l.before.is_empty()));
}

#[test]
fn a_note_that_no_file_could_hold_is_told_and_changes_nothing() {
    let mut page = sample();
    let long = Record {
        note: "x".repeat(9_000),
        ..gave(&page, 0.7)
    };
    page.apply(Action::NoteRun(Box::new(long)));
    assert!(page.records.is_empty() && low(&page).is_empty());
    assert!(page.messages.iter().any(|m| m.alarm));
    // A note that teaches nothing is noted all the same.
    page.apply(Action::NoteRun(Box::default()));
    assert_eq!(page.records.len(), 1);
    assert!(low(&page).is_empty());
}

#[test]
fn notes_that_cannot_both_be_teach_nothing() {
    let mut page = sample();
    let (soft, stiff) = (gave(&page, 2.2), gave(&page, 0.6));
    page.apply(Action::NoteRun(Box::new(stiff)));
    page.apply(Action::Count(0, false));
    page.apply(Action::NoteRun(Box::new(soft)));
    let one = learned(&page);
    assert!(one.iter().any(|text| !text.is_empty()));
    page.apply(Action::Count(0, true));
    assert!(learned(&page).iter().all(String::is_empty));
    assert!(page.messages.iter().any(|m| m.alarm));
    page.apply(Action::Count(0, false));
    assert_eq!(learned(&page), one);
}
