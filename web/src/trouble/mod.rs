//! When it goes wrong: signs are told, likely causes shown with what to change first, and what came of it asked.

mod after;
mod asked;
mod remedy;
mod suspects;
mod told;

use crate::browser;
use crate::desk::use_desk;
use crate::keep::place_of;
use crate::map::steps;
use crate::select::{Entries, Select};
use crate::state::{Action, Shown};
use after::{After, QUESTION, tried};
use asked::Asked;
use remedy::Books;
use std::rc::Rc;
use suspects::Suspects;
use thinwright_core::Outcome;
use thinwright_core::pin::Place;
use thinwright_core::strategy::{Step, Strategy};
use thinwright_core::trouble::{Sign, rank};
use thinwright_quantity::UnitSystem;
use thinwright_words::Speaker;
use thinwright_words::trouble as words;
use told::{Stage, Told, Tried};
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct TroubleProps {
    pub(crate) shown: Shown,
    /// The step in hand, counted from 0 over all setups.
    pub(crate) step: Option<usize>,
    pub(crate) units: UnitSystem,
    /// What is shown belongs to other answers.
    pub(crate) stale: bool,
    /// Signs that readings add, each with how sure it is.
    #[prop_or_default]
    pub(crate) read: Rc<Vec<(Sign, f64)>>,
    /// A tone of chatter that the ear hands over, Hz, and the step that it was heard in.
    #[prop_or_default]
    pub(crate) squeal: Option<(usize, f64)>,
}

/// A way to the panel from a step.
pub(crate) fn way_to_trouble() -> Html {
    let onclick = Callback::from(|_: MouseEvent| {
        browser::reveal("trouble-stop");
    });
    html! { <button type="button" class="button trouble-way" {onclick}>{ words::name() }</button> }
}

/// Every step, with its place.
fn placed(strategy: &Strategy) -> impl Iterator<Item = (Place, &Step)> {
    strategy.setups.iter().flat_map(|setup| {
        let place = |step: &Step| place_of(setup.face_up, step.task);
        setup.steps.iter().map(move |step| (place(step), step))
    })
}

/// A step, where it stands.
fn step_at(strategy: &Strategy, index: usize) -> Option<(Place, &Step)> {
    placed(strategy).nth(index)
}

/// The step that was talked of.
fn talk(strategy: &Strategy, told: &Told) -> Option<usize> {
    placed(strategy).position(|(place, _)| told.place == Some(place))
}

/// Takes in a tone that is handed over: a squeal in its step.
#[hook]
fn use_squeal(props: &TroubleProps, all: &UseStateHandle<Told>) {
    let (all, shown) = (all.clone(), props.shown.clone());
    use_effect_with(props.squeal, move |squeal| {
        let Outcome::Feasible(strategy) = &*shown.outcome else {
            return;
        };
        let place = |(at, tone): (usize, f64)| Some((step_at(strategy, at)?.0, tone));
        if let Some((place, tone)) = squeal.and_then(place) {
            let mut told = all.of(place);
            if !told.signs.contains(&Sign::Squeal) {
                told = told.turned(Sign::Squeal);
            }
            told.tone = thinwright_words::hear::typed(tone);
            all.set(told);
        }
    });
}

/// The panel.
#[component]
pub(crate) fn Trouble(props: &TroubleProps) -> Html {
    let desk = use_desk();
    let all = use_state(Told::default);
    let books = use_memo((), |()| Books::default());
    use_squeal(props, &all);
    let on_tell = {
        let all = all.setter();
        Callback::from(move |told: Told| all.set(told))
    };
    let Outcome::Feasible(strategy) = &*props.shown.outcome else {
        return refused(&all, props.units, on_tell);
    };
    let index = props.step.or_else(|| talk(strategy, &all)).unwrap_or(0);
    let Some((place, step)) = step_at(strategy, index) else {
        return html! {};
    };
    let told = all.of(place);
    let on_try = {
        let (told, on_tell) = (told.clone(), on_tell.clone());
        Callback::from(move |made: Tried| {
            let stage = Stage::Made(made);
            on_tell.emit(Told {
                stage,
                ..told.clone()
            });
            browser::focus(QUESTION);
        })
    };
    let speaker = Speaker::new(props.units, &desk.catalog, &props.shown.answers);
    let hurt = told.signs.iter().any(|sign| sign.hurts());
    let choose = desk.on(|key: String| Action::OpenStep(key.parse().ok()));
    let body = match &told.stage {
        Stage::Made(made) => {
            html! { <After told={told.clone()} tried={made.clone()} units={props.units} on_tell={on_tell.clone()} /> }
        }
        Stage::Gone => html! {},
        Stage::Asking => html! {
            <>
                <Asked told={told.clone()} answers={props.shown.answers.clone()} on_tell={on_tell.clone()} />
                { causes(props, (step, index), (&told, (*books).clone()), on_try) }
            </>
        },
    };
    html! {
        <details class="hear trouble" id="trouble">
            <summary class="more-name hear-name" id="trouble-name">{ words::name() }</summary>
            <div class="hear-inside">
                <p class="trouble-stop" id="trouble-stop" tabindex="-1">{ words::stop_first() }</p>
                if hurt { <p class="trouble-stop" role="alert">{ words::make_safe() }</p> }
                <label class="field-label" for="trouble-step">{ words::which_step() }</label>
                <Select id={AttrValue::from("trouble-step")} entries={entries(&speaker, strategy)} chosen={AttrValue::from(index.to_string())}
                    on_choose={choose} />
                { body }
                { tried(&told, &on_tell) }
            </div>
        </details>
    }
}

/// A change after which there is no way any more: what happened is asked all the same, and it can be taken back.
fn refused(told: &Told, units: UnitSystem, on_tell: Callback<Told>) -> Html {
    let Stage::Made(made) = &told.stage else {
        return html! {};
    };
    html! {
        <section class="trouble hear-inside" aria-label={words::name()}>
            <After told={told.clone()} tried={made.clone()} {units} {on_tell} />
        </section>
    }
}

fn entries(speaker: &Speaker<'_>, strategy: &Strategy) -> Entries {
    let entry = |(at, step): (usize, &Step)| {
        let name = words::numbered(step.number, &speaker.step(step));
        (AttrValue::from(at.to_string()), AttrValue::from(name))
    };
    vec![("".into(), steps(strategy).enumerate().map(entry).collect())]
}

/// The likely causes, or what is missing for them.
fn causes(
    props: &TroubleProps,
    (step, index): (&Step, usize),
    (told, books): (&Told, Books),
    on_try: Callback<Tried>,
) -> Html {
    let said = told.said(&props.shown.answers, &props.read);
    if said.signs.is_empty() {
        return html! { <p class="part" role="status">{ words::tell() }</p> };
    }
    if props.stale || !props.shown.stage.stands() {
        return html! { <p class="part" role="status">{ words::waits() }</p> };
    }
    let suspects = rank(&props.shown.job, step, &said);
    html! {
        <>
            <h3 class="part-name">{ words::causes() }</h3>
            <p class="part part-quiet">{ words::ranked() }</p>
            <Suspects
                shown={props.shown.clone()} {index} step={step.clone()} {suspects} told={told.clone()} units={props.units}
                {books} {on_try}
            />
        </>
    }
}
