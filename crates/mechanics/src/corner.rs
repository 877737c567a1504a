//! Inside corners and arcs: engagement, and the feed that keeps the chip.

use crate::engagement::engagement_angle;
use crate::math::{PI, acos, asin, atan2, cos, hypot};

/// Greatest engagement in a concave arc of wall radius `corner`, the pass before offset by `ae`.
///
/// Where the cutter fits into the arc of that pass too, both are concentric and the angle is the same all along:
/// cos t = ((Rc - ae)2 - (Rc - R)2 - R2) / (2 (Rc - R) R) with R = d/2. Where it does not, the pass before turned on the
/// spot; then the angle is greatest at the beginning of the arc of a right-angled corner. At Rc = R that is the sharp
/// corner.
///
/// Units: m; rad. Valid for: right angles where the corner is tighter than R + ae, and ae up to R there. Source: derived, law of
/// cosines.
/// # Example
/// d 10, corner 6, ae 1 (mm): 95.7 degrees, against 36.9 along the straight wall.
pub fn engagement_in_arc(d: f64, corner: f64, ae: f64) -> f64 {
    let radius = 0.5 * d;
    let orbit = corner - radius;
    if orbit <= 0.0 || (orbit < ae && ae >= radius) {
        return engagement_sharp(d, ae);
    }
    if orbit < ae {
        return engagement_in_tight_arc(radius, orbit, ae);
    }
    let before = corner - ae;
    let cosine = (orbit * orbit + radius * radius - before * before) / (2.0 * orbit * radius);
    PI - acos(cosine.clamp(-1.0, 1.0))
}

/// The same where the pass before turned on the spot, its middle `ae` from each wall further than this one's straight path.
///
/// Seen from the middle of the arc, this cutter stands at (0, -orbit), the corner of that pass at (orbit - ae, ae - orbit).
fn engagement_in_tight_arc(radius: f64, orbit: f64, ae: f64) -> f64 {
    // Side of the corridor ahead, and how high on it the cutter's edge leaves the stock.
    let side = radius - (ae - orbit);
    let height = (radius * radius - side * side).max(0.0).sqrt();
    if height >= ae {
        return PI - asin(side / radius);
    }
    // Lower, the stock ends at the round left by the turn.
    let (x, y) = (orbit - ae, ae);
    atan2(y, x) + 0.5 * PI - acos(0.5 * hypot(x, y) / radius)
}

/// Greatest engagement in a right-angled corner of the cutter's own radius: a quarter turn more than along the wall.
///
/// Units: m; rad. Source: derived.
pub fn engagement_sharp(d: f64, ae: f64) -> f64 {
    (engagement_angle(ae, d) + 0.5 * PI).min(PI)
}

/// Feed of the cutter's middle over the feed at the wall on the inside of an arc of diameter `arc`: (arc - d) / arc.
///
/// Units: m; -. Source: sandvik2017; kyocera2021.
pub fn centre_feed_inside(arc: f64, d: f64) -> f64 {
    ((arc - d) / arc).max(0.0)
}

/// Feed of the cutter's middle over the feed at the wall around a boss of diameter `arc`: (arc + d) / arc.
///
/// Units: m; -. Source: derived.
pub fn centre_feed_outside(arc: f64, d: f64) -> f64 {
    (arc + d) / arc
}

/// Stepover that a bore widened from `before` to `after` has along a straight wall with the same engagement.
///
/// Units: m; m. Source: sandvik2017, (after2 - before2) / (4 (after - d)).
pub fn ae_effective_in_bore(after: f64, before: f64, d: f64) -> f64 {
    (after * after - before * before) / (4.0 * (after - d))
}

/// Feed that keeps the mean chip where the engagement angle grows from that of `ae` to `angle`.
///
/// The mean chip is fz (1 - cos phi) / phi: feed falls by the ratio of both. Units: m, m, rad; - (at most 1).
/// Valid for: a straight stepover above 0. Source: derived from the exact mean chip, palbit2019.
pub fn feed_factor(d: f64, ae: f64, angle: f64) -> f64 {
    let mean = |phi: f64| {
        if phi <= 0.0 {
            0.0
        } else {
            (1.0 - cos(phi)) / phi
        }
    };
    let straight = mean(engagement_angle(ae, d));
    let here = mean(angle);
    if here > straight {
        straight / here
    } else {
        1.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn arcs_agree_with_the_reference_list() {
        for (d, corner, ae, degrees) in [
            (10.0, 12.0, 1.0, 47.823),
            (10.0, 8.0, 1.0, 60.0),
            (10.0, 6.0, 1.0, 95.739),
            (6.0, 4.0, 0.6, 74.93),
            (10.0, 5.0, 1.0, 126.87),
        ] {
            assert!(
                (engagement_in_arc(d, corner, ae).to_degrees() - degrees).abs() < 0.01,
                "{corner}"
            );
        }
        assert!((ae_effective_in_bore(50.0, 46.0, 20.0) - 3.2).abs() < 1e-9);
    }

    #[test]
    fn a_wide_arc_is_a_straight_wall_and_a_tight_one_a_corner() {
        let straight = engagement_angle(1.0, 10.0);
        assert!((engagement_in_arc(10.0, 1e6, 1.0) - straight).abs() < 1e-5);
        let deep = engagement_in_arc(10.0, 1e6, 7.0);
        assert!((deep - engagement_angle(7.0, 10.0)).abs() < 1e-5);
        assert!((engagement_in_arc(10.0, 5.0, 1.0) - engagement_sharp(10.0, 1.0)).abs() < 1e-12);
        let mut last = 0.0;
        for k in (1..200).rev() {
            let angle = engagement_in_arc(10.0, 5.0 + 0.1 * f64::from(k), 1.0);
            assert!(angle > last, "{k}");
            last = angle;
        }
    }

    /// Engagement by marking points of the cutter's edge that no earlier position has swept: no formula of this file.
    fn marked(d: f64, corner: f64, ae: f64) -> f64 {
        let radius = 0.5 * d;
        let orbit = corner - radius;
        // Middle of the pass before: along y = low to x = turn, then up; this one: along y = -orbit, round, up.
        let (turn, low) = ((orbit - ae).min(0.0), (ae - orbit).max(0.0));
        let arc = (orbit - ae).max(0.0);
        let swept = |u: f64, v: f64| {
            if arc > 0.0 && u > 0.0 && v < 0.0 {
                return hypot(u, v) <= arc + radius;
            }
            let (right, above) = ((u - turn - arc).max(0.0), (v - low + arc).min(0.0));
            // Left of the turn only the lower side counts, above it only the right one.
            let (past_x, past_y) = (u > turn, v < low);
            match (past_x, past_y) {
                (true, true) => hypot(right, above) <= radius,
                (true, false) => right <= radius,
                (false, _) => -above <= radius,
            }
        };
        let mut most = 0.0_f64;
        for i in 0..=90 {
            let psi = f64::from(i).to_radians();
            let (x, y) = (orbit * libm::sin(psi), -orbit * cos(psi));
            let mut beta = 0.0;
            // From the wall forwards until the edge leaves the stock.
            loop {
                let angle = psi - 0.5 * PI + beta + 1e-9;
                if beta >= PI || swept(x + radius * cos(angle), y + radius * libm::sin(angle)) {
                    break;
                }
                beta += 1e-3;
            }
            most = most.max(beta);
        }
        most
    }

    #[test]
    fn arcs_agree_with_marked_points() {
        for corner in [5.001, 5.1, 5.3, 5.5, 5.8, 5.99, 6.0, 6.5, 8.0, 12.0] {
            for ae in [0.3, 1.0, 2.5] {
                let (found, marked) = (
                    engagement_in_arc(10.0, corner, ae),
                    marked(10.0, corner, ae),
                );
                assert!(
                    (found - marked).abs() < 3e-3,
                    "{corner} {ae}: {found} {marked}"
                );
            }
        }
    }

    #[test]
    fn the_feed_keeps_the_mean_chip() {
        // In the arc, engaged by `angle`, the mean chip is that of a stepover with the same angle.
        let (d, ae) = (10.0, 1.0);
        let angle = engagement_in_arc(d, 6.0, ae);
        let factor = feed_factor(d, ae, angle);
        let deeper = crate::engagement::ae_for_angle(angle, d);
        let chip = |fz, ae| crate::chip::mean_chip_thickness(fz, ae, d, 0.5 * PI);
        assert!((chip(factor, deeper) / chip(1.0, ae) - 1.0).abs() < 1e-12);
        assert!((feed_factor(d, ae, engagement_angle(ae, d)) - 1.0).abs() < 1e-12);
    }

    #[test]
    fn centre_feeds_worked_by_hand() {
        // Arc 16, cutter 6: 1000 mm/min at the wall are 625 at the middle; around a boss of 20, cutter 10: 1500.
        assert!((centre_feed_inside(16.0, 6.0) - 0.625).abs() < 1e-12);
        assert!((centre_feed_outside(20.0, 10.0) - 1.5).abs() < 1e-12);
        // sandvik2017 prints half the feed at d = 0.4 of the bore, less than the 0.6 of kinematics: the stepover rises too.
        assert!((centre_feed_inside(50.0, 20.0) - 0.6).abs() < 1e-12);
    }
}
