//! Time once more: the way over the told feeds, between never stopping and stopping at every turn; lifts, holes, cutters
//! brought to the spindle, setups.

use super::Complaints;
use super::heights::Stand;
use super::scene::Scene;
use super::travel;
use thinwright_core::Job;
use thinwright_core::strategy::{Entry, Strategy};
use thinwright_mechanics::time::{path_time, segment_time};

/// Share by which the time of a step may differ from what its way says.
const TIMES: f64 = 0.05;

/// Time of a step told against the time of its way.
pub(crate) fn step(scene: &Scene, out: &mut Complaints) {
    let (job, step) = (scene.job, scene.step);
    let a = job.machine.acceleration;
    let travel = travel::of(scene);
    let along = |most: bool| -> f64 {
        let each = travel.legs.iter().map(|leg| {
            let (length, stops) = if most {
                (leg.length.1, leg.stops)
            } else {
                (leg.length.0, f64::INFINITY)
            };
            path_time(length, stops, leg.feed, a)
        });
        each.sum()
    };
    // Where the way itself is not sure, the told one is taken, if it is between.
    let sure: f64 = travel.legs.iter().map(|l| l.length.0).sum();
    let told = step.path.si();
    let vf = step.vf.si();
    let low = along(false).max(along(false) + (told - sure).max(0.0) / vf);
    let high = along(true);
    let lift = lift(scene);
    let rest = travel.lifts * lift + drilling(scene, lift);
    let rule = format!("time of {:?}", step.method);
    out.between(
        (&rule, step.number),
        step.time.si(),
        (low + rest, high.max(low) + rest),
        TIMES,
    );
}

/// Up through the air and back, s.
fn lift(scene: &Scene) -> f64 {
    let job = scene.job;
    let drop = (scene.stand.surface - scene.stand.from).abs();
    let rise = drop + job.numbers.safe_lift_mm * 1.0e-3;
    let way = segment_time(rise, job.machine.rapid, job.machine.acceleration);
    2.0 * way + job.numbers.lift_s
}

/// The holes at the ends of slots, the change to their drill with them, s.
fn drilling(scene: &Scene, lift: f64) -> f64 {
    let Entry::Drilled { hole, feed, .. } = scene.step.entry else {
        return 0.0;
    };
    let numbers = &scene.job.numbers;
    let depth = scene.stand.depth() + numbers.drill_point_over_d * hole.si();
    #[allow(clippy::cast_precision_loss, reason = "a few hundred slots")]
    let holes = 2.0 * scene.drawing.slits.len() as f64;
    holes * (depth / feed.si() + 2.0 * lift) + scene.job.machine.change
}

/// The strategy's time is the sum of its parts.
pub(crate) fn check(job: &Job, told: &Strategy, stands: &[Stand], out: &mut Complaints) {
    let mut changes = 0;
    let mut inside = 0;
    let mut spindle = None;
    let mut bring = |row: u8| {
        if spindle.replace(row) != Some(row) {
            changes += 1;
        }
    };
    let mut cutting = 0.0;
    for stand in stands {
        if let Entry::Drilled { drill, .. } = stand.step.entry {
            // Its change stands in the step's own time.
            bring(drill);
            inside += 1;
        }
        bring(stand.step.cutter);
        cutting += stand.step.time.si();
    }
    let outside = f64::from(changes) - f64::from(inside);
    let setups: f64 = told
        .setups
        .iter()
        .enumerate()
        .map(|(i, setup)| {
            let second = i > 0;
            let holding = &job.holding;
            let hold = if second {
                &holding.second
            } else {
                &holding.first
            };
            let backing = holding.backings.iter().find(|b| b.id == setup.backing);
            let made = backing.map_or(0.0, |b| b.setup.si()) / f64::from(holding.quantity.max(1));
            let turn = if second { job.numbers.turn_over_s } else { 0.0 };
            let bolt = if setup.boss_bolted {
                job.numbers.bolt_boss_s
            } else {
                0.0
            };
            hold.setup.si() + made + turn + bolt
        })
        .sum();
    let total = cutting + outside * job.machine.change + setups;
    out.between(("time in all", 0), told.time.si(), (total, total), 1.0e-6);
    if told.cutter_changes != changes {
        let figures = format!("{} told, {changes} found", told.cutter_changes);
        out.add("changes of the cutter", 0, 0.0, figures);
    }
}
