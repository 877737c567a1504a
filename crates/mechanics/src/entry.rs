//! Getting to depth: ramps and helices.

use crate::math::{PI, tan};

/// Length of a ramp, seen from above: depth / tan(angle).
///
/// Units: m, rad; m. Source: geometry; printed by kyocera2019.
pub fn ramp_length(depth: f64, angle: f64) -> f64 {
    depth / tan(angle)
}

/// Slope of the path of the cutter's middle on a helix that opens a hole: atan(pitch / (pi (hole - d))).
///
/// Units: m; rad. Source: geometry.
pub fn helix_angle(pitch: f64, hole: f64, d: f64) -> f64 {
    libm::atan2(pitch, PI * (hole - d))
}

/// Way of the cutter's middle in one turn of the helix.
///
/// Units: m; m. Source: geometry.
pub fn path_per_turn(pitch: f64, hole: f64, d: f64) -> f64 {
    libm::hypot(PI * (hole - d), pitch)
}

/// Feed of the cutter's middle over the feed at the wall of the hole: (hole - d) / hole.
///
/// Units: m; -. Source: kinematics; printed in catalogues as (Dm - Dc) / Dm.
pub fn centre_feed_factor(hole: f64, d: f64) -> f64 {
    (hole - d) / hole
}

/// Strokes of a zigzag that goes down by `step` each, and one flat one.
///
/// Units: m; -.
pub fn zigzag_strokes(depth: f64, step: f64) -> f64 {
    libm::ceil(depth / step - 1.0e-9) + 1.0
}
