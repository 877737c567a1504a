//! Judging a task: for every cutter and method the fastest numbers whose limits hold, or what stands in the way.

use crate::case::{Case, Held, Load, Responses};
use crate::choice::{Choice, choices};
use crate::estimate::{Draw, Estimates};
use crate::job::{Cutter, Job};
use crate::limits::{LimitId, Needs, Warnings, first_broken, warnings};
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
    let mut candidates: Vec<(f64, Choice, Pass)> = choices(scene.job, scene.shape, cutter, method)
        .into_iter()
        .map(|choice| {
            let pass = (method.pass)(scene.job, scene.shape, cutter, &choice, Detail::Rough);
            (
                time::step(scene.job, scene.shape, &choice, &pass),
                choice,
                pass,
            )
        })
        .collect();
    // Stable, and the candidates come in a fixed order: ties fall the same way everywhere.
    candidates.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut mildest: Option<(f64, Choice)> = None;
    let mut nearest: Option<(LimitId, Measure)> = None;
    for (_, choice, pass) in &candidates {
        match look(scene, method, cutter, (choice, pass), mildest.map(|m| m.0)) {
            Look::Clean => return Ok(way(scene, method, cutter, *choice)),
            Look::Warned(sum) => mildest = Some((sum, *choice)),
            Look::NoBetter => {}
            Look::Broken(limit, measure) => {
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
        (Some((_, choice)), _) => Ok(way(scene, method, cutter, choice)),
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

/// Warnings must be milder by so much of a limit to be worth slower numbers.
const MILDER: f64 = 0.05;

/// What a look at a candidate showed.
enum Look {
    /// No limit is broken.
    Clean,
    /// Only warnings are, by so much in all, and less than before.
    Warned(f64),
    /// Warnings no milder than those of quicker numbers.
    NoBetter,
    /// A limit that refuses is broken.
    Broken(LimitId, Measure),
}

/// Looks at a candidate: what needs no loads first, so that most need none.
fn look(
    scene: &Scene,
    method: &Method,
    cutter: &Cutter,
    candidate: (&Choice, &Pass),
    mildest: Option<f64>,
) -> Look {
    const QUICK: &[Needs] = &[Needs::Cutter, Needs::Numbers];
    let (choice, pass) = candidate;
    let nothing = Load::default();
    let case = scene.case(method, cutter, candidate, &nothing);
    if let Some((limit, measure)) = first_broken(&case, QUICK) {
        return Look::Broken(limit.id, measure);
    }
    let quick = warnings(&case, &[Needs::Numbers]).sum;
    let too_much = |sum: f64| mildest.is_some_and(|m| sum > m - MILDER);
    if too_much(quick) {
        return Look::NoBetter;
    }
    let load = Load::new(scene.job, cutter, choice, pass);
    let case = Case {
        load: &load,
        ..case
    };
    if let Some((limit, measure)) = first_broken(&case, &[Needs::Load]) {
        return Look::Broken(limit.id, measure);
    }
    let sum = quick + warnings(&case, &[Needs::Load]).sum;
    if sum <= 0.0 {
        Look::Clean
    } else if too_much(sum) {
        Look::NoBetter
    } else {
        Look::Warned(sum)
    }
}

fn way(scene: &Scene, method: &Method, cutter: &Cutter, choice: Choice) -> Way {
    let pass = (method.pass)(scene.job, scene.shape, cutter, &choice, Detail::Exact);
    let time = time::step(scene.job, scene.shape, &choice, &pass);
    let load = Load::new(scene.job, cutter, &choice, &pass);
    let case = scene.case(method, cutter, (&choice, &pass), &load);
    let warnings = warnings(&case, &[Needs::Cutter, Needs::Numbers, Needs::Load]);
    Way {
        method: method.id,
        cutter: cutter.row,
        choice,
        time,
        warnings,
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
