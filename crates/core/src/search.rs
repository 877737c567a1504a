//! The search: every plan worked out, the cheapest that holds chosen. It advances in counted slices and knows no clock.

use crate::assemble;
use crate::case::{Held, Responses};
use crate::estimate::{Estimates, Unknown};
use crate::grip;
use crate::job::Job;
use crate::judge::{Judged, Scene, Way, judge};
use crate::order::{Plan, SetupPlan, plans};
use crate::part::{Height, State};
use crate::plan::Area;
use crate::read::range;
use crate::refuse;
use crate::shape::{self, TaskShape};
use crate::strategy::Outcome;
use crate::task::{Task, TaskKind};
use crate::web::{self, WebAnswer};
use std::collections::BTreeMap;
use std::rc::Rc;

/// What a task's answer depends on beside the job.
type TaskKey = (Task, Height, bool, usize, bool, bool);

/// Answers that may be used again; it changes the speed of a search, never its result.
#[derive(Clone, Debug, Default)]
pub struct Cache {
    webs: BTreeMap<Vec<u64>, Option<WebAnswer>>,
}

/// Most web answers that are kept.
const MOST_WEBS: usize = 4096;

/// A task of a worked-out plan.
#[derive(Clone, Debug)]
pub(crate) struct Solved {
    pub(crate) task: Task,
    pub(crate) before: Rc<State>,
    pub(crate) found: Rc<Found>,
    /// The way taken; `None` where there is none.
    pub(crate) way: Option<Way>,
}

/// What was found for a task in a state and hold.
#[derive(Debug)]
pub(crate) struct Found {
    pub(crate) shape: Rc<TaskShape>,
    pub(crate) known: Responses,
    pub(crate) judged: Judged,
}

/// A worked-out plan.
#[derive(Clone, Debug)]
pub(crate) struct WorkedPlan {
    pub(crate) plan: Plan,
    pub(crate) setups: Vec<Vec<Solved>>,
    /// Time in all, s.
    pub(crate) time: f64,
    /// Time and the price of warnings, s: what plans are compared by, in whole milliseconds.
    pub(crate) price: i64,
    pub(crate) changes: u32,
}

impl WorkedPlan {
    /// The first task without a way.
    pub(crate) fn stuck(&self) -> Option<&Solved> {
        self.setups.iter().flatten().find(|s| s.way.is_none())
    }
}

/// A search under way.
pub struct Search {
    job: Job,
    plans: Vec<Plan>,
    next: usize,
    done: Vec<WorkedPlan>,
    found: BTreeMap<TaskKey, Rc<Found>>,
    shapes: BTreeMap<(Task, Height), Rc<TaskShape>>,
    cache: Cache,
}

/// How far a search is.
#[derive(Clone, Debug)]
pub enum Progress {
    /// Still plans to work out.
    Working {
        /// Plans done.
        done: u32,
        /// Plans in all.
        of: u32,
        /// The best so far.
        best: Option<Outcome>,
    },
    /// All plans worked out.
    Done(Outcome),
}

impl Search {
    /// Starts a search; a warm cache makes it quicker.
    pub fn new(job: Job, cache: Cache) -> Search {
        Search {
            plans: plans(&job),
            job,
            next: 0,
            done: Vec::new(),
            found: BTreeMap::new(),
            shapes: BTreeMap::new(),
            cache,
        }
    }

    /// Works out so many plans, at least one.
    pub fn advance(&mut self, work: u64) -> Progress {
        for _ in 0..work.max(1) {
            let Some(plan) = self.plans.get(self.next).cloned() else {
                break;
            };
            let worked = self.work_out(plan);
            self.done.push(worked);
            self.next += 1;
        }
        let count = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
        if self.next >= self.plans.len() {
            return Progress::Done(self.outcome());
        }
        let best = self.best().map(|_| self.outcome());
        Progress::Working {
            done: count(self.next),
            of: count(self.plans.len()),
            best,
        }
    }

    /// Gives back what may be used again.
    pub fn into_cache(self) -> Cache {
        self.cache
    }

    /// The cheapest plan in which every task has a way.
    fn best(&self) -> Option<&WorkedPlan> {
        self.done
            .iter()
            .filter(|p| p.stuck().is_none())
            .min_by_key(|p| p.price)
    }

    fn outcome(&self) -> Outcome {
        match self.best() {
            Some(best) => {
                Outcome::Feasible(Box::new(assemble::strategy(&self.job, best, &self.done)))
            }
            None => Outcome::Refused(Box::new(refuse::refusal(&self.job, &self.done))),
        }
    }

    fn work_out(&mut self, plan: Plan) -> WorkedPlan {
        let mut state = Rc::new(self.job.part.raw());
        let mut setups = Vec::new();
        for setup in &plan.setups {
            let mut solved = Vec::new();
            for task in &setup.tasks {
                let found = self.find(setup, task, &state);
                solved.push(Solved {
                    task: *task,
                    before: state.clone(),
                    found,
                    way: None,
                });
                state = Rc::new(self.job.part.after(&state, task));
            }
            setups.push(solved);
        }
        choose(&self.job, plan, setups)
    }

    /// The shape of a task; of the state before it only the height of the surface matters.
    fn shape(&mut self, task: &Task, before: &State) -> Rc<TaskShape> {
        let key = (*task, shape::surface(before, task.face));
        let job = &self.job;
        let new = || Rc::new(TaskShape::new(job, *task, before));
        self.shapes.entry(key).or_insert_with(new).clone()
    }

    fn find(&mut self, setup: &SetupPlan, task: &Task, before: &State) -> Rc<Found> {
        let part = &self.job.part;
        let after = part.after(before, task);
        let key: TaskKey = (
            *task,
            Height::from_m(part.web_now(&after)),
            part.slots_begun(before),
            setup.backing,
            setup.bolted,
            setup.second,
        );
        if let Some(found) = self.found.get(&key) {
            return found.clone();
        }
        let known = responses(&self.job, setup, task, (before, &after), &mut self.cache);
        let shape = self.shape(task, before);
        let estimates = estimates(&self.job, setup);
        let judged = judge(&Scene {
            job: &self.job,
            shape: &shape,
            known: &known,
            held: held(&self.job, setup),
            estimates: &estimates,
        });
        let found = Rc::new(Found {
            shape,
            known,
            judged,
        });
        self.found.insert(key, found.clone());
        found
    }
}

/// How a setup holds the part.
pub(crate) fn held<'a>(job: &'a Job, setup: &SetupPlan) -> Held<'a> {
    Held {
        hold: if setup.second {
            &job.holding.second
        } else {
            &job.holding.first
        },
        backing: &job.holding.backings[setup.backing.min(job.holding.backings.len() - 1)],
        bolted: setup.bolted,
    }
}

/// What is not known for sure in a setup: the job's, with the hold's and the backing's own.
pub(crate) fn estimates(job: &Job, setup: &SetupPlan) -> Estimates {
    let held = held(job, setup);
    let lies_on: &Area = if setup.second {
        &job.part.outline_area
    } else {
        &job.part.blank_area
    };
    let mut estimates = job.estimates;
    estimates[Unknown::Friction as usize] = range(&held.hold.friction, 1.0);
    estimates[Unknown::Grip as usize] = grip::clamping(held.hold, lies_on);
    estimates[Unknown::BedStiffness as usize] = range(&held.backing.bed, 1.0);
    estimates
}

/// What is looked up before the candidates of a task are judged.
fn responses(
    job: &Job,
    setup: &SetupPlan,
    task: &Task,
    (before, after): (&State, &State),
    cache: &mut Cache,
) -> Responses {
    let works_on_web = matches!(
        task.kind,
        TaskKind::Clearing | TaskKind::FloorSkim | TaskKind::SlotsThrough | TaskKind::SlotsBlind
    );
    // A part that lies flat with its back uncut is carried everywhere; on parallels or in a chuck it is not.
    let two_sided = job.part.recesses.len() > 1;
    let carried = (!setup.second || !two_sided) && !held(job, setup).hold.squeezes;
    // Slots are cut one by one: the web that the last one is cut in has all the others open.
    let state = if matches!(task.kind, TaskKind::SlotsThrough) {
        after
    } else {
        before
    };
    let state = if matches!(task.kind, TaskKind::Clearing | TaskKind::FloorSkim) {
        after
    } else {
        state
    };
    let web = (works_on_web && !carried)
        .then(|| cached_web(job, state, setup.bolted, cache))
        .flatten();
    let slots = matches!(task.kind, TaskKind::SlotsThrough | TaskKind::SlotsBlind);
    let numbers = &job.numbers;
    let errors = [numbers.seat_error_um, numbers.touch_error_um].map(|um| um * 1.0e-6);
    Responses {
        web,
        rib: slots.then(|| web::rib(job, before)).flatten(),
        turn_over: if setup.second && two_sided {
            libm::hypot(errors[0], errors[1])
        } else {
            errors[1]
        },
    }
}

fn cached_web(job: &Job, state: &State, bolted: bool, cache: &mut Cache) -> Option<WebAnswer> {
    let patch = job
        .rack
        .iter()
        .filter(|c| !c.drill)
        .map(|c| c.d)
        .fold(f64::INFINITY, f64::min)
        / 2.0;
    let patch = if patch.is_finite() {
        patch
    } else {
        job.numbers.sharp_corner_mm * 1.0e-3
    };
    let key = web::key(job, state, patch, bolted);
    if let Some(answer) = cache.webs.get(&key) {
        return *answer;
    }
    // A geometry that the closed forms do not take has no web answer; the limits on the web then do not apply.
    let answer = web::web(job, state, patch, bolted).ok().flatten();
    if cache.webs.len() >= MOST_WEBS {
        cache.webs.clear();
    }
    cache.webs.insert(key, answer);
    answer
}

/// Price of the warnings that a way leaves, s.
fn warning_price(job: &Job, way: &Way) -> f64 {
    job.numbers.warning_price_s * way.warnings.sum
}

/// Chooses one way per task so that time, warnings and cutter changes together are least: exact, by going through the
/// tasks with the cheapest way to stand there with each cutter.
fn choose(job: &Job, plan: Plan, mut setups: Vec<Vec<Solved>>) -> WorkedPlan {
    let (price, path) = cheapest(job, &setups);
    for (solved, way) in setups.iter_mut().flatten().zip(path) {
        solved.way = way.map(|i| solved.found.judged.ways[i].clone());
    }
    let ways: Vec<&Way> = setups
        .iter()
        .flatten()
        .filter_map(|s| s.way.as_ref())
        .collect();
    let mut changes = 0;
    let mut last = None;
    for way in &ways {
        if last != Some(way.cutter) {
            changes += 1;
            last = Some(way.cutter);
        }
    }
    let around: f64 = plan.setups.iter().map(|s| setting_up(job, s)).sum();
    let cutting: f64 = ways.iter().map(|w| w.time).sum();
    let time = cutting + f64::from(changes) * job.machine.change + around;
    #[allow(
        clippy::cast_possible_truncation,
        reason = "milliseconds of a job, far inside i64; saturating"
    )]
    let price = ((price + around) * 1.0e3) as i64;
    WorkedPlan {
        plan,
        setups,
        time,
        price,
        changes,
    }
}

/// A price so far, s, and the ways that led there.
type Standing = (f64, Vec<Option<usize>>);

/// The least price of all tasks and the ways that give it.
fn cheapest(job: &Job, setups: &[Vec<Solved>]) -> Standing {
    // One standing per cutter in the spindle.
    let mut front: BTreeMap<Option<u8>, Standing> = BTreeMap::from([(None, (0.0, Vec::new()))]);
    for solved in setups.iter().flatten() {
        let ways = &solved.found.judged.ways;
        let mut next: BTreeMap<Option<u8>, Standing> = BTreeMap::new();
        let mut offer =
            |cutter: Option<u8>, price: f64, path: &[Option<usize>], way: Option<usize>| {
                if next.get(&cutter).is_none_or(|(best, _)| price < *best) {
                    let path = path.iter().copied().chain([way]).collect();
                    next.insert(cutter, (price, path));
                }
            };
        for (cutter, (price, path)) in &front {
            if ways.is_empty() {
                offer(*cutter, *price, path, None);
            }
            for (i, way) in ways.iter().enumerate() {
                let change = if *cutter == Some(way.cutter) {
                    0.0
                } else {
                    job.machine.change
                };
                let price = price + change + way.time + warning_price(job, way);
                offer(Some(way.cutter), price, path, Some(i));
            }
        }
        front = next;
    }
    let best = front.into_values().min_by(|a, b| a.0.total_cmp(&b.0));
    best.unwrap_or_default()
}

/// Time to clamp, back and find the datum, s; a backing serves the whole batch.
fn setting_up(job: &Job, setup: &SetupPlan) -> f64 {
    let held = held(job, setup);
    let backing = held.backing.setup.si() / f64::from(job.holding.quantity.max(1));
    let turn = if setup.second {
        job.numbers.turn_over_s
    } else {
        0.0
    };
    let bolt = if setup.bolted {
        job.numbers.bolt_boss_s
    } else {
        0.0
    };
    held.hold.setup.si() + backing + turn + bolt
}
