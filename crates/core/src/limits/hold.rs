//! Holds limits against a candidate: at the bad ends of what they depend on.

use super::{LIMITS, Limit, LimitId, Severity, remedies};
use crate::case::Case;
use crate::estimate::{BadEnd, Draw, Estimates, Unknown, WORLDS};
use crate::learn::Quantity;
use crate::strategy::{Finding, Measure};

/// The measure of a limit with its unknowns at their bad ends.
///
/// Where an end is sampled: the worst of a fixed number of worlds.
pub(crate) fn at_worst(limit: &Limit, case: &Case) -> Option<Measure> {
    let measure = |draw: Draw| (limit.measure)(&Case { draw, ..*case });
    let wide = before_learning(limit, case);
    let estimates = wide.as_ref().unwrap_or(case.estimates);
    let sampled = limit.bad_ends.iter().any(|b| b.1 == BadEnd::Sampled);
    if !sampled {
        return measure(Draw::at(estimates, limit.bad_ends));
    }
    let worlds = (0..WORLDS).map(|w| Draw::in_world(estimates, limit.bad_ends, w));
    let measures = worlds.filter_map(measure);
    measures.max_by(|a, b| a.utilisation().total_cmp(&b.utilisation()))
}

/// The ranges with their ends as they were before anything was learned: for limits of safety, which nothing learned loosens.
/// What is taken as measured is no part of that.
fn before_learning(limit: &Limit, case: &Case) -> Option<Estimates> {
    let safety = limit.id.spec().severity == Severity::Stop;
    let before = case.job.untaught.as_ref().filter(|_| safety)?;
    let mut wide = *case.estimates;
    for quantity in Quantity::ALL {
        let at = quantity.unknown() as usize;
        if !case.job.settled[at] {
            (wide[at].low, wide[at].high) = (before[at].low, before[at].high);
        }
    }
    Some(wide)
}

/// Utilisation of a limit at the bad ends; 0 where it does not apply, infinite where it cannot be computed.
pub fn utilisation(limit: &Limit, case: &Case) -> f64 {
    at_worst(limit, case).map_or(0.0, |m| m.utilisation())
}

/// The warnings that a case leaves: which, and the worst.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Warnings {
    /// Which: a bit for each limit.
    broken: u64,
    /// The worst, with its utilisation.
    pub(crate) worst: Option<(LimitId, f64)>,
}

impl Warnings {
    /// Whether a limit is among them.
    pub(crate) fn has(&self, limit: LimitId) -> bool {
        self.broken & (1 << (limit as u64)) != 0
    }
}

/// The warnings of a case: they steer the choice but never refuse.
pub(crate) fn warnings(case: &Case) -> Warnings {
    let mut found = Warnings::default();
    for limit in LIMITS
        .iter()
        .filter(|l| l.id.spec().severity == Severity::Advice)
    {
        let u = utilisation(limit, case);
        if u > 1.0 {
            found.broken |= 1 << (limit.id as u64);
            if found.worst.is_none_or(|w| u > w.1) {
                found.worst = Some((limit.id, u));
            }
        }
    }
    found
}

/// Everything there is to say of one limit; `None` where it does not apply.
pub fn finding(limit: &'static Limit, case: &Case) -> Option<Finding> {
    let at_worst = at_worst(limit, case)?;
    let likely = Draw::likely(case.estimates);
    let at_likely = (limit.measure)(&Case {
        draw: likely,
        ..*case
    })?;
    Some(Finding {
        limit: limit.id,
        severity: limit.id.spec().severity,
        at_likely,
        at_worst,
        set_by: set_by(limit, case, at_likely.utilisation()),
        remedies: remedies(limit, case, at_worst.utilisation()),
    })
}

/// The unknown whose bad end alone moves the limit most.
fn set_by(limit: &Limit, case: &Case, likely: f64) -> Option<Unknown> {
    let wide = before_learning(limit, case);
    let estimates = wide.as_ref().unwrap_or(case.estimates);
    let moved = limit.bad_ends.iter().map(|bad| {
        let worlds = if bad.1 == BadEnd::Sampled { WORLDS } else { 1 };
        let draws = (0..worlds).map(|w| Draw::in_world(estimates, &[*bad], w));
        let measures = draws.filter_map(|draw| (limit.measure)(&Case { draw, ..*case }));
        let worst = measures.map(|m| m.utilisation()).fold(0.0, f64::max);
        (bad.0, worst - likely)
    });
    // What moves a limit by less than a part in a thousand sets nothing.
    let moved = moved.filter(|(_, by)| *by > 1.0e-3 * likely.max(1.0e-3));
    moved
        .max_by(|a, b| a.1.total_cmp(&b.1))
        .map(|(unknown, _)| unknown)
}
