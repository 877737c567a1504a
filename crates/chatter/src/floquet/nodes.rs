//! Gauss points on 0..1: their weights, and the integrals from 0 to each of them.

/// How many points an element has.
pub(super) const NODES: usize = 12;
/// Newton steps that settle a root of a Legendre polynomial to the last bit.
const STEPS: u32 = 8;

/// Gauss-Legendre points on 0..1 with what integrates the polynomial through them.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Nodes {
    /// The points.
    pub(super) at: [f64; NODES],
    /// Weights of the integral from 0 to 1.
    pub(super) whole: [f64; NODES],
    /// Weights of the integral from 0 to each point.
    pub(super) up_to: [[f64; NODES]; NODES],
}

/// Legendre polynomials of degree 0 to [`NODES`] at x.
fn legendre(x: f64) -> [f64; NODES + 1] {
    let mut p = [1.0; NODES + 1];
    p[1] = x;
    let mut k = 1.0;
    for i in 2..=NODES {
        k += 1.0;
        p[i] = ((2.0 * k - 1.0) * x * p[i - 1] - (k - 1.0) * p[i - 2]) / k;
    }
    p
}

impl Nodes {
    pub(super) fn new() -> Nodes {
        let count = size(NODES);
        let mut x = [0.0; NODES];
        let mut whole = [0.0; NODES];
        for i in 0..NODES {
            let mut root =
                -crate::math::cos(core::f64::consts::PI * (size(i) + 0.75) / (count + 0.5));
            let mut slope = 1.0;
            for _ in 0..STEPS {
                let p = legendre(root);
                slope = count * (root * p[NODES] - p[NODES - 1]) / (root * root - 1.0);
                root -= p[NODES] / slope;
            }
            x[i] = root;
            whole[i] = 1.0 / ((1.0 - root * root) * slope * slope);
        }
        let p = x.map(legendre);
        let mut up_to = [[0.0; NODES]; NODES];
        for i in 0..NODES {
            for j in 0..NODES {
                // The polynomial that is 1 at point j, as a sum of Legendre polynomials, integrated from -1 to point i.
                let mut sum = x[i] + 1.0;
                for k in 1..NODES {
                    sum += p[j][k] * (p[i][k + 1] - p[i][k - 1]);
                }
                up_to[i][j] = 0.5 * whole[j] * sum;
            }
        }
        Nodes {
            at: x.map(|x| 0.5 * (x + 1.0)),
            whole,
            up_to,
        }
    }
}

/// A count as a number.
pub(super) fn size(count: usize) -> f64 {
    u32::try_from(count).map_or(f64::INFINITY, f64::from)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn powers_are_integrated_exactly() {
        let nodes = Nodes::new();
        for power in 0..NODES {
            let f = nodes.at.map(|x| x.powi(i32::try_from(power).unwrap()));
            let exact = |x: f64| x.powi(i32::try_from(power).unwrap() + 1) / (size(power) + 1.0);
            let sum =
                |weights: &[f64; NODES]| -> f64 { weights.iter().zip(f).map(|(w, f)| w * f).sum() };
            assert!((sum(&nodes.whole) - exact(1.0)).abs() < 1e-14);
            for (at, weights) in nodes.at.iter().zip(&nodes.up_to) {
                assert!((sum(weights) - exact(*at)).abs() < 1e-14);
            }
        }
        // Up to twice the degree over the whole.
        let last: f64 = nodes
            .at
            .iter()
            .zip(nodes.whole)
            .map(|(x, w)| w * x.powi(23))
            .sum();
        assert!((last - 1.0 / 24.0).abs() < 1e-15);
    }
}
