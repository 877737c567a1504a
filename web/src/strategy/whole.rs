//! The whole strategy as plain text: to keep, to send, to compare.

use crate::browser;
use crate::desk::use_desk;
use crate::state::{Action, Message, Shown};
use crate::text;
use thinwright_quantity::UnitSystem;
use thinwright_words::{Speaker, plain};
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct WholeProps {
    pub(crate) shown: Shown,
    pub(crate) units: UnitSystem,
}

/// The text, folded away.
#[component]
pub(crate) fn Whole(props: &WholeProps) -> Html {
    let desk = use_desk();
    let speaker = Speaker::new(props.units, &desk.catalog, &props.shown.answers);
    let whole = plain(&speaker, &props.shown.outcome);
    let copy = {
        let (desk, whole) = (desk.clone(), whole.clone());
        Callback::from(move |_: MouseEvent| {
            let told = desk.on(|done: bool| {
                Action::Tell(Message {
                    text: text::copied(done),
                    alarm: !done,
                })
            });
            browser::copy(&whole, told);
        })
    };
    html! {
        <details class="more whole">
            <summary class="more-name">{ text::whole() }</summary>
            <button type="button" class="button" onclick={copy} aria-label={text::copy_whole()}>{ text::copy() }</button>
            <pre class="block-text" tabindex="0">{ whole }</pre>
        </details>
    }
}
