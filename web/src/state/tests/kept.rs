//! Choices that the person keeps.

use super::*;
use thinwright_core::gain::What;
use thinwright_core::pin::Place;

fn pinned(field: Field, place: Place) -> FieldId {
    FieldId::in_row(field, place.row())
}

fn keep(state: &mut State, id: FieldId, text: &str) {
    state.apply(Action::Keep(vec![(id, text.to_owned())]));
}

/// Time in all, s, and what each kept choice costs, s.
fn told(state: &State) -> (f64, Vec<(FieldId, f64)>) {
    let Outcome::Feasible(strategy) = &*state.shown.as_ref().unwrap().outcome else {
        panic!("no strategy");
    };
    let gains = strategy.gains.iter();
    let prices = gains.filter_map(|gain| match gain.what {
        What::LetGo(id) => Some((id, gain.saved_s)),
        _ => None,
    });
    (strategy.time.to_s(), prices.collect())
}

#[test]
fn a_speed_that_is_kept_low_has_its_price_and_gives_it_back() {
    let mut state = solved();
    let (fastest, none) = told(&state);
    assert!(none.is_empty());
    let id = FieldId::from(Field::PinMostSpeed);
    keep(&mut state, id, "12000");
    assert!(state.stale());
    answer(&mut state);
    let (slower, prices) = told(&state);
    assert!(slower > fastest, "{slower} {fastest}");
    let (kept, price) = prices[0];
    assert_eq!(kept, id);
    // The allowances are tried on the strategy that is told only: letting go may bring a little more than was promised.
    let promised = price > 0.0 && price <= slower - fastest + 1.0;
    assert!(promised, "{price} {slower} {fastest}");
    state.apply(Action::LetGo(id));
    answer(&mut state);
    assert!((told(&state).0 - fastest).abs() < 1.0e-9);
}

#[test]
fn what_cannot_be_read_stays_as_typed_with_its_problem() {
    let mut state = solved();
    let id = pinned(Field::PinSpeed, Place::Slots);
    let before = state.shown.clone();
    keep(&mut state, id, "18000");
    answer(&mut state);
    let kept = state.shown.clone();
    assert!(kept != before);
    state.apply(Action::Type(id, "fast".to_owned()));
    assert_eq!(state.problems[0].field, id);
    assert_eq!(state.answers.text(id), "fast");
    assert!(state.shown == kept && state.stale());
}

#[test]
fn an_emptied_choice_is_let_go() {
    let mut state = solved();
    let id = pinned(Field::PinFeed, Place::Slots);
    keep(&mut state, id, "500");
    assert_eq!(pins(&state.answers).count(), 1);
    state.apply(Action::Type(id, " ".to_owned()));
    assert_eq!(pins(&state.answers).count(), 0);
    assert!(state.problems.is_empty());
}

#[test]
fn a_cutter_that_is_taken_out_takes_its_pins_along_and_says_so() {
    let mut state = sample();
    let (slots, floor) = (
        pinned(Field::PinCutter, Place::Slots),
        pinned(Field::PinCutter, Place::FloorA),
    );
    keep(&mut state, slots, "1");
    keep(&mut state, floor, "2");
    state.apply(Action::RemoveCutter(0));
    assert_eq!(state.answers.text(slots), "");
    assert_eq!(state.answers.text(floor), "1");
    let message = &state.messages[0];
    assert!(
        !message.alarm && message.text.contains("Slots: cutter"),
        "{}",
        message.text
    );
    assert!(!message.text.contains("Floor"), "{}", message.text);
}

#[test]
fn units_leave_what_is_kept_as_it_was_meant() {
    let mut state = sample();
    let id = pinned(Field::PinStepDown, Place::ClearingA);
    keep(&mut state, id, "1.2");
    let meant = |state: &State| {
        let pins = &state.job.as_ref().unwrap().pins;
        pins.steps[&Place::ClearingA].ap.unwrap().to_bits()
    };
    let before = meant(&state);
    state.apply(Action::Units(UnitSystem::Inch));
    assert!(state.problems.is_empty());
    assert_eq!(meant(&state), before);
}
