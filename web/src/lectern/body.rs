//! What stands on a page: sentences, boxes to tick, values.

use super::leaf::Tick;
use crate::text::{self as page, lectern as text};
use std::collections::BTreeSet;
use thinwright_words::TypedValue;
use thinwright_words::lectern::{About, Line};
use yew::prelude::*;

/// Sentences, each with the mark of what it is about.
pub(super) fn lines(lines: &[Line]) -> Html {
    let line = |line: &Line| {
        let (class, sign, name) = match line.about {
            About::Caution => ("lectern-caution", page::MARK, text::caution()),
            About::Stop => ("lectern-stop", "\u{25A0}", text::stop()),
            About::Cutter => ("lectern-cutter", "\u{2193}", ""),
            About::Plain => ("lectern-plain", "", ""),
        };
        html! {
            <li class={classes!("lectern-line", class)}>
                <span class="lectern-sign" aria-hidden="true">{ sign }</span>
                <span>
                    if !name.is_empty() { <span class="away">{ format!("{name}: ") }</span> }
                    { line.text.clone() }
                </span>
            </li>
        }
    };
    html! { <ul class="lectern-lines">{ for lines.iter().map(line) }</ul> }
}

/// Boxes to tick.
pub(super) fn boxes(
    items: &[(Tick, String)],
    ticks: &BTreeSet<Tick>,
    on_tick: &Callback<Tick>,
) -> Html {
    let item = |(tick, text): &(Tick, String)| {
        let tick = *tick;
        let onchange = on_tick.reform(move |_: Event| tick);
        let checked = ticks.contains(&tick);
        html! {
            <li>
                <label class="lectern-tick">
                    <input type="checkbox" {checked} {onchange} />
                    <span>{ text.clone() }</span>
                </label>
            </li>
        }
    };
    html! { <ul class="lectern-lines">{ for items.iter().map(item) }</ul> }
}

/// Values with their names.
pub(super) fn values(items: &[TypedValue]) -> Html {
    let item = |value: &TypedValue| {
        html! {
            <div class="lectern-value">
                <dt>{ value.label }if !value.symbol.is_empty() { <i class="symbol">{ value.symbol }</i> }</dt>
                <dd>{ value.value.clone() }</dd>
            </div>
        }
    };
    html! { <dl class="lectern-values">{ for items.iter().map(item) }</dl> }
}
