//! Limits that refuse a job.

use super::bites::Place;
use super::drawing::{Outline, apart};
use super::limits::{Peak, Use, greatest};
use super::scene::Scene;
use super::{holding, loads};
use core::f64::consts::TAU;
use thinwright_core::estimate::Unknown;
use thinwright_core::limits::LimitId;
use thinwright_core::methods::MethodId;
use thinwright_core::strategy::Entry;
use thinwright_core::task::TaskKind;
use thinwright_mechanics::{entry, slot, spindle};

const MM: f64 = 1.0e-3;

pub(crate) fn found(scene: &Scene, limit: LimitId) -> Option<Use> {
    match limit {
        LimitId::FluteLength => Some(flutes(scene)),
        LimitId::Reach => reach(scene),
        LimitId::StickOut => Some(nut(scene)),
        LimitId::ShankClearance => shank(scene),
        LimitId::FeedReliable => {
            // A typed grid may lie half a step above what was answered.
            let most = scene.job.machine.feed.max(scene.job.grid.vf);
            Some(Use::one(scene.step.vf.si(), most))
        }
        LimitId::EntryAngle => slope(scene),
        LimitId::LoopAcceleration => looping(scene),
        LimitId::ChipRoom => chips(scene),
        LimitId::SpindlePower => Some(power(scene)),
        LimitId::AxisThrust => {
            let mean = greatest(scene, |_, l| l.most(|f| f.mean_lateral) * scene.hard());
            Some(Use::of(mean, scene.estimate(Unknown::Thrust).low))
        }
        LimitId::Breakage => Some(breaking(scene)),
        LimitId::Holding => Some(slipping(scene)),
        LimitId::WebStress => web_stress(scene),
        _ => None,
    }
}

/// Every bite, and the step-down as it is typed, within the flutes.
fn flutes(scene: &Scene) -> Use {
    let deepest = greatest(scene, |bite, _| bite.ap.max(scene.ap()));
    Use::of(deepest, scene.cutter.flute_length)
}

/// A thicker shank stays above the surface that the cutter goes into: the floor for slots in a recess, else the face.
fn reach(scene: &Scene) -> Option<Use> {
    let cutter = scene.cutter;
    if cutter.shank <= cutter.d || scene.step.task == TaskKind::Facing {
        return None;
    }
    let in_recess = scene.slots() && scene.hollow().is_some();
    let depth = if in_recess {
        scene.stand.depth()
    } else {
        scene.stand.total()
    };
    Some(Use::one(depth, cutter.reach))
}

/// Distance from the middle lines of slots to the walls of the recess around, boss included, m.
fn to_walls(scene: &Scene) -> Option<f64> {
    const POINTS: u32 = 16;
    let hollow = scene.hollow().filter(|_| scene.slots())?;
    let mut least = f64::INFINITY;
    for slit in &scene.drawing.slits {
        for k in 0..=POINTS {
            let p = slit.at(f64::from(k) / f64::from(POINTS) * 2.0 - 1.0);
            least = least.min(hollow.plan.inside(p));
            if scene.drawing.boss > 0.0 {
                least = least.min(apart(p, (0.0, 0.0)) - 0.5 * scene.drawing.boss);
            }
        }
    }
    Some(least.max(0.0))
}

/// How far the cutter's middle runs beside a slot's middle line, m.
fn aside(scene: &Scene) -> f64 {
    (0.5 * (scene.slot_width() - scene.cutter.d)).max(0.0)
}

/// The collet nut stays clear of the highest stock around, or goes down into a recess where it clears the walls.
fn nut(scene: &Scene) -> Use {
    let air = scene.job.numbers.nut_clearance_mm * MM;
    let half = 0.5 * scene.job.machine.nut;
    let clears = to_walls(scene).is_some_and(|wall| wall - aside(scene) > half + air);
    let barely = to_walls(scene).is_some_and(|wall| wall > half + air);
    let depth = |goes_in: bool| {
        if goes_in {
            scene.stand.depth()
        } else {
            scene.stand.total()
        }
    };
    // Whether the nut's way aside counts is a matter of a millimetre: both readings are allowed.
    let stick_out = scene.cutter.stick_out;
    let one = Use::one(depth(barely) + air, stick_out);
    let other = Use::one(depth(clears) + air, stick_out);
    Use {
        sure: one.sure.min(other.sure),
        most: one.most.max(other.most),
        at: None,
    }
}

/// A thick shank beside the walls of the recess that a slot lies in.
fn shank(scene: &Scene) -> Option<Use> {
    let cutter = scene.cutter;
    let wall = to_walls(scene)?;
    if cutter.shank <= cutter.d || scene.stand.total() <= cutter.reach {
        return None;
    }
    let needed = 0.5 * cutter.shank + scene.job.numbers.shank_clearance_mm * MM;
    Some(Use::one(needed, (wall - aside(scene)).max(0.0)))
}

/// Shortest middle line of a slot, m.
pub(crate) fn shortest_run(scene: &Scene) -> f64 {
    let runs = scene.drawing.slits.iter().map(|s| s.run());
    runs.fold(f64::INFINITY, f64::min)
}

/// Slope of a helix or of strokes to and fro, from the sizes that are told.
fn slope(scene: &Scene) -> Option<Use> {
    let angle = match scene.step.entry {
        Entry::Helix { hole, pitch, .. } => {
            entry::helix_angle(pitch.si(), hole.si(), scene.cutter.d)
        }
        Entry::Zigzag { .. } => libm::atan2(scene.ap(), shortest_run(scene)),
        Entry::Side | Entry::Drilled { .. } | Entry::Plunge { .. } => return None,
    };
    Some(Use::one(angle, scene.job.material.ramp.1.si()))
}

/// Loops of the cutter's middle at the step's feed.
fn looping(scene: &Scene) -> Option<Use> {
    let wide = match scene.step.method {
        MethodId::Peeling => scene.slot_width(),
        MethodId::LightClearing => scene.entry_hole()?,
        _ => return None,
    };
    let radius = 0.5 * (wide - scene.cutter.d);
    let asked = slot::loop_acceleration(scene.step.vf.si(), radius);
    Some(Use::one(asked, scene.job.machine.acceleration))
}

/// Loose chips of the last level over the slot behind the cutter.
fn chips(scene: &Scene) -> Option<Use> {
    let depth = scene.stand.depth();
    if !scene.slots() || depth <= scene.slot_width() {
        return None;
    }
    let share = match scene.step.method {
        MethodId::Peeling => scene.cutter.d / scene.slot_width(),
        _ => 1.0,
    };
    let bulk = scene.job.material.bulk_factor.likely;
    let heap = share * slot::chip_room(bulk, scene.ap(), depth);
    Some(Use::one(heap, scene.job.holding.chips.depth_factor))
}

/// Power of the greatest mean torque, with the least that comes through from the motor.
fn power(scene: &Scene) -> Use {
    let n = scene.step.n.si();
    let torque = greatest(scene, |_, l| l.most(|f| f.mean_torque) * scene.hard());
    let motor = spindle::available_power(&scene.job.machine.curve, n);
    let power = motor * scene.estimate(Unknown::Efficiency).low;
    Use::of(torque.times(TAU * n), power)
}

/// Bending stress in the cutter, each bite with its own arm.
fn breaking(scene: &Scene) -> Use {
    let safety = scene.job.numbers.tool_breakage_safety;
    let stress = greatest(scene, |bite, l| {
        l.most(|f| f.peak_lateral) * scene.hard() * loads::stress(scene, bite) * safety
    });
    let rupture = &scene.cutter.material.rupture_strength;
    // The spread may be that of the worst cutter of the rack.
    let rack = rupture.likely.si() * scene.estimate(Unknown::Rupture).low;
    Use::between(stress, (rupture.low.si(), rack.min(rupture.low.si())))
}

/// The greatest sideways force against what the hold takes while the helix pulls the part up.
fn slipping(scene: &Scene) -> Use {
    let (peak, lift) = pulls(scene);
    Use::between(
        peak,
        (
            holding::capacity(scene, lift.sure),
            holding::capacity(scene, lift.most),
        ),
    )
}

/// Greatest sideways force with its safety, and greatest lift, N: surely, and at the most.
pub(crate) fn pulls(scene: &Scene) -> (Peak, Peak) {
    let safety = scene.job.numbers.hold_safety;
    let peak = greatest(scene, |_, l| {
        l.most(|f| f.peak_lateral) * scene.hard() * safety
    });
    let lift = greatest(scene, |_, l| l.most(|f| -f.mean_axial) * scene.hard());
    (peak, lift)
}

/// Bending stress in the web under the greatest axial force.
fn web_stress(scene: &Scene) -> Option<Use> {
    let web = scene.web.as_ref()?;
    let safety = scene.job.numbers.web_stress_safety;
    let push = greatest(scene, |_, l| {
        l.most(|f| f.peak_axial.abs()) * scene.hard() * safety
    });
    let bears = scene.job.material.yield_strength.si();
    let stress = Peak {
        sure: push.sure * web.stress.least,
        most: push.most * web.stress.most,
        ..push
    };
    Some(Use::of(stress, bears))
}

/// The place where most of a step is cut.
pub(crate) fn usual<'a>(scene: &'a Scene) -> Option<&'a (super::bites::Bite, loads::Loads)> {
    let of = |place: Place| scene.bites.iter().find(|b| b.0.place == place);
    if scene.slots() && scene.step.method == MethodId::Peeling {
        return of(Place::Loop);
    }
    of(Place::Straight).or_else(|| of(Place::Opening))
}

/// Whether a recess is a box seen from above.
pub(crate) fn boxed(scene: &Scene) -> bool {
    matches!(scene.hollow().map(|h| h.plan), Some(Outline::Box { .. }))
}
