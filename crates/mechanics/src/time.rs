//! Time along a path with limited acceleration.

use crate::math::{FRAC_PI_2, cos, sin};

/// Time from rest to rest over a length at no more than speed `v` and acceleration `accel`: a trapezoid, or a triangle
/// where the length is too short to reach the speed.
///
/// Units: m, m/s, m/s2; s. Source: biagiotti2008, trapezoidal speed.
/// # Example
/// 1 m at 0.1 m/s with 1 m/s2: 10.1 s.
pub fn segment_time(length: f64, v: f64, accel: f64) -> f64 {
    moving_time(length, (0.0, 0.0), v, accel)
}

/// Time of a path of `length` that stops every `stretch`.
///
/// Units: m, m, m/s, m/s2; s. Source: biagiotti2008, trapezoidal speed, once a stretch.
pub fn path_time(length: f64, stretch: f64, v: f64, accel: f64) -> f64 {
    if stretch <= 0.0 || stretch >= length {
        return segment_time(length, v, accel);
    }
    length / stretch * segment_time(stretch, v, accel)
}

/// A straight piece of a path.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Segment {
    /// Length, m.
    pub length: f64,
    /// Feed speed wanted, m/s.
    pub v: f64,
    /// Greatest speed at its end, m/s: [`junction_speed`] of the corner there.
    pub exit_v: f64,
}

/// Speed at which a corner may be run through if the path may be rounded by `deviation`: sqrt(a r) on the greatest arc
/// that stays so close, r = deviation cos(turn/2) / (1 - cos(turn/2)).
///
/// Units: `turn` rad (0 straight on, pi back), m, m/s2; m/s; infinite straight on, 0 when it turns back.
/// Source: derived from the arc tangent to both pieces; machines differ, so a measured time wins.
pub fn junction_speed(turn: f64, deviation: f64, accel: f64) -> f64 {
    let half = 0.5 * turn.abs();
    if half >= FRAC_PI_2 {
        return 0.0;
    }
    // 1 - cos as twice the square of the sine of half: no digits lost for small turns.
    let sine = sin(0.5 * half);
    (accel * deviation * cos(half) / (2.0 * sine * sine)).sqrt()
}

/// Time of a chain of pieces from rest to rest, speeds at the joints as high as acceleration and corners let them.
///
/// Units: pieces in order, m/s2; s. Valid for: one acceleration along the path, unlimited jerk.
/// Source: biagiotti2008, trapezoidal speed; joints by one pass backwards and one forwards.
pub fn chain_time(segments: &[Segment], accel: f64) -> f64 {
    let reach = |v: f64, length: f64| (v * v + 2.0 * accel * length.max(0.0)).sqrt();
    // Backwards: fast enough to still brake. The last joint is the stop.
    let mut joints = vec![0.0; segments.len() + 1];
    for (i, segment) in segments.iter().enumerate().rev() {
        let before = i.checked_sub(1).map_or(0.0, |k| {
            segments[k].exit_v.min(segments[k].v).min(segment.v)
        });
        joints[i] = reach(joints[i + 1], segment.length).min(before);
    }
    // Forwards: no faster than it can have become.
    let mut time = 0.0;
    for (i, segment) in segments.iter().enumerate() {
        joints[i + 1] = joints[i + 1].min(reach(joints[i], segment.length));
        time += moving_time(segment.length, (joints[i], joints[i + 1]), segment.v, accel);
    }
    time
}

/// Time over a length with speeds at both ends that acceleration can join.
fn moving_time(length: f64, ends: (f64, f64), v: f64, accel: f64) -> f64 {
    if length <= 0.0 {
        return 0.0;
    }
    let squares = ends.0 * ends.0 + ends.1 * ends.1;
    // Speed of the peak if nothing capped it.
    let peak = (0.5 * squares + accel * length).sqrt();
    if peak <= v {
        return (2.0 * peak - ends.0 - ends.1) / accel;
    }
    let ramps = (2.0 * v - ends.0 - ends.1) / accel;
    let ramp_length = (v * v - 0.5 * squares) / accel;
    ramps + (length - ramp_length) / v
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
        assert!((segment_time(1.0, 0.1, 1.0) - 10.1).abs() < 1e-12);
        assert!((segment_time(0.01, 1.0, 1.0) - 0.2).abs() < 1e-12);
        assert!(path_time(1.0, 0.1, v, a) > path_time(1.0, 1.0, v, a));
    }

    fn chain(count: usize, exit_v: f64) -> Vec<Segment> {
        let piece = Segment {
            length: 0.01,
            v: 0.05,
            exit_v,
        };
        vec![piece; count]
    }

    #[test]
    fn a_chain_lies_between_one_run_and_a_stop_at_every_joint() {
        let (v, a) = (0.05, 0.5);
        let whole = segment_time(0.1, v, a);
        assert!((chain_time(&chain(10, f64::INFINITY), a) - whole).abs() < 1e-12);
        let stops = path_time(0.1, 0.01, v, a);
        assert!((chain_time(&chain(10, 0.0), a) - stops).abs() < 1e-12);
        let between = chain_time(&chain(10, 0.02), a);
        assert!(between > whole && between < stops);
        assert!(chain_time(&[], a).abs() < 1e-15);
    }

    #[test]
    fn braking_is_seen_from_afar() {
        // The last piece is shorter than the way to stop: the one before must brake already. Summed in small steps.
        let mut pieces = chain(2, f64::INFINITY);
        pieces[1].length = 1e-4;
        let a = 0.5;
        let (mut x, mut v, mut t, dt) = (0.0, 0.0_f64, 0.0, 1e-6);
        let end = 0.0101;
        while x < end && (v > 0.0 || t < 1e-3) {
            let brake = v * v / (2.0 * a) >= end - x;
            v = if brake {
                v - a * dt
            } else {
                (v + a * dt).min(0.05)
            };
            x += v * dt;
            t += dt;
        }
        assert!((chain_time(&pieces, a) / t - 1.0).abs() < 2e-3, "{t}");
    }

    #[test]
    fn corners_slow_down() {
        assert!(junction_speed(0.0, 1e-5, 0.5).is_infinite());
        assert!(junction_speed(2.0 * FRAC_PI_2, 1e-5, 0.5).abs() < 1e-15);
        // A right angle rounded by 0.01 mm: arc radius 0.01 / (sqrt 2 - 1), as 1/cos(45) - 1 = 0.414.
        let radius = 1e-5 / (2.0_f64.sqrt() - 1.0);
        assert!((junction_speed(FRAC_PI_2, 1e-5, 0.5) / (0.5 * radius).sqrt() - 1.0).abs() < 1e-12);
        assert!(junction_speed(1.0, 1e-5, 0.5) > junction_speed(2.0, 1e-5, 0.5));
    }
}
