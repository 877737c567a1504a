//! A step of a strategy where it stands: the part before it, the hold, and what was looked up, as the search had them.

use crate::cache::Cache;
use crate::case::{Held, Responses};
use crate::choice::Choice;
use crate::estimate::Estimates;
use crate::job::{Cutter, Job};
use crate::methods::{METHODS, Method};
use crate::order::{Plan, SetupPlan, plans};
use crate::setting::{estimates, held, responses};
use crate::shape::TaskShape;
use crate::strategy::{Setup, Step, Strategy};
use crate::trials::{ALLOWANCES, allowances};
use std::rc::Rc;

/// Lengths nearer than this are one, m.
const SAME: f64 = 1.0e-9;

/// A step where it stands.
#[derive(Clone)]
pub(super) struct Stand {
    /// The job, with the allowances that the strategy took.
    pub(super) job: Job,
    pub(super) setup: SetupPlan,
    pub(super) shape: Rc<TaskShape>,
    pub(super) known: Responses,
    pub(super) method: &'static Method,
    pub(super) cutter: Cutter,
    pub(super) choice: Choice,
    /// The least stick-out with which the cutter does all its steps, m.
    pub(super) least_stick_out: f64,
    /// The task before and after.
    states: (Rc<crate::part::State>, crate::part::State),
}

impl Stand {
    /// A step of a strategy, counted from 0 over all setups; none where the strategy is not this job's.
    pub(super) fn find(
        job: &Job,
        strategy: &Strategy,
        index: usize,
        cache: &mut Cache,
    ) -> Option<Stand> {
        let step = strategy.setups.iter().flat_map(|s| &s.steps).nth(index)?;
        let (job, plan) = planned(job, strategy)?;
        cache.keep_for(&job);
        let cutter = job.rack.iter().find(|c| c.row == step.cutter)?.clone();
        let mut deepest = 0.0_f64;
        let mut found = None;
        let mut state = Rc::new(job.part.raw());
        let steps = strategy.setups.iter().flat_map(|s| &s.steps);
        let tasks = plan
            .setups
            .iter()
            .flat_map(|s| s.tasks.iter().map(move |t| (s, t)));
        for (at, ((setup, task), told)) in tasks.zip(steps).enumerate() {
            let after = job.part.after(&state, task);
            if told.cutter == cutter.row {
                let shape = cache.shape(&job, task, &state);
                deepest = deepest.max(shape.total_depth());
            }
            if at == index {
                let known = responses(&job, (setup, true), task, (&state, &after), cache);
                let shape = cache.shape(&job, task, &state);
                found = Some((setup.clone(), shape, known, (state.clone(), after.clone())));
            }
            state = Rc::new(after);
        }
        let (setup, shape, known, states) = found?;
        let air = job.numbers.nut_clearance_mm * 1.0e-3;
        let least = (deepest + air).max(cutter.flute_length).max(cutter.reach);
        Some(Stand {
            setup,
            shape,
            known,
            states,
            method: METHODS.iter().find(|m| m.id == step.method)?,
            choice: choice(step),
            least_stick_out: crate::choice::up(least, 1.0e-3),
            cutter,
            job,
        })
    }

    /// How the setup holds the part.
    pub(super) fn held(&self) -> Held<'_> {
        held(&self.job, &self.setup)
    }

    /// What is not known for sure in the setup.
    pub(super) fn estimates(&self) -> Estimates {
        estimates(&self.job, &self.setup)
    }

    /// The same step with the setup held otherwise, the web looked at anew.
    pub(super) fn with_setup(&self, setup: SetupPlan, cache: &mut Cache) -> Stand {
        let task = &self.shape.task;
        let states = (self.states.0.as_ref(), &self.states.1);
        Stand {
            known: responses(&self.job, (&setup, true), task, states, cache),
            setup,
            ..self.clone()
        }
    }
}

fn choice(step: &Step) -> Choice {
    Choice {
        n: step.n.si(),
        vf: step.vf.si(),
        fz: step.fz.si(),
        ae: step.ae.si(),
        ap: step.ap.si(),
        levels: step.levels,
    }
}

/// The plan of a strategy, and the job with the allowances that it took.
fn planned(job: &Job, strategy: &Strategy) -> Option<(Job, Plan)> {
    let order = strategy.orders.first()?;
    let others = (0..ALLOWANCES).filter_map(|which| allowances(job, which));
    let mut jobs = std::iter::once(job.clone()).chain(others);
    jobs.find_map(|job| {
        let same = |plan: &Plan| {
            (plan.order, plan.first) == (order.order, order.first)
                && plan.setups.len() == strategy.setups.len()
                && plan
                    .setups
                    .iter()
                    .zip(&strategy.setups)
                    .all(|(plan, told)| alike(&job, plan, told))
        };
        let plan = plans(&job).into_iter().find(same)?;
        Some((job, plan))
    })
}

/// Whether a setup of a plan is what was told.
fn alike(job: &Job, plan: &SetupPlan, told: &Setup) -> bool {
    let held = held(job, plan);
    let left = [
        job.numbers.rough_allowance_mm,
        job.numbers.floor_allowance_mm,
    ]
    .map(|mm| mm * 1.0e-3);
    let near = |a: f64, b: f64| (a - b).abs() < SAME;
    // What is cleared says which allowances were taken.
    let leaves = |step: &Step| {
        let (wall, floor) = (step.leave.0.si(), step.leave.1.si());
        (wall <= 0.0 || near(wall, left[0])) && (floor <= 0.0 || near(floor, left[1]))
    };
    plan.face == told.face_up
        && held.backing.id == told.backing
        && plan.bolted == told.boss_bolted
        && plan.tasks.len() == told.steps.len()
        && plan
            .tasks
            .iter()
            .zip(&told.steps)
            .all(|(task, step)| task.kind == step.task && leaves(step))
}
