//! The push test: a rod in the collet is pushed with a scale and read with a dial.

use core::f64::consts::PI;

/// Compliance of a round rod clamped at one end and pushed at the other: 64 a3 / (3 pi E d4).
///
/// Units: Pa, m, m; m/N. Valid for: slender rods. Source: gere2004, cantilever.
pub fn rod_compliance(e_mod: f64, d: f64, arm: f64) -> f64 {
    64.0 * arm.powi(3) / (3.0 * PI * e_mod * d.powi(4))
}

/// Stiffness of the machine from the movement that came back when a force went, without the give of the rod; `None` where the
/// rod alone gives as much.
///
/// Units: N, m, m/N; N/m. Source: springs in series.
pub fn stiffness(force: f64, back: f64, rod: f64) -> Option<f64> {
    let machine = back / force - rod;
    (force > 0.0 && machine > 0.0).then(|| 1.0 / machine)
}

/// Relative uncertainty of that stiffness from those of the scale (a share) and of the dial (m): independent errors.
///
/// Units: m, m/N, N; -. The rod's give is known; what is read is the machine's and the rod's together.
pub fn uncertainty(scale: f64, dial: f64, (force, back, rod): (f64, f64, f64)) -> f64 {
    let machine = back - rod * force;
    if machine <= 0.0 {
        return f64::INFINITY;
    }
    libm::hypot(scale * back, dial) / machine
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_steel_rod_in_a_collet_gives_as_a_cantilever() {
        // Gere: F L3 / (3 E I); rod of 8 mm, 25 mm long, E 200 GPa: I = 201.06 mm4.
        let by_hand = 25.0_f64.powi(3) / (3.0 * 200e3 * 201.062) * 1e-3;
        assert!((rod_compliance(200e9, 8e-3, 25e-3) / by_hand - 1.0).abs() < 1e-5);
    }

    #[test]
    fn the_rod_is_taken_off_and_uncertainty_grows_as_the_machine_stiffens() {
        let rod = rod_compliance(200e9, 6e-3, 25e-3);
        // 50 N against 2 N/um and the rod in series.
        let back = 50.0 * (1.0 / 2e6 + rod);
        assert!((stiffness(50.0, back, rod).unwrap() / 2e6 - 1.0).abs() < 1e-12);
        assert!(stiffness(50.0, 50.0 * rod, rod).is_none());
        let soft = uncertainty(0.05, 5e-6, (50.0, 50.0 * (1.0 / 0.5e6 + rod), rod));
        let stiff = uncertainty(0.05, 5e-6, (50.0, 50.0 * (1.0 / 20e6 + rod), rod));
        assert!(soft > 0.05 && soft < 0.1 && stiff > 1.0, "{soft} {stiff}");
    }
}
