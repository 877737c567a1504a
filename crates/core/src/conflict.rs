//! What cannot be had together: of the limits that stand in the way of a task, the fewest of which every candidate
//! breaks one.

use crate::job::Job;
use crate::judge::{Scene, ways_to_try};
use crate::limits::{LIMITS, LimitId};
use crate::loads::LoadBook;
use crate::numbers::Seeker;
use crate::setting::{estimates, held};
use crate::solve::{Solved, WorkedPlan};
use crate::tally::Tally;

/// Most limits that are told as a conflict.
const MOST: usize = 3;

/// The limits in conflict for the task that a plan gets stuck at; none where no cutter fits at all.
pub(crate) fn conflict(job: &Job, worked: &WorkedPlan, stuck: &Solved) -> Vec<LimitId> {
    let at = |solved: &&Vec<Solved>| {
        solved
            .iter()
            .any(|s| s.task == stuck.task && s.way.is_none())
    };
    let index = worked.setups.iter().position(|s| at(&s));
    let Some(setup) = index.and_then(|i| worked.plan.setups.get(i)) else {
        return Vec::new();
    };
    let estimates = estimates(job, setup);
    let scene = Scene {
        job,
        shape: &stuck.found.shape,
        known: &stuck.found.known,
        held: held(job, setup),
        estimates: &estimates,
        loads: &LoadBook::default(),
        tally: &Tally::default(),
    };
    let mut broken: Vec<u64> = Vec::new();
    for (method, cutter) in ways_to_try(&scene).1 {
        broken.extend(Seeker::new(&scene, method, cutter).broken_at_ends());
    }
    broken.sort_unstable();
    broken.dedup();
    fewest(&broken)
}

/// The fewest limits of which each set holds one; the cheapest first where there are several.
fn fewest(sets: &[u64]) -> Vec<LimitId> {
    if sets.is_empty() || sets.contains(&0) {
        return Vec::new();
    }
    let named: Vec<(usize, u64)> = (0..LIMITS.len())
        .map(|i| (i, 1 << i))
        .filter(|(_, bit)| sets.iter().any(|set| set & bit != 0))
        .collect();
    (1..=MOST)
        .find_map(|size| covering(sets, &named, size))
        .unwrap_or_default()
}

/// So many limits of which each set holds one, if there are.
fn covering(sets: &[u64], named: &[(usize, u64)], size: usize) -> Option<Vec<LimitId>> {
    if sets.is_empty() {
        return Some(Vec::new());
    }
    if size == 0 {
        return None;
    }
    named.iter().enumerate().find_map(|(k, (i, bit))| {
        let rest: Vec<u64> = sets.iter().copied().filter(|set| set & bit == 0).collect();
        let mut found = covering(&rest, &named[k + 1..], size - 1)?;
        found.insert(0, LIMITS[*i].id);
        Some(found)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ids(bits: &[usize]) -> Vec<LimitId> {
        bits.iter().map(|i| LIMITS[*i].id).collect()
    }

    #[test]
    fn the_fewest_limits_that_stand_in_every_way() {
        // One limit that all break.
        assert_eq!(fewest(&[0b0111, 0b0010, 0b1010]), ids(&[1]));
        // None is in all: two are.
        assert_eq!(fewest(&[0b0011, 0b0110, 0b1000]), ids(&[1, 3]));
        // A candidate that breaks nothing: no conflict.
        assert_eq!(fewest(&[0b1, 0]), ids(&[]));
        assert_eq!(fewest(&[]), ids(&[]));
    }
}
