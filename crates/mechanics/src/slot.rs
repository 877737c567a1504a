//! Narrow slots: chip room, and peeling (trochoidal) loops.

use crate::math::{FRAC_PI_2, PI, TAU, acos, atan2, bisect, cos, hump, hypot, sin};

/// Evaluations that find the greatest engagement to a millionth of a radian.
const SEARCH: u32 = 24;

/// Depth of a slot over its width.
///
/// Units: m; -. Source: widia and others state limits of 0.5 to 1 for one pass at full width; shopreports 3 to 5 in all.
pub fn depth_to_width(depth: f64, width: f64) -> f64 {
    depth / width
}

/// Loose chips of a level over the slot that is open behind the cutter: bulk ap / depth, per length of slot.
///
/// Above 1 the chips heap up over the work's face. `depth` is that of the slot behind the cutter, this level included.
/// Units: `bulk` - (loose over solid volume), m, m; -. Source: derived, volume balance.
pub fn chip_room(bulk: f64, ap: f64, depth: f64) -> f64 {
    bulk * ap / depth
}

/// Loose chips of one tooth's pass over the room of its gullet: bulk fz ae / (share pi d2 / (4 z)), per depth.
///
/// Units: `bulk` -, m, m, m, teeth, `gullet_share` of the cutter's round section that is open; -.
/// Source: derived, volume balance.
pub fn gullet_fill(bulk: f64, chip: (f64, f64), d: f64, z: u32, gullet_share: f64) -> f64 {
    let (fz, ae) = chip;
    bulk * fz * ae * f64::from(z) / (gullet_share * 0.25 * PI * d * d)
}

/// Engagement at the foremost point of a loop: full circles of radius (width - d)/2 that advance by `step`.
///
/// The wall ahead is the circle of the loop before, of radius width/2, its middle one step back.
/// Units: m; rad. Source: derived, two-circle geometry.
pub fn trochoid_engagement_apex(d: f64, width: f64, step: f64) -> f64 {
    engagement_on_loop(d, width, step, 0.0)
}

/// Greatest engagement over a loop; it comes a little before the foremost point.
///
/// Units: m; rad. Valid for: step well below the loop's radius. Source: derived, two-circle geometry; golden-section
/// search over the quarter of the loop before that point.
/// # Example
/// Cutter 6, slot 10, step 0.6 (mm): 58.0 degrees, against 36.9 along a straight wall.
pub fn trochoid_engagement(d: f64, width: f64, step: f64) -> f64 {
    let at = |theta: f64| engagement_on_loop(d, width, step, theta);
    hump(at, -FRAC_PI_2, 0.0, SEARCH).max(at(0.0))
}

/// Step of the loops that keeps the greatest engagement at an angle, the inverse of [`trochoid_engagement`].
///
/// Units: m, m, rad; m; at most the loop's radius, (width - d) / 2. Source: derived.
pub fn trochoid_step(d: f64, width: f64, angle: f64) -> f64 {
    let most = (0.5 * (width - d)).max(0.0);
    bisect(
        |step| trochoid_engagement(d, width, step) - angle,
        0.0,
        most,
    )
}

/// Engagement with the cutter's middle at angle `theta` of its loop, counted from the direction of advance.
///
/// The cutter's edge is outside the wall left by the loop before within `crossing` of the line of both middles; behind
/// `theta` this loop has cleared the way itself.
fn engagement_on_loop(d: f64, width: f64, step: f64, theta: f64) -> f64 {
    let (tool, wall) = (0.5 * d, 0.5 * width);
    let orbit = wall - tool;
    // Cutter's middle as seen from the middle of the loop before.
    let (x, y) = (step + orbit * cos(theta), orbit * sin(theta));
    let away = hypot(x, y);
    if away + tool <= wall {
        return 0.0;
    }
    let cosine = (wall * wall - away * away - tool * tool) / (2.0 * away * tool);
    let crossing = acos(cosine.clamp(-1.0, 1.0));
    (crossing + atan2(y, x) - theta).clamp(0.0, PI)
}

/// Way of the cutter's middle in one loop: the circle and the advance.
///
/// Units: m; m. Source: derived.
pub fn loop_path(radius: f64, step: f64) -> f64 {
    TAU * radius + step
}

/// Acceleration on a loop, v2 / radius.
///
/// Units: m/s, m; m/s2. Source: derived, circular motion.
pub fn loop_acceleration(v: f64, radius: f64) -> f64 {
    v * v / radius
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn engagement_in_loops_agrees_with_the_reference_list() {
        for (d, width, step, apex, most) in [
            (6.0, 10.0, 0.6, 53.679, 57.99),
            (8.0, 12.0, 0.4, 42.126, 44.77),
            (6.0, 7.5, 0.3, 51.055, 58.67),
        ] {
            assert!((trochoid_engagement_apex(d, width, step).to_degrees() - apex).abs() < 1e-3);
            assert!((trochoid_engagement(d, width, step).to_degrees() - most).abs() < 0.01);
        }
    }
    /// Engagement by marking which points of the cutter's edge are in uncut stock: no formula of this file.
    fn marked(d: f64, width: f64, step: f64) -> f64 {
        let (tool, wall) = (0.5 * d, 0.5 * width);
        let orbit = wall - tool;
        let mut most = 0.0_f64;
        for i in 0..600 {
            let theta = -PI + TAU * f64::from(i) / 600.0;
            let (x, y) = (step + orbit * cos(theta), orbit * sin(theta));
            let points = 4000;
            let free = (0..points).filter(|j| {
                let around = TAU * f64::from(*j) / f64::from(points);
                let (u, v) = (x + tool * cos(around), y + tool * sin(around));
                // In stock: outside the circle cleared before, and not behind this loop's own way (moving by +theta).
                let ahead = cos(around - theta - FRAC_PI_2) > 0.0;
                hypot(u, v) > wall && ahead
            });
            most = most.max(TAU * free.map(|_| 1.0).sum::<f64>() / f64::from(points));
        }
        most
    }

    #[test]
    fn engagement_in_loops_agrees_with_marked_points() {
        for (d, width, step) in [(6.0, 10.0, 0.6), (4.0, 5.0, 0.2), (3.0, 9.0, 0.5)] {
            let found = trochoid_engagement(d, width, step);
            assert!(
                (found - marked(d, width, step)).abs() < 0.01,
                "{d} {width} {step} {found}"
            );
        }
    }

    #[test]
    fn engagement_grows_with_the_step_and_is_at_least_that_of_a_straight_wall() {
        let mut last = 0.0;
        for k in 1..15 {
            let step = 0.1 * f64::from(k);
            let angle = trochoid_engagement(6.0, 10.0, step);
            assert!(angle > last && angle > crate::engagement::engagement_angle(step, 6.0));
            assert!(
                (trochoid_step(6.0, 10.0, angle) - step).abs() < 1e-5,
                "{step}"
            );
            last = angle;
        }
    }

    #[test]
    fn chips_need_room() {
        // A full-width pass in one level: all its chips, loosened, over its own slot.
        assert!((chip_room(4.0, 5.0, 5.0) - 4.0).abs() < 1e-12);
        assert!(chip_room(4.0, 1.0, 5.0) < 1.0);
        // 6 mm, three teeth, half of the section open: 4.7 mm2 a gullet; fz 0.04 at full width, bulk 4: 0.96 mm2.
        let fill = gullet_fill(4.0, (0.04, 6.0), 6.0, 3, 0.5);
        assert!((fill - 0.96 / (PI * 9.0 * 0.5 / 3.0)).abs() < 1e-12);
        assert!((depth_to_width(15.0, 5.0) - 3.0).abs() < 1e-12);
    }
}
