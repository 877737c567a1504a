//! What changed since the last answer, above the strategy.

use super::changed::changed;
use crate::desk::use_desk;
use crate::state::Shown;
use crate::text;
use thinwright_quantity::UnitSystem;
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct ChangesProps {
    pub(crate) before: Shown,
    pub(crate) now: Shown,
    pub(crate) units: UnitSystem,
}

/// The changes.
#[component]
pub(crate) fn Changes(props: &ChangesProps) -> Html {
    let desk = use_desk();
    let changed = changed(&desk.catalog, &props.before, &props.now, props.units);
    if changed.is_empty() {
        return html! {};
    }
    let line = |(what, how): &(String, String)| html! { <div class="changed"><dt>{ what }</dt><dd>{ how }</dd></div> };
    html! {
        <section class="changes" aria-labelledby="changes-name">
            <h3 class="part-name" id="changes-name">{ text::changed() }</h3>
            <dl class="changes-list">{ changed.iter().map(line).collect::<Html>() }</dl>
        </section>
    }
}
