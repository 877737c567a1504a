//! Spindle speeds at which the teeth keep step with a mode.

/// Spindle speed \[1/s\] at which `k + 1` vibrations of frequency `f_n` \[Hz\] fit between two teeth.
///
/// The rule of `smith1990` (tooth frequency = natural frequency; the slower ones for `k` > 0 from memory). It finds the true
/// peak within a few percent, but 3 % of error towards the wrong side can cost more than half of the depth there: without a
/// measured frequency it is not to be offered. Zero teeth give 0.
#[must_use]
pub fn best_speed(f_n: f64, z: u32, k: u32) -> f64 {
    if z == 0 || !f_n.is_finite() {
        return 0.0;
    }
    f_n / (f64::from(z) * (f64::from(k) + 1.0))
}

/// How often the teeth pass \[Hz\] at spindle speed `n` \[1/s\].
#[must_use]
pub fn tooth_frequency(n: f64, z: u32) -> f64 {
    n * f64::from(z)
}
