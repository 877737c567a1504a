//! Holding force: friction, clamps, screws, vacuum, tape.

/// Sideways force that friction holds: mu N times the number of faces.
///
/// Units: N, -, -; N. Valid for: no lift; subtract it from `normal` first. Source: derived, Coulomb friction.
pub fn friction_capacity(normal: f64, mu: f64, faces: u32) -> f64 {
    normal * mu * f64::from(faces)
}

/// Clamping force needed for a sideways force with a safety factor: S F / mu.
///
/// Units: N, -, -; N. Source: derived, Coulomb friction.
/// # Example
/// 100 N, friction 0.2, safety 2: 1000 N.
pub fn required_normal(lateral: f64, mu: f64, safety: f64) -> f64 {
    safety * lateral / mu
}

/// Force of a strap clamp on the part: its screw stands between part and heel, so that the part gets
/// screw to heel over heel to part.
///
/// Units: N, and the screw's distances to heel and part, m; N. Source: derived, equilibrium of moments.
pub fn strap_clamp_force(screw: f64, to_heel: f64, to_part: f64) -> f64 {
    screw * to_heel / (to_heel + to_part)
}

/// Preload of a screw from its tightening torque: torque / (K d).
///
/// Units: N m, - (about 0.2 dry), m; N. Source: juvinall2012, torque of a screw.
pub fn screw_preload(torque: f64, nut_factor: f64, d: f64) -> f64 {
    torque / (nut_factor * d)
}

/// Sideways force that screws hold by the friction under their preload.
///
/// Units: N each, -, screws; N. Source: derived, Coulomb friction.
pub fn screws_by_friction(preload: f64, mu: f64, count: u32) -> f64 {
    friction_capacity(preload, mu, count)
}

/// Sideways force that pins or fitted screws hold in shear: area times shear strength.
///
/// Units: core diameter m, Pa, pins; N. Source: gere2004, direct shear.
pub fn shear_capacity(core_d: f64, shear_strength: f64, count: u32) -> f64 {
    0.25 * core::f64::consts::PI * core_d * core_d * shear_strength * f64::from(count)
}

/// Force of vacuum on an area.
///
/// Units: Pa below the air's pressure, m2; N. Source: derived.
pub fn vacuum_force(pressure: f64, area: f64) -> f64 {
    pressure * area
}

/// Area of tape or glue needed for a force with a safety factor.
///
/// Units: N, Pa, -; m2. Source: derived: force over strength, evenly shared.
pub fn tape_area(force: f64, strength: f64, safety: f64) -> f64 {
    safety * force / strength
}

/// Force down that keeps a part from tipping about its edge: lateral height / arm.
///
/// Units: N, m, m; N. Source: derived, equilibrium of moments.
pub fn tipping_force(lateral: f64, height: f64, arm: f64) -> f64 {
    lateral * height / arm
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_required_is_what_holds() {
        let normal = required_normal(100.0, 0.2, 2.0);
        assert!((friction_capacity(normal, 0.2, 1) - 200.0).abs() < 1e-12);
        // A vise has two faces.
        assert!((friction_capacity(normal, 0.2, 2) - 400.0).abs() < 1e-12);
        let area = tape_area(100.0, 2e5, 2.0);
        assert!((vacuum_force(2e5, area) - 200.0).abs() < 1e-9);
    }

    #[test]
    fn a_strap_gives_more_to_the_nearer_end() {
        assert!((strap_clamp_force(900.0, 20.0, 10.0) - 600.0).abs() < 1e-12);
        // Both ends together carry the screw.
        let both = strap_clamp_force(900.0, 20.0, 10.0) + strap_clamp_force(900.0, 10.0, 20.0);
        assert!((both - 900.0).abs() < 1e-12);
    }

    #[test]
    fn screws_pull_and_shear() {
        // M5, 5 N m, K 0.2: 5000 N; at friction 0.15 two screws hold 1500 N.
        let preload = screw_preload(5.0, 0.2, 5e-3);
        assert!((preload - 5000.0).abs() < 1e-9);
        assert!((screws_by_friction(preload, 0.15, 2) - 1500.0).abs() < 1e-9);
        assert!((shear_capacity(4e-3, 3e8, 1) - 3769.9).abs() < 0.1);
        assert!((tipping_force(100.0, 10.0, 50.0) - 20.0).abs() < 1e-12);
    }
}
