//! What is taken back, and done again.

use super::*;
use crate::state::Difference;

fn thickness(state: &State) -> &str {
    state.answers.text(Field::Thickness.into())
}

fn type_in(state: &mut State, field: Field, text: &str) {
    state.apply(Action::Type(field.into(), text.to_owned()));
}

#[test]
fn typing_in_a_field_is_one_change() {
    let mut state = sample();
    let first = state.file();
    for text in ["2", "20", "20.", "20.5"] {
        type_in(&mut state, Field::Thickness, text);
    }
    type_in(&mut state, Field::Flatness, "0.3");
    assert_eq!(
        state.undoable(),
        Some(Difference::Field(Field::Flatness.into()))
    );
    state.apply(Action::Undo);
    assert_eq!(thickness(&state), "20.5");
    assert_eq!(
        state.undoable(),
        Some(Difference::Field(Field::Thickness.into()))
    );
    state.apply(Action::Undo);
    assert_eq!(state.file(), first);
    assert_eq!(state.undoable(), None);
    state.apply(Action::Undo);
    assert_eq!(state.file(), first);
    state.apply(Action::Redo);
    state.apply(Action::Redo);
    assert_eq!(thickness(&state), "20.5");
    assert_eq!(state.redoable(), None);
    // A change in the same field after a step back is one of its own.
    state.apply(Action::Undo);
    type_in(&mut state, Field::Flatness, "0.4");
    type_in(&mut state, Field::Flatness, "0.45");
    assert_eq!(state.redoable(), None);
    state.apply(Action::Undo);
    assert_eq!(thickness(&state), "20.5");
}

#[test]
fn what_is_no_change_is_no_step() {
    let mut state = sample();
    let same = thickness(&state).to_owned();
    type_in(&mut state, Field::Thickness, &same);
    state.apply(Action::Light(Some(Field::Thickness.into())));
    state.apply(Action::OpenStep(Some(1)));
    state.apply(Action::Dress(Theme::Dark));
    assert_eq!(state.undoable(), None);
}

#[test]
fn a_job_that_was_loaded_over_another_gives_it_back() {
    let mut state = solved();
    type_in(&mut state, Field::Thickness, "about 20");
    let (mine, id) = (state.file(), state.id.clone());
    let other = thinwright_jobfile::samples()[1].job();
    state.apply(Action::Load(Box::new(other.clone())));
    assert!(state.id != id && state.shown.is_none());
    assert_eq!(state.undoable(), Some(Difference::Job));
    state.apply(Action::Undo);
    assert_eq!((state.file(), &state.id), (mine, &id));
    assert_eq!(state.problems[0].field, Field::Thickness.into());
    state.apply(Action::Redo);
    assert_eq!(state.file().answers, other.answers);
    assert!(state.problems.is_empty() && state.job.is_some());
}

#[test]
fn what_was_run_and_the_whole_rack_come_back() {
    let mut state = sample();
    let first = state.file();
    state.apply(Action::RemoveCutter(0));
    assert_eq!(state.undoable(), Some(Difference::Answers));
    state.apply(Action::Units(UnitSystem::Inch));
    state.apply(Action::Undo);
    state.apply(Action::Undo);
    assert_eq!(state.file(), first);
    let before = state.moment();
    state.records = Rc::new(vec![Record::default()]);
    state.note(before, None);
    assert_eq!(state.undoable(), Some(Difference::Records));
    let generation = state.generation;
    state.apply(Action::Undo);
    assert!(state.records.is_empty());
    assert_eq!(
        state.generation, generation,
        "the same answers were worked out anew"
    );
}

#[test]
fn only_so_many_changes_are_remembered() {
    let mut state = sample();
    let most = state.catalog.numbers.undo_steps;
    let fields = [Field::Thickness, Field::Flatness];
    let mut changes = 0.0;
    while changes < most + 10.0 {
        for field in fields {
            type_in(&mut state, field, &format!("{changes}"));
            changes += 1.0;
        }
    }
    let mut back = 0.0;
    while state.undoable().is_some() {
        state.apply(Action::Undo);
        back += 1.0;
    }
    assert!(back > most - 0.5 && back < most + 0.5, "{back}");
}
