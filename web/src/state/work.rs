//! The search as the page sees it: what it has told, how far it is, and what that makes of what is shown.

use super::State;
use super::chart::Drawn;
use super::look::Seen;
use std::rc::Rc;
use thinwright_core::strategy::Setup;
use thinwright_core::task::{Face, TaskKind};
use thinwright_core::{Answers, Job, Outcome, Sight};
use thinwright_jobfile::{ChartOf, Covered};

/// What may be said of a strategy that is shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Stage {
    /// It is checked as it stands; a better one may come.
    First,
    /// Nothing better will come; what changes would bring is still worked out.
    Final,
    /// The search was stopped before anything was final.
    Stopped,
    /// Nothing better would have come; what changes would bring was not worked out to the end.
    Cut,
    /// Everything is worked out.
    Whole,
}

impl Stage {
    /// Whether it stays as it is, and may be printed.
    pub(crate) fn stands(self) -> bool {
        self != Stage::First
    }

    /// Whether what changes would bring is still to come.
    pub(crate) fn open(self) -> bool {
        matches!(self, Stage::First | Stage::Final)
    }
}

/// An answer of the search, with the answers and the job that it belongs to.
#[derive(Clone)]
pub(crate) struct Shown {
    pub(crate) answers: Rc<Answers>,
    pub(crate) job: Rc<Job>,
    pub(crate) outcome: Rc<Outcome>,
    pub(crate) stage: Stage,
    /// The search that it comes from.
    pub(crate) generation: u32,
}

impl PartialEq for Shown {
    fn eq(&self, other: &Shown) -> bool {
        self.same(other) && self.stage == other.stage
    }
}

impl Shown {
    /// Whether the two are one outcome, whatever may be said of it.
    pub(crate) fn same(&self, other: &Shown) -> bool {
        Rc::ptr_eq(&self.outcome, &other.outcome)
    }
}

/// Where the search stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Work {
    /// There is nothing to do.
    Idle,
    /// Under way.
    Under,
    /// The person has stopped it.
    Stopped,
    /// It broke down.
    Broken,
}

/// How far a search is.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Standing {
    /// Share of the work that is done.
    pub(crate) share: f64,
    /// Combinations of cutters, methods and numbers that there were.
    pub(crate) candidates: f64,
    /// Those that had to be looked at one by one.
    pub(crate) looked_at: f64,
}

impl From<Covered> for Standing {
    fn from(covered: Covered) -> Standing {
        let share = f64::from(covered.done) / f64::from(covered.of.max(1));
        Standing {
            share: share.clamp(0.0, 1.0),
            candidates: covered.candidates,
            looked_at: covered.looked_at,
        }
    }
}

/// What a search tells.
pub(crate) enum Heard {
    /// How far it is, maybe with a better strategy; and whether nothing better will come.
    Working(Standing, Option<Box<Outcome>>, bool),
    /// Everything.
    Done(Standing, Box<Outcome>),
    /// It was stopped.
    Stopped(Standing, Option<Box<Outcome>>),
    /// What the web looks like.
    Look(Sight, Seen),
    /// What a step's stability looks like.
    Chart(Box<ChartOf>, Drawn),
}

/// What is cut, step by step, and from which face.
fn tasks(outcome: &Outcome) -> impl Iterator<Item = (Face, TaskKind)> {
    let setups = match outcome {
        Outcome::Feasible(strategy) => strategy.setups.as_slice(),
        Outcome::Refused(_) => &[],
    };
    let steps = |setup: &Setup| {
        let face = setup.face_up;
        let tasks = setup.steps.iter().map(move |step| (face, step.task));
        tasks.collect::<Vec<_>>()
    };
    setups.iter().flat_map(steps)
}

impl State {
    /// Takes in what a search tells, unless it is about other answers.
    pub(super) fn hear(&mut self, generation: u32, heard: Heard) {
        if generation != self.generation || !self.problems.is_empty() {
            return;
        }
        match heard {
            Heard::Working(standing, best, checked) => {
                if self.work == Work::Under {
                    self.standing = standing;
                    self.better(best, checked);
                }
            }
            Heard::Done(standing, outcome) => {
                self.standing = standing;
                self.work = Work::Idle;
                self.show(*outcome, Stage::Whole);
            }
            Heard::Stopped(standing, best) => {
                // What was told before it broke off stands for more than the last count.
                if standing != Standing::default() {
                    self.standing = standing;
                }
                self.work = Work::Stopped;
                self.cut_off(best);
            }
            Heard::Look(sight, seen) => self.looks.put(&self.answers, sight, seen),
            Heard::Chart(of, drawn) => self.charts.put(&self.answers, *of, drawn),
        }
    }

    /// A better strategy in place of the one before. What stands already for the same answers waits for what is final; and
    /// a strategy makes room for a no only when all is told of it, as half an answer is often such a no.
    fn better(&mut self, best: Option<Box<Outcome>>, checked: bool) {
        let (stale, generation) = (self.stale(), self.generation);
        let shown = self.shown.as_ref();
        let stands = !stale && shown.is_some_and(|s| s.generation != generation);
        let strategy = shown.is_some_and(|s| matches!(*s.outcome, Outcome::Feasible(_)));
        let stage = if checked { Stage::Final } else { Stage::First };
        match best {
            Some(best) if strategy && matches!(*best, Outcome::Refused(_)) => {}
            Some(best) if checked || !stands => self.show(*best, stage),
            Some(_) => {}
            None if checked => self.restage(Stage::Final),
            None => {}
        }
    }

    fn cut_off(&mut self, best: Option<Box<Outcome>>) {
        let own = |s: &&Shown| s.generation == self.generation;
        let was = self.shown.as_ref().filter(own).map(|s| s.stage);
        match (was, best) {
            (Some(Stage::Final), Some(best)) => self.show(*best, Stage::Cut),
            (Some(Stage::Final), None) => self.restage(Stage::Cut),
            (_, Some(best)) => self.show(*best, Stage::Stopped),
            (_, None) => self.restage(Stage::Stopped),
        }
    }

    /// Says something else of what this search has shown.
    fn restage(&mut self, stage: Stage) {
        let generation = self.generation;
        let own = self.shown.as_mut().filter(|s| s.generation == generation);
        if let Some(shown) = own {
            shown.stage = stage;
        }
    }

    /// Shows an outcome of the answers as they stand; a step that is open stays open wherever it stands now.
    fn show(&mut self, outcome: Outcome, stage: Stage) {
        let Some(job) = self.job.clone() else {
            return;
        };
        self.step = self.step.and_then(|at| {
            let open = tasks(&self.shown.as_ref()?.outcome).nth(at)?;
            tasks(&outcome).position(|task| task == open)
        });
        self.shown = Some(Shown {
            answers: self.answers.clone(),
            job,
            outcome: Rc::new(outcome),
            stage,
            generation: self.generation,
        });
    }

    /// Stops the search in hand; what it tells in the end is still heard.
    pub(super) fn stop(&mut self) {
        if self.work == Work::Under {
            self.stopped = Some(self.generation);
        }
    }

    /// Searches on after a stop: from the start, with what was worked out still at hand.
    pub(super) fn go_on(&mut self) {
        if self.work == Work::Stopped {
            self.reread();
        }
    }
}
