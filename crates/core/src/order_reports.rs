//! The orders that were worked out, as they are told: what came of each, and what set it aside.

use crate::job::Job;
use crate::limits::LimitId;
use crate::solve::WorkedPlan;
use crate::strategy::{Decided, OrderReport, OrderVerdict, Verdict};
use crate::task::TaskKind;
use thinwright_quantity::{Duration, Stiffness};

/// The plans, the chosen one first, the others by price, those that fail last.
pub(crate) fn orders(job: &Job, best: &WorkedPlan, all: &[WorkedPlan]) -> Vec<OrderReport> {
    let mut others: Vec<&WorkedPlan> = all.iter().filter(|p| p.plan != best.plan).collect();
    others.sort_by_key(|p| (p.stuck().is_some(), p.price));
    let others = others.into_iter().map(|other| OrderReport {
        decided: decided(other, best),
        ..order_report(job, other)
    });
    std::iter::once(order_report(job, best))
        .chain(others)
        .collect()
}

/// One plan as it is told.
pub(crate) fn order_report(job: &Job, worked: &WorkedPlan) -> OrderReport {
    let verdict = match worked.stuck() {
        Some(stuck) => OrderVerdict::Fails {
            task: stuck.task.kind,
            limit: stuck
                .found
                .judged
                .failed
                .iter()
                .find_map(|f| match f.verdict {
                    Verdict::Breaks { limit, .. } => Some(limit),
                    _ => None,
                }),
        },
        None => works(worked),
    };
    let last = worked.plan.setups.last();
    let backing = last.and_then(|s| job.holding.backings.get(s.backing));
    OrderReport {
        order: worked.plan.order,
        first: worked.plan.first,
        backing: backing.map_or("none".to_owned(), |b| b.id.clone()),
        boss_bolted: last.is_some_and(|s| s.bolted),
        verdict,
        decided: None,
    }
}

fn works(worked: &WorkedPlan) -> OrderVerdict {
    let warned: Vec<(LimitId, f64)> = worked.ways().filter_map(|w| w.1.warnings.worst).collect();
    let all = worked.setups.iter().flatten();
    let webs = all.filter_map(|s| {
        let ahead = s.found.known.ahead;
        let one_level = s.way.as_ref().is_some_and(|w| w.choice.levels == 1);
        ahead.filter(|_| one_level).or(s.found.known.web)
    });
    let softest = webs.map(|w| 1.0 / w.likely()).fold(f64::INFINITY, f64::min);
    OrderVerdict::Works {
        time: Duration::from_si(worked.time),
        warnings: u32::try_from(warned.len()).unwrap_or(u32::MAX),
        worst: warned.into_iter().max_by(|a, b| a.1.total_cmp(&b.1)),
        softest_web: softest.is_finite().then(|| Stiffness::from_si(softest)),
    }
}

/// A warning of a plan, and its utilisation where it is the worst of its step.
type Warned = (TaskKind, LimitId, Option<f64>);

/// What set a plan aside: a warning that the best does not leave, or a graver one; else the time.
fn decided(other: &WorkedPlan, best: &WorkedPlan) -> Option<Decided> {
    if other.stuck().is_some() {
        return None;
    }
    // The same warning on another task that takes its place, slots blind for slots through, is no new one.
    let count = |plan: &WorkedPlan, limit| plan.warnings().iter().filter(|w| w.1 == limit).count();
    let all = warned(other);
    let new = gravest(all.iter().filter(|w| count(other, w.1) > count(best, w.1)));
    let longer = other.time - best.time;
    let graver = || {
        let known = warned(best);
        let of_best = |limit| {
            let same = known.iter().filter(|w| w.1 == limit);
            same.filter_map(|w| w.2).fold(0.0, f64::max)
        };
        gravest(all.iter().filter(|w| w.2.is_some_and(|u| u > of_best(w.1))))
    };
    let warning = new.or_else(|| if longer > 0.0 { None } else { graver() });
    Some(match warning {
        Some((task, limit, utilisation)) => Decided::Warning {
            task,
            limit,
            utilisation,
        },
        None if longer > 0.0 => Decided::Time(Duration::from_si(longer)),
        None => Decided::Nothing,
    })
}

fn warned(plan: &WorkedPlan) -> Vec<Warned> {
    let size = |task, limit| {
        let of = plan.ways().filter(|w| w.0 == task);
        of.filter_map(|w| w.1.warnings.worst)
            .find(|w| w.0 == limit)
            .map(|w| w.1)
    };
    let all = plan.warnings().into_iter();
    all.map(|(task, limit)| (task, limit, size(task, limit)))
        .collect()
}

/// The warning whose size is known and greatest; else the first.
fn gravest<'a>(warned: impl Iterator<Item = &'a Warned>) -> Option<Warned> {
    warned
        .copied()
        .fold(None, |most: Option<Warned>, next| match most {
            Some(most) if most.2.unwrap_or(0.0) >= next.2.unwrap_or(0.0) => Some(most),
            _ => Some(next),
        })
}
