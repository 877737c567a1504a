//! What is heard at a crossing: which mode vibrates, and at which frequency.
//!
//! The vibration of a multiplier is a wave of many frequencies, one tooth rate apart. Which of them is the strongest is
//! seen by following it over one tooth period.

use super::march;
use super::period::{Crossing, Kind};
use super::small::solve;
use super::system::System;
use crate::math::{Complex, atan2, cos, exp, sin};
use core::f64::consts::TAU;

/// Steps over one vibration of the fastest mode.
const STEPS: f64 = 40.0;
/// Fewest and most steps over a tooth period.
const FEWEST: f64 = 64.0;
const MOST: f64 = 20_000.0;
/// Frequencies are looked at up to so many times the fastest mode's.
const REACH: f64 = 1.6;

/// What vibrates at a crossing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Song {
    /// Which of the modes handed in holds the most energy.
    pub mode: usize,
    /// Angular frequency of the strongest component of the movement between cutter and work \[rad/s\].
    pub omega: f64,
}

impl System {
    /// What vibrates at a crossing that was found at spindle speed `n` \[1/s\]; `None` for one that is not of that speed, or that was not
    /// seen.
    #[must_use]
    pub fn song(&self, n: f64, crossing: &Crossing) -> Option<Song> {
        let depth = crossing.depth;
        let sound = n > 0.0 && n.is_finite() && depth > 0.0 && depth.is_finite();
        if !sound || crossing.kind == Kind::Unseen {
            return None;
        }
        let multiplier = Complex::new(crossing.multiplier.0, crossing.multiplier.1);
        let start = self.start(n, depth, multiplier)?;
        Some(self.followed(n, depth, multiplier, start))
    }

    /// The state at the start of a tooth period that a multiplier multiplies, by inverse iteration: positions, then velocities
    /// over omega.
    fn start(&self, n: f64, depth: f64, multiplier: Complex) -> Option<Vec<Complex>> {
        let state = march::through(self, n, 2.0 * depth);
        let size = state.size;
        let conjugate = Complex::new(multiplier.re, -multiplier.im);
        let x = Complex::new(1.0, 0.0).minus(conjugate).scale(0.5);
        let mut matrix = vec![Complex::new(0.0, 0.0); size * size];
        for term in state.terms.chunks_exact(size * size).rev() {
            for (m, t) in matrix.iter_mut().zip(term) {
                *m = m.times(x).plus(Complex::new(*t, 0.0));
            }
        }
        for i in 0..size {
            matrix[i * size + i] = matrix[i * size + i].minus(multiplier.scale(1.0 + 1.0e-9));
        }
        let mut shape = vec![Complex::new(1.0, 0.3); size];
        for _ in 0..3 {
            solve(matrix.clone(), &mut shape);
            let most = shape.iter().map(|s| s.norm2()).fold(0.0, f64::max).sqrt();
            shape.iter_mut().for_each(|s| *s = s.scale(1.0 / most));
        }
        shape.iter().all(|s| s.norm2().is_finite()).then_some(shape)
    }

    /// Follows the vibration over one tooth period: half a step free, what the cut does at once, half a step free.
    fn followed(&self, n: f64, depth: f64, multiplier: Complex, mut state: Vec<Complex>) -> Song {
        let modes = self.modes.len();
        let time = 1.0 / (n * f64::from(self.teeth));
        let cycles = time * self.fastest / TAU;
        let steps = (STEPS * cycles).clamp(FEWEST, MOST).ceil();
        let step = time / steps;
        let conjugate = Complex::new(multiplier.re, -multiplier.im);
        let strength = Complex::new(1.0, 0.0).minus(conjugate).scale(-depth * step);
        let free: Vec<[f64; 4]> = self.modes.iter().map(|m| free(*m, 0.5 * step)).collect();
        let theta = atan2(multiplier.im, multiplier.re);
        let mut tones = Tones::new(theta, (REACH * cycles).ceil() + 1.0);
        let mut energy = vec![0.0; modes];
        let mut at = 0.0;
        while at < steps {
            drift(&mut state, &free);
            let turn = TAU * n * step * (at + 0.5);
            if let Some(window) = self
                .windows
                .iter()
                .find(|w| turn < w.end)
                .filter(|w| !w.teeth.is_empty())
            {
                let coupling = self.coupling(turn, &window.teeth);
                for i in 0..modes {
                    let row = &coupling[i * modes..(i + 1) * modes];
                    let pushed = row
                        .iter()
                        .zip(&state)
                        .fold(Complex::new(0.0, 0.0), |s, (k, q)| s.plus(q.scale(*k)));
                    let by = strength.times(pushed).scale(1.0 / self.modes[i].0);
                    state[modes + i] = state[modes + i].plus(by);
                }
            }
            drift(&mut state, &free);
            at += 1.0;
            for (i, e) in energy.iter_mut().enumerate() {
                *e += self.stiffness[i] * (state[i].norm2() + state[modes + i].norm2());
            }
            tones.hear(at / steps, &self.movement(&state));
        }
        let mode = (0..modes)
            .max_by(|a, b| energy[*a].total_cmp(&energy[*b]))
            .unwrap_or(0);
        Song {
            mode: self.given[mode],
            omega: tones.strongest() / time,
        }
    }

    /// Movement between cutter and work along x, y and z.
    fn movement(&self, state: &[Complex]) -> [Complex; 3] {
        let mut sum = [Complex::new(0.0, 0.0); 3];
        for (along, q) in self.along.iter().zip(state) {
            for (sum, along) in sum.iter_mut().zip(along) {
                *sum = sum.plus(q.scale(*along));
            }
        }
        sum
    }
}

/// Position after position and after velocity (over omega), velocity after both, of a mode left alone for a while.
fn free((omega, zeta): (f64, f64), time: f64) -> [f64; 4] {
    let root = (1.0 - zeta * zeta).sqrt();
    let (e, turn) = (exp(-zeta * omega * time), omega * root * time);
    let (c, s) = (cos(turn), sin(turn) / root);
    [e * (c + zeta * s), e * s, -e * s, e * (c - zeta * s)]
}

fn drift(state: &mut [Complex], free: &[[f64; 4]]) {
    let modes = free.len();
    for (i, [qq, qp, pq, pp]) in free.iter().enumerate() {
        let (q, p) = (state[i], state[modes + i]);
        state[i] = q.scale(*qq).plus(p.scale(*qp));
        state[modes + i] = q.scale(*pq).plus(p.scale(*pp));
    }
}

/// Components of a movement, by how many turns more than theta they make in a tooth period.
struct Tones {
    theta: f64,
    lowest: f64,
    sums: Vec<[Complex; 3]>,
}

impl Tones {
    fn new(theta: f64, most: f64) -> Tones {
        let mut sums = Vec::new();
        let mut turns = -most;
        while turns <= most {
            sums.push([Complex::new(0.0, 0.0); 3]);
            turns += 1.0;
        }
        Tones {
            theta,
            lowest: -most,
            sums,
        }
    }

    /// Phase per tooth period of a component.
    fn phase(&self, i: usize) -> f64 {
        self.theta + TAU * (self.lowest + super::nodes::size(i))
    }

    fn hear(&mut self, share: f64, movement: &[Complex; 3]) {
        // From one component to the next the phase grows by a full turn over the period.
        let first = self.phase(0) * share;
        let mut w = Complex::new(cos(first), -sin(first));
        let next = Complex::new(cos(TAU * share), -sin(TAU * share));
        for sums in &mut self.sums {
            for (sum, m) in sums.iter_mut().zip(movement) {
                *sum = sum.plus(m.times(w));
            }
            w = w.times(next);
        }
    }

    /// The phase per tooth period of the strongest component, without its sign.
    fn strongest(&self) -> f64 {
        let size = |i: usize| self.sums[i].iter().map(|s| s.norm2()).sum::<f64>();
        let best = (0..self.sums.len()).max_by(|a, b| size(*a).total_cmp(&size(*b)));
        self.phase(best.unwrap_or(0)).abs()
    }
}
