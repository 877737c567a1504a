//! The likely causes, the likeliest open: what speaks for each and against it, what decides, what to change first.

use super::remedy::{Books, Remedy};
use super::told::{Told, Tried};
use crate::desk::use_desk;
use crate::state::Shown;
use thinwright_core::strategy::Step;
use thinwright_core::trouble::{Cause, Suspect};
use thinwright_quantity::UnitSystem;
use thinwright_words::Speaker;
use thinwright_words::trouble as words;
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(super) struct SuspectsProps {
    pub(super) shown: Shown,
    /// The step, counted from 0 over all setups.
    pub(super) index: usize,
    pub(super) step: Step,
    pub(super) suspects: Vec<Suspect>,
    pub(super) told: Told,
    pub(super) units: UnitSystem,
    pub(super) books: Books,
    pub(super) on_try: Callback<Tried>,
}

/// The list.
#[component]
pub(super) fn Suspects(props: &SuspectsProps) -> Html {
    let desk = use_desk();
    // The likeliest, until the person opens or shuts one.
    let chosen = use_state(|| None::<(Cause, bool)>);
    let first = props.suspects.first().map(|s| s.cause);
    let open = match *chosen {
        Some((cause, open)) => open.then_some(cause),
        None => first,
    };
    let speaker = Speaker::new(props.units, &desk.catalog, &props.shown.answers);
    let one = |suspect: &Suspect| {
        let cause = suspect.cause;
        let is_open = open == Some(cause);
        let chosen = chosen.clone();
        let onclick = Callback::from(move |_: MouseEvent| chosen.set(Some((cause, !is_open))));
        let inside = format!("trouble-cause-{}", cause.key());
        html! {
            <li class={classes!("suspect", is_open.then_some("suspect-open"))} key={cause.key()}>
                <h4 class="suspect-head">
                    <button type="button" class="step-button" aria-expanded={is_open.to_string()} aria-controls={inside.clone()} {onclick}>
                        <span class="step-title">{ words::cause_name(cause) }</span>
                        <span class="step-time">{ speaker.share(suspect) }</span>
                        <span class="suspect-sign" aria-hidden="true"></span>
                    </button>
                </h4>
                <div id={inside}>
                    if is_open { { told(props, &speaker, suspect) } }
                </div>
            </li>
        }
    };
    html! { <ol class="suspects">{ for props.suspects.iter().map(one) }</ol> }
}

fn told(props: &SuspectsProps, speaker: &Speaker<'_>, suspect: &Suspect) -> Html {
    let clues = |speaks_for: bool| {
        let all = suspect
            .clues
            .iter()
            .filter(|clue| clue.speaks_for == speaks_for);
        let lines: Vec<String> = all.map(|clue| speaker.clue(clue, &props.step)).collect();
        lines
    };
    html! {
        <div class="suspect-inside">
            <p class="part">{ words::cause_what(suspect.cause) }</p>
            { lines(words::speaks_for(), clues(true)) }
            { lines(words::speaks_against(), clues(false)) }
            { lines(words::decides(), vec![speaker.decides(suspect.cause, &props.step)]) }
            <Remedy
                shown={props.shown.clone()} index={props.index} against={props.told.against(suspect.cause, &props.shown.answers)}
                told={props.told.clone()} units={props.units} books={props.books.clone()} on_try={props.on_try.clone()}
            />
        </div>
    }
}

/// A heading and its lines; nothing without lines.
pub(super) fn lines(heading: &'static str, lines: Vec<String>) -> Html {
    if lines.is_empty() {
        return html! {};
    }
    html! {
        <>
            <h5 class="part-name">{ heading }</h5>
            <ul class="part part-list">{ for lines.into_iter().map(|line| html! { <li>{ line }</li> }) }</ul>
        </>
    }
}
