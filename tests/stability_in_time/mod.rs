//! Milling integrated in time: a witness that knows nothing of periods, multipliers or averages. SI throughout.
//!
//! Axes: x feed, y normal to it, z along the cutter's axis away from its tip. A tooth at phi from +y looks outward along
//! (sin, cos, 0), and its cutting force pushes the tool along (-cos, sin, 0).
#![allow(dead_code, reason = "not every test asks for both ways")]

pub(crate) mod linear;
pub(crate) mod physical;

use core::f64::consts::TAU;

/// Pieces that a corner's edge is summed over.
const PIECES: u32 = 200;
/// A tooth that enters or leaves within this angle of another does so with it.
const SAME: f64 = 1e-12;

/// A mode of vibration between cutter and work.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Swinging {
    pub(crate) k: f64,
    pub(crate) zeta: f64,
    pub(crate) omega: f64,
    /// Unit vector.
    pub(crate) along: [f64; 3],
}

/// A cutter in the work.
#[derive(Debug, Clone)]
pub(crate) struct Milling {
    pub(crate) z: u32,
    pub(crate) phi_st: f64,
    pub(crate) phi_ex: f64,
    pub(crate) kt: f64,
    pub(crate) kn: f64,
    /// Turns per second.
    pub(crate) n: f64,
    /// Radius of the corner and axial depth; without, the edge is as long as the depth that is asked for.
    pub(crate) corner: Option<(f64, f64)>,
    pub(crate) modes: Vec<Swinging>,
}

/// A stretch of a tooth period with the same teeth in the cut: angles of tooth 0 at both ends, how far the others are ahead.
struct Stretch {
    from: f64,
    to: f64,
    ahead: Vec<f64>,
}

impl Milling {
    fn pitch(&self) -> f64 {
        TAU / f64::from(self.z)
    }

    /// Time between two teeth.
    fn period(&self) -> f64 {
        1.0 / (self.n * f64::from(self.z))
    }

    fn stretches(&self) -> Vec<Stretch> {
        let pitch = self.pitch();
        let teeth = || (0..self.z).map(|j| pitch * f64::from(j));
        let mut ends = vec![0.0, pitch];
        for edge in [self.phi_st, self.phi_ex] {
            ends.extend(
                teeth()
                    .map(|ahead| edge - ahead)
                    .filter(|at| *at > SAME && *at < pitch - SAME),
            );
        }
        ends.sort_by(f64::total_cmp);
        ends.dedup_by(|a, b| *a - *b < SAME);
        let stretch = |pair: &[f64]| {
            let middle = 0.5 * (pair[0] + pair[1]);
            let cuts = |ahead: &f64| middle + ahead > self.phi_st && middle + ahead < self.phi_ex;
            Stretch {
                from: pair[0],
                to: pair[1],
                ahead: teeth().filter(cuts).collect(),
            }
        };
        ends.windows(2).map(stretch).collect()
    }

    /// Pieces of the edge: sine and cosine of the lead angle, length.
    fn edge(&self) -> Vec<[f64; 3]> {
        let Some((radius, depth)) = self.corner else {
            return vec![[1.0, 0.0, 1.0]];
        };
        let steepest = libm::acos((radius - depth).max(0.0) / radius);
        let step = steepest / f64::from(PIECES);
        let on_corner = (0..PIECES).map(|i| {
            let kappa = step * (f64::from(i) + 0.5);
            [libm::sin(kappa), libm::cos(kappa), radius * step]
        });
        let side = [1.0, 0.0, (depth - radius).max(0.0)];
        on_corner.chain([side]).collect()
    }

    /// Change of the force on each mode with the place of each, negated, with tooth 0 at `phi`: for an edge of length 1, or the corner's.
    fn force_change(&self, edge: &[[f64; 3]], phi: f64, ahead: &[f64]) -> Vec<Vec<f64>> {
        let dot = |a: &[f64; 3], b: &[f64; 3]| a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
        let count = self.modes.len();
        let mut change = vec![vec![0.0; count]; count];
        for turned in ahead.iter().map(|ahead| phi + ahead) {
            let (s, c) = (libm::sin(turned), libm::cos(turned));
            for [lead_s, lead_c, length] in edge {
                let normal = [lead_s * s, lead_s * c, -lead_c];
                let force =
                    core::array::from_fn(|i| self.kn * normal[i] - self.kt * [-c, s, 0.0][i]);
                for (row, pushed) in change.iter_mut().zip(&self.modes) {
                    let push = length * dot(&force, &pushed.along);
                    for (entry, moved) in row.iter_mut().zip(&self.modes) {
                        *entry += push * dot(&normal, &moved.along);
                    }
                }
            }
        }
        change
    }
}
