//! Curves of limits over the spindle speed, the same that `tests/peers/pace.py` works out.

use core::f64::consts::TAU;
use std::time::Instant;
use thinwright_chatter::floquet::{Moving, System};
use thinwright_chatter::{Cut, Edge, Mode, down_milling};

/// The set IS04 of `shared/reference/stability.json`: two teeth, one mode in feed, or the same across it too.
const MODE: Mode = Mode {
    k: 1_340_049.648_050_748_7,
    zeta: 0.011,
    omega_n: TAU * 922.0,
};
const TEETH: u32 = 2;
const KT: f64 = 6.0e8;
const KR_RATIO: f64 = 1.0 / 3.0;
/// Speeds of a curve: how many, from, to, 1/s.
const SPEEDS: u32 = 200;
const LOW: f64 = 5000.0 / 60.0;
const HIGH: f64 = 25_000.0 / 60.0;
/// Width of cut over the diameter by its name.
const WIDTHS: [(&str, f64); 3] = [("slot", 1.0), ("half", 0.5), ("twentieth", 0.05)];
/// Runs of which the quickest and the median count.
const RUNS: usize = 21;

/// A curve, and how long it took.
pub(crate) struct Curve {
    pub(crate) width: &'static str,
    pub(crate) modes: usize,
    /// Greatest depth looked at, m.
    pub(crate) most: f64,
    /// All runs, ms.
    pub(crate) ms: Vec<f64>,
    /// Speeds without a limit up to that depth.
    pub(crate) none: usize,
}

/// Works all of them out up to the depths that a peer's table names for a width and a number of modes.
pub(crate) fn run(most: impl Fn(&str, usize) -> f64) -> Vec<Curve> {
    let mut curves = Vec::new();
    for (width, share) in WIDTHS {
        for modes in [1, 2] {
            curves.push(curve((width, share), modes, most(width, modes)));
        }
    }
    curves
}

fn curve((width, share): (&'static str, f64), modes: usize, most: f64) -> Curve {
    let mut found = Vec::new();
    let run = || {
        let start = Instant::now();
        found = limits(share, modes, most);
        start.elapsed().as_secs_f64() * 1.0e3
    };
    let ms = std::iter::repeat_with(run).take(RUNS).collect();
    let none = found.iter().filter(|limit| limit.is_none()).count();
    Curve {
        width,
        modes,
        most,
        ms,
        none,
    }
}

/// The first depth that sings at each speed, m, all made anew.
fn limits(share: f64, modes: usize, most: f64) -> Vec<Option<f64>> {
    let (phi_st, phi_ex) = down_milling(share);
    let cut = Cut {
        z: TEETH,
        phi_st,
        phi_ex,
        kt: KT,
        kr_ratio: KR_RATIO,
    };
    let moving = [Moving::x(MODE), Moving::y(MODE)];
    let system = System::new(&moving[..modes], &cut, &Edge::sharp()).expect("a sound set");
    let step = (HIGH - LOW) / f64::from(SPEEDS - 1);
    let speeds = (0..SPEEDS).map(|i| LOW + step * f64::from(i));
    let limit = |n| Some(system.limit(n, most)?.depth);
    speeds.map(limit).collect()
}
