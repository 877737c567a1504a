//! Judging a task: for every cutter and method the cheapest numbers whose limits hold, or what stands in the way.

use crate::case::{Case, Held, Load, Responses};
use crate::choice::Choice;
use crate::estimate::{Draw, Estimates};
use crate::job::{Cutter, Job};
use crate::limits::{Warnings, warnings};
use crate::loads::LoadBook;
use crate::look::ms;
use crate::methods::{METHODS, Method, MethodId, Rejection};
use crate::numbers::{Found, Numbers, Seeker};
use crate::pass::{Detail, Pass};
use crate::shape::TaskShape;
use crate::strategy::{Considered, Verdict};
use crate::tally::Tally;
use thinwright_quantity::Duration;

/// What a task stands in.
#[derive(Clone, Copy)]
pub(crate) struct Scene<'a> {
    pub(crate) job: &'a Job,
    pub(crate) shape: &'a TaskShape,
    pub(crate) known: &'a Responses,
    pub(crate) held: Held<'a>,
    pub(crate) estimates: &'a Estimates,
    pub(crate) loads: &'a LoadBook,
    pub(crate) tally: &'a Tally,
}

/// A way that works, with its numbers.
#[derive(Clone, Debug)]
pub(crate) struct Way {
    pub(crate) method: MethodId,
    pub(crate) cutter: u8,
    pub(crate) choice: Choice,
    /// Time without cutter change, s.
    pub(crate) time: f64,
    /// Time and the price of the warnings, ms.
    pub(crate) price: i64,
    /// Holes are drilled first: the mill comes in after the drill.
    pub(crate) drilled: bool,
    /// The warnings that it leaves.
    pub(crate) warnings: Warnings,
}

/// Everything that came of a task.
#[derive(Clone, Debug, Default)]
pub(crate) struct Judged {
    /// Ways that work, at most one per cutter and method.
    pub(crate) ways: Vec<Way>,
    /// Ways that do not, and why.
    pub(crate) failed: Vec<Considered>,
}

impl Scene<'_> {
    /// The case of one candidate with everything likely.
    pub(crate) fn case<'b>(
        &'b self,
        method: &Method,
        cutter: &'b Cutter,
        (choice, pass): (&'b Choice, &'b Pass),
        load: &'b Load,
    ) -> Case<'b> {
        Case {
            job: self.job,
            shape: self.shape,
            cutter,
            method: method.id,
            choice,
            pass,
            load,
            known: self.known,
            held: self.held,
            estimates: self.estimates,
            draw: Draw::likely(self.estimates),
        }
    }
}

/// Judges a task with every cutter and method; ways that can be no part of the cheapest plan are passed over, unless
/// the judging is `thorough`.
///
/// Why: a way can always be replaced by the cheapest one, at the price of two cutter changes at most.
pub(crate) fn judge(scene: &Scene, thorough: bool) -> Judged {
    let (failed, fitting) = ways_to_try(scene);
    let mut judged = Judged {
        ways: Vec::new(),
        failed,
    };
    let mut seekers: Vec<(&Method, Seeker)> = Vec::new();
    for (method, cutter) in fitting {
        seekers.push((method, Seeker::new(scene, method, cutter)));
    }
    seekers.sort_by_key(|(_, seeker)| seeker.least());
    let changes = ms(2.0 * scene.job.machine.change);
    for (method, seeker) in seekers {
        let cutter = seeker.cutter;
        let dearest = judged.ways.iter().map(|w| {
            let other = w.cutter != cutter.row || w.drilled;
            w.price + if other { changes } else { 0 }
        });
        let bound = if thorough { None } else { dearest.min() };
        match seeker.run(bound.unwrap_or(i64::MAX)) {
            Numbers::Cheapest(found) => judged.ways.push(way(scene, method, cutter, found)),
            Numbers::TooDear => {}
            Numbers::Broken(limit, measure) => {
                let verdict = Verdict::Breaks { limit, measure };
                judged.failed.push(considered(method, cutter, verdict));
            }
        }
    }
    judged
}

/// Those that do not fit a task, and why; and the methods and cutters that do.
pub(crate) fn ways_to_try<'a>(
    scene: &Scene<'a>,
) -> (Vec<Considered>, Vec<(&'static Method, &'a Cutter)>) {
    let pin = scene.job.pins.at(&scene.shape.task);
    let (mut failed, mut fitting) = (Vec::new(), Vec::new());
    for method in METHODS {
        for cutter in &scene.job.rack {
            let kept = pin.cutter.is_none_or(|row| row == cutter.row)
                && pin.method.is_none_or(|id| id == method.id);
            match (method.fits)(scene.job, scene.shape, cutter) {
                Err(Rejection::NotForThis | Rejection::NotADrill) => {}
                Err(why) => failed.push(considered(method, cutter, Verdict::Unfit(why))),
                Ok(()) if !kept => {
                    let verdict = Verdict::Unfit(Rejection::Pinned);
                    failed.push(considered(method, cutter, verdict));
                }
                Ok(()) => fitting.push((method, cutter)),
            }
        }
    }
    (failed, fitting)
}

fn considered(method: &Method, cutter: &Cutter, verdict: Verdict) -> Considered {
    Considered {
        method: method.id,
        cutter: cutter.row,
        verdict,
    }
}

fn way(scene: &Scene, method: &Method, cutter: &Cutter, found: Found) -> Way {
    let (job, choice) = (scene.job, found.choice);
    let pass = (method.pass)(job, scene.shape, cutter, &choice, Detail::Exact);
    let load = Load::new(job, cutter, &choice, &pass);
    let case = scene.case(method, cutter, (&choice, &pass), &load);
    Way {
        method: method.id,
        cutter: cutter.row,
        choice,
        time: found.time,
        price: found.price,
        drilled: pass.drilled.is_some(),
        warnings: warnings(&case),
    }
}

impl Judged {
    /// What else there was beside a chosen way, the working ones first by what they cost.
    pub(crate) fn beside(&self, chosen: &Way) -> Vec<Considered> {
        let others = self
            .ways
            .iter()
            .filter(|w| (w.method, w.cutter) != (chosen.method, chosen.cutter));
        let mut others: Vec<&Way> = others.collect();
        others.sort_by_key(|w| w.price);
        let works = others.into_iter().map(|w| Considered {
            method: w.method,
            cutter: w.cutter,
            verdict: match w.warnings.worst {
                Some((limit, utilisation)) => Verdict::Warned {
                    limit,
                    utilisation,
                    time: Duration::from_si(w.time),
                },
                None => Verdict::Slower(Duration::from_si(w.time)),
            },
        });
        works.chain(self.failed.iter().cloned()).collect()
    }
}
