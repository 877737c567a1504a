//! Sums over sine waves that the superposition of a clamped rectangle needs, in closed form.
//!
//! With g the ratio of a wave's length to the other side, sums over m of 1/(m^2 + g^2)^2 and its kin follow from
//! sum cos(m x)/(m^2 + g^2) = pi/(2 g) cosh(g (pi - x))/sinh(g pi) - 1/(2 g^2) by differentiating by x and g.

use crate::math::exp;
use core::f64::consts::PI;

/// Beyond this product the far image of a wave is below the last digit.
const FAR: f64 = 40.0;

/// cosh(g (pi - x)) / sinh(g pi) with its derivative by g, and that of sinh(g (pi - x)) / sinh(g pi), for 0 <= x <= 2 pi.
pub(crate) struct Fold {
    /// cosh over sinh.
    even: f64,
    /// Derivative of `even` by g.
    d_even: f64,
    /// Derivative of sinh over sinh.
    d_odd: f64,
}

impl Fold {
    pub(crate) fn new(g: f64, x: f64) -> Self {
        let (near, far) = (exp(-g * x), exp(-g * (2.0 * PI - x)));
        let twice = if 2.0 * PI * g > FAR {
            0.0
        } else {
            exp(-2.0 * PI * g)
        };
        let under = 1.0 / (1.0 - twice);
        let even = (near + far) * under;
        let odd = (near - far) * under;
        let coth = (1.0 + twice) * under;
        let arm = PI - x;
        Self {
            even,
            d_even: arm * odd - PI * coth * even,
            d_odd: arm * even - PI * coth * odd,
        }
    }

    /// Sum over m >= 1 of cos(m x) / (m^2 + g^2)^2.
    pub(crate) fn cosines(&self, g: f64) -> f64 {
        let g2 = g * g;
        PI / (4.0 * g2) * (self.even / g - self.d_even) - 0.5 / (g2 * g2)
    }

    /// Sum over m >= 1 of m sin(m x) / (m^2 + g^2)^2.
    pub(crate) fn sines(&self, g: f64) -> f64 {
        -0.25 * PI * self.d_odd / g
    }

    /// Sum over m >= 1 of m^2 cos(m x) / (m^2 + g^2)^2.
    pub(crate) fn curvatures(&self, g: f64) -> f64 {
        0.25 * PI * (self.even / g + self.d_even)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::math::{cos, sin};

    #[test]
    fn closed_forms_are_the_sums() {
        for g in [0.3, 1.0, 4.0, 11.0] {
            for x in [0.4, 1.0, 2.5, 3.6, 6.0] {
                let fold = Fold::new(g, x);
                let (mut c, mut s) = (0.0, 0.0);
                for i in 1..20_000 {
                    let m = f64::from(i);
                    let under = (m * m + g * g) * (m * m + g * g);
                    c += cos(m * x) / under;
                    s += m * sin(m * x) / under;
                }
                assert!((fold.cosines(g) - c).abs() < 1e-11, "{g} {x}");
                assert!((fold.sines(g) - s).abs() < 1e-9, "{g} {x}");
            }
            let direct: f64 = (1..2_000_000)
                .map(|i| {
                    let m2 = f64::from(i) * f64::from(i);
                    m2 / ((m2 + g * g) * (m2 + g * g))
                })
                .sum();
            assert!((Fold::new(g, 0.0).curvatures(g) - direct).abs() < 1e-6);
        }
    }
}
