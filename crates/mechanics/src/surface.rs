//! What the cut leaves: roughness from feed and stepover, lean of a wall.

use crate::tool_beam::{Beam, compliance_at};

/// Roughness of a side wall, fz2 / (4 d).
///
/// Units: m; m. Valid for: fz well below d; no runout. Source: kyocera2021, formulas.
/// # Example
/// fz 0.2, d 6 (mm): 1.67 um.
pub fn side_roughness(fz: f64, d: f64) -> f64 {
    fz * fz / (4.0 * d)
}

/// Roughness Rz of a floor from feed per revolution and corner radius, f2 / (8 r).
///
/// Units: m; m. Valid for: f below the corner radius. Source: gate, 2002; kyocera2021.
pub fn floor_roughness(f: f64, corner_radius: f64) -> f64 {
    f * f / (8.0 * corner_radius)
}

/// Stepover of a ball of diameter `d` that leaves ridges `height` high: 2 sqrt(height (d - height)).
///
/// Units: m; m. Valid for: height up to d/2. Source: derived; printed tables agree to their last digit.
pub fn scallop_stepover(height: f64, d: f64) -> f64 {
    2.0 * (height * (d - height)).max(0.0).sqrt()
}

/// Height of ridges that a ball of diameter `d` leaves at a stepover, the inverse of [`scallop_stepover`].
///
/// Units: m; m. Valid for: stepover up to d. Source: derived.
pub fn scallop_height(stepover: f64, d: f64) -> f64 {
    0.5 * (d - (d * d - stepover * stepover).max(0.0).sqrt())
}

/// Lean of a wall over a step-down: how much further the tip gives way than the edge at the top of the cut, under a force
/// at the middle of the step-down.
///
/// Units: N, m; m. Valid for: the cutter's own bending; holder and spindle add a tilt of their own.
/// Source: gere2004, unit-load method.
pub fn wall_lean(beam: &Beam, force: f64, ap: f64) -> f64 {
    let middle = 0.5 * ap;
    let tip = compliance_at(beam, middle, 0.0);
    let top = compliance_at(beam, middle, ap.min(beam.stick_out));
    force.abs() * (tip - top).max(0.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tool_beam::second_moment;

    #[test]
    fn ridges_and_stepovers_invert_and_agree_with_print() {
        // Printed table, ball of 6 mm: 0.87 mm leaves 32 um.
        assert!((scallop_stepover(32e-3, 6.0) - 0.87).abs() < 0.006);
        assert!((scallop_height(scallop_stepover(0.03, 6.0), 6.0) - 0.03).abs() < 1e-12);
        // Source: gate, 2003: twice the feed, four times the roughness.
        assert!((floor_roughness(0.6, 0.4) / floor_roughness(0.3, 0.4) - 4.0).abs() < 1e-12);
    }

    #[test]
    fn lean_is_slope_times_depth_for_a_shallow_cut() {
        let beam = Beam {
            e_mod: 6e11,
            shank_d: 6e-3,
            flute_d_eff: 6e-3,
            flute_length: 10e-3,
            stick_out: 24e-3,
            neck_d: 0.0,
            neck_length: 0.0,
        };
        let ap = 1e-5;
        let slope = 10.0 * 24e-3_f64.powi(2) / (2.0 * 6e11 * second_moment(6e-3));
        assert!((wall_lean(&beam, 10.0, ap) / (slope * ap) - 1.0).abs() < 1e-3);
        assert!(wall_lean(&beam, -10.0, 2e-3) > wall_lean(&beam, -10.0, 1e-3));
    }
}
