//! Roughness left by feed and stepover.

/// Roughness of a side wall, fz2 / (4 d).
///
/// Units: m; m. Valid for: fz well below d. Source: printed formula, catalogue practice.
pub fn side_roughness(fz: f64, d: f64) -> f64 {
    fz * fz / (4.0 * d)
}

/// Roughness Rz of a floor from feed per revolution and corner radius, f2 / (8 r).
///
/// Units: m; m. Valid for: f below the corner radius. Source: gate2002, worked answers.
pub fn floor_roughness(f: f64, corner_radius: f64) -> f64 {
    f * f / (8.0 * corner_radius)
}

/// Stepover of a ball of diameter `d` that leaves ridges `height` high: 2 sqrt(height (d - height)).
///
/// Units: m; m. Source: geometry; printed tables agree.
pub fn scallop_stepover(height: f64, d: f64) -> f64 {
    2.0 * (height * (d - height)).max(0.0).sqrt()
}

/// Height of ridges that a ball of diameter `d` leaves at a stepover.
///
/// Units: m; m. Source: inverse of [`scallop_stepover`].
pub fn scallop_height(stepover: f64, d: f64) -> f64 {
    0.5 * (d - (d * d - stepover * stepover).max(0.0).sqrt())
}
