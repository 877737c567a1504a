//! Ribs and thin walls sideways.

/// Compliance in the middle of a strip clamped at both ends, loaded sideways: L3 / (192 E I), I = height width3 / 12.
///
/// Units: Pa, m; m/N. Valid for: slender strips. Source: gere2004, fixed-end beam.
pub fn clamped_strip_compliance(e_mod: f64, width: f64, height: f64, length: f64) -> f64 {
    let inertia = height * width.powi(3) / 12.0;
    length.powi(3) / (192.0 * e_mod * inertia)
}

/// Compliance at the tip of a wall per bite length: 4 h3 / (E b t3), a cantilever of breadth b.
///
/// Units: Pa, m; m/N. Source: gere2004, cantilever.
pub fn wall_tip_compliance(e_mod: f64, thickness: f64, height: f64, breadth: f64) -> f64 {
    4.0 * height.powi(3) / (e_mod * breadth * thickness.powi(3))
}
