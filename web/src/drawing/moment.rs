//! The part before and after a step, from the strategy's own heights.

use std::rc::Rc;
use thinwright_core::WebPicture;
use thinwright_core::job::{Cutter, Job};
use thinwright_core::part::{Height, State};
use thinwright_core::strategy::{Setup, Step, Strategy};
use thinwright_core::task::{Face, Task};
use thinwright_quantity::Length;

/// A step with the stock around it.
pub(crate) struct Moment<'a> {
    pub(crate) setup: &'a Setup,
    /// Which setup it is, counted from 0.
    pub(crate) setup_index: usize,
    pub(crate) step: &'a Step,
    pub(crate) cutter: Option<&'a Cutter>,
    pub(crate) before: State,
    pub(crate) after: State,
    /// Heights in the part where the step begins and ends.
    pub(crate) from: Height,
    pub(crate) to: Height,
    /// The web in this step, where it was looked at.
    pub(crate) web: Option<Rc<WebPicture>>,
}

/// Lowest and highest place of the stock.
pub(crate) fn extent(state: &State) -> Option<(Height, Height)> {
    let solid = || state.stock.iter().filter(|(bottom, top)| bottom < top);
    let bottom = solid().map(|s| s.0).min()?;
    Some((bottom, solid().map(|s| s.1).max()?))
}

/// Height in the part of a height above the face that it lies on.
fn in_part(lies_on: &State, face: Face, z: Length) -> Height {
    let (low, high) = extent(lies_on).unwrap_or_default();
    match face {
        Face::A => Height::from_m(low.m() + z.to_m()),
        Face::B => Height::from_m(high.m() - z.to_m()),
    }
}

/// The step of a number, counted from 0 over all setups.
pub(crate) fn moment<'a>(job: &'a Job, strategy: &'a Strategy, index: usize) -> Option<Moment<'a>> {
    let mut state = job.part.raw();
    let mut count = 0;
    for (setup_index, setup) in strategy.setups.iter().enumerate() {
        let lies_on = state.clone();
        for step in &setup.steps {
            let (from, to) = (
                in_part(&lies_on, setup.face_up, step.z.0),
                in_part(&lies_on, setup.face_up, step.z.1),
            );
            let task = Task {
                kind: step.task,
                face: setup.face_up,
                from,
                to,
            };
            let after = job.part.after(&state, &task);
            if count == index {
                return Some(Moment {
                    setup,
                    setup_index,
                    step,
                    cutter: job.rack.iter().find(|c| c.row == step.cutter),
                    before: state,
                    after,
                    from,
                    to,
                    web: None,
                });
            }
            state = after;
            count += 1;
        }
    }
    None
}

/// The stock at the beginning and at the end of a setup, counted from 0.
pub(crate) fn around_setup(job: &Job, strategy: &Strategy, index: usize) -> Option<(State, State)> {
    let before = strategy
        .setups
        .iter()
        .take(index)
        .map(|s| s.steps.len())
        .sum();
    let count = strategy.setups.get(index)?.steps.len();
    let first = moment(job, strategy, before)?;
    let last = moment(job, strategy, before + count.checked_sub(1)?)?;
    Some((first.before, last.after))
}
