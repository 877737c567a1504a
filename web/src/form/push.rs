//! The push test: its questions folded by themselves, and under them what it gave.

use super::Questions;
use super::group::{boxes, count_of};
use crate::desk::use_desk;
use crate::text;
use thinwright_core::field::{FIELDS, FieldSpec, Group};
use thinwright_words::{Speaker, stability as words};
use yew::prelude::*;

/// Whether a question belongs to the push test.
pub(super) fn is_push(spec: &FieldSpec) -> bool {
    spec.group == Group::Machine && spec.key.starts_with("push.")
}

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct PushProps {
    pub(crate) questions: Questions,
}

/// The push test.
#[component]
pub(crate) fn PushTest(props: &PushProps) -> Html {
    let desk = use_desk();
    let questions = &props.questions;
    let speaker = Speaker::new(questions.answers.units, &desk.catalog, &questions.answers);
    let specs: Vec<&FieldSpec> = FIELDS.iter().filter(|s| is_push(s)).collect();
    let (answered, wrong) = count_of(questions, &specs, None);
    let gave = questions.push.map(|push| speaker.push(&push));
    html! {
        <details class="more push-test">
            <summary class="more-name">
                <span>{ text::with_answered(words::push(), answered) }</span>
                if wrong > 0 { <span class="flag">{ text::so_many_to_mend(wrong) }</span> }
            </summary>
            <div class="fields">{ boxes(questions, &specs, None) }</div>
            <div class="push-gave" role="status">
                { for gave.into_iter().flatten().map(|line| html! { <p>{ line }</p> }) }
            </div>
        </details>
    }
}
