//! Head of the sheet: what is made, of what, on which machine, which revision this is, and what was assumed.

use super::{Topic, code};
use crate::confirm;
use crate::state::Stage;
use crate::text;
use thinwright_jobfile::{ENGINE, digest};
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
        (
            words::revision(),
            format!("{}, {ENGINE}", digest(topic.answers)),
        ),
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
            <div class="sheet-head-beside">
                <div class="sheet-head-facts">
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
                    { assumed(topic) }
                </div>
                { code::code_cell(topic) }
            </div>
            { confirm::on_paper(&topic.open) }
        </header>
    }
}

/// What the tables gave where nothing was answered.
fn assumed(topic: &Topic) -> Html {
    let defaults = topic.speaker.defaults(topic.strategy);
    if defaults.is_empty() {
        return html! {};
    }
    html! {
        <section class="sheet-assumed">
            <h3>{ words::assumed() }</h3>
            <p>{ words::joined(&defaults) }</p>
        </section>
    }
}
