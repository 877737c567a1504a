//! What the flank rubbing on the wave damps at low cutting speed.

use crate::mode::Mode;

/// Depth \[m\] quiet at any speed of one mode with constant directional stiffness `k_cut` \[Pa\], when a depth b adds the
/// viscous force `c_proc` (b / vc) times the velocity, at cutting speed `vc` \[m/s\].
///
/// Velocity-proportional force of `tyler2013` (from memory); the boundary is our own: b = 2 k ze (1 + ze) / `k_cut` with
/// ze = zeta + `c_proc` b / (2 vc m w), a quadratic in b. Infinite when every depth is stable; 0 for impossible input.
/// `c_proc` (order 1e5 to 6e5 N/m, from memory) is unmeasured for nearly everyone: a margin to know of, not to claim.
#[must_use]
pub fn quiet_depth_with_process_damping(mode: &Mode, k_cut: f64, c_proc: f64, vc: f64) -> f64 {
    let finite = k_cut.is_finite() && c_proc.is_finite() && vc.is_finite();
    if !(mode.is_sound() && finite && k_cut > 0.0 && c_proc >= 0.0 && vc > 0.0) {
        return 0.0;
    }
    if mode.k.is_infinite() {
        return f64::INFINITY;
    }
    let gain = c_proc * mode.omega_n / (2.0 * vc * mode.k);
    let square = 2.0 * mode.k * gain * gain;
    let linear = 2.0 * mode.k * gain * (1.0 + 2.0 * mode.zeta) - k_cut;
    let constant = 2.0 * mode.k * mode.zeta * (1.0 + mode.zeta);
    let disc = linear * linear - 4.0 * square * constant;
    if linear >= 0.0 || disc < 0.0 {
        return f64::INFINITY;
    }
    // The smaller root, in the form that also holds for square = 0.
    let depth = 2.0 * constant / (-linear + disc.sqrt());
    if depth.is_nan() { 0.0 } else { depth }
}

/// Cutting speed \[m/s\] below which every depth is surely stable: `omega_n` `c_proc` / `k_cut`.
///
/// A sufficient bound (it holds for any damping ratio); the exact one of the quadratic above lies a factor
/// 1 + 2 zeta + 2 sqrt(zeta (1 + zeta)) higher.
#[must_use]
pub fn surely_quiet_speed(mode: &Mode, k_cut: f64, c_proc: f64) -> f64 {
    if !mode.is_sound() || k_cut <= 0.0 || !(k_cut.is_finite() && c_proc.is_finite()) {
        return 0.0;
    }
    mode.omega_n * c_proc.max(0.0) / k_cut
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_bound_of_the_speed_is_on_the_safe_side_of_the_quadratic() {
        let mode = Mode {
            k: 1.34e6,
            zeta: 0.011,
            omega_n: 5793.0,
        };
        let sure = surely_quiet_speed(&mode, 2e8, 1e5);
        let exact = sure * (1.0 + 2.0 * 0.011 + 2.0 * (0.011_f64 * 1.011).sqrt());
        let depth = |vc| quiet_depth_with_process_damping(&mode, 2e8, 1e5, vc);
        assert!(depth(sure).is_infinite() && depth(exact * 0.999).is_infinite());
        assert!(depth(exact * 1.001).is_finite());
        let none = quiet_depth_with_process_damping(&mode, 2e8, 0.0, 5.0);
        assert!((none / (2.0 * 1.34e6 * 0.011 * 1.011 / 2e8) - 1.0).abs() < 1e-12);
    }
}
