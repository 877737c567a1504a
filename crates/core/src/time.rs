//! Time of a step: path over feed with acceleration, entries at reduced feed, lifts, holes drilled before.

use crate::choice::Choice;
use crate::job::Job;
use crate::pass::Pass;
use crate::shape::TaskShape;
use thinwright_mechanics::{kinematics, time};

/// Time of a step without cutter change, s.
pub(crate) fn step(job: &Job, shape: &TaskShape, choice: &Choice, pass: &Pass) -> f64 {
    let a = job.machine.acceleration;
    let cutting = time::path_time(pass.path, pass.stretch, choice.vf, a);
    let slow = time::path_time(pass.slow_path, pass.stretch, choice.vf * pass.slow_share, a);
    // A helix has no corners.
    let down = choice.vf * pass.helix_share;
    let helices = time::path_time(pass.helix_path, f64::INFINITY, down, a);
    let rise = shape.drop + job.numbers.safe_lift_mm * 1.0e-3;
    let lift = 2.0 * time::segment_time(rise, job.machine.rapid, a) + job.numbers.lift_s;
    let lifts = f64::from(pass.lifts.max(1)) * lift;
    cutting + slow + helices + lifts + drilling(job, shape, pass, lift)
}

/// Time to drill the holes that the method wants first, the change to the drill included, s.
fn drilling(job: &Job, shape: &TaskShape, pass: &Pass, lift: f64) -> f64 {
    let Some((holes, row)) = pass.drilled else {
        return 0.0;
    };
    let Some(drill) = job.rack.iter().find(|c| c.row == row) else {
        return 0.0;
    };
    let (n, feed) = drill_numbers(job, drill);
    let depth = shape.task.depth() + job.numbers.drill_point_over_d * drill.d;
    f64::from(holes) * (depth / (feed * n) + 2.0 * lift) + job.machine.change
}

/// Speed (1/s) and feed per turn (m) of a drill: the middle of the material's speed range, and a share of its diameter.
pub(crate) fn drill_numbers(job: &Job, drill: &crate::job::Cutter) -> (f64, f64) {
    let (low, high) = crate::choice::surface_speeds(job, drill);
    let n = kinematics::spindle_speed((low * high).sqrt(), drill.d);
    let (least, most) = job.speeds_of(drill);
    (
        n.clamp(least, most),
        job.numbers.drill_feed_over_d * drill.d,
    )
}
