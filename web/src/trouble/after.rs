//! After a change: what happened, before anything else is changed; and what was tried so far.

use super::told::{Done, Stage, Told, Tried};
use crate::desk::use_desk;
use crate::state::Action;
use thinwright_quantity::UnitSystem;
use thinwright_words::trouble as words;
use yew::prelude::*;

/// The heading of the question.
pub(super) const QUESTION: &str = "trouble-after";

#[derive(Clone, PartialEq, Properties)]
pub(super) struct AfterProps {
    pub(super) told: Told,
    pub(super) tried: Tried,
    pub(super) units: UnitSystem,
    pub(super) on_tell: Callback<Told>,
}

/// The question.
#[component]
pub(super) fn After(props: &AfterProps) -> Html {
    let desk = use_desk();
    let answer = |name: &'static str, better: bool, gone: bool| {
        let (told, on_tell) = (props.told.clone(), props.on_tell.clone());
        let onclick =
            Callback::from(move |_: MouseEvent| on_tell.emit(told.clone().answered(better, gone)));
        html! { <button type="button" class="button trouble-button" {onclick}>{ name }</button> }
    };
    let take_back = (!props.tried.fields.is_empty()).then(|| {
        let (told, on_tell) = (props.told.clone(), props.on_tell.clone());
        let before = props.tried.back(props.units);
        let onclick = Callback::from(move |_: MouseEvent| {
            desk.say(Action::Keep(before.clone()));
            on_tell.emit(told.clone().answered(false, false));
        });
        html! { <button type="button" class="button trouble-button" {onclick}>{ words::take_back() }</button> }
    });
    html! {
        <div class="trouble-after">
            <h3 class="part-name" id={QUESTION} tabindex="-1">{ words::what_happened() }</h3>
            <p class="part">{ done(&props.tried) }</p>
            <div class="buttons">
                { answer(words::gone(), true, true) }
                { answer(words::better(), true, false) }
                { answer(words::no_better(), false, false) }
                { take_back }
            </div>
        </div>
    }
}

/// What was done.
pub(super) fn done(tried: &Tried) -> String {
    let what = match tried.done {
        Done::Act(act) => words::act_name(act),
        Done::Move(step) => words::move_name(step),
    };
    words::against(words::cause_name(tried.cause), what)
}

/// What was tried so far, and that it is gone.
pub(super) fn tried(told: &Told, on_tell: &Callback<Told>) -> Html {
    let line = |(tried, better): &(Tried, bool)| {
        let came = if *better {
            words::better()
        } else {
            words::no_better()
        };
        html! { <li>{ words::came_of(&done(tried), came) }</li> }
    };
    let gone = told.stage == Stage::Gone;
    let anew = {
        let (place, on_tell) = (told.place, on_tell.clone());
        Callback::from(move |_: MouseEvent| {
            on_tell.emit(Told {
                place,
                ..Told::default()
            });
        })
    };
    html! {
        <>
            if gone { <p class="part trouble-change" role="status">{ words::found() }</p> }
            if !told.tried.is_empty() {
                <h3 class="part-name">{ words::tried() }</h3>
                <ul class="part part-list">{ for told.tried.iter().map(line) }</ul>
                <button type="button" class="button trouble-button" onclick={anew}>{ words::anew() }</button>
            }
        </>
    }
}
