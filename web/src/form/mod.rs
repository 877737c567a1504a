//! The questionnaire: made from the field table, with what was typed kept as it stands.

mod control;
mod cutter;
mod field;
mod group;
mod push;
mod rack;
mod shown;
mod summary;

pub(crate) use summary::SUMMARY;

use crate::desk::use_desk;
use crate::state::State;
use group::GroupBox;
use rack::Rack;
use std::collections::BTreeMap;
use std::rc::Rc;
use summary::Summary;
use thinwright_core::field::{GROUPS, Group};
use thinwright_core::job::Push;
use thinwright_core::{Answers, FieldId};
use thinwright_words::Speaker;
use yew::prelude::*;

/// All that the questionnaire shows.
#[derive(Clone, PartialEq)]
pub(crate) struct Questions {
    pub(crate) answers: Rc<Answers>,
    /// What is wrong, in words, by place.
    pub(crate) problems: Rc<BTreeMap<FieldId, AttrValue>>,
    /// What the tables gave, by place.
    pub(crate) defaults: Rc<BTreeMap<FieldId, String>>,
    pub(crate) lit: Option<FieldId>,
    /// What the push test gave, as long as all answers can be read.
    pub(crate) push: Option<Push>,
}

impl Questions {
    pub(crate) fn of(state: &State) -> Questions {
        let speaker = Speaker::new(state.answers.units, &state.catalog, &state.answers);
        let job = state.job.as_ref().filter(|_| state.problems.is_empty());
        let mut problems = BTreeMap::new();
        for problem in state.problems.iter() {
            problems
                .entry(problem.field)
                .or_insert_with(|| speaker.problem(problem).into());
        }
        Questions {
            answers: state.answers.clone(),
            problems: Rc::new(problems),
            defaults: state.defaults.clone(),
            lit: state.lit,
            push: job.and_then(|job| job.machine.push),
        }
    }

    /// What is wrong at a place.
    fn problem(&self, id: FieldId) -> Option<AttrValue> {
        self.problems.get(&id).cloned()
    }
}

/// The name of a field's element: its key with hyphens.
pub(crate) fn element_id(id: FieldId) -> String {
    format!("f-{}", id.key().replace('.', "-"))
}

#[derive(PartialEq, Properties)]
pub(crate) struct FormProps {
    pub(crate) questions: Questions,
}

/// The questionnaire.
#[component]
pub(crate) fn Form(props: &FormProps) -> Html {
    let desk = use_desk();
    let questions = &props.questions;
    // Nothing is sent anywhere: every key stroke is an answer already.
    let onsubmit = Callback::from(|event: SubmitEvent| event.prevent_default());
    let groups = GROUPS.iter().map(|group| match group {
        Group::Cutters => html! { <Rack key="cutters" questions={questions.clone()} /> },
        group => html! { <GroupBox key={thinwright_words::group(*group)} group={*group} questions={questions.clone()} /> },
    });
    let speaker = Speaker::new(questions.answers.units, &desk.catalog, &questions.answers);
    let listed = questions
        .problems
        .iter()
        .map(|(id, text)| (*id, speaker.place(*id), text.clone()));
    html! {
        <form class="form" {onsubmit} autocomplete="off" novalidate=true>
            if !questions.problems.is_empty() {
                <Summary problems={listed.collect::<Vec<_>>()} />
            }
            { groups.collect::<Html>() }
        </form>
    }
}
