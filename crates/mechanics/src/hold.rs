//! Holding force: friction, vacuum, screws.

/// Sideways force that friction holds: mu N times the number of faces.
///
/// Units: N, -, -; N. Source: Coulomb friction.
pub fn friction_capacity(normal: f64, mu: f64, faces: u32) -> f64 {
    normal * mu * f64::from(faces)
}

/// Clamping force needed for a sideways force with a safety factor.
///
/// Units: N, -, -; N. Source: Coulomb friction.
pub fn required_normal(lateral: f64, mu: f64, safety: f64) -> f64 {
    safety * lateral / mu
}

/// Force of vacuum on an area.
///
/// Units: Pa, m2; N.
pub fn vacuum_force(pressure: f64, area: f64) -> f64 {
    pressure * area
}

/// Force down that keeps a part from tipping about its edge: lateral height / arm.
///
/// Units: N, m, m; N. Source: equilibrium of moments.
pub fn tipping_force(lateral: f64, height: f64, arm: f64) -> f64 {
    lateral * height / arm
}
