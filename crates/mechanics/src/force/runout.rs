//! Runout: what chip each tooth is left with.

use super::Mill;
use crate::math::{FRAC_PI_2, PI, TAU, cos};

/// Reach of each tooth beyond the mean radius, m, in the order in which the teeth come by.
///
/// The offset of the axis lies where it gives the greatest step between two neighbours, 2 sin(pi / z) times the offset:
/// nobody knows how the cutter sits in its collet.
pub(super) fn reaches(mill: &Mill, teeth: u32) -> Vec<f64> {
    let pitch = TAU / f64::from(teeth);
    let offset = FRAC_PI_2 - PI / f64::from(teeth);
    (0..teeth)
        .map(|j| mill.runout * cos(pitch * f64::from(j) - offset))
        .collect()
}

/// What a tooth finds: how much further it reaches than the tooth one pass ago, two passes ago, up to a full turn, m.
pub(super) fn steps(reaches: &[f64], j: usize) -> Vec<f64> {
    let before = reaches[..j].iter().rev();
    let turn_before = reaches[j..].iter().rev();
    before
        .chain(turn_before)
        .map(|reach| reaches[j] - reach)
        .collect()
}

/// Chip of a tooth where a tooth without runout cuts `even`, m.
///
/// It finds the surface that the deepest of its forerunners left: k passes ago, lower by k feeds and by the difference in
/// reach. Nothing is left where it stays inside that surface, and the next tooth takes the more: the sum over a turn stays.
pub(super) fn chip(steps: &[f64], even: f64) -> f64 {
    let mut least = f64::INFINITY;
    let mut advance = 0.0;
    for step in steps {
        advance += even;
        least = least.min(advance + step);
    }
    least.max(0.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mill(runout: f64) -> Mill {
        Mill {
            d: 6e-3,
            z: 3,
            helix: 0.5,
            runout,
            corner_radius: 0.0,
        }
    }

    #[test]
    fn teeth_share_the_same_sum() {
        for teeth in 1..=6 {
            for runout in [0.0, 4e-6, 3e-5] {
                let reaches = reaches(&mill(runout), teeth);
                let sum: f64 = (0..reaches.len())
                    .map(|j| chip(&steps(&reaches, j), 1e-5))
                    .sum();
                assert!(
                    (sum / (1e-5 * f64::from(teeth)) - 1.0).abs() < 1e-12,
                    "{teeth} {runout}"
                );
            }
        }
    }

    #[test]
    fn chips_are_those_of_a_surface_cut_pass_after_pass() {
        // Keep the surface itself: each tooth cuts down to where it reaches, if it reaches beyond.
        let even = 1.2e-5;
        for teeth in 2..=5 {
            let reaches = reaches(&mill(1e-5), teeth);
            let mut surface = f64::NEG_INFINITY;
            let mut advance = 0.0;
            for turn in 0..4 {
                for (j, reach) in reaches.iter().enumerate() {
                    advance += even;
                    let tip = advance + reach;
                    let cut = (tip - surface).max(0.0);
                    surface = surface.max(tip);
                    if turn > 1 {
                        let found = chip(&steps(&reaches, j), even);
                        assert!((cut - found).abs() < 1e-18, "{teeth} {j}");
                    }
                }
            }
        }
    }

    #[test]
    fn two_teeth_differ_by_the_whole_indicated_runout() {
        // An offset of 5 um reads 10 um on the dial, and that is the difference in reach of two teeth.
        let reaches = reaches(&mill(5e-6), 2);
        assert!(((reaches[0] - reaches[1]).abs() - 1e-5).abs() < 1e-18);
        let chips = [0, 1].map(|j| chip(&steps(&reaches, j), 3e-5));
        assert!((chips[0].max(chips[1]) - 4e-5).abs() < 1e-18);
    }
}
