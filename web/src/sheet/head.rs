//! Head of the sheet: what is made, of what, on which machine, and which revision this is.

use super::Topic;
use crate::state::Stage;
use crate::text;
use thinwright_jobfile::digest;
use thinwright_words::language::tr;
use thinwright_words::{drawing, sheet as words};
use yew::prelude::*;

pub(super) fn head(topic: &Topic) -> Html {
    let job = topic.job;
    let material = format!("{}, {}", tr(&job.material.name), words::form(job.form));
    let units = drawing::unit_word(job.units).to_owned();
    let pairs = [
        (words::material(), material),
        (words::blank(), words::blank_size(&topic.speaker, job)),
        (words::machine(), tr(&job.machine.class.name).to_owned()),
        (words::units(), units),
        (words::time(), topic.speaker.summary(topic.strategy)),
        (words::revision(), digest(topic.answers)),
        (words::printed(), String::new()),
    ];
    let name = if job.name.trim().is_empty() {
        words::no_name()
    } else {
        job.name.trim()
    };
    html! {
        <header class="sheet-head">
            <h1 class="sheet-name">{ name.to_owned() }<span class="sheet-kind">{ words::heading() }</span></h1>
            <dl class="sheet-facts">
                { for pairs.into_iter().map(|(label, value)| html! {
                    <div class={classes!("sheet-fact", value.is_empty().then_some("sheet-write"))}>
                        <dt>{ label }</dt><dd>{ value }</dd>
                    </div>
                }) }
            </dl>
            <p class="sheet-notice">
                { words::not_a_program() }
                if topic.stage == Stage::Stopped { { " " }{ text::stopped() } }
            </p>
        </header>
    }
}
