//! Judging a task: for every cutter and method the fastest numbers whose limits hold, or what stands in the way.

use crate::case::{Case, Held, Load, Responses};
use crate::choice::{Choice, choices};
use crate::estimate::{Draw, Estimates};
use crate::job::{Cutter, Job};
use crate::limits::{LimitId, first_broken, worst_warning};
use crate::methods::{METHODS, Method, MethodId, Rejection};
use crate::pass::{Detail, Pass};
use crate::shape::TaskShape;
use crate::strategy::{Considered, Measure, Verdict};
use crate::time;
use thinwright_quantity::Duration;

/// What a task stands in.
#[derive(Clone, Copy)]
pub(crate) struct Scene<'a> {
    pub(crate) job: &'a Job,
    pub(crate) shape: &'a TaskShape,
    pub(crate) known: &'a Responses,
    pub(crate) held: Held<'a>,
    pub(crate) estimates: &'a Estimates,
}

/// A way that works, with its numbers.
#[derive(Clone, Debug)]
pub(crate) struct Way {
    pub(crate) method: MethodId,
    pub(crate) cutter: u8,
    pub(crate) choice: Choice,
    /// Time without cutter change, s.
    pub(crate) time: f64,
    /// The worst warning that it leaves.
    pub(crate) warning: Option<(LimitId, f64)>,
}

/// Everything that came of a task.
#[derive(Clone, Debug, Default)]
pub(crate) struct Judged {
    /// Ways that work, at most one per cutter and method.
    pub(crate) ways: Vec<Way>,
    /// Ways that do not, and why.
    pub(crate) failed: Vec<Considered>,
}

impl<'a> Scene<'a> {
    /// Runs `look` on the case of one candidate.
    pub(crate) fn with<T>(
        &self,
        method: &Method,
        cutter: &'a Cutter,
        choice: &Choice,
        detail: Detail,
        look: impl FnOnce(&Case, &Pass) -> T,
    ) -> T {
        let pass = (method.pass)(self.job, self.shape, cutter, choice, detail);
        let load = Load::new(self.job, cutter, choice, &pass);
        let case = Case {
            job: self.job,
            shape: self.shape,
            cutter,
            method: method.id,
            choice,
            pass: &pass,
            load: &load,
            known: self.known,
            held: self.held,
            estimates: self.estimates,
            draw: Draw::likely(self.estimates),
        };
        look(&case, &pass)
    }
}

/// Judges a task with every cutter and method.
pub(crate) fn judge(scene: &Scene) -> Judged {
    let mut judged = Judged::default();
    for method in METHODS {
        for cutter in &scene.job.rack {
            match (method.fits)(scene.job, scene.shape, cutter) {
                Err(Rejection::NotForThis | Rejection::NotADrill) => {}
                Err(why) => judged
                    .failed
                    .push(considered(method, cutter, Verdict::Unfit(why))),
                Ok(()) => match best(scene, method, cutter) {
                    Ok(way) => judged.ways.push(way),
                    Err((limit, measure)) => {
                        judged.failed.push(considered(
                            method,
                            cutter,
                            Verdict::Breaks { limit, measure },
                        ));
                    }
                },
            }
        }
    }
    judged
}

fn considered(method: &Method, cutter: &Cutter, verdict: Verdict) -> Considered {
    Considered {
        method: method.id,
        cutter: cutter.row,
        verdict,
    }
}

/// The fastest numbers of a method with a cutter that hold every limit; those with the mildest warning if none are
/// free of it; or the limit that the nearest numbers still break.
fn best(scene: &Scene, method: &Method, cutter: &Cutter) -> Result<Way, (LimitId, Measure)> {
    let mut candidates: Vec<(f64, Choice)> = choices(scene.job, scene.shape, cutter, method)
        .into_iter()
        .map(|choice| {
            let pass = (method.pass)(scene.job, scene.shape, cutter, &choice, Detail::Rough);
            (time::step(scene.job, scene.shape, &choice, &pass), choice)
        })
        .collect();
    // Stable, and the candidates come in a fixed order: ties fall the same way everywhere.
    candidates.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut mildest: Option<(f64, Choice, (LimitId, f64))> = None;
    let mut nearest: Option<(LimitId, Measure)> = None;
    for (rough, choice) in &candidates {
        let outcome = scene.with(
            method,
            cutter,
            choice,
            Detail::Rough,
            |case, _| match first_broken(case) {
                Some((limit, measure)) => Err((limit.id, measure)),
                None => Ok(worst_warning(case).map(|(limit, u)| (limit.id, u))),
            },
        );
        match outcome {
            Ok(None) => return Ok(way(scene, method, cutter, *choice, None)),
            Ok(Some(warning)) => {
                if mildest.as_ref().is_none_or(|m| warning.1 < m.2.1 - MILDER) {
                    mildest = Some((*rough, *choice, warning));
                }
            }
            Err((limit, measure)) => {
                if nearest
                    .as_ref()
                    .is_none_or(|n| measure.utilisation() < n.1.utilisation())
                {
                    nearest = Some((limit, measure));
                }
            }
        }
    }
    match (mildest, nearest) {
        (Some((_, choice, warning)), _) => Ok(way(scene, method, cutter, choice, Some(warning))),
        (None, Some(broken)) => Err(broken),
        (None, None) => Err((
            LimitId::SurfaceSpeed,
            Measure {
                demand: 1.0,
                allowed: 0.0,
            },
        )),
    }
}

/// A warning must be milder by so much of its limit to be worth slower numbers.
const MILDER: f64 = 0.05;

fn way(
    scene: &Scene,
    method: &Method,
    cutter: &Cutter,
    choice: Choice,
    warning: Option<(LimitId, f64)>,
) -> Way {
    let pass = (method.pass)(scene.job, scene.shape, cutter, &choice, Detail::Exact);
    let time = time::step(scene.job, scene.shape, &choice, &pass);
    Way {
        method: method.id,
        cutter: cutter.row,
        choice,
        time,
        warning,
    }
}

impl Judged {
    /// What else there was beside a chosen way, the working ones first by time.
    pub(crate) fn beside(&self, chosen: &Way) -> Vec<Considered> {
        let others = self
            .ways
            .iter()
            .filter(|w| (w.method, w.cutter) != (chosen.method, chosen.cutter));
        let mut others: Vec<&Way> = others.collect();
        others.sort_by(|a, b| a.time.total_cmp(&b.time));
        let works = others.into_iter().map(|w| Considered {
            method: w.method,
            cutter: w.cutter,
            verdict: match w.warning {
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
