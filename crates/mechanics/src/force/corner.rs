//! The rounded corner of a tooth: chips there are thinner, and the edge's normal turns downwards.

use super::{Bite, Mill};
use crate::kienzle::Cutting;
use crate::math::{FRAC_PI_2, acos, gauss, pow_near, sin};

/// Depth of the rounded corner in the cut, and what a unit of it gives over a unit of straight edge.
///
/// At height s above the floor the edge stands at kappa, cos(kappa) = 1 - s / re: the chip is thinner by sin(kappa), its
/// width greater by as much, so the area per height stays and Kienzle's force rises as sin(kappa)^-mc. The normal force
/// splits into sin(kappa) sideways and cos(kappa) downwards.
pub(super) struct Corner {
    /// Depth of the corner in the cut, m.
    pub(super) depth: f64,
    /// Tangential force.
    pub(super) tangential: f64,
    /// Sideways part of what is normal to or along the edge.
    pub(super) sideways: f64,
    /// Downward part of the normal force.
    pub(super) down: f64,
}

impl Corner {
    pub(super) fn new(mill: &Mill, cutting: &Cutting, bite: &Bite) -> Corner {
        // Why: no edge is sharper than its marks in the floor; one feed per tooth is an estimate of our own.
        let radius = mill.corner_radius.max(bite.fz);
        let depth = radius.min(bite.ap);
        let most = acos((1.0 - depth / radius).clamp(0.0, 1.0)).min(FRAC_PI_2);
        let exponent = 1.0 - cutting.mc;
        // With kappa = most u2 the power of the sine starts smoothly.
        let over = |f: &dyn Fn(f64) -> f64| {
            gauss(|u| f(sin(most * u * u)) * 2.0 * most * u, 0.0, 1.0) * radius / depth
        };
        Corner {
            depth,
            tangential: over(&|s| pow_near(s, exponent)),
            sideways: over(&|s| pow_near(s, exponent) * s),
            // The integral of cos sin^(1-mc) is closed.
            down: pow_near(sin(most), 1.0 + exponent) / (1.0 + exponent) * radius / depth,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engagement::Immersion;
    use crate::math::{cos, pow};

    #[test]
    fn agrees_with_thin_slices() {
        for (radius, ap, mc) in [
            (0.5e-3, 2e-3, 0.25),
            (0.5e-3, 0.1e-3, 0.2),
            (1e-3, 0.5e-3, 0.0),
        ] {
            let mill = Mill {
                d: 6e-3,
                z: 2,
                helix: 0.0,
                runout: 0.0,
                corner_radius: radius,
            };
            let cutting = Cutting {
                kc1_1: 1e9,
                mc,
                h_ref: 1e-3,
                radial_ratio: 0.3,
                axial_ratio: 0.3,
                wear: 1.0,
            };
            let bite = Bite {
                fz: 3e-5,
                immersion: Immersion::slot(),
                ap,
            };
            let corner = Corner::new(&mill, &cutting, &bite);
            let slices = 200_000;
            let most = acos(1.0 - corner.depth / radius);
            let mut sums = [0.0; 3];
            for i in 0..slices {
                let kappa = (f64::from(i) + 0.5) / f64::from(slices) * most;
                let force = pow(sin(kappa), -mc) * sin(kappa) * most / f64::from(slices);
                sums[0] += force;
                sums[1] += force * sin(kappa);
                sums[2] += force * cos(kappa);
            }
            let found = [corner.tangential, corner.sideways, corner.down];
            for (sum, found) in sums.iter().zip(found) {
                assert!(
                    (found / (sum * radius / corner.depth) - 1.0).abs() < 1e-3,
                    "{found}"
                );
            }
        }
    }
}
