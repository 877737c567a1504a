//! The list of all that is kept, with what each costs.

use super::job::{JobPins, open};
use super::{Keeping, Pin, PinEntry, carrier};
use crate::browser;
use crate::desk::use_desk;
use crate::form::element_id;
use crate::state::{Action, Shown};
use crate::text;
use std::rc::Rc;
use thinwright_core::field::Group;
use thinwright_core::pin::Place;
use thinwright_core::{Answers, Field, FieldId, Job};
use thinwright_words::{GainKind, Speaker, waits};
use yew::prelude::*;

/// The element that takes the focus when a choice is gone.
pub(crate) const KEPT: &str = "kept";

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct KeptProps {
    pub(crate) keeping: Keeping,
    pub(crate) shown: Option<Shown>,
    /// What is shown belongs to other answers.
    pub(crate) stale: bool,
    pub(crate) answers: Rc<Answers>,
    pub(crate) open: Vec<Field>,
}

impl KeptProps {
    pub(crate) fn new(
        keeping: Keeping,
        (shown, stale): (Option<Shown>, bool),
        answers: Rc<Answers>,
        job: Option<&Rc<Job>>,
    ) -> KeptProps {
        KeptProps {
            keeping,
            shown,
            stale,
            answers,
            open: open(job),
        }
    }
}

/// The list, and under it the choices of the whole job.
#[component]
pub(crate) fn Kept(props: &KeptProps) -> Html {
    let desk = use_desk();
    let speaker = Speaker::new(props.keeping.units, &desk.catalog, &props.answers);
    let line = |pin: &Pin| {
        let id = pin.id;
        let place = speaker.place(id);
        let on_go = Callback::from(move |_: MouseEvent| {
            browser::focus(KEPT);
        });
        let let_go = desk.on(move |_: MouseEvent| Action::LetGo(id));
        let onclick = Callback::from(move |event: MouseEvent| {
            let_go.emit(event.clone());
            on_go.emit(event);
        });
        html! {
            <li class="kept-line" key={id.key()}>
                <div class="kept-what">
                    { link(id, &place) }<span class="kept-value">{ speaker.kept_value(id) }</span>
                    <p class="kept-price">{ price(props, &speaker, pin) }</p>
                </div>
                <button type="button" class="button" {onclick} aria-label={text::let_go_of(&place)}>{ text::let_go() }</button>
                { waiting(props, pin) }
            </li>
        }
    };
    let pins = &props.keeping.pins;
    let keeping = props.keeping.clone();
    html! {
        <section class="kept" aria-labelledby={KEPT}>
            <h3 class="part-name" id={KEPT} tabindex="-1">{ GainKind::Kept.heading() }</h3>
            if pins.is_empty() {
                <p class="part part-quiet">{ text::nothing_kept() }</p>
            } else {
                <ul class="kept-list">{ pins.iter().map(line).collect::<Html>() }</ul>
            }
            <JobPins {keeping} open={props.open.clone()} />
        </section>
    }
}

/// The way to the entry.
fn link(id: FieldId, place: &str) -> Html {
    let element = element_id(id);
    let href = format!("#{element}");
    let onclick = Callback::from(move |event: MouseEvent| {
        event.prevent_default();
        browser::reveal(&element);
    });
    html! { <a {href} {onclick}>{ place }</a> }
}

/// The number of the step that carries the entry; nothing for a choice of the whole job.
fn step(props: &KeptProps, pin: &Pin) -> Option<u32> {
    let place = pin.id.row.and_then(Place::by_row)?;
    carrier(props.shown.as_ref(), place)
}

fn price(props: &KeptProps, speaker: &Speaker<'_>, pin: &Pin) -> Html {
    if pin.problem.is_some() {
        return html! { <><span class="mark" aria-hidden="true">{ text::MARK }</span>{ text::to_mend() }</> };
    }
    let told = match &props.shown {
        Some(shown) if !props.stale && !shown.stage.open() => speaker.price(pin.id, &shown.outcome),
        _ => text::price_comes().to_owned(),
    };
    let at = step(props, pin).map(text::at_step);
    let parts: Vec<String> = at.into_iter().chain([told]).collect();
    html! { parts.join("; ") }
}

/// The entry of a choice that no step carries.
fn waiting(props: &KeptProps, pin: &Pin) -> Html {
    let of_step = pin.id.field.spec().group == Group::StepPins;
    if !of_step || step(props, pin).is_some() {
        return html! {};
    }
    let (rack, units) = (props.keeping.rack.clone(), props.keeping.units);
    html! {
        <div class="kept-waits">
            if !props.stale { <p class="part-quiet">{ waits() }</p> }
            <PinEntry pin={pin.clone()} {rack} {units} />
        </div>
    }
}
