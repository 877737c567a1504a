//! Removal rate, power and torque.

use crate::math::TAU;

/// Removal rate q = ae ap vf.
///
/// Units: m, m, m/s; m3/s. Source: iso3002 (symbol), derived.
pub fn removal_rate(ae: f64, ap: f64, vf: f64) -> f64 {
    ae * ap * vf
}

/// Cutting power pc = kc q.
///
/// Units: Pa, m3/s; W. Source: elhofy2013, p. 189.
/// # Example
/// 1000 N/mm2 and 14.4 cm3/min: 240 W.
pub fn cutting_power(kc: f64, q: f64) -> f64 {
    kc * q
}

/// Cutting power from a tabulated unit power at a standard feed: unit power times removal rate, times what feed and wear
/// change.
///
/// Units: `unit_power` W s/m3 (= Pa; 1 hp min/in3 is 2.730e9), `q` m3/s, factors -; W.
/// Source: machineryshandbook31, Table 1b and its formula Pc = Kp C Q W.
pub fn power_from_unit(unit_power: f64, q: f64, feed_factor: f64, wear_factor: f64) -> f64 {
    unit_power * q * feed_factor * wear_factor
}

/// Unit power from a K factor, the removal rate that a unit of power pays for: 1 / K.
///
/// Units: m3/(W s); W s/m3. Source: derived; K factors are printed in in3/min per hp.
pub fn unit_power_from_k_factor(k_factor: f64) -> f64 {
    1.0 / k_factor
}

/// Power of a torque at spindle speed n: 2 pi n torque.
///
/// Units: N m, 1/s; W. Source: derived.
pub fn power_from_torque(torque: f64, n: f64) -> f64 {
    TAU * n * torque
}

/// Torque of a power at spindle speed n.
///
/// Units: W, 1/s; N m. Source: derived.
pub fn torque_from_power(power: f64, n: f64) -> f64 {
    power / (TAU * n)
}

/// Power that the motor gives for a cutting power: pc / efficiency.
///
/// Units: W, -; W. Source: elhofy2013, p. 189.
pub fn motor_power(pc: f64, efficiency: f64) -> f64 {
    pc / efficiency
}

/// Mean tangential force of all teeth together: pc / vc.
///
/// Units: W, m/s; N. Source: elhofy2013, p. 189.
pub fn tangential_force(pc: f64, vc: f64) -> f64 {
    pc / vc
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::kinematics::{feed_speed, surface_speed};

    #[test]
    fn a_slot_worked_in_a_textbook() {
        // Source: elhofy2013, p. 189: d 30, 8 teeth, depth 4, fz 0.1, 120 mm/min, 1000 N/mm2 -> 14.13 m/min, 1019 N, 0.24 kW.
        let n = 150.0 / 60.0;
        let vf = feed_speed(0.1e-3, 8, n);
        assert!((vf - 0.12 / 60.0).abs() < 1e-9);
        let pc = cutting_power(1e9, removal_rate(30e-3, 4e-3, vf));
        assert!((pc - 240.0).abs() < 5.0);
        // Printed digits: pi taken as 3.14, so half a unit of the last digit and 0.05 %.
        let force = tangential_force(pc, surface_speed(30e-3, n));
        assert!((force / 1019.0 - 1.0).abs() < 1e-3, "{force}");
        assert!((power_from_torque(torque_from_power(pc, n), n) / pc - 1.0).abs() < 1e-12);
    }

    #[test]
    fn a_k_factor_in_inches() {
        // Printed example: 3 in x 0.2 in x 42 in/min at K 1.56 takes 16.2 hp.
        let (inch, minute, horsepower) = (0.0254_f64, 60.0, 745.7);
        let q = removal_rate(3.0 * inch, 0.2 * inch, 42.0 * inch / minute);
        let k = 1.56 * inch.powi(3) / minute / horsepower;
        let power = power_from_unit(unit_power_from_k_factor(k), q, 1.0, 1.0);
        assert!((power / horsepower - 16.2).abs() < 0.05);
    }
}
