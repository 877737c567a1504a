//! Listening: taps on cutter, spindle and web, and a cut, by the microphone or from a sound file.

mod analysis;
mod chart;
mod choose;
mod controls;
mod ear;
mod file;
mod judge;
mod listening;
mod microphone;
mod tape;
#[cfg(test)]
mod tests;
mod told;

use crate::browser;
use crate::desk::use_desk;
use crate::state::Shown;
use analysis::Wanted;
use controls::{by_hand, controls};
use ear::{Heard, Phase};
use listening::{Listener, use_listener};
use std::rc::Rc;
use thinwright_core::Answers;
use thinwright_quantity::UnitSystem;
use thinwright_words::Speaker;
use thinwright_words::hear::{self as words, Use};
use told::Teller;
use web_sys::HtmlDetailsElement;
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct HearProps {
    pub(crate) answers: Rc<Answers>,
    pub(crate) shown: Option<Shown>,
    /// The step in hand, counted from 0.
    pub(crate) step: Option<usize>,
    pub(crate) units: UnitSystem,
}

/// What was chosen to listen to.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Chosen {
    pub(crate) to: Use,
    /// The cutter that is tapped; the spindle if none.
    pub(crate) row: Option<u8>,
    /// Tapped along X, else along Y.
    pub(crate) x: bool,
    /// The step that is compared with, counted from 0.
    pub(crate) step: Option<usize>,
    /// A tone that was typed, where there is no field for it.
    pub(crate) typed: String,
    /// How many taps must agree.
    pub(crate) count: usize,
}

/// A way to the panel from where its results are asked for.
pub(crate) fn way_to_hear() -> Html {
    let onclick = Callback::from(|event: MouseEvent| {
        event.prevent_default();
        browser::reveal("hear-name");
    });
    html! { <p class="hear-by-hand"><a href="#hear" {onclick}>{ words::name() }</a></p> }
}

/// What happens when the panel is shut: nobody listens behind a closed lid.
fn lid(listener: &Listener) -> Callback<Event> {
    let listener = listener.clone();
    Callback::from(move |event: Event| {
        // Folds inside the panel tell of themselves here, too.
        let shut = event
            .target_dyn_into::<HtmlDetailsElement>()
            .is_some_and(|d| d.id() == "hear" && !d.open());
        if shut && listener.ear().phase != Phase::Still {
            listener.forget();
        }
    })
}

/// The panel.
#[component]
pub(crate) fn Hear(props: &HearProps) -> Html {
    let desk = use_desk();
    let numbers = &desk.catalog.numbers;
    let wanted = Wanted {
        count: tape::samples_in(numbers.tap_count, 1.0),
        within: numbers.tap_spread,
    };
    let listener = use_listener(wanted);
    let chosen = use_state(|| Chosen {
        to: Use::Cutter,
        row: Some(0),
        x: true,
        step: None,
        typed: String::new(),
        count: wanted.count,
    });
    let fit = choose::fitting(&chosen, &props.answers);
    let choose = {
        let (chosen, listener) = (chosen.clone(), listener.clone());
        Callback::from(move |(next, same): (Chosen, bool)| {
            if !same {
                listener.forget();
            }
            chosen.set(next);
        })
    };
    let ontoggle = lid(&listener);
    let teller = Teller {
        desk: &desk,
        speaker: Speaker::new(props.units, &desk.catalog, &props.answers),
        props,
        chosen: &fit,
        on: listener.ear().phase == Phase::Listening,
    };
    let told = match listener.ear().heard.as_deref() {
        Some(Heard::Taps(heard)) => teller.taps(heard),
        Some(Heard::Cut(heard)) => teller.cut(heard),
        None => by_hand(&teller, &choose),
    };
    html! {
        <details class="hear" id="hear" {ontoggle}>
            <summary class="more-name hear-name" id="hear-name">{ words::name() }</summary>
            <div class="hear-inside">
                { choose::uses(&fit, &choose) }
                { choose::object(&teller, &choose) }
                <ul class="hear-how">{ for fit.to.how().iter().map(|line| html! { <li>{ *line }</li> }) }</ul>
                { controls(&teller, &listener) }
                { told }
            </div>
        </details>
    }
}
