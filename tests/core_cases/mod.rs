//! Jobs to try the core on: the samples with answers changed, their tasks one by one, and candidates for them.

use thinwright_catalog::Catalog;
use thinwright_core::answers::Answers;
use thinwright_core::case::{Case, Held, Load, Responses};
use thinwright_core::choice::Choice;
use thinwright_core::estimate::{Draw, Estimate, Estimates, Known, Unknown};
use thinwright_core::field::FieldId;
use thinwright_core::job::{Cutter, Job};
use thinwright_core::methods::Method;
use thinwright_core::order::Plan;
use thinwright_core::pass::Detail;
use thinwright_core::shape::TaskShape;
use thinwright_core::{Cache, known, read};
use thinwright_jobfile::Sample;
use thinwright_quantity::UnitSystem;

/// The answers of a sample with some of them changed, by their keys.
#[allow(dead_code, reason = "not every test changes a sample")]
pub(crate) fn answers(id: &str, changes: &[(&str, &str)]) -> Answers {
    let sample = Sample::by_id(id).unwrap_or_else(|| panic!("no sample {id}"));
    with(sample.job().answers, changes)
}

/// No answers but these.
#[allow(dead_code, reason = "not every test starts from nothing")]
pub(crate) fn only(changes: &[(&str, &str)]) -> Answers {
    with(Answers::new(UnitSystem::Metric), changes)
}

fn with(mut answers: Answers, changes: &[(&str, &str)]) -> Answers {
    for (key, text) in changes {
        let id = FieldId::by_key(key).unwrap_or_else(|| panic!("no field {key}"));
        answers.set(id, *text, Known::Measured);
    }
    answers
}

/// The job of answers that have no problem.
#[allow(dead_code, reason = "not every test works a job out")]
pub(crate) fn job(answers: &Answers) -> Job {
    read(answers, &Catalog::builtin()).unwrap_or_else(|problems| panic!("{problems:?}"))
}

/// Numbers that look drawn by lot and are the same in every run: splitmix64.
#[allow(dead_code, reason = "not every test draws")]
pub(crate) struct Lot(pub(crate) u64);

#[allow(dead_code, reason = "not every test draws")]
impl Lot {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        z ^ (z >> 31)
    }

    /// From 0 to 1.
    pub(crate) fn share(&mut self) -> f64 {
        f64::from(u32::try_from(self.next() >> 32).unwrap()) / f64::from(u32::MAX)
    }

    /// A whole number below `count`.
    pub(crate) fn below(&mut self, count: usize) -> usize {
        usize::try_from(self.next() % u64::try_from(count.max(1)).unwrap()).unwrap()
    }

    /// One of these.
    pub(crate) fn of<'a, T>(&mut self, all: &'a [T]) -> &'a T {
        &all[self.below(all.len())]
    }
}

/// A task where it stands in a plan, with everything that its limits look at.
#[allow(dead_code, reason = "not every test tries tasks one by one")]
pub(crate) struct Stage<'a> {
    pub(crate) job: &'a Job,
    pub(crate) shape: TaskShape,
    pub(crate) known: Responses,
    pub(crate) held: Held<'a>,
    pub(crate) estimates: Estimates,
}

/// The tasks of a plan, each in the state that those before it leave.
#[allow(dead_code, reason = "not every test tries tasks one by one")]
pub(crate) fn stages<'a>(job: &'a Job, plan: &Plan) -> Vec<Stage<'a>> {
    let mut state = job.part.raw();
    let mut stages = Vec::new();
    let mut cache = Cache::default();
    for setup in &plan.setups {
        let hold = if setup.second {
            &job.holding.second
        } else {
            &job.holding.first
        };
        let backing = &job.holding.backings[setup.backing];
        let mut estimates = job.estimates;
        let bed = &backing.bed;
        estimates[Unknown::BedStiffness as usize] = Estimate::range(bed.low, bed.likely, bed.high);
        let friction = &hold.friction;
        estimates[Unknown::Friction as usize] =
            Estimate::range(friction.low, friction.likely, friction.high);
        for task in &setup.tasks {
            let after = job.part.after(&state, task);
            stages.push(Stage {
                job,
                shape: TaskShape::new(job, *task, &state),
                known: Responses {
                    turn_over: 0.0,
                    ..known(job, setup, task, (&state, &after), &mut cache)
                },
                held: Held {
                    hold,
                    backing,
                    bolted: setup.bolted,
                },
                estimates,
            });
            state = after;
        }
    }
    stages
}

#[allow(dead_code, reason = "not every test tries tasks one by one")]
impl Stage<'_> {
    /// Shows the case of one candidate, everything likely, to `look`.
    pub(crate) fn look<T>(
        &self,
        method: &Method,
        cutter: &Cutter,
        choice: &Choice,
        look: impl FnOnce(&Case) -> T,
    ) -> T {
        let pass = (method.pass)(self.job, &self.shape, cutter, choice, Detail::Least);
        let load = Load::new(self.job, cutter, choice, &pass);
        look(&Case {
            job: self.job,
            shape: &self.shape,
            cutter,
            method: method.id,
            choice,
            pass: &pass,
            load: &load,
            known: &self.known,
            held: self.held,
            estimates: &self.estimates,
            draw: Draw::likely(&self.estimates),
        })
    }

    /// A choice of stepover, step-down (m), speed (1/s) and feed (m/s).
    pub(crate) fn choice(&self, cutter: &Cutter, numbers: [f64; 4]) -> Choice {
        let [ae, ap, n, vf] = numbers;
        let mut levels = 1;
        while f64::from(levels) * ap < self.shape.task.depth() - 1.0e-9 {
            levels += 1;
        }
        Choice {
            n,
            vf,
            fz: vf / (n * f64::from(cutter.z)),
            ae,
            ap,
            levels,
        }
    }
}
