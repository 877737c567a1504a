//! The state without a browser.

mod charted;
mod kept;
mod looked;
mod searched;
mod shop;
mod taught;
mod undone;

use super::*;
use thinwright_core::advise;
use thinwright_core::field::Field;

fn sample() -> State {
    let file = thinwright_jobfile::samples()[0].job();
    State::new(Rc::new(Catalog::builtin()), file, Vec::new())
}

fn solved() -> State {
    let mut state = sample();
    answer(&mut state);
    state
}

fn done(state: &mut State, generation: u32, outcome: Outcome) {
    let heard = Heard::Done(Standing::default(), Box::new(outcome));
    state.apply(Action::Heard(generation, heard));
}

fn answer(state: &mut State) {
    let outcome = advise(state.job.as_ref().unwrap());
    done(state, state.generation, outcome);
}

#[test]
fn a_sample_is_read_at_once_and_solved_later() {
    let mut state = sample();
    assert!(state.problems.is_empty());
    assert!(state.job.is_some() && state.shown.is_none() && state.stale());
    answer(&mut state);
    assert!(state.shown.is_some() && !state.stale());
}

#[test]
fn a_typing_error_keeps_the_text_and_the_last_good_strategy() {
    let mut state = solved();
    let before = state.shown.clone();
    state.apply(Action::Type(Field::Thickness.into(), "thick".to_owned()));
    assert_eq!(state.answers.text(Field::Thickness.into()), "thick");
    assert_eq!(state.problems[0].field, Field::Thickness.into());
    assert!(state.shown == before && state.stale());
    assert!(state.printable().is_none());
    // What was still under way for the answers before is not taken.
    let late = (*before.unwrap().outcome).clone();
    let old = state.generation - 1;
    done(&mut state, old, late);
    assert!(state.stale());
}

#[test]
fn a_late_answer_is_dropped() {
    let mut state = solved();
    let old = state.generation;
    let first = state.shown.clone().unwrap();
    state.apply(Action::Type(Field::Flatness.into(), "0.3".to_owned()));
    done(&mut state, old, (*first.outcome).clone());
    assert!(state.stale());
    assert!(state.shown == Some(first));
}

#[test]
fn changes_are_counted_from_before_the_field_was_touched() {
    let mut state = solved();
    let first = state.shown.clone();
    for text in ["0.21", "0.22"] {
        state.apply(Action::Type(Field::Flatness.into(), text.to_owned()));
        answer(&mut state);
        assert!(state.baseline == first, "{text}");
    }
    let second = state.shown.clone();
    state.apply(Action::Type(Field::WebTolerance.into(), "0.31".to_owned()));
    assert!(state.baseline == second);
}

#[test]
fn units_change_nothing_that_was_meant() {
    let mut state = solved();
    let web = state.job.as_ref().unwrap().part.web();
    state.apply(Action::Units(UnitSystem::Inch));
    assert!(state.problems.is_empty());
    assert_eq!(
        state.job.as_ref().unwrap().part.web().to_bits(),
        web.to_bits()
    );
}

#[test]
fn the_rack_grows_and_shrinks() {
    let mut state = sample();
    let rows = state.answers.rack_rows();
    state.apply(Action::CopyCutter(0));
    assert_eq!(state.answers.rack_rows(), rows + 1);
    let text = |state: &State, row| {
        state
            .answers
            .text(FieldId::in_row(Field::CutterDiameter, row))
            .to_owned()
    };
    assert_eq!(text(&state, rows), text(&state, 0));
    let id = state.catalog.cutters[0].id.clone();
    state.apply(Action::AddStarter(id));
    assert!(state.problems.is_empty(), "{:?}", state.problems);
    state.apply(Action::RemoveCutter(rows));
    state.apply(Action::RemoveCutter(rows));
    assert_eq!(state.answers.rack_rows(), rows);
}

#[test]
fn every_starter_cutter_can_be_put_in_the_rack() {
    for units in [UnitSystem::Metric, UnitSystem::Inch] {
        let mut state = sample();
        state.apply(Action::Units(units));
        let ids: Vec<String> = state.catalog.cutters.iter().map(|c| c.id.clone()).collect();
        for id in ids {
            state.apply(Action::AddStarter(id.clone()));
            assert!(state.problems.is_empty(), "{id}: {:?}", state.problems);
            state.apply(Action::RemoveCutter(state.answers.rack_rows() - 1));
        }
    }
}
