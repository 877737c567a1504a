//! Time along a path with limited acceleration.

/// Time from rest to rest over a length at no more than speed `v` and acceleration `accel`: a trapezoid, or a triangle
/// where the length is too short to reach the speed.
///
/// Units: m, m/s, m/s2; s. Source: kinematics.
pub fn segment_time(length: f64, v: f64, accel: f64) -> f64 {
    if length <= 0.0 {
        return 0.0;
    }
    if length * accel >= v * v {
        length / v + v / accel
    } else {
        2.0 * (length / accel).sqrt()
    }
}

/// Time of a path of `length` that stops every `stretch`.
///
/// Units: m, m, m/s, m/s2; s. Source: [`segment_time`], once a stretch.
pub fn path_time(length: f64, stretch: f64, v: f64, accel: f64) -> f64 {
    if stretch <= 0.0 || stretch >= length {
        return segment_time(length, v, accel);
    }
    length / stretch * segment_time(stretch, v, accel)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn trapezoid_meets_triangle() {
        let (v, a) = (0.05, 0.5);
        let corner = v * v / a;
        assert!((segment_time(corner, v, a) - 2.0 * v / a).abs() < 1e-12);
        assert!((segment_time(corner * 0.999_999, v, a) - 2.0 * v / a).abs() < 1e-6);
        assert!(path_time(1.0, 0.1, v, a) > path_time(1.0, 1.0, v, a));
    }
}
