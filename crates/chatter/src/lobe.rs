//! The zero-order limit at one spindle speed: where the phase between two waves fits the time between two teeth.
//!
//! For comparison with published lobes and for cuts whose force hardly varies (four teeth in a slot: exact there). At light
//! radial cuts it can be unsafe by up to 3.4 times: not to be shown to anybody as a limit.

use crate::math::{Complex, atan2};
use crate::mode::{Cut, Mode};
use crate::zero_order::System;
use core::f64::consts::PI;

/// Frequencies looked at, between a share of the lowest and a multiple of the highest natural frequency.
const GRID: u32 = 6000;
const LOWEST: f64 = 0.02;
const HIGHEST: f64 = 3.0;
/// A change of the phase from one frequency to the next above this is a jump, not a root \[rad\].
const JUMP: f64 = 0.75;
/// Halvings of a bracket.
const HALVINGS: u32 = 45;
/// An eigenvalue below this share of the other (squared) is none: the direction does not give.
const NOTHING: f64 = 1e-20;

/// A limit of stability at one speed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limit {
    /// Limit depth \[m\].
    pub depth: f64,
    /// Angular frequency of the vibration there \[rad/s\].
    pub omega: f64,
}

/// Least zero-order limit at spindle speed `n` \[1/s\]; `None` when there is none in the range of frequencies, or the input is impossible.
///
/// `altintas1995` (from memory). Looks between 0.02 of the lowest and 3 times the highest natural frequency.
#[must_use]
pub fn limit_at_speed(x: &Mode, y: &Mode, cut: &Cut, n: f64) -> Option<Limit> {
    let system = System::new(x, y, cut)?;
    if !(n > 0.0 && n.is_finite()) {
        return None;
    }
    let search = Search {
        system,
        half_period: 0.5 / (n * f64::from(cut.z)),
    };
    let moving = [x, y].into_iter().filter(|mode| mode.k.is_finite());
    let (low, high) = moving.fold((f64::INFINITY, 0.0_f64), |(low, high), mode| {
        (low.min(mode.omega_n), high.max(mode.omega_n))
    });
    let step = (HIGHEST * high - LOWEST * low) / f64::from(GRID);
    let mut least: Option<Limit> = None;
    let mut before = search.system.gains(LOWEST * low);
    for i in 1..=GRID {
        let omega = LOWEST * low + f64::from(i) * step;
        let now = followed(before, search.system.gains(omega));
        for branch in 0..2 {
            let Some(limit) = search.between((omega - step, before), (omega, now), branch) else {
                continue;
            };
            if least.is_none_or(|other| limit.depth < other.depth) {
                least = Some(limit);
            }
        }
        before = now;
    }
    least
}

struct Search<'a> {
    system: System<'a>,
    /// Half the time between two teeth \[s\].
    half_period: f64,
}

impl Search<'_> {
    /// How far the phase of the gain is from what the time between teeth asks, between -pi/2 and pi/2.
    fn residual(&self, omega: f64, gain: Complex) -> f64 {
        let turns = (omega * self.half_period - atan2(gain.re, -gain.im)) / PI;
        (turns - turns.round()) * PI
    }

    fn between(
        &self,
        (mut low, mut at_low): (f64, [Complex; 2]),
        (mut high, at_high): (f64, [Complex; 2]),
        branch: usize,
    ) -> Option<Limit> {
        let real = |gains: &[Complex; 2]| {
            gains[branch].re > 0.0 && gains[branch].norm2() > NOTHING * gains[1 - branch].norm2()
        };
        if !real(&at_low) || !real(&at_high) {
            return None;
        }
        let (first, last) = (
            self.residual(low, at_low[branch]),
            self.residual(high, at_high[branch]),
        );
        if (first < 0.0) == (last < 0.0) || (last - first).abs() > JUMP {
            return None;
        }
        for _ in 0..HALVINGS {
            let mid = 0.5 * (low + high);
            let at_mid = followed(at_low, self.system.gains(mid));
            if (self.residual(mid, at_mid[branch]) < 0.0) == (first < 0.0) {
                (low, at_low) = (mid, at_mid);
            } else {
                high = mid;
            }
        }
        let depth = self.system.scale / at_low[branch].re;
        depth.is_finite().then_some(Limit { depth, omega: low })
    }
}

/// The two eigenvalues in the order in which they continue those before.
fn followed(before: [Complex; 2], now: [Complex; 2]) -> [Complex; 2] {
    let away =
        |p: usize, q: usize| before[0].minus(now[p]).norm2() + before[1].minus(now[q]).norm2();
    if away(0, 1) <= away(1, 0) {
        now
    } else {
        [now[1], now[0]]
    }
}
