//! The slider over the steps, and how the web weakens along them.

use crate::desk::use_desk;
use crate::map::steps;
use crate::state::{Action, Shown};
use std::cell::RefCell;
use std::rc::Rc;
use thinwright_core::Outcome;
use thinwright_core::strategy::Strategy;
use thinwright_quantity::UnitSystem;
use thinwright_words::{Speaker, map as words};
use web_sys::HtmlInputElement;
use yew::prelude::*;

/// Height of the chart in its own units, and what is left free above and below.
const HEIGHT: f64 = 100.0;
const FREE: f64 = 12.0;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct StepsProps {
    pub(crate) shown: Shown,
    /// The step in hand, counted from 0.
    pub(crate) step: Option<usize>,
    pub(crate) units: UnitSystem,
}

/// The slider.
#[component]
pub(crate) fn Steps(props: &StepsProps) -> Html {
    let desk = use_desk();
    let (slider, moved) = use_slider(props.step.map_or(0, |at| at + 1));
    let Outcome::Feasible(strategy) = &*props.shown.outcome else {
        return html! {};
    };
    let speaker = Speaker::new(props.units, &desk.catalog, &props.shown.answers);
    let count = steps(strategy).count();
    let in_hand = props.step.and_then(|at| steps(strategy).nth(at));
    let says = in_hand.map_or_else(
        || words::finished().to_owned(),
        |step| speaker.step_of(step, count),
    );
    let oninput = desk.on_some(move |event: InputEvent| {
        let slider: HtmlInputElement = event.target_unchecked_into();
        let number: usize = slider.value().parse().ok()?;
        moved.borrow_mut().push(number);
        Some(Action::OpenStep(number.checked_sub(1)))
    });
    html! {
        <div class="steps-in-hand">
            <label class="title-label" for="step-in-hand">{ words::steps() }</label>
            // The slider itself says it to those who cannot see.
            <p class="steps-says" aria-hidden="true">{ says.clone() }</p>
            { weakening(strategy, &speaker, props.step) }
            <input ref={slider} id="step-in-hand" class="slider" type="range" min="0" max={count.to_string()} step="1"
                aria-valuetext={says} {oninput} />
        </div>
    }
}

/// A slider that stands where the step in hand is, and the numbers that it was moved to since. A hand that moves it on while
/// the page still draws an earlier step is not thrown back.
#[hook]
fn use_slider(number: usize) -> (NodeRef, Rc<RefCell<Vec<usize>>>) {
    let slider = use_node_ref();
    let moved = use_mut_ref(Vec::new);
    let (at, since) = (slider.clone(), moved.clone());
    use_effect_with(number, move |number| {
        let mut since = since.borrow_mut();
        match since.iter().position(|sent| sent == number) {
            Some(sent) => drop(since.drain(..=sent)),
            None => {
                since.clear();
                if let Some(slider) = at.cast::<HtmlInputElement>() {
                    slider.set_value(&number.to_string());
                }
            }
        }
    });
    (slider, moved)
}

/// A line over the steps: the stiffness of the web, each decade as high as every other.
fn weakening(strategy: &Strategy, speaker: &Speaker<'_>, in_hand: Option<usize>) -> Html {
    let webs = steps(strategy).enumerate();
    let webs = webs.filter_map(|(at, s)| Some((at, s.number, s.web.as_ref()?.stiffness.si())));
    let webs: Vec<(usize, u32, f64)> = webs.filter(|w| w.2 > 0.0 && w.2.is_finite()).collect();
    let logs = webs.iter().map(|w| libm::log10(w.2));
    let (least, most) = logs.fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), v| {
        (a.min(v), b.max(v))
    });
    if webs.len() < 2 {
        return html! {};
    }
    let span = (most - least).max(0.1);
    let height = |stiffness: f64| {
        HEIGHT - FREE - (libm::log10(stiffness) - least) / span * (HEIGHT - 2.0 * FREE)
    };
    let mut path = String::new();
    let mut dots = String::new();
    for (k, (at, _, stiffness)) in webs.iter().enumerate() {
        let (x, y) = (at + 1, height(*stiffness));
        let way = if k == 0 { 'M' } else { 'L' };
        path += &format!("{way}{x} {y:.1}");
        dots += &format!("M{x} {y:.1}h0");
    }
    let count = steps(strategy).count();
    let said: Vec<(u32, f64)> = webs.iter().map(|w| (w.1, w.2)).collect();
    let at = in_hand.map_or(0, |at| at + 1);
    html! {
        <figure class="weakening">
            <svg viewBox={format!("0 0 {count} {HEIGHT}")} preserveAspectRatio="none" aria-hidden="true">
                <path class="weakening-at" d={format!("M{at} 0V{HEIGHT}")} />
                <path class="weakening-line" d={path} />
                <path class="weakening-dots" d={dots} />
            </svg>
            <figcaption>{ speaker.weakening(&said) }</figcaption>
        </figure>
    }
}
