//! The page of a step's numbers: what is cut with what, the numbers, and what the knobs make of them.

use super::body::lines;
use super::knobs::{Knobs, KnobsView};
use super::leaf::step;
use super::numbers::Numbers;
use super::turned::Turned;
use crate::desk::use_desk;
use crate::state::Shown;
use crate::text::{self as page, lectern as text};
use thinwright_quantity::UnitSystem;
use thinwright_words::Speaker;
use thinwright_words::lectern::{About, Line};
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct RunProps {
    pub(crate) shown: Shown,
    pub(crate) setup: usize,
    /// From 0 over all setups.
    pub(crate) at: usize,
    pub(crate) units: UnitSystem,
    pub(crate) knobs: Knobs,
    pub(crate) on_turn: Callback<Knobs>,
    /// What the knobs make of the step.
    pub(crate) turned: Option<Turned>,
    /// The knobs are open, in place of the numbers.
    pub(crate) open: bool,
    pub(crate) on_open: Callback<MouseEvent>,
    /// How many of the checks of this setup are ticked, of how many.
    pub(crate) ticked: (usize, usize),
}

/// The numbers of a step, or the knobs.
#[component]
pub(crate) fn Run(props: &RunProps) -> Html {
    let desk = use_desk();
    let Some(step) = step(&props.shown, props.at) else {
        return html! {};
    };
    let speaker = Speaker::new(props.units, &desk.catalog, &props.shown.answers);
    let said = props
        .turned
        .as_ref()
        .map_or_else(Vec::new, |turned| match turned {
            (_, None) => vec![plain(text::checking())],
            (values, Some(again)) => speaker.with_knobs(step, *values, again.as_ref()),
        });
    if props.open {
        return html! { <KnobsView knobs={props.knobs} on_turn={props.on_turn.clone()} {said} /> };
    }
    let (done, of) = props.ticked;
    let worst = said.iter().find(|line| line.about == About::Caution);
    html! {
        <>
            <Numbers shown={props.shown.clone()} setup={props.setup} at={props.at} units={props.units} />
            <div class="lectern-foot">
                <button type="button" class="button lectern-knobs" onclick={props.on_open.clone()}>{ text::knobs() }</button>
                <div class="lectern-notes">
                    <p class="lectern-note lectern-with">{ speaker.cutter_and_levels(step) }</p>
                    if done < of {
                        <p class="lectern-note"><span class="mark" aria-hidden="true">{ page::MARK }</span>{ text::ticked(done, of) }</p>
                    }
                    if let Some((values, _)) = &props.turned {
                        <p class="lectern-note lectern-own">{ speaker.knobs_at(props.knobs.feed, props.knobs.speed, *values) }</p>
                        { lines(&worst.cloned().into_iter().collect::<Vec<_>>()) }
                    } else {
                        <p class="lectern-note">{ text::hands_off() }</p>
                    }
                </div>
            </div>
        </>
    }
}

fn plain(text: &str) -> Line {
    Line {
        about: About::Plain,
        text: text.to_owned(),
    }
}
