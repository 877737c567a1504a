//! What belongs to the strategy as a whole: cautions, what is worth measuring, what was assumed.

use super::detail::titled;
use super::gains::Gains;
use crate::desk::use_desk;
use crate::state::Shown;
use crate::text;
use thinwright_core::Outcome;
use thinwright_quantity::UnitSystem;
use thinwright_words::{Speaker, cautions_heading};
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct NotesProps {
    pub(crate) shown: Shown,
    pub(crate) units: UnitSystem,
}

/// The notes.
#[component]
pub(crate) fn Notes(props: &NotesProps) -> Html {
    let desk = use_desk();
    let Outcome::Feasible(strategy) = &*props.shown.outcome else {
        return html! {};
    };
    let speaker = Speaker::new(props.units, &desk.catalog, &props.shown.answers);
    let cautions: Vec<String> = strategy
        .cautions
        .iter()
        .map(|id| speaker.caution(id).to_owned())
        .collect();
    let defaults = speaker.defaults(strategy);
    let unknown = strategy.web_error.iter().map(|e| speaker.web_unknown(e));
    let unknown: Vec<String> = unknown.collect();
    html! {
        <section class="notes">
            { titled("h3", text::web_unknown(), &unknown) }
            <Gains shown={props.shown.clone()} units={props.units} />
            { titled("h3", cautions_heading(), &cautions) }
            if !defaults.is_empty() {
                <details class="more">
                    <summary class="more-name">{ text::assumed(defaults.len()) }</summary>
                    <ul class="part part-list">{ for defaults.iter().map(|d| html! { <li>{ d }</li> }) }</ul>
                </details>
            }
        </section>
    }
}
