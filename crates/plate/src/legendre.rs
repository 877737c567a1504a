//! Orthonormal polynomials that meet an edge condition, for Ritz's method on the span -1 to 1.

use crate::math::cos;
use core::f64::consts::PI;

/// Newton steps that bring a Gauss point to the last digits.
const NEWTON: u32 = 8;

/// Nodes and weights of Gauss's quadrature with `n` points on -1 to 1.
pub(crate) fn gauss(n: u32) -> Vec<(f64, f64)> {
    let count = f64::from(n);
    (0..n)
        .map(|i| {
            let mut x = cos(PI * (f64::from(i) + 0.75) / (count + 0.5));
            let mut slope = 1.0;
            for _ in 0..NEWTON {
                let (mut p, mut before) = (1.0, 0.0);
                for k in 1..=n {
                    let m = f64::from(k);
                    (p, before) = (((2.0 * m - 1.0) * x * p - (m - 1.0) * before) / m, p);
                }
                slope = count * (x * p - before) / (x * x - 1.0);
                x -= p / slope;
            }
            (x, 2.0 / ((1.0 - x * x) * slope * slope))
        })
        .collect()
}

/// Value, slope and curvature of a function.
pub(crate) type Jet = [f64; 3];

fn times(a: Jet, b: Jet) -> Jet {
    [
        a[0] * b[0],
        a[1] * b[0] + a[0] * b[1],
        a[2] * b[0] + 2.0 * a[1] * b[1] + a[0] * b[2],
    ]
}

/// Polynomials (1 + x)^p (1 - x)^q times degree 0, 1, ..., orthonormal on -1 to 1 (mass 1).
///
/// p, q are 0 for a free end, 1 for a supported one, 2 for a clamped one.
pub(crate) struct Basis {
    ends: (u32, u32),
    /// For each degree: shift, coupling to the one before, and norm of the three-term recurrence.
    steps: Vec<(f64, f64)>,
    first: f64,
}

impl Basis {
    /// The first `count` polynomials, made orthonormal on the points of a quadrature that is exact for them.
    pub(crate) fn new(ends: (u32, u32), count: usize, points: &[(f64, f64)]) -> Self {
        let mut basis = Self {
            ends,
            steps: Vec::new(),
            first: 1.0,
        };
        let norm: f64 = points
            .iter()
            .map(|&(x, w)| w * basis.end_factor(x)[0] * basis.end_factor(x)[0])
            .sum();
        basis.first = 1.0 / norm.sqrt();
        let mut now: Vec<f64> = points
            .iter()
            .map(|&(x, _)| basis.end_factor(x)[0] * basis.first)
            .collect();
        let mut before = vec![0.0; now.len()];
        let mut coupling = 0.0;
        for _ in 1..count {
            let shift: f64 = points
                .iter()
                .zip(&now)
                .map(|(&(x, w), v)| w * x * v * v)
                .sum();
            let next: Vec<f64> = points
                .iter()
                .zip(now.iter().zip(&before))
                .map(|(&(x, _), (v, u))| (x - shift) * v - coupling * u)
                .collect();
            let size = points
                .iter()
                .zip(&next)
                .map(|(&(_, w), v)| w * v * v)
                .sum::<f64>()
                .sqrt();
            basis.steps.push((shift, size));
            before = now;
            now = next.into_iter().map(|v| v / size).collect();
            coupling = size;
        }
        basis
    }

    /// How many polynomials there are.
    pub(crate) fn count(&self) -> usize {
        self.steps.len() + 1
    }

    fn end_factor(&self, x: f64) -> Jet {
        let mut jet = [1.0, 0.0, 0.0];
        for _ in 0..self.ends.0 {
            jet = times(jet, [1.0 + x, 1.0, 0.0]);
        }
        for _ in 0..self.ends.1 {
            jet = times(jet, [1.0 - x, -1.0, 0.0]);
        }
        jet
    }

    /// All polynomials with slope and curvature at `x`.
    pub(crate) fn at(&self, x: f64) -> Vec<Jet> {
        let mut now = self.end_factor(x).map(|v| v * self.first);
        let mut before = [0.0; 3];
        let mut coupling = 0.0;
        let mut all = vec![now];
        for &(shift, size) in &self.steps {
            let mut next = times([x - shift, 1.0, 0.0], now);
            for (value, old) in next.iter_mut().zip(before) {
                *value = (*value - coupling * old) / size;
            }
            (before, now, coupling) = (now, next, size);
            all.push(now);
        }
        all
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn polynomials_are_orthonormal_and_their_slopes_are_right() {
        let points = gauss(24);
        assert!((points.iter().map(|p| p.1).sum::<f64>() - 2.0).abs() < 1e-13);
        for ends in [(2, 2), (2, 0), (1, 1), (0, 0)] {
            let basis = Basis::new(ends, 14, &points);
            for i in 0..14 {
                for k in 0..=i {
                    let dot: f64 = points
                        .iter()
                        .map(|&(x, w)| w * basis.at(x)[i][0] * basis.at(x)[k][0])
                        .sum();
                    let expected = if i == k { 1.0 } else { 0.0 };
                    assert!((dot - expected).abs() < 1e-11, "{ends:?} {i} {k}: {dot}");
                }
            }
            let (low, mid, high) = (basis.at(0.3 - 1e-5), basis.at(0.3), basis.at(0.3 + 1e-5));
            for i in 0..14 {
                assert!(
                    ((high[i][0] - low[i][0]) / 2e-5 - mid[i][1]).abs()
                        < 1e-5 * (1.0 + mid[i][2].abs())
                );
                assert!(
                    ((high[i][1] - low[i][1]) / 2e-5 - mid[i][2]).abs()
                        < 1e-3 * (1.0 + mid[i][2].abs())
                );
            }
        }
    }
}
