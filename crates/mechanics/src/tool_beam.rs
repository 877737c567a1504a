//! The cutter as a stepped beam, clamped at the collet: flutes, a neck if there is one, shank.

use crate::math::PI;

/// A stepped cantilever. From the tip: the fluted part, the neck, and the shank up to the collet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Beam {
    /// Young's modulus, Pa.
    pub e_mod: f64,
    /// Shank diameter, m.
    pub shank_d: f64,
    /// Diameter that bends like the fluted part, m.
    pub flute_d_eff: f64,
    /// Length of the fluted part, m.
    pub flute_length: f64,
    /// Length out of the collet, m.
    pub stick_out: f64,
    /// Diameter of the neck, m.
    pub neck_d: f64,
    /// Length of the neck, m; 0 for none.
    pub neck_length: f64,
}

impl Beam {
    /// The parts from the tip: (from, to, diameter).
    fn parts(&self) -> [(f64, f64, f64); 3] {
        let flutes = self.flute_length.min(self.stick_out);
        let neck = (flutes + self.neck_length).min(self.stick_out);
        [
            (0.0, flutes, self.flute_d_eff),
            (flutes, neck, self.neck_d),
            (neck, self.stick_out, self.shank_d),
        ]
    }
}

/// Second moment of area of a round bar, pi d4 / 64.
///
/// Units: m; m4. Source: gere2004, appendix of plane areas.
pub fn second_moment(d: f64) -> f64 {
    PI * d.powi(4) / 64.0
}

/// Deflection at `read_from_tip` under a unit force at `load_from_tip`: integral of both bending moments over E I.
///
/// Units: m; m/N. Valid for: slender beams, rigid clamp. Source: unit-load method, gere2004; effective diameter of the
/// fluted part after kopsvo1990 (0.80 d).
pub fn compliance_at(beam: &Beam, load_from_tip: f64, read_from_tip: f64) -> f64 {
    let start = load_from_tip.max(read_from_tip);
    let part = |(from, to, d): (f64, f64, f64)| {
        let (a, b) = (from.max(start), to);
        if b <= a || d <= 0.0 {
            return 0.0;
        }
        // Integral of (x - p)(x - q) from a to b.
        let (p, q) = (load_from_tip, read_from_tip);
        let anti = |x: f64| x * x * x / 3.0 - 0.5 * (p + q) * x * x + p * q * x;
        (anti(b) - anti(a)) / (beam.e_mod * second_moment(d))
    };
    beam.parts().into_iter().map(part).sum()
}

/// Compliance at the tip under a force at the tip.
///
/// Units: m/N. Source: gere2004; for one part L3 / (3 E I).
pub fn tip_compliance(beam: &Beam) -> f64 {
    compliance_at(beam, 0.0, 0.0)
}

/// Greatest bending stress under a sideways force `from_tip` above the tip: 32 M / (pi d3) at the end of each part.
///
/// Units: N, m; Pa. Valid for: slender beams; no stress concentration at the run-out of the flutes or at a neck.
/// Source: gere2004, flexure formula.
pub fn root_stress(beam: &Beam, force: f64, from_tip: f64) -> f64 {
    let at = |(from, to, d): (f64, f64, f64)| {
        if to <= from || d <= 0.0 {
            return 0.0;
        }
        32.0 * force * (to - from_tip).max(0.0) / (PI * d.powi(3))
    };
    beam.parts().into_iter().map(at).fold(0.0, f64::max)
}

/// Stiffness of springs in series: the compliances add.
///
/// Units: N/m each; N/m; infinite without springs. Source: derived.
pub fn series(stiffness: &[f64]) -> f64 {
    1.0 / stiffness.iter().map(|k| 1.0 / k).sum::<f64>()
}

/// First frequency of a uniform cantilever: 1.8751^2 / (2 pi L2) sqrt(E I / (rho A)).
///
/// Units: Pa, m, m, kg/m3; Hz. Valid for: the bare cutter in a rigid clamp; holder and spindle lower it several times,
/// so this is no frequency to pick speeds by. Source: blevins1979 (constant 1.8751, from memory).
pub fn first_frequency(e_mod: f64, d: f64, length: f64, rho: f64) -> f64 {
    const ROOT: f64 = 1.875_104_068_711_961;
    let ratio = e_mod / rho;
    ROOT * ROOT / (2.0 * PI * length * length) * (ratio * d * d / 16.0).sqrt()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn uniform(d: f64, length: f64) -> Beam {
        Beam {
            e_mod: 6e11,
            shank_d: d,
            flute_d_eff: d,
            flute_length: length / 3.0,
            stick_out: length,
            neck_d: d,
            neck_length: length / 4.0,
        }
    }

    #[test]
    fn equal_parts_are_one_cantilever() {
        let (d, l): (f64, f64) = (6e-3, 24e-3);
        let closed = l.powi(3) / (3.0 * 6e11 * second_moment(d));
        assert!((tip_compliance(&uniform(d, l)) / closed - 1.0).abs() < 1e-12);
        assert!(
            (root_stress(&uniform(d, l), 1.0, 0.0) / (32.0 * l / (PI * d.powi(3))) - 1.0).abs()
                < 1e-12
        );
    }

    #[test]
    fn deflections_and_stresses_worked_by_hand() {
        // Two steps: carbide 600 kN/mm2, 0.8 of 3 mm over 9 mm, 6 mm shank over 21 mm, 30 N at the tip: 14.343 um.
        let beam = Beam {
            e_mod: 6e11,
            shank_d: 6e-3,
            flute_d_eff: 0.8 * 3e-3,
            flute_length: 9e-3,
            stick_out: 30e-3,
            neck_d: 0.0,
            neck_length: 0.0,
        };
        assert!((30.0 * tip_compliance(&beam) / 14.343e-6 - 1.0).abs() < 1e-4);
        // 6 mm at 0.8, 24 mm out, 300 N: 663.1 N/mm2 at the root.
        let even = uniform(0.8 * 6e-3, 24e-3);
        assert!((root_stress(&even, 300.0, 0.0) / 663.1e6 - 1.0).abs() < 1e-4);
        // Twice the overhang, eight times the deflection.
        let ratio = tip_compliance(&uniform(6e-3, 48e-3)) / tip_compliance(&uniform(6e-3, 24e-3));
        assert!((ratio - 8.0).abs() < 1e-12);
    }

    #[test]
    fn a_rigid_cutter_does_not_bend_and_springs_add() {
        let rigid = Beam {
            e_mod: 1e30,
            ..uniform(6e-3, 24e-3)
        };
        assert!(tip_compliance(&rigid) < 1e-24);
        assert!((series(&[2.0, 2.0, f64::INFINITY]) - 1.0).abs() < 1e-12);
        // A carbide rod of 6 mm, 30 mm out: 8.2 kHz by the formula with 14500 kg/m3.
        let first = first_frequency(6e11, 6e-3, 30e-3, 14_500.0);
        let omega = 1.875_104_f64.powi(2)
            * (6e11 * second_moment(6e-3) / (14_500.0 * PI * 9e-6 * 0.03_f64.powi(4))).sqrt();
        assert!((first * 2.0 * PI / omega - 1.0).abs() < 1e-6);
    }

    #[test]
    fn load_and_reading_may_be_swapped() {
        let beam = Beam {
            flute_d_eff: 3e-3,
            neck_d: 4e-3,
            ..uniform(6e-3, 30e-3)
        };
        let (a, b) = (
            compliance_at(&beam, 2e-3, 7e-3),
            compliance_at(&beam, 7e-3, 2e-3),
        );
        assert!((a / b - 1.0).abs() < 1e-12);
        assert!(a < tip_compliance(&beam));
    }
}
