//! A group of questions: the few that are asked first, the others folded away.

use super::Questions;
use super::field::{FieldBox, FieldProps};
use super::push::{PushTest, is_push};
use super::shown::shown;
use crate::language::use_language;
use crate::shop::ToShop;
use crate::text;
use thinwright_core::FieldId;
use thinwright_core::field::{FIELDS, FieldSpec, Group};
use thinwright_jobfile::shop::Kind;
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct GroupProps {
    pub(crate) group: Group,
    pub(crate) questions: Questions,
}

/// A group of questions.
#[component]
pub(crate) fn GroupBox(props: &GroupProps) -> Html {
    use_language();
    let questions = &props.questions;
    let asked = |first: bool| {
        let of_group = FIELDS
            .iter()
            .filter(move |s| s.group == props.group && s.asked_first == first && !is_push(s));
        of_group
            .filter(|s| shown(&questions.answers, s.field.into()))
            .collect::<Vec<_>>()
    };
    let (first, more) = (asked(true), asked(false));
    html! {
        <fieldset class="group" id={text::anchor(props.group)}>
            <legend class="group-name">{ thinwright_words::group(props.group) }</legend>
            if let Some(kind) = own_kind(props.group) { <ToShop {kind} /> }
            <div class="fields">{ boxes(questions, &first, None) }</div>
            { folded(questions, &more, None) }
            if props.group == Group::Machine { <PushTest questions={questions.clone()} /> }
        </fieldset>
    }
}

/// What of the shop stands for a group.
fn own_kind(group: Group) -> Option<Kind> {
    match group {
        Group::Material => Some(Kind::Material),
        Group::Machine => Some(Kind::Machine),
        Group::Cutters => Some(Kind::Rack),
        Group::Holding => Some(Kind::Holding),
        Group::Part | Group::Learned | Group::Pins | Group::StepPins => None,
    }
}

/// The questions of some fields, for a cutter in its row.
pub(super) fn boxes(questions: &Questions, specs: &[&FieldSpec], row: Option<u8>) -> Html {
    let each = specs.iter().map(|spec| {
        let field = FieldProps::of(
            questions,
            FieldId {
                field: spec.field,
                row,
            },
        );
        html! { <FieldBox key={spec.key} ..field /> }
    });
    each.collect()
}

/// The questions that have defaults that serve.
pub(super) fn folded(questions: &Questions, specs: &[&FieldSpec], row: Option<u8>) -> Html {
    if specs.is_empty() {
        return html! {};
    }
    let (answered, wrong) = count_of(questions, specs, row);
    html! {
        <details class="more">
            <summary class="more-name">
                <span>{ text::more(specs.len(), answered) }</span>
                if wrong > 0 { <span class="flag">{ text::so_many_to_mend(wrong) }</span> }
            </summary>
            <div class="fields">{ boxes(questions, specs, row) }</div>
        </details>
    }
}

/// How many of some questions are answered, and how many answers are to mend.
pub(super) fn count_of(
    questions: &Questions,
    specs: &[&FieldSpec],
    row: Option<u8>,
) -> (usize, usize) {
    let ids = || {
        specs.iter().map(|s| FieldId {
            field: s.field,
            row,
        })
    };
    let answered = ids().filter(|id| !questions.answers.text(*id).trim().is_empty());
    let wrong = ids().filter(|id| questions.problems.contains_key(id));
    (answered.count(), wrong.count())
}
