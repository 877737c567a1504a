//! The live drawing of the part.

use std::rc::Rc;
use thinwright_core::{FieldId, Job, Outcome};
use yew::prelude::*;

/// What the drawing shows.
#[derive(Clone, PartialEq, Properties)]
pub(crate) struct DrawingProps {
    pub(crate) job: Option<Rc<Job>>,
    pub(crate) lit: Option<FieldId>,
    pub(crate) on_light: Callback<Option<FieldId>>,
    /// The step that is open, from 0 over all setups.
    pub(crate) step: Option<usize>,
    pub(crate) outcome: Option<Rc<Outcome>>,
}

/// The drawing.
#[component]
pub(crate) fn Drawing(props: &DrawingProps) -> Html {
    let _ = props;
    html! {}
}
