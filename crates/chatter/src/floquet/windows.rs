//! The stretches of a tooth period in which the same teeth cut.

use core::f64::consts::TAU;

/// Angles closer than this are one \[rad\].
const SAME: f64 = 1.0e-12;

/// A stretch of the tooth period.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Window {
    /// Turn of the cutter at its start and end \[rad\].
    pub(super) start: f64,
    pub(super) end: f64,
    /// Where the teeth that cut stand ahead of that turn \[rad\].
    pub(super) teeth: Vec<f64>,
}

/// The tooth period of `z` teeth that cut between two angles, split at every entry and exit.
pub(super) fn windows(z: u32, phi_st: f64, phi_ex: f64) -> Vec<Window> {
    let pitch = TAU / f64::from(z);
    let mut breaks = vec![0.0, pitch];
    for tooth in 0..z {
        for angle in [phi_st, phi_ex] {
            let turn = angle - f64::from(tooth) * pitch;
            if turn > SAME && turn < pitch - SAME {
                breaks.push(turn);
            }
        }
    }
    breaks.sort_by(f64::total_cmp);
    breaks.dedup_by(|a, b| *a - *b < SAME);
    let pairs = breaks.windows(2);
    let windows = pairs.map(|pair| {
        let middle = 0.5 * (pair[0] + pair[1]);
        let ahead = (0..z).map(|tooth| f64::from(tooth) * pitch);
        let cuts = |by: &f64| middle + by > phi_st && middle + by < phi_ex;
        Window {
            start: pair[0],
            end: pair[1],
            teeth: ahead.filter(cuts).collect(),
        }
    });
    windows.collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use core::f64::consts::PI;

    #[test]
    fn windows_cover_the_period_and_hold_the_arc() {
        for (z, st, ex) in [
            (1, 0.0, 0.4),
            (2, 0.0, PI),
            (3, 0.0, PI),
            (3, 2.5, PI),
            (6, 0.3, 2.9),
            (4, 0.0, PI),
        ] {
            let windows = windows(z, st, ex);
            let pitch = TAU / f64::from(z);
            let whole: f64 = windows.iter().map(|w| w.end - w.start).sum();
            assert!((whole - pitch).abs() < 1e-12);
            // Each tooth is in the cut for the whole arc, spread over the windows.
            let cutting = windows
                .iter()
                .map(|w| (w.end - w.start) * f64::from(u32::try_from(w.teeth.len()).unwrap()));
            assert!(
                (cutting.sum::<f64>() - (ex - st)).abs() < 1e-12,
                "{z} {st} {ex}"
            );
        }
    }
}
