//! The search: every plan worked out, the cheapest that holds chosen. It advances in counted slices and knows no clock.

use crate::assemble;
pub use crate::cache::Cache;
use crate::case::Responses;
use crate::job::Job;
use crate::judge::{Judged, Scene, Way, judge};
use crate::loads::LoadBook;
use crate::numbers::ms;
use crate::order::{Plan, SetupPlan, plans};
use crate::part::{Height, State};
use crate::refuse;
use crate::setting::{estimates, held, responses, setting_up};
use crate::shape::{self, TaskShape};
use crate::strategy::Outcome;
use crate::tally::{Effort, Tally};
use crate::task::Task;
use std::collections::BTreeMap;
use std::rc::Rc;

/// What a task's answer depends on beside the job: the task, the surface before it, the setup's hold, its backing where
/// there is a web to back, and what was looked up.
type TaskKey = (Task, Height, bool, usize, [u64; 6]);

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
    /// Time and the price of warnings, ms: what plans are compared by.
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
    cache: Cache,
    loads: LoadBook,
    tally: Tally,
    /// What the cache had been worked out with before.
    before: Effort,
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
    pub fn new(job: Job, mut cache: Cache) -> Search {
        cache.keep_for(&job);
        let before = Effort {
            webs: cache.webs_worked_out(),
            lengths: cache.lengths_worked_out(),
            ..Effort::default()
        };
        Search {
            before,
            plans: plans(&job),
            job,
            next: 0,
            done: Vec::new(),
            found: BTreeMap::new(),
            cache,
            loads: LoadBook::default(),
            tally: Tally::default(),
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

    /// What has been done so far.
    pub fn effort(&self) -> Effort {
        Effort {
            webs: self.cache.webs_worked_out() - self.before.webs,
            lengths: self.cache.lengths_worked_out() - self.before.lengths,
            ..self.tally.effort()
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
                let books = (&self.job, &self.loads, &self.tally);
                Outcome::Feasible(Box::new(assemble::strategy(books, best, &self.done)))
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

    fn find(&mut self, setup: &SetupPlan, task: &Task, before: &State) -> Rc<Found> {
        let after = self.job.part.after(before, task);
        let known = responses(&self.job, setup, task, (before, &after), &mut self.cache);
        let key: TaskKey = (
            *task,
            shape::surface(before, task.face),
            setup.second,
            if known.web.is_some() {
                setup.backing
            } else {
                0
            },
            known.key(),
        );
        if let Some(found) = self.found.get(&key) {
            return found.clone();
        }
        let shape = self.cache.shape(&self.job, task, before);
        let estimates = estimates(&self.job, setup);
        let scene = Scene {
            job: &self.job,
            shape: &shape,
            known: &known,
            held: held(&self.job, setup),
            estimates: &estimates,
            loads: &self.loads,
            tally: &self.tally,
        };
        let judged = judge(&scene, false);
        let found = Rc::new(Found {
            shape,
            known,
            judged,
        });
        self.found.insert(key, found.clone());
        found
    }
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
    let price = price + ms(around);
    WorkedPlan {
        plan,
        setups,
        time,
        price,
        changes,
    }
}

/// A price so far, ms, and the ways that led there.
type Standing = (i64, Vec<Option<usize>>);

/// The least price of all tasks and the ways that give it.
fn cheapest(job: &Job, setups: &[Vec<Solved>]) -> Standing {
    let change = ms(job.machine.change);
    // One standing per cutter in the spindle.
    let mut front: BTreeMap<Option<u8>, Standing> = BTreeMap::from([(None, (0, Vec::new()))]);
    for solved in setups.iter().flatten() {
        let ways = &solved.found.judged.ways;
        let mut next: BTreeMap<Option<u8>, Standing> = BTreeMap::new();
        let mut offer =
            |cutter: Option<u8>, price: i64, path: &[Option<usize>], way: Option<usize>| {
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
                let same = *cutter == Some(way.cutter);
                let price = price + way.price + if same { 0 } else { change };
                offer(Some(way.cutter), price, path, Some(i));
            }
        }
        front = next;
    }
    let best = front.into_values().min_by_key(|standing| standing.0);
    best.unwrap_or_default()
}
