//! Power that a spindle has at a speed.

/// A point of a motor's power over speed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CurvePoint {
    /// Spindle speed, 1/s.
    pub n: f64,
    /// Power, W.
    pub power: f64,
}

/// Power at a speed: straight between points, constant torque below the first, none above the last.
///
/// Units: 1/s; W; 0 without points. Valid for: points in order of speed; the last is the highest speed of the spindle.
/// Source: derived; constant torque as of a motor below its base speed.
pub fn available_power(curve: &[CurvePoint], n: f64) -> f64 {
    let Some(first) = curve.first() else {
        return 0.0;
    };
    if n <= first.n {
        return if first.n > 0.0 {
            first.power * n.max(0.0) / first.n
        } else {
            first.power
        };
    }
    for pair in curve.windows(2) {
        let (a, b) = (pair[0], pair[1]);
        if n <= b.n {
            return a.power + (b.power - a.power) * (n - a.n) / (b.n - a.n);
        }
    }
    // A curve of one point is a motor with that power at that speed alone.
    0.0
}

/// Power of a motor with a rated power from a base speed on: proportional to speed below it.
///
/// Units: W, 1/s, 1/s; W. Source: derived from constant torque below base speed.
/// # Example
/// 0.8 kW rated from 10000 rpm on, at 3000 rpm: 0.24 kW.
pub fn derated(rated: f64, base_n: f64, n: f64) -> f64 {
    rated * (n / base_n).min(1.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn torque_is_constant_below_the_first_point_and_power_straight_above() {
        let curve = [
            CurvePoint {
                n: 100.0,
                power: 500.0,
            },
            CurvePoint {
                n: 400.0,
                power: 1500.0,
            },
        ];
        for (n, expected) in [
            (50.0, 250.0),
            (100.0, 500.0),
            (250.0, 1000.0),
            (400.0, 1500.0),
            (500.0, 0.0),
        ] {
            assert!((available_power(&curve, n) - expected).abs() < 1e-9);
        }
        assert!(available_power(&[], 100.0).abs() < 1e-15);
        assert!((derated(800.0, 10_000.0, 3000.0) - 240.0).abs() < 1e-9);
    }
}
