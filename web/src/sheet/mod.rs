//! The sheet for the operator; only paper shows it.

use std::rc::Rc;
use thinwright_core::{Answers, Job, Outcome};
use yew::prelude::*;

/// What the sheet shows.
#[derive(Clone, PartialEq, Properties)]
pub(crate) struct SheetProps {
    pub(crate) job: Rc<Job>,
    pub(crate) outcome: Rc<Outcome>,
    pub(crate) answers: Rc<Answers>,
}

/// The sheet.
#[component]
pub(crate) fn Sheet(props: &SheetProps) -> Html {
    let _ = props;
    html! {}
}
