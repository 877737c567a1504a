//! Specific cutting force after Kienzle.

use crate::engagement::Immersion;
use crate::math::{cos, exp, gauss, ln, pow, sin};

/// A material's cutting forces: Kienzle's law, and how radial and axial force follow the tangential one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cutting {
    /// Specific cutting force at chip thickness `h_ref`, Pa.
    pub kc1_1: f64,
    /// Exponent.
    pub mc: f64,
    /// Chip thickness that `kc1_1` stands for, m: 1 mm. An argument, so that it scales with the unit of length.
    pub h_ref: f64,
    /// Radial over tangential force.
    pub radial_ratio: f64,
    /// Lift of a straight edge with 30 degrees of helix over its tangential force, as a magnitude.
    pub axial_ratio: f64,
    /// Factor for a worn edge.
    pub wear: f64,
}

/// Share of `h_ref` below which the chip counts as that thick: the law has no meaning at no thickness.
const LEAST_CHIP: f64 = 1.0e-5;

/// Specific cutting force kc = kc1.1 (h / 1 mm)^-mc, times wear.
///
/// Units: `h` m; Pa. Valid for: chips of 0.01 to 1 mm in the source; thinner chips are extrapolated.
/// Source: kienzle1952; constants by group in vdi3323.
pub fn specific_cutting_force(cutting: &Cutting, h: f64) -> f64 {
    let ratio = (h / cutting.h_ref).max(LEAST_CHIP);
    cutting.kc1_1 * pow(ratio, -cutting.mc) * cutting.wear
}

/// Specific cutting force over an engagement: work over volume, the integral of kc h over that of h.
///
/// Units: `fz` m; Pa. Valid for: entry and exit within half a turn, 0 to pi. 0 where nothing is engaged.
/// Source: kienzle1952, averaged here; the usual kc at the mean chip is up to 4 % higher.
pub fn mean_specific_cutting_force(cutting: &Cutting, fz: f64, immersion: &Immersion) -> f64 {
    let (from, to) = (immersion.phi_st, immersion.phi_ex);
    let volume = cos(from) - cos(to);
    if volume <= 0.0 {
        return 0.0;
    }
    // With sin3 in the place of the angle the powers of the chip start and end smoothly.
    let half = 0.5 * (to - from);
    let over = |u: f64| {
        let phi = from + half * (1.0 + u * (1.5 - 0.5 * u * u));
        let chip = sin(phi).max(0.0);
        specific_cutting_force(cutting, fz * chip) * chip * half * 1.5 * (1.0 - u * u)
    };
    (gauss(over, -1.0, 0.0) + gauss(over, 0.0, 1.0)) / volume
}

/// Correction for rake: 1 less a share per radian of rake beyond the table's.
///
/// Units: `rake`, `table_rake` rad, `per_radian` 1/rad; -. Valid for: differences of some 15 degrees; never below 0.
/// Source: klockekoenig prints 1.5 % per degree (0.86 per radian); from memory.
pub fn rake_correction(rake: f64, table_rake: f64, per_radian: f64) -> f64 {
    (1.0 - per_radian * (rake - table_rake)).max(0.0)
}

/// Kienzle's constants from measured pairs of chip thickness and specific cutting force: (kc1.1, mc), least squares of
/// the logarithms.
///
/// Units: m and Pa in each pair, `h_ref` m; Pa, -. Valid for: at least two different, positive thicknesses; else the mean
/// force and exponent 0. Source: kienzle1952 (a straight line in logarithmic paper).
pub fn kienzle_fit(points: &[(f64, f64)], h_ref: f64) -> (f64, f64) {
    let (mut count, mut x_sum, mut y_sum) = (0.0, 0.0, 0.0);
    for (h, kc) in points {
        count += 1.0;
        x_sum += ln(h / h_ref);
        // Relative to the first force, so that the logarithm is of a plain number.
        y_sum += ln(kc / points[0].1);
    }
    let (x_mean, y_mean) = (x_sum / count, y_sum / count);
    let (mut square, mut product) = (0.0, 0.0);
    for (h, kc) in points {
        let x = ln(h / h_ref) - x_mean;
        square += x * x;
        product += x * (ln(kc / points[0].1) - y_mean);
    }
    let slope = if square > 0.0 { product / square } else { 0.0 };
    let first = points.first().map_or(0.0, |point| point.1);
    if first > 0.0 {
        (first * exp(y_mean - slope * x_mean), -slope)
    } else {
        (0.0, 0.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const STEEL: Cutting = Cutting {
        kc1_1: 8.0e8,
        mc: 0.25,
        h_ref: 1e-3,
        radial_ratio: 0.3,
        axial_ratio: 0.1,
        wear: 1.0,
    };

    #[test]
    fn at_the_reference_chip_it_is_kc1_1() {
        assert!((specific_cutting_force(&STEEL, 1e-3) / 8.0e8 - 1.0).abs() < 1e-12);
        assert!(specific_cutting_force(&STEEL, 0.0).is_finite());
        // kc at 0.08 mm printed in the reference list: 1504.2 N/mm2.
        assert!((specific_cutting_force(&STEEL, 8e-5) / 1504.2e6 - 1.0).abs() < 1e-4);
    }

    #[test]
    fn the_mean_over_an_engagement_lies_a_little_under_that_of_the_mean_chip() {
        for ae in [0.2, 3.0, 6.0] {
            let mean = mean_specific_cutting_force(&STEEL, 5e-5, &Immersion::down(ae, 6.0));
            let hm = crate::chip::mean_chip_thickness(5e-5, ae, 6.0, core::f64::consts::FRAC_PI_2);
            let ratio = mean / specific_cutting_force(&STEEL, hm);
            // The thinnest engagements come down to 2^(1 - mc) / (2 - mc), the mean over a wedge.
            let wedge = pow(2.0, 0.75) / 1.75;
            assert!(ratio < 1.0 && ratio > wedge, "{ae} {ratio}");
            let up = mean_specific_cutting_force(&STEEL, 5e-5, &Immersion::up(ae, 6.0));
            assert!((mean / up - 1.0).abs() < 1e-9, "{ae}");
        }
        // Full slot in closed form: the integral of sin^(3/4) over half a turn is B(7/8, 1/2).
        let beta = libm::tgamma(0.875) * libm::tgamma(0.5) / libm::tgamma(1.375);
        let closed = specific_cutting_force(&STEEL, 5e-5) * beta / 2.0;
        let slot = mean_specific_cutting_force(&STEEL, 5e-5, &Immersion::slot());
        assert!((slot / closed - 1.0).abs() < 1e-4, "{}", slot / closed);
    }

    #[test]
    fn a_fit_finds_what_it_was_made_from() {
        let points = [3e-5, 1e-4, 2e-4].map(|h| (h, specific_cutting_force(&STEEL, h)));
        let (kc1_1, mc) = kienzle_fit(&points, 1e-3);
        assert!((kc1_1 / 8.0e8 - 1.0).abs() < 1e-12 && (mc - 0.25).abs() < 1e-12);
        // Source: tungaloy2020 p. 1650, SS400 by feed per tooth; the printed points lie within 1 % of the fit.
        let printed = [
            (1e-4, 2150.0),
            (1.5e-4, 2000.0),
            (2e-4, 1900.0),
            (3e-4, 1750.0),
            (4e-4, 1650.0),
        ];
        let (kc, m) = kienzle_fit(&printed, 1e-3);
        for (h, force) in printed {
            assert!((kc * pow(h / 1e-3, -m) / force - 1.0).abs() < 0.01, "{h}");
        }
        assert_eq!(kienzle_fit(&[], 1e-3), (0.0, 0.0));
    }
}
