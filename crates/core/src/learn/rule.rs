//! The rule: from what was seen to narrower ranges.

use super::seen::Seen;
use super::world::{CELLS, Quantity, World, grid, quantile, reaches};
use crate::estimate::{Estimate, Estimates};
use thinwright_catalog::Numbers;

/// What was seen, taken together, teaches this.
#[derive(Clone, Debug, PartialEq)]
pub struct Taught {
    /// The ranges before, in the order of [`Quantity::ALL`].
    pub before: [Estimate; 3],
    /// Ends of the ranges after: inside those before.
    pub after: [(f64, f64); 3],
    /// Which of what was seen does not agree with the rest, or with any world inside the ranges; then nothing is taught.
    pub at_odds: Vec<usize>,
}

impl Taught {
    /// Ends of a range before and after.
    pub fn of(&self, quantity: Quantity) -> ((f64, f64), (f64, f64)) {
        let at = quantity as usize;
        let before = &self.before[at];
        ((before.low, before.high), self.after[at])
    }
}

/// What everything that was seen teaches of the ranges of a job; its order does not matter.
///
/// Units: estimates in SI.
pub fn teach(estimates: &Estimates, numbers: &Numbers, seen: &[Seen]) -> Taught {
    let before = Quantity::ALL.map(|q| estimates[q.unknown() as usize]);
    let untaught = Taught {
        before,
        after: before.map(|b| (b.low, b.high)),
        at_odds: Vec::new(),
    };
    let sound = |b: &Estimate| b.low > 0.0 && b.high.is_finite() && b.low <= b.high;
    if seen.is_empty() || !before.iter().all(sound) {
        return untaught;
    }
    let untold = |s: &Seen| s.song.is_some_and(|song| !song.told);
    let reaches = match seen.iter().any(untold) {
        true => reaches(numbers.learn_untold_reach),
        false => vec![1.0],
    };
    let worlds = grid(&before, &reaches);
    let each: Vec<Vec<f64>> = seen
        .iter()
        .map(|s| likelihoods(s, &worlds, numbers))
        .collect();
    let weights = weights(&each, worlds.len());
    let at_odds: Vec<usize> = (0..seen.len())
        .filter(|i| disagrees(&each[*i], &weights, numbers.learn_conflict))
        .collect();
    if !at_odds.is_empty() {
        return Taught {
            at_odds,
            ..untaught
        };
    }
    let tail = numbers.learn_tail;
    let mut after = untaught.after;
    for (at, range) in before.iter().enumerate() {
        let cells = cells_along((at, reaches.len()), &weights);
        let mirrored: Vec<f64> = cells.iter().rev().copied().collect();
        let (below, above) = (cut(&cells, tail), cut(&mirrored, tail));
        after[at] = (quantile(range, below), quantile(range, 1.0 - above));
    }
    Taught { after, ..untaught }
}

fn likelihoods(seen: &Seen, worlds: &[World], numbers: &Numbers) -> Vec<f64> {
    let of = |world| seen.likelihood(world, numbers).max(LEAST);
    worlds.iter().map(of).collect()
}

/// Far below any likelihood: each leaves a chance for slips.
const LEAST: f64 = 1.0e-12;

/// Plausibility of each world, 1 in all. Logarithms of each world are added by size, so that not even the last bit depends on
/// the order in which things were seen.
fn weights(each: &[Vec<f64>], worlds: usize) -> Vec<f64> {
    let mut here = vec![0.0; each.len()];
    let sum = |w: usize| {
        here.clear();
        here.extend(each.iter().map(|likely| libm::log(likely[w])));
        here.sort_by(f64::total_cmp);
        here.iter().sum()
    };
    let logs: Vec<f64> = (0..worlds).map(sum).collect();
    let most = logs.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let raw: Vec<f64> = logs.iter().map(|log| libm::exp(log - most)).collect();
    let sum: f64 = raw.iter().sum();
    raw.iter().map(|w| w / sum).collect()
}

/// Whether one thing seen does not agree: no world makes it likely, or those that the rest makes likely do not.
fn disagrees(one: &[f64], weights: &[f64], conflict: f64) -> bool {
    let best = one.iter().copied().fold(0.0, f64::max);
    // What the rest holds of each world is its weight without this one: the weight over this one's likelihood.
    let without: f64 = weights.iter().zip(one).map(|(w, likely)| w / likely).sum();
    best < conflict || 1.0 < conflict * best * without
}

/// Plausibility of each cell along one range, in a grid of so many reaches.
fn cells_along((axis, reaches): (usize, usize), weights: &[f64]) -> Vec<f64> {
    let stride = reaches * CELLS.pow(2 - u32::try_from(axis.min(2)).unwrap_or(2));
    let mut cells = vec![0.0; CELLS];
    for (i, weight) in weights.iter().enumerate() {
        cells[(i / stride) % CELLS] += weight;
    }
    cells
}

/// The greatest share of a range, from its beginning, that has kept at most `tail` of its plausibility. The cells had the
/// same plausibility each; inside a cell it is even.
#[allow(clippy::cast_precision_loss, reason = "a few dozen cells")]
fn cut(cells: &[f64], tail: f64) -> f64 {
    let width = 1.0 / cells.len() as f64;
    let (mut share, mut kept, mut most) = (0.0, 0.0, 0.0);
    for cell in cells {
        // What is left over of what may be kept: at the beginning of the cell, and at its end.
        let from = tail * share - kept;
        let to = tail * (share + width) - (kept + cell);
        if to >= 0.0 {
            most = share + width;
        } else if from > 0.0 {
            most = share + width * from / (from - to);
        }
        share += width;
        kept += cell;
    }
    most
}
