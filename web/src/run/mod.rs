//! What was run: a form for the step at hand, readings, the history, and what the machine has taught.

mod draft;
mod form;
mod history;
mod read;
mod readings;
mod taught;

pub(crate) use history::outcome_of;

use crate::desk::use_desk;
use crate::state::{Shown, State};
use draft::{Books, Draft};
use form::Form;
use history::History;
use readings::Readings;
use std::collections::BTreeMap;
use std::rc::Rc;
use taught::TaughtView;
use thinwright_core::strategy::Strategy;
use thinwright_core::{Answers, FieldId, Job, Outcome};
use thinwright_jobfile::Record;
use thinwright_words::Speaker;
use thinwright_words::run as words;
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct RanProps {
    /// A checked strategy for the answers that stand there, with its job.
    pub(crate) at: Option<(Shown, JobInHand)>,
    /// The step that is open, from 0 over all setups.
    pub(crate) step: Option<usize>,
    pub(crate) answers: Rc<Answers>,
    pub(crate) records: Rc<Vec<Record>>,
    /// What is wrong with what was learned.
    pub(crate) problems: Vec<(FieldId, AttrValue)>,
}

/// A job, the same as long as it is the same one.
#[derive(Clone)]
pub(crate) struct JobInHand(Rc<Job>);

impl PartialEq for JobInHand {
    fn eq(&self, other: &JobInHand) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}

impl RanProps {
    pub(crate) fn of(state: &State, problems: &BTreeMap<FieldId, AttrValue>) -> RanProps {
        let job = state.job.clone().map(JobInHand);
        let group = thinwright_core::field::Group::Learned;
        let of_learned = problems
            .iter()
            .filter(|(id, _)| id.field.spec().group == group);
        RanProps {
            at: state.printable().cloned().zip(job),
            step: state.step,
            answers: state.answers.clone(),
            records: state.records.clone(),
            problems: of_learned.map(|(id, text)| (*id, text.clone())).collect(),
        }
    }

    fn strategy(&self) -> Option<(&Job, &Strategy)> {
        let (shown, job) = self.at.as_ref()?;
        match &*shown.outcome {
            Outcome::Feasible(strategy) => Some((&job.0, strategy)),
            Outcome::Refused(_) => None,
        }
    }

    fn speaker<'a>(&'a self, catalog: &'a thinwright_catalog::Catalog) -> Speaker<'a> {
        Speaker::new(self.answers.units, catalog, &self.answers)
    }
}

/// What the parts of the section have in common.
#[derive(Clone, PartialEq, Properties)]
struct PartProps {
    ran: RanProps,
    draft: Draft,
    books: Books,
    on_draft: Callback<Draft>,
}

/// The section.
#[component]
pub(crate) fn Ran(props: &RanProps) -> Html {
    use_desk();
    let draft = use_state(Draft::default);
    let books = (*use_memo((), |()| Books::default())).clone();
    let on_draft = {
        let draft = draft.setter();
        Callback::from(move |new: Draft| draft.set(new))
    };
    let part = PartProps {
        ran: props.clone(),
        draft: (*draft).clone(),
        books,
        on_draft,
    };
    html! {
        <details class="hear ran" id="ran">
            <summary class="more-name hear-name" id="ran-name">{ words::section() }</summary>
            <div class="hear-inside">
                <p>{ words::why() }</p>
                if props.at.is_some() {
                    <Form ..part.clone() />
                    <Readings ..part />
                } else {
                    <p class="part" role="status">{ words::no_strategy() }</p>
                }
                <TaughtView ran={props.clone()} />
                <History ran={props.clone()} />
            </div>
        </details>
    }
}

/// A way to the section from a step.
pub(crate) fn way_to_run() -> Html {
    let onclick = Callback::from(|_: MouseEvent| {
        crate::browser::reveal("ran-how");
    });
    html! { <button type="button" class="button trouble-way" {onclick}>{ words::section() }</button> }
}
