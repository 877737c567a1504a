//! What the search tells while it is on its way, and when it is stopped.

use super::*;
use thinwright_core::{Cache, Progress, Search};

/// The first strategy that a search finds, and the one that it ends with.
fn first_and_last(state: &State) -> (Outcome, Outcome) {
    let job = (**state.job.as_ref().unwrap()).clone();
    let mut search = Search::new(job, Cache::default());
    let mut first = None;
    loop {
        match search.advance(1) {
            Progress::Working { best, .. } => first = first.or(best),
            Progress::Done(last) => return (first.unwrap(), last),
        }
    }
}

fn standing(share: f64) -> Standing {
    Standing {
        share,
        candidates: 100.0,
        looked_at: 10.0,
    }
}

fn working(state: &mut State, best: Option<Outcome>, checked: bool) {
    let heard = Heard::Working(standing(0.5), best.map(Box::new), checked);
    state.apply(Action::Heard(state.generation, heard));
}

fn stopped(state: &mut State, best: Option<Outcome>) {
    let heard = Heard::Stopped(standing(0.6), best.map(Box::new));
    state.apply(Action::Heard(state.generation, heard));
}

fn ended(state: &mut State, last: Outcome) {
    let generation = state.generation;
    done(state, generation, last);
}

fn stage(state: &State) -> Option<Stage> {
    state.shown.as_ref().map(|s| s.stage)
}

#[test]
fn the_first_strategy_is_shown_at_once_and_printed_when_nothing_better_will_come() {
    let mut state = sample();
    let (first, last) = first_and_last(&state);
    working(&mut state, Some(first), false);
    assert_eq!(stage(&state), Some(Stage::First));
    assert!(!state.stale() && state.printable().is_none());
    working(&mut state, None, true);
    assert_eq!(stage(&state), Some(Stage::Final));
    assert!(state.printable().is_some() && state.work == Work::Under);
    ended(&mut state, last);
    assert_eq!(stage(&state), Some(Stage::Whole));
    assert_eq!(state.work, Work::Idle);
}

#[test]
fn an_open_step_stays_open_whatever_comes() {
    let mut state = sample();
    let (first, last) = first_and_last(&state);
    working(&mut state, Some(first), false);
    state.apply(Action::OpenStep(Some(2)));
    ended(&mut state, last);
    assert!(state.step.is_some());
}

#[test]
fn what_was_stopped_is_said_to_be_so_and_goes_on_when_asked() {
    let mut state = sample();
    let (first, last) = first_and_last(&state);
    working(&mut state, Some(first.clone()), false);
    state.apply(Action::Stop);
    assert_eq!(state.stopped, Some(state.generation));
    stopped(&mut state, Some(first.clone()));
    assert_eq!(
        (state.work, stage(&state)),
        (Work::Stopped, Some(Stage::Stopped))
    );
    assert!(!state.stale() && state.printable().is_some());

    let generation = state.generation;
    state.apply(Action::GoOn);
    assert!(state.generation != generation && state.work == Work::Under);
    assert_eq!(state.stopped, None);
    // What stands is not put back to where the new search begins.
    let stood = state.shown.clone();
    working(&mut state, Some(first), false);
    assert!(state.shown == stood);
    ended(&mut state, last);
    assert_eq!(
        (state.work, stage(&state)),
        (Work::Idle, Some(Stage::Whole))
    );
}

#[test]
fn a_final_strategy_stays_final_when_the_lists_are_cut_off() {
    let mut state = sample();
    let (_, last) = first_and_last(&state);
    working(&mut state, Some(last.clone()), true);
    state.apply(Action::Stop);
    stopped(&mut state, Some(last));
    assert_eq!(
        (state.work, stage(&state)),
        (Work::Stopped, Some(Stage::Cut))
    );
}

#[test]
fn nothing_is_stopped_twice_or_taken_from_an_older_search() {
    let mut state = solved();
    state.apply(Action::Stop);
    assert_eq!((state.stopped, state.work), (None, Work::Idle));
    let old = state.generation;
    state.apply(Action::Type(Field::Flatness.into(), "0.3".to_owned()));
    let heard = Heard::Stopped(standing(0.9), None);
    state.apply(Action::Heard(old, heard));
    assert!(state.work == Work::Under && state.stale());
}

#[test]
fn what_was_only_on_its_way_is_nothing_to_compare_with() {
    let mut state = solved();
    let before = state.shown.clone();
    state.apply(Action::Type(Field::Flatness.into(), "0.3".to_owned()));
    let (first, _) = first_and_last(&state);
    working(&mut state, Some(first), false);
    state.apply(Action::Type(Field::WebTolerance.into(), "0.31".to_owned()));
    assert!(state.baseline == before);
}

#[test]
fn a_strategy_makes_room_for_a_no_only_when_all_is_told_of_it() {
    let mut state = solved();
    let before = state.shown.clone();
    let no = advise(
        &read(
            &thinwright_jobfile::Sample::by_id("impossible")
                .unwrap()
                .job()
                .answers,
            &state.catalog,
        )
        .unwrap(),
    );
    assert!(matches!(no, Outcome::Refused(_)));
    state.apply(Action::Type(Field::Flatness.into(), "0.3".to_owned()));
    working(&mut state, Some(no.clone()), true);
    assert!(state.shown == before && state.stale());
    ended(&mut state, no);
    assert!(state.shown != before && !state.stale());
}
