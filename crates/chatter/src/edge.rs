//! The edge that cuts: straight along the side, or rounded at the corner, where it also pushes along the axis.

use crate::math::{acos, cos, sin};

/// What the engaged edge adds up to, per axial depth: integrals along the edge over its lead angle kappa.
///
/// The normal of an edge element points out of the cutter: sin kappa sideways, cos kappa along the axis into the floor.
/// The chip is as thick as the displacement along the normal (three-dimensional force model of `altintas2001`, from
/// memory). On the side kappa is a right angle, and the axis has no part in it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Edge {
    /// sin kappa: axial depth \[-\].
    pub(crate) s: f64,
    /// cos kappa: how far the edge goes inwards \[-\].
    pub(crate) c: f64,
    /// sin kappa squared \[-\].
    pub(crate) ss: f64,
    /// sin kappa times cos kappa \[-\].
    pub(crate) sc: f64,
    /// cos kappa squared \[-\].
    pub(crate) cc: f64,
}

impl Edge {
    /// A sharp corner: the side alone cuts, and does not regenerate along the axis.
    #[must_use]
    pub fn sharp() -> Edge {
        Edge {
            s: 1.0,
            c: 0.0,
            ss: 1.0,
            sc: 0.0,
            cc: 0.0,
        }
    }

    /// A corner of a radius \[m\] at an axial depth \[m\]; sharp for impossible input.
    ///
    /// Depths that come of it are exact at this depth and to the first order beside it: the share of the corner changes with
    /// depth.
    #[must_use]
    pub fn rounded(radius: f64, depth: f64) -> Edge {
        let sizes = radius > 0.0 && radius.is_finite() && depth > 0.0 && depth.is_finite();
        if !sizes {
            return Edge::sharp();
        }
        let side = (depth - radius).max(0.0);
        let kappa = acos(1.0 - (depth / radius).min(1.0));
        let (half, twice) = (0.5 * kappa, 0.25 * sin(2.0 * kappa));
        let share = radius / depth;
        Edge {
            s: 1.0,
            c: share * sin(kappa),
            ss: share * (half - twice) + side / depth,
            sc: share * 0.5 * sin(kappa) * sin(kappa),
            cc: share * (half + twice),
        }
    }

    /// An edge of one lead angle \[rad\] all along; sharp for impossible input.
    #[must_use]
    pub fn leaning(kappa: f64) -> Edge {
        let slope = kappa > 0.0 && kappa <= core::f64::consts::FRAC_PI_2;
        if !slope {
            return Edge::sharp();
        }
        let (s, c) = (sin(kappa), cos(kappa));
        Edge {
            s: 1.0,
            c: c / s,
            ss: s,
            sc: c,
            cc: c * c / s,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The integrals by direct summation over the height above the floor.
    fn summed(radius: f64, depth: f64) -> [f64; 5] {
        let steps = 400_000_u32;
        let mut sum = [0.0; 5];
        for i in 0..steps {
            // Over the lead angle on the corner, over the height on the side.
            let end = acos(1.0 - (depth / radius).min(1.0));
            let kappa = end * (f64::from(i) + 0.5) / f64::from(steps);
            let ds = radius * end / f64::from(steps);
            let (s, c) = (sin(kappa), cos(kappa));
            for (total, part) in sum.iter_mut().zip([s, c, s * s, s * c, c * c]) {
                *total += part * ds / depth;
            }
        }
        let side = (depth - radius).max(0.0) / depth;
        sum[0] += side;
        sum[2] += side;
        sum
    }

    #[test]
    fn corner_integrals_are_sums_along_the_edge() {
        for (radius, depth) in [(1e-3, 0.2e-3), (1e-3, 1e-3), (0.5e-3, 3e-3), (3e-3, 0.1e-3)] {
            let e = Edge::rounded(radius, depth);
            for (closed, direct) in [e.s, e.c, e.ss, e.sc, e.cc]
                .iter()
                .zip(summed(radius, depth))
            {
                assert!(
                    (closed - direct).abs() < 1e-8 * direct.max(1.0),
                    "{closed} {direct}"
                );
            }
        }
    }

    #[test]
    fn a_lead_angle_of_ninety_degrees_is_sharp() {
        let (a, b) = (Edge::leaning(core::f64::consts::FRAC_PI_2), Edge::sharp());
        for (x, y) in [(a.c, b.c), (a.ss, b.ss), (a.sc, b.sc), (a.cc, b.cc)] {
            assert!((x - y).abs() < 1e-15);
        }
    }
}
