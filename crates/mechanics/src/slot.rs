//! Narrow slots: chip room, and peeling (trochoidal) loops.

use crate::math::{PI, TAU, acos, cos, sin};

/// Loose chips of a level over the slot that is open behind the cutter: bulk ap / depth.
///
/// Units: -, m, m; -. Source: volume balance.
pub fn chip_room(bulk: f64, ap: f64, depth: f64) -> f64 {
    bulk * ap / depth
}

/// Engagement at the foremost point of a loop: full circles of radius (width - d)/2 that advance by `step`.
///
/// The wall ahead is the circle of the loop before, of radius width/2, its middle one step back.
/// Units: m; rad. Source: two-circle geometry.
pub fn trochoid_engagement_apex(d: f64, width: f64, step: f64) -> f64 {
    engagement_on_loop(d, width, step, 0.0)
}

/// Greatest engagement over a loop; it comes a little before the foremost point.
///
/// Units: m; rad. Source: two-circle geometry; golden-section search over the half of the loop before that point.
pub fn trochoid_engagement(d: f64, width: f64, step: f64) -> f64 {
    const GOLDEN: f64 = 0.618_033_988_749_895;
    const STEPS: u32 = 24;
    let at = |theta: f64| engagement_on_loop(d, width, step, theta);
    let (mut a, mut b) = (-0.25 * TAU, 0.0);
    let (mut p, mut q) = (b - GOLDEN * (b - a), a + GOLDEN * (b - a));
    let (mut at_p, mut at_q) = (at(p), at(q));
    for _ in 0..STEPS {
        if at_p > at_q {
            (b, q, at_q) = (q, p, at_p);
            p = b - GOLDEN * (b - a);
            at_p = at(p);
        } else {
            (a, p, at_p) = (p, q, at_q);
            q = a + GOLDEN * (b - a);
            at_q = at(q);
        }
    }
    at_p.max(at_q).max(at(0.0))
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
    let away = libm::hypot(x, y);
    if away + tool <= wall {
        return 0.0;
    }
    let cosine = (wall * wall - away * away - tool * tool) / (2.0 * away * tool);
    let crossing = acos(cosine.clamp(-1.0, 1.0));
    (crossing + libm::atan2(y, x) - theta).clamp(0.0, PI)
}

/// Way of the cutter's middle in one loop: the circle and the advance.
///
/// Units: m; m. Source: geometry.
pub fn loop_path(radius: f64, step: f64) -> f64 {
    TAU * radius + step
}

/// Acceleration on a loop, v2 / radius.
///
/// Units: m/s, m; m/s2. Source: kinematics.
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
        ] {
            assert!((trochoid_engagement_apex(d, width, step).to_degrees() - apex).abs() < 1e-3);
            assert!((trochoid_engagement(d, width, step).to_degrees() - most).abs() < 0.01);
        }
    }
}
