//! Removal rate, power and torque.

use crate::math::TAU;

/// Removal rate q = ae ap vf.
///
/// Units: m, m, m/s; m3/s. Source: ISO 3002-3.
pub fn removal_rate(ae: f64, ap: f64, vf: f64) -> f64 {
    ae * ap * vf
}

/// Cutting power pc = kc q.
///
/// Units: Pa, m3/s; W. Source: ISO 3002-4.
pub fn cutting_power(kc: f64, q: f64) -> f64 {
    kc * q
}

/// Power of a torque at spindle speed n.
///
/// Units: N m, 1/s; W.
pub fn power_from_torque(torque: f64, n: f64) -> f64 {
    TAU * n * torque
}

/// Torque of a power at spindle speed n.
///
/// Units: W, 1/s; N m.
pub fn torque_from_power(power: f64, n: f64) -> f64 {
    power / (TAU * n)
}

/// Power that the motor gives for a cutting power: pc / efficiency.
///
/// Units: W, -; W. Source: elhofy2013, p. 189.
pub fn motor_power(pc: f64, efficiency: f64) -> f64 {
    pc / efficiency
}

/// Mean tangential force on the cutter: pc / vc.
///
/// Units: W, m/s; N. Source: elhofy2013, p. 189.
pub fn tangential_force(pc: f64, vc: f64) -> f64 {
    pc / vc
}
