//! Holds limits against a candidate: at the bad ends of what they depend on.

use super::{LIMITS, Limit, Severity, remedies};
use crate::case::Case;
use crate::estimate::{Draw, Unknown};
use crate::strategy::{Finding, Measure};

/// The measure of a limit with its unknowns at their bad ends.
fn at_worst(limit: &Limit, case: &Case) -> Option<Measure> {
    let draw = Draw::at(&case.estimates, limit.bad_ends);
    (limit.measure)(&Case { draw, ..*case })
}

/// Utilisation of a limit at the bad ends; 0 where it does not apply, infinite where it cannot be computed.
pub fn utilisation(limit: &Limit, case: &Case) -> f64 {
    at_worst(limit, case).map_or(0.0, |m| m.utilisation())
}

/// The first limit that can refuse and is broken, with its measure.
pub fn first_broken(case: &Case) -> Option<(&'static Limit, Measure)> {
    let refusing = LIMITS
        .iter()
        .filter(|l| l.id.spec().severity <= Severity::Quality);
    let mut measured = refusing.filter_map(|l| at_worst(l, case).map(|m| (l, m)));
    measured.find(|(_, m)| m.utilisation() > 1.0)
}

/// The warning that is worst broken, if any is: limits that steer the choice but never refuse.
pub(crate) fn worst_warning(case: &Case) -> Option<(&'static Limit, f64)> {
    let steering = LIMITS
        .iter()
        .filter(|l| l.id.spec().severity == Severity::Advice);
    let broken = steering
        .map(|l| (l, utilisation(l, case)))
        .filter(|(_, u)| *u > 1.0);
    broken.fold(None, |worst: Option<(&Limit, f64)>, next| match worst {
        Some(worst) if worst.1 >= next.1 => Some(worst),
        _ => Some(next),
    })
}

/// Everything there is to say of one limit; `None` where it does not apply.
pub fn finding(limit: &'static Limit, case: &Case) -> Option<Finding> {
    let at_worst = at_worst(limit, case)?;
    let likely = Draw::likely(&case.estimates);
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
    let moved = limit.bad_ends.iter().map(|bad| {
        let draw = Draw::at(&case.estimates, &[*bad]);
        let measure = (limit.measure)(&Case { draw, ..*case });
        (bad.0, measure.map_or(0.0, |m| m.utilisation()) - likely)
    });
    // What moves a limit by less than a part in a thousand sets nothing.
    let moved = moved.filter(|(_, by)| *by > 1.0e-3 * likely.max(1.0e-3));
    moved
        .max_by(|a, b| a.1.total_cmp(&b.1))
        .map(|(unknown, _)| unknown)
}
