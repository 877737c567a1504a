//! The part as a technical drawing that is alive: made from its regions and heights, to scale, every size tied to its answer.

mod across;
mod bow;
mod cut;
mod cutting;
mod dimension;
mod frame;
mod layout;
mod mark;
mod moment;
mod pen;
mod place;
mod plan;
mod scale;
mod section;
mod sizes;
mod sketch;
#[cfg(test)]
mod tests;
mod tool;

pub(crate) use mark::{Letters, Mark, Stroke, draw};
pub(crate) use moment::{Moment, moment};
pub(crate) use pen::{Path, View, line, number};
pub(crate) use place::text_width;
pub(crate) use sketch::Sketch;

use crate::language::use_language;
use std::rc::Rc;
use thinwright_core::{FieldId, Job, Outcome, WebPicture};
use thinwright_words::drawing as words;
use yew::prelude::*;

#[derive(Clone, Properties)]
pub(crate) struct DrawingProps {
    pub(crate) job: Option<Rc<Job>>,
    pub(crate) lit: Option<FieldId>,
    pub(crate) on_light: Callback<Option<FieldId>>,
    /// The step in hand, counted from 0 over all setups.
    pub(crate) step: Option<usize>,
    pub(crate) outcome: Option<Rc<Outcome>>,
    /// The web in that step, once it has been looked at.
    pub(crate) web: Option<Rc<WebPicture>>,
}

impl PartialEq for DrawingProps {
    fn eq(&self, other: &DrawingProps) -> bool {
        same(&self.job, &other.job)
            && same(&self.outcome, &other.outcome)
            && same(&self.web, &other.web)
            && self.lit == other.lit
            && self.step == other.step
            && self.on_light == other.on_light
    }
}

fn same<T>(a: &Option<Rc<T>>, b: &Option<Rc<T>>) -> bool {
    match (a, b) {
        (Some(a), Some(b)) => Rc::ptr_eq(a, b),
        (None, None) => true,
        _ => false,
    }
}

/// The drawing.
#[component]
pub(crate) fn Drawing(props: &DrawingProps) -> Html {
    use_language();
    let Some(job) = &props.job else {
        return html! { <p class="drawing-none">{ words::no_part() }</p> };
    };
    let strategy = props.outcome.as_deref().and_then(|outcome| match outcome {
        Outcome::Feasible(strategy) => Some(strategy.as_ref()),
        Outcome::Refused(_) => None,
    });
    let moment = strategy
        .zip(props.step)
        .and_then(|(strategy, step)| moment(job, strategy, step))
        .map(|moment| Moment {
            web: props.web.clone(),
            ..moment
        });
    let picture = layout::picture(job, moment.as_ref());
    let marks = mark::draw(&picture.marks, props.lit, Some(&props.on_light));
    let view_box = format!("0 0 {} {}", number(frame::WIDTH), number(picture.height));
    html! {
        <figure class="drawing">
            <svg class="drawing-sheet" viewBox={view_box} role="group" aria-labelledby="drawing-title drawing-said"
                xmlns="http://www.w3.org/2000/svg">
                <title id="drawing-title">{ words::drawing_title(&job.name) }</title>
                <desc id="drawing-said">{ picture.said.clone() }</desc>
                <rect class="paper" x="0" y="0" width={number(frame::WIDTH)} height={number(picture.height)} />
                { marks }
            </svg>
        </figure>
    }
}
