//! One way for every task of a plan, so that time, warnings and cutter changes together cost least: exact.

use crate::job::Job;
use crate::judge::Way;
use crate::look::ms;
use crate::order::Plan;
use crate::setting::setting_up;
use crate::solve::{Solved, WorkedPlan};
use std::collections::BTreeMap;

/// Chooses one way per task so that time, warnings and cutter changes together are least: exact, by going through the
/// tasks with the cheapest way to stand there with each cutter.
pub(crate) fn choose(job: &Job, plan: Plan, mut setups: Vec<Vec<Solved>>) -> WorkedPlan {
    let (price, path) = cheapest(job, &setups);
    for (solved, way) in setups.iter_mut().flatten().zip(path) {
        solved.way = way.map(|i| solved.found.judged.ways[i].clone());
    }
    let ways: Vec<&Way> = setups
        .iter()
        .flatten()
        .filter_map(|s| s.way.as_ref())
        .collect();
    let mut changes = 0;
    let mut last = None;
    for way in &ways {
        // The drill goes in, and the mill comes in after it whatever was there before.
        if last != Some(way.cutter) || way.drilled {
            changes += 1 + u32::from(way.drilled);
            last = Some(way.cutter);
        }
    }
    let around: f64 = plan.setups.iter().map(|s| setting_up(job, s)).sum();
    let cutting: f64 = ways.iter().map(|w| w.time).sum();
    // The change to the drill is in the time of the step.
    let drills = u32::try_from(ways.iter().filter(|w| w.drilled).count()).unwrap_or(0);
    let time = cutting + f64::from(changes - drills) * job.machine.change + around;
    let price = price + ms(around);
    WorkedPlan {
        plan,
        setups,
        time,
        price,
        changes,
    }
}

/// A price so far, ms, and the ways that led there.
type Standing = (i64, Vec<Option<usize>>);

/// The least price of all tasks and the ways that give it.
fn cheapest(job: &Job, setups: &[Vec<Solved>]) -> Standing {
    let change = ms(job.machine.change);
    // One standing per cutter in the spindle.
    let mut front: BTreeMap<Option<u8>, Standing> = BTreeMap::from([(None, (0, Vec::new()))]);
    for solved in setups.iter().flatten() {
        let ways = &solved.found.judged.ways;
        let mut next: BTreeMap<Option<u8>, Standing> = BTreeMap::new();
        let mut offer =
            |cutter: Option<u8>, price: i64, path: &[Option<usize>], way: Option<usize>| {
                if next.get(&cutter).is_none_or(|(best, _)| price < *best) {
                    let path = path.iter().copied().chain([way]).collect();
                    next.insert(cutter, (price, path));
                }
            };
        for (cutter, (price, path)) in &front {
            if ways.is_empty() {
                offer(*cutter, *price, path, None);
            }
            for (i, way) in ways.iter().enumerate() {
                let same = *cutter == Some(way.cutter) && !way.drilled;
                let price = price + way.price + if same { 0 } else { change };
                offer(Some(way.cutter), price, path, Some(i));
            }
        }
        front = next;
    }
    let best = front.into_values().min_by_key(|standing| standing.0);
    best.unwrap_or_default()
}
