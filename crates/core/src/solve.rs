//! A plan worked out: every task judged in the state and hold that it finds, the ways chosen together.

use crate::cache::Cache;
use crate::case::Responses;
use crate::cheapest::choose;
use crate::job::Job;
use crate::judge::{Judged, Scene, Way, judge};
use crate::limits::LimitId;
use crate::loads::LoadBook;
use crate::order::{Plan, SetupPlan};
use crate::part::{Height, State};
use crate::picture::WebError;
use crate::setting::{estimates, held, responses};
use crate::shape::{self, TaskShape};
use crate::tally::Tally;
use crate::task::{Face, Task, TaskKind};
use std::collections::BTreeMap;
use std::rc::Rc;

/// What a task's answer depends on beside the job: the task, the surface before it, the setup's hold, its backing where
/// there is a web to back, and what was looked up.
type TaskKey = (Task, Height, bool, usize, [u64; 8]);

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
    /// What plans are compared by.
    pub(crate) fn rank(&self) -> i64 {
        self.price
    }

    /// What is cut, in order.
    pub(crate) fn tasks(&self) -> impl Iterator<Item = (TaskKind, Face)> {
        let all = self.setups.iter().flatten();
        all.map(|s| (s.task.kind, s.task.face))
    }

    /// The ways taken, in order, each with what is cut.
    pub(crate) fn ways(&self) -> impl Iterator<Item = (TaskKind, &Way)> {
        let all = self.setups.iter().flatten();
        all.filter_map(|s| s.way.as_ref().map(|way| (s.task.kind, way)))
    }

    /// The warnings that are left, in order.
    pub(crate) fn warnings(&self) -> Vec<(TaskKind, LimitId)> {
        let of = |(task, way): (TaskKind, &Way)| {
            let left = way.warnings;
            LimitId::all()
                .filter(move |limit| left.has(*limit))
                .map(move |limit| (task, limit))
                .collect::<Vec<_>>()
        };
        self.ways().flat_map(of).collect()
    }

    /// Why the web could not be worked out somewhere.
    pub(crate) fn web_error(&self) -> Option<WebError> {
        let mut all = self.setups.iter().flatten();
        all.find_map(|s| s.found.known.web_error)
    }

    /// The first task without a way.
    pub(crate) fn stuck(&self) -> Option<&Solved> {
        self.setups.iter().flatten().find(|s| s.way.is_none())
    }
}

/// What the plans of one job have in common.
#[derive(Default)]
pub(crate) struct Solver {
    found: BTreeMap<TaskKey, Rc<Found>>,
    pub(crate) loads: LoadBook,
}

impl Solver {
    /// A solver that knows the loads of another one: for a job in which cutters and forces are the same.
    pub(crate) fn with_loads(loads: LoadBook) -> Solver {
        Solver {
            found: BTreeMap::new(),
            loads,
        }
    }

    /// Works a plan out.
    pub(crate) fn work_out(
        &mut self,
        job: &Job,
        plan: Plan,
        books: (&mut Cache, &Tally),
    ) -> WorkedPlan {
        self.with_webs(job, plan, books, true)
    }

    /// Whether a plan would cost no less than `rank` even if its webs did not give at all.
    ///
    /// Exact: limits on the web only forbid and warn, so that a plan without them costs no more.
    pub(crate) fn cannot_beat(
        &mut self,
        job: &Job,
        plan: &Plan,
        rank: i64,
        books: (&mut Cache, &Tally),
    ) -> bool {
        let stiff = self.with_webs(job, plan.clone(), books, false);
        stiff.stuck().is_none() && stiff.rank() >= rank
    }

    fn with_webs(
        &mut self,
        job: &Job,
        plan: Plan,
        (cache, tally): (&mut Cache, &Tally),
        webs: bool,
    ) -> WorkedPlan {
        let mut state = Rc::new(job.part.raw());
        let mut setups = Vec::new();
        for setup in &plan.setups {
            let mut solved = Vec::new();
            for task in &setup.tasks {
                let found = self.find(job, (setup, task, &state, webs), (&mut *cache, tally));
                solved.push(Solved {
                    task: *task,
                    before: state.clone(),
                    found,
                    way: None,
                });
                state = Rc::new(job.part.after(&state, task));
            }
            setups.push(solved);
        }
        choose(job, plan, setups)
    }

    fn find(
        &mut self,
        job: &Job,
        (setup, task, before, webs): (&SetupPlan, &Task, &State, bool),
        (cache, tally): (&mut Cache, &Tally),
    ) -> Rc<Found> {
        let after = job.part.after(before, task);
        let known = responses(job, (setup, webs), task, (before, &after), cache);
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
        let shape = cache.shape(job, task, before);
        let estimates = estimates(job, setup);
        let scene = Scene {
            job,
            shape: &shape,
            known: &known,
            held: held(job, setup),
            estimates: &estimates,
            loads: &self.loads,
            tally,
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
