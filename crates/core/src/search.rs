//! The search: every plan worked out, the cheapest that holds chosen, then what a change would bring. It advances in
//! counted slices and knows no clock.
//!
//! Exact: the numbers of a method with a cutter on the grid that a person types, the cutters and methods of a plan
//! together, and the plan among all plans at the usual allowances. Heuristic: the allowances, tried on the best plan
//! only, and the re-searches of changes, which keep the order of the work where the change does not touch it.

use crate::assemble;
pub use crate::cache::Cache;
use crate::job::Job;
use crate::look::ms;
use crate::order::{Plan, plans};
use crate::refuse::{self, Mending};
use crate::solve::{Solver, WorkedPlan};
use crate::strategy::Outcome;
use crate::tally::{Effort, Tally};
use crate::trials::{self, Trial, Tried};

/// A search under way.
pub struct Search {
    job: Job,
    plans: Vec<Plan>,
    next: usize,
    stage: Stage,
    done: Vec<WorkedPlan>,
    /// Plans that cannot be the best, even if no web gave: worked out once the strategy stands, to be told.
    later: Vec<Plan>,
    /// The job with its usual allowances, where the best plan has others.
    usual: Option<(Job, Solver)>,
    /// Index into `done` of the best so far.
    best: Option<usize>,
    /// Whether the best has been told.
    told: bool,
    trials: Vec<Trial>,
    gains: Vec<Tried>,
    mending: Option<Mending>,
    solver: Solver,
    cache: Cache,
    tally: Tally,
    /// What the cache had been worked out with before.
    before: Effort,
}

/// Where a search is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Stage {
    /// Plans are worked out.
    Plans,
    /// The best plan is tried with other allowances.
    Allowances,
    /// The strategy stands; plans that could not beat it are worked out.
    Others,
    /// Changes are tried.
    Gains,
    /// There is none; what would make it possible is tried.
    Mending,
    /// Everything is done.
    End,
}

/// How far a search is.
#[derive(Clone, Debug)]
pub enum Progress {
    /// Still something to work out.
    Working {
        /// Pieces of work done.
        done: u32,
        /// Pieces of work in all, as far as can be told.
        of: u32,
        /// The best so far, if it is better than what was told last.
        best: Option<Outcome>,
        /// Whether strategy or refusal are final and only what a change would bring is still to come.
        checked: bool,
    },
    /// Everything worked out.
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
            trials: trials::trials(&job),
            job,
            next: 0,
            stage: Stage::Plans,
            done: Vec::new(),
            later: Vec::new(),
            usual: None,
            best: None,
            told: true,
            gains: Vec::new(),
            mending: None,
            solver: Solver::default(),
            cache,
            tally: Tally::default(),
        }
    }

    /// Does so many pieces of work, at least one; no more when strategy or refusal are final, so that they can be told.
    pub fn advance(&mut self, work: u64) -> Progress {
        let deciding = self.deciding();
        for _ in 0..work.max(1) {
            if self.stage == Stage::End || deciding != self.deciding() {
                break;
            }
            self.step();
        }
        if self.stage == Stage::End {
            return Progress::Done(self.outcome());
        }
        let checked = matches!(self.stage, Stage::Others | Stage::Gains | Stage::Mending);
        let best = (!self.told && (self.best.is_some() || checked)).then(|| self.outcome());
        self.told |= best.is_some();
        let (done, of) = self.pieces();
        Progress::Working {
            done,
            of,
            best,
            checked,
        }
    }

    /// Goes on until strategy or refusal are final, and tells them; what a change would bring is still to come.
    pub fn decide(&mut self) -> Outcome {
        while self.deciding() {
            self.step();
        }
        self.told = true;
        self.outcome()
    }

    fn deciding(&self) -> bool {
        matches!(self.stage, Stage::Plans | Stage::Allowances)
    }

    /// The best so far, as it would be told now: for a search that is stopped.
    pub fn stop(&mut self) -> Option<Outcome> {
        self.best.is_some().then(|| self.outcome())
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

    /// Pieces of work done and in all, as far as can be told.
    pub fn pieces(&self) -> (u32, u32) {
        let (plans, allowances) = (self.plans.len(), trials::ALLOWANCES);
        let last = match &self.mending {
            Some(mending) => mending.pieces(),
            None => self.later.len() + self.trials.len(),
        };
        let before = match self.stage {
            Stage::Plans => 0,
            Stage::Allowances => plans,
            Stage::Others | Stage::Mending => plans + allowances,
            Stage::Gains => plans + allowances + self.later.len(),
            Stage::End => {
                plans
                    + allowances
                    + if self.mending.is_some() {
                        0
                    } else {
                        self.later.len()
                    }
            }
        };
        let count = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
        (count(before + self.next), count(plans + allowances + last))
    }

    /// One piece of work.
    fn step(&mut self) {
        let next = self.next;
        self.next += 1;
        match self.stage {
            Stage::Plans => match self.plans.get(next).cloned() {
                Some(plan) => self.work_out(plan),
                None if self.best.is_some() => self.enter(Stage::Allowances),
                None => self.mend(),
            },
            Stage::Allowances => match trials::allowances(&self.job, next) {
                Some(job) => self.try_allowances(job),
                None => self.enter_others(),
            },
            Stage::Others => match self.later.get(next).cloned() {
                Some(plan) => self.tell_of(plan),
                None => self.enter(Stage::Gains),
            },
            Stage::Gains => match self.trials.get(next) {
                Some(_) => self.try_change(next),
                None => self.enter(Stage::End),
            },
            Stage::Mending => self.try_mending(next),
            Stage::End => {}
        }
    }

    fn enter(&mut self, stage: Stage) {
        self.stage = stage;
        self.next = 0;
    }

    fn enter_others(&mut self) {
        self.keep_telling();
        let none = self.later.is_empty();
        self.enter(if none { Stage::Gains } else { Stage::Others });
    }

    fn work_out(&mut self, plan: Plan) {
        if self.beaten(&plan) {
            self.later.push(plan);
        } else {
            let books = (&mut self.cache, &self.tally);
            let worked = self.solver.work_out(&self.job, plan, books);
            let better = |best: usize| worked.rank() < self.done[best].rank();
            if worked.stuck().is_none() && self.best.is_none_or(better) {
                self.best = Some(self.done.len());
                self.told = false;
            }
            self.done.push(worked);
        }
        if self.next == self.plans.len() {
            match self.best {
                Some(_) => self.enter(Stage::Allowances),
                None => self.mend(),
            }
        }
    }

    /// Whether a plan cannot be better than the best so far.
    fn beaten(&mut self, plan: &Plan) -> bool {
        let Some(rank) = self.best.map(|best| self.done[best].rank()) else {
            return false;
        };
        let books = (&mut self.cache, &self.tally);
        self.solver.cannot_beat(&self.job, plan, rank, books)
    }

    /// Of the plans that cannot be the best, those that tell something are kept: every order without backing, and every
    /// backing in the order that was chosen.
    fn keep_telling(&mut self) {
        let Some(best) = self.best.map(|best| &self.done[best].plan) else {
            return;
        };
        let backed = |plan: &Plan| plan.setups.iter().any(|s| s.backing > 0);
        let same = |plan: &Plan| plan.order == best.order && plan.first == best.first;
        self.later.retain(|plan| !backed(plan) || same(plan));
    }

    /// A plan that could not be the best, for what it brings.
    fn tell_of(&mut self, plan: Plan) {
        let books = (&mut self.cache, &self.tally);
        let (job, solver) = match &mut self.usual {
            Some((job, solver)) => (&*job, solver),
            None => (&self.job, &mut self.solver),
        };
        self.done.push(solver.work_out(job, plan, books));
        if self.next == self.later.len() {
            self.enter(Stage::Gains);
        }
    }

    /// The best plan with other allowances: taken over if it is so much cheaper that leaving the usual ones is worth it.
    fn try_allowances(&mut self, job: Job) {
        let Some(best) = self.best else {
            return;
        };
        let same = trials::like(&self.done[best].plan);
        let books = (&mut self.cache, &self.tally);
        let mut solver = Solver::with_loads(self.solver.loads.clone());
        let plan = plans(&job).into_iter().find(same);
        if let Some(worked) = plan.map(|plan| solver.work_out(&job, plan, books))
            && worked.stuck().is_none()
            && worked.rank() + ms(self.job.numbers.worth_least_s)
                < self.done[best].rank() + self.unusual()
        {
            self.done[best] = worked;
            let usual = (
                std::mem::replace(&mut self.job, job),
                std::mem::replace(&mut self.solver, solver),
            );
            self.usual.get_or_insert(usual);
            self.told = false;
        }
        if self.next == trials::ALLOWANCES {
            self.enter_others();
        }
    }

    /// What leaving the usual allowances counts, ms.
    fn unusual(&self) -> i64 {
        match self.usual {
            Some(_) => ms(self.job.numbers.worth_least_s),
            None => 0,
        }
    }

    fn try_change(&mut self, next: usize) {
        let books = (&mut self.cache, &self.tally);
        if let Some(best) = self.best
            && let Some(trial) = self.trials.get(next)
        {
            let base = (&self.job, &self.done[best], &self.solver);
            self.gains.extend(trials::gain(base, trial, books));
        }
        if self.next == self.trials.len() {
            self.enter(Stage::End);
        }
    }

    fn mend(&mut self) {
        self.mending = Some(Mending::new(&self.job, &self.done));
        self.told = false;
        self.enter(Stage::Mending);
    }

    fn try_mending(&mut self, next: usize) {
        let books = (&mut self.cache, &self.tally);
        let pieces = self.mending.as_ref().map_or(0, Mending::pieces);
        if let Some(mending) = &mut self.mending {
            mending.advance(&self.job, &self.done, next, books);
        }
        if self.next >= pieces {
            self.enter(Stage::End);
        }
    }

    fn outcome(&self) -> Outcome {
        match self.best {
            Some(best) => {
                let books = (&self.job, &self.solver.loads, &self.tally);
                let (best, gains) = (&self.done[best], trials::worth(&self.job, &self.gains));
                let mut strategy = assemble::strategy(books, best, &self.done);
                strategy.gains = gains;
                strategy.reckoned = assemble::seconds(best.price + self.unusual());
                Outcome::Feasible(Box::new(strategy))
            }
            None => {
                let mending = self.mending.as_ref();
                let refusal = refuse::refusal(&self.job, &self.done, mending);
                Outcome::Refused(Box::new(refusal))
            }
        }
    }
}
