//! Power that a spindle has at a speed.

/// A point of a motor's power over speed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CurvePoint {
    /// Spindle speed, 1/s.
    pub n: f64,
    /// Power, W.
    pub power: f64,
}

/// Power at a speed: straight between points, constant torque below the first, the last power above the last.
///
/// Units: 1/s; W; 0 without points. Source: straight lines between the points given; constant torque below the first
/// point as of an induction motor under its base speed.
pub fn available_power(curve: &[CurvePoint], n: f64) -> f64 {
    let (Some(first), Some(last)) = (curve.first(), curve.last()) else {
        return 0.0;
    };
    if n <= first.n {
        return first.power * n / first.n;
    }
    for pair in curve.windows(2) {
        let (a, b) = (pair[0], pair[1]);
        if n <= b.n {
            return a.power + (b.power - a.power) * (n - a.n) / (b.n - a.n);
        }
    }
    last.power
}

/// Power of a motor with a rated power from a base speed on: proportional to speed below it.
///
/// Units: W, 1/s, 1/s; W. Source: constant torque below base speed.
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
            (500.0, 1500.0),
        ] {
            assert!((available_power(&curve, n) - expected).abs() < 1e-9);
        }
    }
}
