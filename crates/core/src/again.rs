//! A step that was told, again with other numbers: what the limits say of them. The part stands as it does in the strategy.

use crate::cache::Cache;
use crate::case::{Case, Load};
use crate::choice::Choice;
use crate::job::Job;
use crate::judge::Scene;
use crate::limits::{LIMITS, finding};
use crate::loads::LoadBook;
use crate::methods::METHODS;
use crate::order::{Plan, SetupPlan, plans};
use crate::pass::Detail;
use crate::setting::{estimates, held, responses};
use crate::strategy::{Finding, Setup, Step, Strategy};
use crate::tally::Tally;
use crate::task::{Task, TaskKind};
use crate::trials;
use thinwright_quantity::{Length, Speed, SpindleSpeed};

/// Less than this is no difference between two heights, m.
const HAIR: f64 = 1.0e-9;

/// The numbers of a step that a person sets.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Values {
    /// Spindle speed.
    pub n: SpindleSpeed,
    /// Feed.
    pub vf: Speed,
    /// Stepover.
    pub ae: Length,
    /// Step-down.
    pub ap: Length,
}

impl Values {
    /// The numbers of a step as it was told.
    pub fn of(step: &Step) -> Values {
        Values {
            n: step.n,
            vf: step.vf,
            ae: step.ae,
            ap: step.ap,
        }
    }

    /// The same with feed and spindle speed turned at the machine: shares of what was typed.
    #[must_use]
    pub fn turned(self, (feed, speed): (f64, f64)) -> Values {
        Values {
            n: SpindleSpeed::from_si(self.n.si() * speed),
            vf: Speed::from_si(self.vf.si() * feed),
            ..self
        }
    }
}

/// What limits say of a step with other numbers.
#[derive(Clone, Debug, PartialEq)]
pub struct Again {
    /// Feed per tooth that follows.
    pub fz: Length,
    /// Every limit that applies, as in the step: the closest first.
    pub findings: Vec<Finding>,
}

impl Again {
    /// The limits that these numbers break and those of the step do not, the worst first.
    pub fn broken<'a>(&'a self, step: &'a Step) -> impl Iterator<Item = &'a Finding> {
        let kept = |finding: &&Finding| {
            let told = step.findings.iter().find(|f| f.limit == finding.limit);
            told.is_none_or(|f| f.utilisation() <= 1.0)
        };
        let broken = self.findings.iter().filter(|f| f.utilisation() > 1.0);
        broken.filter(kept)
    }
}

/// A step of a strategy, counted from 0 over all setups, with other numbers; nothing where the strategy is not of this job.
/// The cache changes how long it takes, never what is said.
pub fn again(
    job: &Job,
    strategy: &Strategy,
    at: usize,
    values: Values,
    cache: &mut Cache,
) -> Option<Again> {
    in_case(job, strategy, (at, values), (true, cache), |case| {
        let mut findings: Vec<Finding> = LIMITS.iter().filter_map(|l| finding(l, case)).collect();
        findings.sort_by(|a, b| b.utilisation().total_cmp(&a.utilisation()));
        Again {
            fz: Length::from_si(case.choice.fz),
            findings,
        }
    })
}

/// Shows a step of a strategy with other numbers, everything likely; without `webs`, as if no web gave.
pub(crate) fn in_case<T>(
    job: &Job,
    strategy: &Strategy,
    (at, values): (usize, Values),
    (webs, cache): (bool, &mut Cache),
    look: impl FnOnce(&Case) -> T,
) -> Option<T> {
    let step = strategy.setups.iter().flat_map(|s| &s.steps).nth(at)?;
    let (job, plan) = planned(job, strategy)?;
    cache.keep_for(&job);
    let (setup, task) = all_tasks(&plan).nth(at)?;
    let mut before = job.part.raw();
    for (_, task) in all_tasks(&plan).take(at) {
        before = job.part.after(&before, task);
    }
    let after = job.part.after(&before, task);
    let known = responses(&job, (setup, webs), task, (&before, &after), cache);
    let shape = cache.shape(&job, task, &before);
    let (estimates, loads, tally) = (
        estimates(&job, setup),
        LoadBook::default(),
        Tally::default(),
    );
    let scene = Scene {
        job: &job,
        shape: &shape,
        known: &known,
        held: held(&job, setup),
        estimates: &estimates,
        loads: &loads,
        tally: &tally,
    };
    with_values(&scene, step, values, look)
}

fn with_values<T>(
    scene: &Scene,
    step: &Step,
    values: Values,
    look: impl FnOnce(&Case) -> T,
) -> Option<T> {
    let job = scene.job;
    let method = METHODS.iter().find(|m| m.id == step.method)?;
    let cutter = job.rack.iter().find(|c| c.row == step.cutter)?;
    let (n, vf) = (values.n.si(), values.vf.si());
    let per_turn = n * f64::from(cutter.z);
    if !(per_turn > 0.0 && vf > 0.0 && values.ae.si() > 0.0 && values.ap.si() > 0.0) {
        return None;
    }
    // What stays is what was worked out: to the last bit where nothing was changed.
    let same = values == Values::of(step);
    let fz = if same { step.fz.si() } else { vf / per_turn };
    let choice = Choice {
        n,
        vf,
        fz,
        ae: values.ae.si(),
        ap: step.ap.si(),
        levels: step.levels,
    };
    let choice = match values.ap == step.ap {
        true => choice,
        false => choice.with_ap(scene.shape.task.depth(), values.ap.si()),
    };
    let pass = (method.pass)(job, scene.shape, cutter, &choice, Detail::Exact);
    let load = Load::new(job, cutter, &choice, &pass);
    Some(look(&scene.case(method, cutter, (&choice, &pass), &load)))
}

/// The plan of a strategy, with the job that it was worked out for: its allowances may be larger than usual.
fn planned(job: &Job, strategy: &Strategy) -> Option<(Job, Plan)> {
    let larger = (0..trials::ALLOWANCES).filter_map(|which| trials::allowances(job, which));
    let jobs = std::iter::once(job.clone()).chain(larger);
    jobs.into_iter().find_map(|job| {
        let plan = plans(&job).into_iter().find(|p| is_of(&job, p, strategy))?;
        Some((job, plan))
    })
}

/// Every task of a plan in its setup, in order.
fn all_tasks(plan: &Plan) -> impl Iterator<Item = (&SetupPlan, &Task)> {
    plan.setups
        .iter()
        .flat_map(|setup| setup.tasks.iter().map(move |task| (setup, task)))
}

/// Whether a plan is what a strategy tells, to the depth of every cut.
fn is_of(job: &Job, plan: &Plan, strategy: &Strategy) -> bool {
    let pairs = || plan.setups.iter().zip(&strategy.setups);
    plan.setups.len() == strategy.setups.len() && pairs().all(|(p, told)| setup_is(job, p, told))
}

fn setup_is(job: &Job, plan: &SetupPlan, told: &Setup) -> bool {
    let held = held(job, plan);
    let mut steps = plan.tasks.iter().zip(&told.steps);
    plan.face == told.face_up
        && plan.bolted == told.boss_bolted
        && held.hold.id == told.hold
        && held.backing.id == told.backing
        && plan.tasks.len() == told.steps.len()
        && steps.all(|(task, step)| step_is(job, task, step))
}

fn step_is(job: &Job, task: &Task, step: &Step) -> bool {
    let close = |a: f64, b: f64| (a - b).abs() < HAIR;
    let (wall, floor) = (step.leave.0.si(), step.leave.1.si());
    let numbers = &job.numbers;
    // Only clearing leaves both.
    let leaves = task.kind != TaskKind::Clearing
        || (close(numbers.rough_allowance_mm * 1.0e-3, wall)
            && close(numbers.floor_allowance_mm * 1.0e-3, floor));
    let depth = (step.z.0.si() - step.z.1.si()).abs();
    task.kind == step.task && close(task.depth(), depth) && leaves
}
