//! What is seen of the web: asked for, kept, replaced, and dropped with the answers it belongs to.

use super::*;
use crate::map::softest_step;
use thinwright_core::plan::Point;
use thinwright_core::{Detail, Sight, WebError, WebPicture};

fn picture(most: f64) -> Rc<WebPicture> {
    Rc::new(WebPicture {
        nodes: Vec::new(),
        triangles: Vec::new(),
        floor: Vec::new(),
        compliance: Vec::new(),
        softest: Point::new(0.0, 0.0),
        most,
        bow: Vec::new(),
        tones: Vec::new(),
        error: 0.0,
    })
}

fn softest(state: &State) -> usize {
    match &*state.shown.as_ref().unwrap().outcome {
        Outcome::Feasible(strategy) => softest_step(strategy).unwrap(),
        Outcome::Refused(_) => panic!("refused"),
    }
}

fn look(state: &mut State, sight: &Sight, detail: Detail, seen: Result<Rc<WebPicture>, WebError>) {
    let sight = Sight {
        detail,
        ..sight.clone()
    };
    state.apply(Action::Heard(state.generation, Heard::Look(sight, seen)));
}

#[test]
fn the_softest_step_is_looked_at_first_and_the_step_in_hand_with_it() {
    let mut state = sample();
    assert!(state.wanted().is_empty(), "there is no strategy yet");
    answer(&mut state);
    let worst = state.wanted();
    assert_eq!(worst.len(), 1);
    assert_eq!(worst[0].detail, Detail::Fine);
    // Facing has no web, the softest step is wanted already, another web is wanted beside it.
    let softest = softest(&state);
    let mut counts: Vec<usize> = Vec::new();
    for step in 0..=softest {
        state.apply(Action::OpenStep(Some(step)));
        counts.push(state.wanted().len());
    }
    assert_eq!((counts[0], counts[softest]), (1, 1), "{counts:?}");
    assert!(counts.contains(&2), "{counts:?}");
    state.apply(Action::OpenStep(None));
    assert_eq!(state.wanted(), worst);
}

#[test]
fn the_fine_picture_takes_the_place_of_the_coarse_one_and_never_the_other_way_round() {
    let mut state = solved();
    state.apply(Action::OpenStep(Some(softest(&state))));
    let sight = state.wanted().remove(0);
    assert!(state.web_in_hand().is_none());
    look(&mut state, &sight, Detail::Coarse, Ok(picture(1.0)));
    assert!((state.web_in_hand().unwrap().most - 1.0).abs() < 1e-12);
    assert_eq!(state.wanted().len(), 1, "the fine one is still wanted");
    look(&mut state, &sight, Detail::Fine, Ok(picture(2.0)));
    look(&mut state, &sight, Detail::Coarse, Ok(picture(3.0)));
    assert!((state.web_in_hand().unwrap().most - 2.0).abs() < 1e-12);
    assert!(state.wanted().is_empty());
}

#[test]
fn a_reason_stands_where_there_is_no_picture() {
    let mut state = solved();
    let sight = state.wanted().remove(0);
    look(&mut state, &sight, Detail::Fine, Err(WebError::TooLarge));
    let answers = state.answers.clone();
    let seen = state.looks.at(&answers, &sight).unwrap();
    assert!(matches!(seen, (Err(WebError::TooLarge), Detail::Fine)));
    assert!(state.wanted().is_empty(), "nobody asks twice");
}

#[test]
fn other_answers_have_other_webs() {
    let mut state = solved();
    state.apply(Action::OpenStep(Some(softest(&state))));
    let sight = state.wanted().remove(0);
    look(&mut state, &sight, Detail::Fine, Ok(picture(1.0)));
    let old = state.generation;
    state.apply(Action::Type(Field::Web.into(), "5".to_owned()));
    // What is shown is old: it keeps its picture, but nothing is asked for, and late pictures are dropped.
    assert!(state.stale() && state.wanted().is_empty() && state.web_in_hand().is_none());
    let shown = state.shown.clone().unwrap();
    assert!(state.looks.at(&shown.answers, &sight).is_some());
    state.apply(Action::Heard(
        old,
        Heard::Look(sight.clone(), Ok(picture(9.0))),
    ));
    assert!(
        (state
            .looks
            .at(&shown.answers, &sight)
            .unwrap()
            .0
            .as_ref()
            .unwrap()
            .most
            - 1.0)
            .abs()
            < 1e-12
    );
    answer(&mut state);
    let answers = state.answers.clone();
    assert!(state.looks.at(&answers, &sight).is_none());
    assert!(!state.wanted().is_empty());
}
