//! Tool life after Taylor: V T^n = C.

use crate::math::{ln, pow};

/// Life at a speed: T = T1 (C / V)^(1/n), where C is the speed of life T1 (one minute in most tables).
///
/// Units: `v`, `c` alike, -, `reference_life` s; s. Source: taylor1907.
/// # Example
/// C 500 m/min, n 0.25, at 250 m/min: 16 minutes.
pub fn life(v: f64, c: f64, exponent: f64, reference_life: f64) -> f64 {
    reference_life * life_ratio(v / c, exponent)
}

/// Life over reference life for a speed over reference speed: ratio^(-1/n).
///
/// Units: -; -. Source: taylor1907.
pub fn life_ratio(speed_ratio: f64, exponent: f64) -> f64 {
    pow(speed_ratio, -1.0 / exponent)
}

/// Speed for a wanted life, the inverse of [`life`]: C (T1 / T)^n.
///
/// Units: `life` and `reference_life` alike, `c` m/s; m/s. Source: taylor1907.
pub fn speed_for_life(life: f64, c: f64, exponent: f64, reference_life: f64) -> f64 {
    c * pow(reference_life / life, exponent)
}

/// Exponent n of V T^n = C from two points.
///
/// Units: speeds alike, lives alike; -. Source: taylor1907.
pub fn exponent(v1: f64, t1: f64, v2: f64, t2: f64) -> f64 {
    ln(v1 / v2) / ln(t2 / t1)
}

/// Speed over reference speed for a life over reference life, with feed and depth changed too:
/// life^(-n) feed^(-y) depth^(-x); `others` holds each such ratio with its power.
///
/// Units: -; -. Source: taylor1907, extended form.
pub fn speed_ratio(life: f64, exponent: f64, others: &[(f64, f64)]) -> f64 {
    others
        .iter()
        .fold(pow(life, -exponent), |v, (ratio, power)| {
            v * pow(*ratio, -power)
        })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn worked_examples() {
        // Printed: n 0.25, half the speed, 16 times the life.
        assert!((life_ratio(0.5, 0.25) - 16.0).abs() < 1e-9);
        // Printed: 180 m/min 4.25 min, 110 m/min 35 min: n 0.233.
        assert!((exponent(180.0, 4.25, 110.0, 35.0) - 0.233).abs() < 6e-4);
        // Printed: V T^0.3 f^0.3 d^0.15 = K, feed halved, depth doubled, same life: speed up by 11 %.
        let ratio = speed_ratio(1.0, 0.3, &[(0.5, 0.3), (2.0, 0.15)]);
        assert!((ratio - 1.11).abs() < 5e-3);
        // Printed: 400 rpm 10 min, 200 rpm 40 min, at 300 rpm 17.8 min.
        let n = exponent(400.0, 10.0, 200.0, 40.0);
        assert!((life(300.0, 400.0, n, 10.0) - 17.8).abs() < 0.05);
    }

    #[test]
    fn life_and_speed_invert() {
        let t = life(250.0, 500.0, 0.25, 60.0);
        assert!((t - 960.0).abs() < 1e-9);
        assert!((speed_for_life(t, 500.0, 0.25, 60.0) - 250.0).abs() < 1e-9);
    }
}
