//! The lowest tones of a plate, by subspace iteration with the factor that answers compliance too.
//!
//! Bathe, Finite Element Procedures (1996), ch. 11. Masses are lumped at the nodes.

use super::plate::Plate;
use crate::dense::{Cholesky, symmetric_eigen};
use core::f64::consts::TAU;

/// Rounds after which the tones are taken as they stand; they usually take ten.
const ROUNDS: u32 = 60;
/// Change of the squared frequencies, as a share, at which they are found.
const SETTLED: f64 = 1e-5;

/// A tone.
#[derive(Debug, Clone, PartialEq)]
pub struct Tone {
    /// Its frequency \[Hz\].
    pub frequency: f64,
    /// Deflection of each node, the greatest 1 in size.
    pub shape: Vec<f64>,
}

type Many<const Q: usize> = Vec<[[f64; Q]; 3]>;

impl Plate<'_> {
    /// The lowest tones, lowest first, searched among `Q` shapes: take four more than are wanted.
    ///
    /// Fewer come back where fewer masses can move, none where the search does not settle.
    pub fn tones<const Q: usize>(&self, count: usize) -> Vec<Tone> {
        let pattern = &self.grid.pattern;
        let mut x = self.begin::<Q>();
        let mut last = [0.0; Q];
        for _ in 0..ROUNDS {
            let y = self.times_mass(&x);
            let mut z = y.clone();
            self.factor.forward(pattern, &mut z);
            self.factor.backward(pattern, &mut z);
            let Some((values, mix)) = reduced(&z, &y, &self.times_mass(&z)) else {
                return Vec::new();
            };
            x = mixed(&z, &mix);
            let wanted = values.iter().zip(&last).take(count);
            let settled = wanted
                .clone()
                .all(|(now, was)| (now - was).abs() <= SETTLED * now.abs());
            last = values;
            if settled {
                return self.told(&x, &values, count);
            }
        }
        Vec::new()
    }

    /// Shapes to begin with: an even push, then pushes that look drawn by lot.
    fn begin<const Q: usize>(&self) -> Many<Q> {
        let mut seed: u32 = 1;
        let mut lot = || {
            seed = seed.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            f64::from(seed >> 8) / f64::from(1_u32 << 23) - 1.0
        };
        let node = |_| {
            [
                core::array::from_fn(|q| if q == 0 { 1.0 } else { lot() }),
                [0.0; Q],
                [0.0; Q],
            ]
        };
        (0..self.grid.pattern.len()).map(node).collect()
    }

    fn times_mass<const Q: usize>(&self, x: &Many<Q>) -> Many<Q> {
        let node =
            |(x, m): (&[[f64; Q]; 3], &[f64; 3])| core::array::from_fn(|d| x[d].map(|v| v * m[d]));
        x.iter().zip(&self.mass).map(node).collect()
    }

    fn told<const Q: usize>(&self, x: &Many<Q>, values: &[f64; Q], count: usize) -> Vec<Tone> {
        let tone = |q: usize| {
            let w = self
                .grid
                .pattern
                .row_of
                .iter()
                .map(|&row| x[row as usize][0][q]);
            let most = w
                .clone()
                .fold(0.0, |m: f64, v| if v.abs() > m.abs() { v } else { m });
            Tone {
                frequency: values[q].max(0.0).sqrt() / TAU,
                shape: w.map(|v| v / most).collect(),
            }
        };
        (0..count.min(Q)).map(tone).collect()
    }
}

/// Products of the shapes, each with each.
fn products<const Q: usize>(a: &Many<Q>, b: &Many<Q>) -> Vec<f64> {
    let mut sums = [[0.0; Q]; Q];
    for (a, b) in a.iter().flatten().zip(b.iter().flatten()) {
        for (row, a) in sums.iter_mut().zip(a) {
            for (sum, b) in row.iter_mut().zip(b) {
                *sum += a * b;
            }
        }
    }
    sums.into_iter().flatten().collect()
}

/// Squared circular frequencies, ascending, of the plate held to these shapes, and how to mix them;
/// `None` where they are not independent.
fn reduced<const Q: usize>(
    z: &Many<Q>,
    kz: &Many<Q>,
    mz: &Many<Q>,
) -> Option<([f64; Q], [[f64; Q]; Q])> {
    let (k, m) = (products(z, kz), products(z, mz));
    // Each shape to unit mass first, so that the roundings of one do not drown another.
    let unit: Vec<f64> = (0..Q).map(|q| 1.0 / m[q * Q + q].sqrt()).collect();
    let scaled = |a: &[f64]| -> Vec<f64> {
        (0..Q * Q)
            .map(|at| a[at] * unit[at / Q] * unit[at % Q])
            .collect()
    };
    let factor = Cholesky::new(Q, scaled(&m))?;
    // R^-1 K R^-T: rows, then columns.
    let mut a = scaled(&k);
    for _ in 0..2 {
        for row in a.chunks_exact_mut(Q) {
            factor.forward(row);
        }
        a = (0..Q * Q).map(|at| a[(at % Q) * Q + at / Q]).collect();
    }
    let (values, vectors) = symmetric_eigen(Q, &mut a);
    let mut order: [usize; Q] = core::array::from_fn(|q| q);
    order.sort_by(|a, b| values[*a].total_cmp(&values[*b]));
    let mut mix = [[0.0; Q]; Q];
    for (to, &from) in order.iter().enumerate() {
        let mut vector: Vec<f64> = (0..Q).map(|r| vectors[r * Q + from]).collect();
        factor.backward(&mut vector);
        for r in 0..Q {
            mix[r][to] = vector[r] * unit[r];
        }
    }
    Some((order.map(|q| values[q]), mix))
}

fn mixed<const Q: usize>(z: &Many<Q>, mix: &[[f64; Q]; Q]) -> Many<Q> {
    let row = |z: &[f64; Q]| {
        let mut out = [0.0; Q];
        for (z, mix) in z.iter().zip(mix) {
            for (out, mix) in out.iter_mut().zip(mix) {
                *out += z * mix;
            }
        }
        out
    };
    z.iter()
        .map(|node| core::array::from_fn(|d| row(&node[d])))
        .collect()
}
