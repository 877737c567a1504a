//! Charts of stability: asked for where a frequency is known, kept by what they were drawn from, dropped with the answers.

use super::*;
use thinwright_core::stability::{Lobes, lobes};
use thinwright_core::strategy::Step;
use thinwright_core::vibration::TipKnown;
use thinwright_jobfile::ChartOf;
use thinwright_quantity::Frequency;

/// The first sample, solved, as if every cutter's tone were known: its steps stay where they are.
fn tapped() -> State {
    let mut state = solved();
    let outcome = tuned(&state);
    let generation = state.generation;
    done(&mut state, generation, outcome);
    state
}

fn tuned(state: &State) -> Outcome {
    let mut outcome = (*state.shown.as_ref().unwrap().outcome).clone();
    if let Outcome::Feasible(strategy) = &mut outcome {
        let steps = strategy.setups.iter_mut().flat_map(|s| &mut s.steps);
        for report in steps.filter_map(|s| s.stability.as_mut()) {
            report.known = TipKnown::Frequency;
            for mode in &mut report.modes {
                mode.frequency = Some(Frequency::from_si(1800.0));
            }
        }
    }
    outcome
}

fn step(state: &State, at: usize) -> Step {
    match &*state.shown.as_ref().unwrap().outcome {
        Outcome::Feasible(strategy) => crate::map::steps(strategy).nth(at).unwrap().clone(),
        Outcome::Refused(_) => panic!("refused"),
    }
}

fn drawn(state: &mut State, of: &ChartOf) {
    let chart: Option<Rc<Lobes>> = lobes(&of.report).map(Rc::new);
    state.apply(Action::Heard(
        state.generation,
        Heard::Chart(Box::new(of.clone()), chart),
    ));
}

#[test]
fn only_the_step_in_hand_is_asked_for_and_only_where_a_tone_is_known() {
    let mut bare = solved();
    bare.apply(Action::OpenStep(Some(0)));
    assert_eq!(step(&bare, 0).stability.unwrap().known, TipKnown::Nothing);
    assert!(bare.wanted_chart().is_none());
    let mut state = tapped();
    assert!(state.wanted_chart().is_none(), "no step is open");
    state.apply(Action::OpenStep(Some(1)));
    let of = state.wanted_chart().unwrap();
    assert_eq!(
        (of.step, Some(&of.report)),
        (2, step(&state, 1).stability.as_ref())
    );
    drawn(&mut state, &of);
    assert!(state.wanted_chart().is_none(), "nobody asks twice");
    let shown = state.shown.clone().unwrap();
    let chart = state.charts.at(&shown, &step(&state, 1)).unwrap();
    assert!(chart.as_ref().is_some_and(|c| c.speeds.len() > 100));
    assert!(state.charts.at(&shown, &step(&state, 0)).is_none());
}

#[test]
fn a_chart_of_another_strategy_is_never_shown() {
    let mut state = tapped();
    state.apply(Action::OpenStep(Some(1)));
    let mut of = state.wanted_chart().unwrap();
    // The step stood elsewhere when it was asked for.
    of.report.share *= 0.5;
    drawn(&mut state, &of);
    let shown = state.shown.clone().unwrap();
    assert!(state.charts.at(&shown, &step(&state, 1)).is_none());
    assert!(state.wanted_chart().is_some());
}

#[test]
fn other_answers_have_other_charts() {
    let mut state = tapped();
    state.apply(Action::OpenStep(Some(1)));
    let of = state.wanted_chart().unwrap();
    drawn(&mut state, &of);
    let old = state.generation;
    let shown = state.shown.clone().unwrap();
    state.apply(Action::Type(Field::Flatness.into(), "0.3".to_owned()));
    assert!(state.stale() && state.wanted_chart().is_none());
    // What is shown is old: it keeps its chart until there is a new one.
    assert!(state.charts.at(&shown, &step(&state, 1)).is_some());
    state.apply(Action::Heard(old, Heard::Chart(Box::new(of), None)));
    let chart = state.charts.at(&shown, &step(&state, 1)).unwrap();
    assert!(chart.is_some(), "a late one is dropped");
    let outcome = (*shown.outcome).clone();
    let generation = state.generation;
    done(&mut state, generation, outcome);
    let now = state.shown.clone().unwrap();
    assert!(state.charts.at(&now, &step(&state, 1)).is_none());
    assert!(state.wanted_chart().is_some());
}
