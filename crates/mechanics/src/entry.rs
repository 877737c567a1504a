//! Getting to depth: ramps and helices.

use crate::math::{PI, atan2, ceil, hypot, tan};

/// Share of a step that rounding may add to a depth without costing one more step.
const ROUNDING: f64 = 1.0e-9;

/// Length of a ramp, seen from above: depth / tan(angle).
///
/// Units: m, rad; m. Source: kyocera2021, M136 (tangents printed).
/// # Example
/// 5 mm deep at 3 degrees: 95.4 mm.
pub fn ramp_length(depth: f64, angle: f64) -> f64 {
    depth / tan(angle)
}

/// Slope of the path of the cutter's middle on a helix that opens a hole: atan(pitch / (pi (hole - d))).
///
/// Units: m; rad; a quarter turn (straight down) where the hole is no wider than the cutter. Source: derived.
/// # Example
/// Cutter 6, hole 9, pitch 0.5 (mm): 3.04 degrees.
pub fn helix_angle(pitch: f64, hole: f64, d: f64) -> f64 {
    atan2(pitch, PI * (hole - d).max(0.0))
}

/// Pitch of a helix whose path slopes by an angle, the inverse of [`helix_angle`].
///
/// Units: rad, m; m. Source: derived.
pub fn helix_pitch(angle: f64, hole: f64, d: f64) -> f64 {
    PI * (hole - d).max(0.0) * tan(angle)
}

/// Way of the cutter's middle in one turn of the helix.
///
/// Units: m; m. Source: derived.
pub fn path_per_turn(pitch: f64, hole: f64, d: f64) -> f64 {
    hypot(PI * (hole - d), pitch)
}

/// Feed of the cutter's middle over the feed at the wall of the hole: (hole - d) / hole.
///
/// Units: m; -; 0 where the hole is no wider than the cutter. Source: sandvik2017; kyocera2021.
pub fn centre_feed_factor(hole: f64, d: f64) -> f64 {
    ((hole - d) / hole).max(0.0)
}

/// Strokes of a zigzag that goes down by `step` each, and one flat one that levels the floor.
///
/// Units: m; -. Source: derived.
pub fn zigzag_strokes(depth: f64, step: f64) -> f64 {
    ceil(depth / step - ROUNDING) + 1.0
}

/// Strokes of a zigzag ramp between two ends `length` apart that may slope by `angle`, the level one included.
///
/// Units: m, m, rad; -. Source: derived: each stroke goes down by length tan(angle).
pub fn zigzag_ramp_strokes(depth: f64, length: f64, angle: f64) -> f64 {
    zigzag_strokes(depth, length * tan(angle))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ramps_and_helices_worked_by_hand() {
        for (depth, degrees, length) in [
            (5.0, 3.0_f64, 95.406),
            (3.0, 20.0, 8.242),
            (1.0, 1.0, 57.29),
        ] {
            assert!((ramp_length(depth, degrees.to_radians()) - length).abs() < 1e-3);
        }
        assert!((helix_angle(0.5, 9.0, 6.0).to_degrees() - 3.0368).abs() < 1e-4);
        assert!((path_per_turn(0.5, 9.0, 6.0) - 9.438).abs() < 1e-3);
        assert!((helix_pitch(helix_angle(0.5, 9.0, 6.0), 9.0, 6.0) - 0.5).abs() < 1e-12);
        // Straight down in a hole as wide as the cutter.
        assert!((helix_angle(0.5, 6.0, 6.0) - 0.5 * PI).abs() < 1e-12);
        assert!(centre_feed_factor(6.0, 6.0).abs() < 1e-15);
    }

    #[test]
    fn strokes_are_whole() {
        assert!((zigzag_strokes(3.0, 0.5) - 7.0).abs() < 1e-12);
        assert!((zigzag_strokes(3.1, 0.5) - 8.0).abs() < 1e-12);
        // 20 mm at 2 degrees go down 0.698 mm: five strokes for 3 mm, one level.
        assert!((zigzag_ramp_strokes(3.0, 20.0, 2.0_f64.to_radians()) - 6.0).abs() < 1e-12);
    }
}
