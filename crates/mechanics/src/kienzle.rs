//! Specific cutting force after Kienzle.

use crate::engagement::Immersion;
use crate::math::{cos, gauss, ln, pow, sin};

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
/// Source: kienzle1952, averaged here; the usual kc at the mean chip is up to 2 % higher.
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

/// Correction for rake: 1 - 0.015 per degree of rake more than the table's.
///
/// Units: rad; -. Source: "1.5 % per degree", printed with kc tables (catalogue practice); from memory.
pub fn rake_correction(rake: f64, table_rake: f64, per_radian: f64) -> f64 {
    1.0 - per_radian * (rake - table_rake)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn at_the_reference_chip_it_is_kc1_1() {
        let cutting = Cutting {
            kc1_1: 8.0e8,
            mc: 0.25,
            h_ref: 1e-3,
            radial_ratio: 0.3,
            axial_ratio: 0.1,
            wear: 1.0,
        };
        assert!((specific_cutting_force(&cutting, 1e-3) / 8.0e8 - 1.0).abs() < 1e-12);
        assert!(specific_cutting_force(&cutting, 0.0).is_finite());
        // kc at 0.08 mm printed in the reference list: 1504.2 N/mm2.
        assert!((specific_cutting_force(&cutting, 8e-5) / 1504.2e6 - 1.0).abs() < 1e-4);
    }
}
