//! What the hold holds.

use super::scene::Scene;
use super::stock;
use core::f64::consts::PI;
use thinwright_catalog::Grip;
use thinwright_core::task::{Face, TaskKind};
use thinwright_mechanics::hold;

/// Area of the blank, or of the part once it is turned over, m2.
fn outlined(scene: &Scene) -> f64 {
    if scene.stand.second {
        scene.drawing.outline.area()
    } else {
        scene.drawing.blank.area()
    }
}

/// Area on which the part lies, m2: the lower face where there is stock at its height.
fn lies_on(scene: &Scene) -> f64 {
    let drawing = scene.drawing;
    let columns = &scene.stand.before;
    let (bottom, top) = stock::extent(columns);
    let touches = |hollow: usize| {
        // A recess that is open below does not lie on anything.
        let mut cut = columns.iter().filter(|c| c.kind.hollow[hollow]);
        cut.all(|c| match scene.stand.face {
            Face::A => c.bottom - bottom < stock::HAIR,
            Face::B => top - c.top < stock::HAIR,
        })
    };
    let below = match scene.stand.face {
        Face::A => 1,
        Face::B => 0,
    };
    let boss = 0.25 * PI * drawing.boss * drawing.boss;
    let hole = drawing.hollows[below]
        .filter(|_| !touches(below))
        .map_or(0.0, |h| h.plan.area() - boss);
    outlined(scene) - hole
}

/// The least force that presses the part on, N; what holds by its area only where the part lies on.
fn pressed(scene: &Scene) -> f64 {
    match &scene.hold.grip {
        Grip::Force(force) => {
            let count = if scene.hold.each {
                scene.hold.usual_count
            } else {
                1
            };
            force.low.si() * f64::from(count)
        }
        Grip::Pressure(pressure) => pressure.low.si() * lies_on(scene),
    }
}

/// Sideways force that the hold takes at its worst while the cutter lifts, N: friction or fitted screws, whichever is
/// more.
pub(crate) fn capacity(scene: &Scene, lift: f64) -> f64 {
    let hold = scene.hold;
    let pressed = (pressed(scene) - lift).max(0.0);
    let rubs = hold::friction_capacity(pressed, hold.friction.low, hold.friction_faces);
    let shear = match hold.shear_each {
        Some(each) if hold.positive => each.si() * f64::from(hold.usual_count.max(1)),
        _ => 0.0,
    };
    rubs.max(shear)
}

/// Torque that one screw in the boss holds by the friction under it, N m: an even pressure on the boss's face.
pub(crate) fn turning(scene: &Scene) -> Option<f64> {
    let hold = scene.hold;
    let alone = hold.needs_boss && hold.usual_count == 1;
    let arm = 2.0 / 3.0 * 0.5 * scene.drawing.boss;
    alone.then(|| pressed(scene) * hold.friction.low * arm)
}

/// Names of what the hold does not do that the step needs of it.
pub(crate) fn unfit(scene: &Scene) -> Vec<&'static str> {
    let (hold, drawing) = (scene.hold, scene.drawing);
    let round = matches!(drawing.outline, super::drawing::Outline::Round { .. });
    let mut wrong = Vec::new();
    // The blank is square: what it suits counts once the part's own edge is what is held.
    let own_edge = scene.stand.second && hold.squeezes;
    if own_edge && ((round && !hold.suits_round) || (!round && !hold.suits_rectangular)) {
        wrong.push("hold does not suit the part's outline");
    }
    if hold.needs_boss && drawing.boss <= 0.0 {
        wrong.push("hold on a boss that is not there");
    }
    if hold.fails_on.contains(&scene.job.material.id) {
        wrong.push("hold that fails on the material");
    }
    if scene.backing.fails_on.contains(&scene.job.material.id) {
        wrong.push("backing that fails on the material");
    }
    let through = matches!(scene.step.task, TaskKind::SlotsThrough)
        || (scene.step.task == TaskKind::OutlineFinish && !drawing.two_sided());
    if hold.lost_by_cutting_through && through {
        wrong.push("hold that is lost by cutting through");
    }
    if !hold.face_free && scene.step.task == TaskKind::Facing {
        wrong.push("face that is faced under screws or clamps");
    }
    wrong
}
