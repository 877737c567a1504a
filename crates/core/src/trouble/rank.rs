//! The likely causes of what was told, ranked by the step's own findings.

use super::cause::Cause;
use super::clue::{Clue, Known, clues};
use super::plausible;
use super::sign::{Repeats, Sign, Spot};
use crate::job::Job;
use crate::limits::LimitId;
use crate::strategy::Step;
use thinwright_quantity::Frequency;

/// What was told of the trouble in a step.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Said {
    /// Signs, each with how sure it is, from 0 to 1; a reading can be one, too.
    pub signs: Vec<(Sign, f64)>,
    /// Where in the path.
    pub spot: Option<Spot>,
    /// Whether it comes again.
    pub repeats: Option<Repeats>,
    /// A tone that is no multiple of the spindle's turns.
    pub tone: Option<Frequency>,
    /// Changes that were made against causes, and whether it was better then.
    pub tried: Vec<(Cause, bool)>,
}

/// A likely cause.
#[derive(Clone, Debug, PartialEq)]
pub struct Suspect {
    /// The cause.
    pub cause: Cause,
    /// Its share among all that is likely: all shares add up to 1.
    pub share: f64,
    /// How plausible it is by what limits say, signs aside.
    pub plausible: f64,
    /// The limit that says so.
    pub limit: Option<LimitId>,
    /// What speaks for it, and what against.
    pub clues: Vec<Clue>,
    /// Numbers of the rules of practice that tie the signs to it.
    pub practice: Vec<String>,
}

/// The likely causes of what was told of a step, the likeliest first; empty where no sign was told.
///
/// Weight of a cause = plausibility of its limits x factor of each sign x factor of each further clue. A sign told with
/// certainty s counts 1 - s + s fit; the fit is the table's, or that of a sign that does not belong to the cause. Causes to
/// which no sign belongs are left out; shares are weights over their sum. Among equals the order of the table stands.
pub fn rank(job: &Job, step: &Step, said: &Said) -> Vec<Suspect> {
    let suspects = Cause::all().filter_map(|cause| suspect(job, step, cause, said));
    let mut suspects: Vec<Suspect> = suspects.collect();
    let sum: f64 = suspects.iter().map(|s| s.share).sum();
    if sum > 0.0 {
        suspects.iter_mut().for_each(|s| s.share /= sum);
    }
    suspects.sort_by(|a, b| b.share.total_cmp(&a.share));
    suspects
}

/// A cause with its weight in place of its share; none where no sign belongs to it.
fn suspect(job: &Job, step: &Step, cause: Cause, said: &Said) -> Option<Suspect> {
    let (signs, practice) = signs(job, cause, said)?;
    let (limits, plausible, limit) = limits(job, step, cause);
    let mut all = signs;
    all.extend(limits);
    all.extend(clues(job, step, cause, said));
    let factors: f64 = all.iter().map(|clue| clue.factor).product();
    Some(Suspect {
        cause,
        share: plausible * factors,
        plausible,
        limit,
        clues: all,
        practice,
    })
}

/// How each sign fits a cause, and the rules that say so.
fn signs(job: &Job, cause: Cause, said: &Said) -> Option<(Vec<Clue>, Vec<String>)> {
    let unfit = job.numbers.trouble_unfit;
    let rows = &job.tables.1.troubles;
    let (mut clues, mut practice, mut belongs) = (Vec::new(), Vec::new(), false);
    for (sign, sure) in &said.signs {
        let sure = if sure.is_finite() {
            sure.clamp(0.0, 1.0)
        } else {
            0.0
        };
        let row = rows
            .iter()
            .find(|r| r.sign == sign.key() && r.cause == cause.key());
        let fit = row.map_or(unfit, |r| r.fit);
        for rule in row.iter().flat_map(|r| &r.practice) {
            if !practice.contains(rule) {
                practice.push(rule.clone());
            }
        }
        belongs |= row.is_some() && sure > 0.0;
        clues.push(Clue {
            known: Known::Sign { sign: *sign, fit },
            speaks_for: row.is_some(),
            factor: 1.0 - sure + sure * fit,
        });
    }
    belongs.then_some((clues, practice))
}

/// What the limits say of a cause: each that applies in the step, how plausible they make it, and the one that does.
fn limits(job: &Job, step: &Step, cause: Cause) -> (Vec<Clue>, f64, Option<LimitId>) {
    let numbers = &job.numbers;
    let clue = |known: Known, speaks_for: bool| Clue {
        known,
        speaks_for,
        factor: 1.0,
    };
    if cause.limits().is_empty() {
        let clues = vec![clue(Known::Unwatched, true)];
        return (clues, numbers.trouble_unwatched, None);
    }
    let findings = step
        .findings
        .iter()
        .filter(|f| cause.limits().contains(&f.limit));
    let mut of: Vec<(LimitId, f64)> = findings
        .map(|f| (f.limit, plausible::of(f, numbers)))
        .collect();
    of.sort_by(|a, b| b.1.total_cmp(&a.1));
    let Some((nearest, most)) = of.first().copied() else {
        let clues = vec![clue(Known::NoLimitHere, false)];
        return (clues, numbers.trouble_least, None);
    };
    // What is more plausible than a cause that nothing watches speaks for it.
    let clues = of.into_iter().map(|(limit, plausible)| {
        let speaks_for = plausible >= numbers.trouble_unwatched;
        clue(Known::Limit { limit, plausible }, speaks_for)
    });
    (
        clues.collect(),
        most.clamp(numbers.trouble_least, 1.0),
        Some(nearest),
    )
}
