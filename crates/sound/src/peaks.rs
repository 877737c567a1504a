//! A peak of a power spectrum: what stands around it, and where its top is between the bins.

use crate::math::{exp, ln, quantile};

/// Bins on either side that belong to the peak itself under Hann's window, and are left out of what stands around it.
const SKIRT: usize = 3;
/// Least number of bins on either side whose median is the floor: fewer and the median of noise itself jumps.
const REACH: usize = 24;

/// The median of the power on either side of a bin, out to the share `reach` of its frequency.
///
/// A median, because other peaks beside it must not lift the floor.
pub(crate) fn floor(power: &[f64], at: usize, reach: f64) -> f64 {
    let reach = crate::math::whole(at as f64 * reach).max(REACH);
    // Why from 1: the mean was taken out, so bin 0 is nothing.
    let below = power.get(at.saturating_sub(reach).max(1)..at.saturating_sub(SKIRT));
    let above = power.get((at + SKIRT + 1).min(power.len())..(at + reach + 1).min(power.len()));
    let mut around: Vec<f64> = [below, above]
        .into_iter()
        .flatten()
        .flatten()
        .copied()
        .collect();
    quantile(&mut around, 0.5)
}

/// Whether a bin is higher than its neighbours.
pub(crate) fn is_top(power: &[f64], at: usize) -> bool {
    at > 0 && at + 1 < power.len() && power[at] > power[at - 1] && power[at] >= power[at + 1]
}

/// Place (bins) and height of the top at a bin that is higher than its neighbours.
///
/// The parabola through the logarithms of three bins; under Hann's window it is off by 0.02 bins at worst.
/// Source: any text on spectra, from memory; the bound is measured in the tests.
pub(crate) fn top(power: &[f64], at: usize) -> (f64, f64) {
    let level = |i: usize| ln(power[i].max(f64::MIN_POSITIVE));
    let (before, here, after) = (level(at - 1), level(at), level(at + 1));
    let bend = before - 2.0 * here + after;
    if bend >= 0.0 {
        return (at as f64, power[at]);
    }
    let shift = (0.5 * (before - after) / bend).clamp(-0.5, 0.5);
    let height = here - 0.25 * (before - after) * shift;
    (at as f64 + shift, exp(height))
}
