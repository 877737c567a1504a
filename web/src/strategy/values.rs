//! The values of a step as blocks to copy, in millimetres and in inches.

use super::step::step_of;
use crate::browser;
use crate::desk::use_desk;
use crate::state::{Action, Message, Shown};
use crate::text;
use thinwright_quantity::UnitSystem;
use thinwright_words::Speaker;
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct ValuesProps {
    pub(crate) shown: Shown,
    pub(crate) setup: usize,
    pub(crate) at: usize,
}

/// Both blocks, the one that was checked as typed first.
#[component]
pub(crate) fn Values(props: &ValuesProps) -> Html {
    let desk = use_desk();
    let Some(step) = step_of(&props.shown, props.setup, props.at) else {
        return html! {};
    };
    let own = props.shown.answers.units;
    let other = match own {
        UnitSystem::Metric => UnitSystem::Inch,
        UnitSystem::Inch => UnitSystem::Metric,
    };
    let block = |units: UnitSystem| {
        let speaker = Speaker::new(units, &desk.catalog, &props.shown.answers);
        // A path program takes plain blanks only, and none inside a number.
        let block = format!("{}\n{}", speaker.step(step), speaker.block_to_copy(step))
            .replace('\u{202F}', "")
            .replace('\u{A0}', " ");
        let copy = {
            let (desk, block) = (desk.clone(), block.clone());
            Callback::from(move |_: MouseEvent| {
                let told = desk.on(|done: bool| {
                    Action::Tell(Message {
                        text: text::copied(done),
                        alarm: !done,
                    })
                });
                browser::copy(&block, told);
            })
        };
        html! {
            <div class="block">
                <div class="block-head">
                    <h5 class="part-name">{ text::block_name(units, own) }</h5>
                    <button type="button" class="button" onclick={copy} aria-label={text::copy_block(units, step.number)}>
                        { text::copy() }
                    </button>
                </div>
                <pre class="block-text" tabindex="0">{ block }</pre>
            </div>
        }
    };
    html! { <div class="blocks">{ block(own) }{ block(other) }</div> }
}
