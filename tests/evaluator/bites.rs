//! What the cutter meets in a step: every way in which it is engaged.

use super::scene::Scene;
use thinwright_core::methods::MethodId;
use thinwright_core::strategy::Entry;
use thinwright_core::task::TaskKind;
use thinwright_mechanics::engagement::{Immersion, ae_for_angle};
use thinwright_mechanics::{corner, slot};

/// Where a cutter is engaged in a way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Place {
    /// Along a straight wall, most of the time.
    Straight,
    /// At full width, where nothing is open yet.
    Opening,
    /// Where the path turns inwards.
    Corner,
    /// In loops.
    Loop,
    /// Going down.
    Entry,
    /// At the ends of strokes that slope to and fro: each stroke ends on what the one before has not reached.
    StrokeEnd,
    /// Along the finished sides of a slot.
    Side,
}

/// One way in which the cutter is engaged.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Bite {
    pub(crate) place: Place,
    pub(crate) immersion: Immersion,
    /// Depth along the tool, m.
    pub(crate) ap: f64,
    /// Feed there, as a share of the step's.
    pub(crate) share: f64,
    /// Sure to be met; what is not sure is only the most that a cautious reader may reckon with.
    pub(crate) sure: bool,
}

/// A cutter counts as engaged all over from this share of its diameter on.
const ALL_OVER: f64 = 0.999;
/// A cutter under this share of a slot's width needs its sides cut.
const AS_WIDE: f64 = 0.97;

fn full(place: Place, ap: f64, share: f64) -> Bite {
    Bite {
        place,
        immersion: Immersion::slot(),
        ap,
        share,
        sure: true,
    }
}

fn unsure(bite: Bite) -> Bite {
    Bite {
        sure: false,
        ..bite
    }
}

/// A side cut that engages the cutter by an angle: with the feed, against it where the axes are loose.
fn along(scene: &Scene, place: Place, ae: f64, ap: f64) -> Bite {
    let d = scene.cutter.d;
    let immersion = if ae >= ALL_OVER * d {
        Immersion::slot()
    } else if scene.loose() {
        Immersion::up(ae, d)
    } else {
        Immersion::down(ae, d)
    };
    Bite {
        place,
        immersion,
        ap,
        share: 1.0,
        sure: true,
    }
}

fn turned(scene: &Scene, place: Place, angle: f64, ap: f64) -> Bite {
    let d = scene.cutter.d;
    along(scene, place, ae_for_angle(angle, d).min(d), ap)
}

/// Everything that the cutter meets in a step.
pub(crate) fn of(scene: &Scene) -> Vec<Bite> {
    let (ae, ap, ramp) = (scene.ae(), scene.ap(), scene.ramp());
    let mut all = Vec::new();
    match scene.step.method {
        MethodId::Facing => all.push(along(scene, Place::Straight, ae, ap)),
        MethodId::BoreHelix => {
            // The chip is what the cutter's middle moves; makers reckon with the feed at the wall.
            all.extend(helix(scene));
            all.push(unsure(full(Place::Opening, ap, ramp)));
        }
        MethodId::OffsetClearing => {
            all.push(along(scene, Place::Straight, ae, ap));
            all.push(full(Place::Opening, ap, ramp));
            all.extend(helix(scene));
            all.extend(corners(scene, ae, ap));
        }
        MethodId::LightClearing => {
            all.push(along(scene, Place::Straight, ae, ap));
            all.extend(loops(scene, ap));
            all.extend(helix(scene));
            all.extend(corners(scene, ae, ap));
        }
        MethodId::FloorSkim => {
            all.push(along(scene, Place::Straight, ae, ap));
            all.push(full(Place::Opening, ap, 1.0));
            all.extend(helix(scene));
            all.extend(corners(scene, ae, ap));
        }
        MethodId::WallSkim => wall_skim(scene, &mut all),
        MethodId::FullWidth | MethodId::OutlineGroove | MethodId::OutlineTabs => {
            all.push(full(Place::Straight, ap, 1.0));
        }
        MethodId::Zigzag => {
            all.push(full(Place::Straight, ap, 1.0));
            all.extend(stroke_ends(scene));
        }
        MethodId::SidePasses => {
            all.push(full(Place::Straight, ap, 1.0));
            all.extend(stroke_ends(scene));
            all.push(sides(scene));
        }
        MethodId::Peeling => {
            all.extend(loops(scene, ap));
            all.extend(helix(scene));
        }
        MethodId::DrilledEnds => {
            all.push(full(Place::Straight, ap, 1.0));
            if scene.cutter.d < AS_WIDE * scene.slot_width() {
                all.push(sides(scene));
            }
        }
    }
    all
}

/// What is met is what was left, whatever stepover is typed; in corners at their own feed, if that is heeded.
fn wall_skim(scene: &Scene, all: &mut Vec<Bite>) {
    let ae = scene.ae().max(scene.stand.skin);
    all.push(along(scene, Place::Straight, ae, scene.ap()));
    if let Some(corner) = corners(scene, ae, scene.ap()) {
        all.push(corner);
        all.push(unsure(Bite {
            share: 1.0,
            ..corner
        }));
    }
}

/// The helix down: all around at the depth of its pitch; the chip is what the cutter's middle moves.
fn helix(scene: &Scene) -> Option<Bite> {
    let Entry::Helix { hole, pitch, .. } = scene.step.entry else {
        return None;
    };
    let share = scene.ramp() * (1.0 - scene.cutter.d / hole.si()).max(0.0);
    Some(full(Place::Entry, pitch.si(), share))
}

/// Strokes that slope down by a step-down each: one stroke back from its beginning the floor lies two steps higher.
fn stroke_ends(scene: &Scene) -> Option<Bite> {
    let deep = (2.0 * scene.ap()).min(scene.stand.depth());
    (scene.step.levels > 1).then(|| full(Place::StrokeEnd, deep, scene.ramp()))
}

/// What no step tells of: the first passes at full width at the feed that is typed, and the sharp turns of the passes
/// inside the wall's.
pub(crate) fn untold(scene: &Scene) -> Vec<Bite> {
    let mut all = Vec::new();
    let clears = matches!(
        scene.step.method,
        MethodId::OffsetClearing | MethodId::LightClearing
    );
    if scene.step.method == MethodId::OffsetClearing {
        all.push(full(Place::Opening, scene.ap(), 1.0));
    }
    if clears && scene.corner().is_some() {
        let angle = corner::engagement_sharp(scene.cutter.d, scene.ae());
        let feed = scene.step.corner_feed.unwrap_or(scene.step.vf);
        all.push(Bite {
            share: feed.si() / scene.step.vf.si(),
            ..turned(scene, Place::Corner, angle, scene.ap())
        });
    }
    all
}

/// Loops in the slot, or in the ring that opens a recess.
fn loops(scene: &Scene, ap: f64) -> Option<Bite> {
    let wide = if scene.slots() {
        scene.slot_width()
    } else {
        scene.entry_hole()?
    };
    let angle = slot::trochoid_engagement(scene.cutter.d, wide, scene.ae());
    Some(turned(scene, Place::Loop, angle, ap))
}

/// Corners along the wall, at the feed that is told for them.
fn corners(scene: &Scene, ae: f64, ap: f64) -> Option<Bite> {
    let (radius, d) = (scene.corner()?, scene.cutter.d);
    let angle = corner::engagement_in_arc(d, radius.max(0.5 * d), ae);
    let share = scene
        .step
        .corner_feed
        .map_or(1.0, |feed| feed.si() / scene.step.vf.si());
    Some(Bite {
        share,
        ..turned(scene, Place::Corner, angle, ap)
    })
}

/// Both sides of a slot, each at most as deep at a time as the cutter is wide and its flutes are long.
fn sides(scene: &Scene) -> Bite {
    let rest = scene.slot_width() - scene.cutter.d;
    along(scene, Place::Side, 0.5 * rest, side_depth(scene))
}

/// Depth of the passes along the sides of a slot, m.
pub(crate) fn side_depth(scene: &Scene) -> f64 {
    let (depth, most) = (
        scene.stand.depth(),
        scene.cutter.d.min(scene.cutter.flute_length),
    );
    depth / libm::ceil(depth / most).max(1.0)
}

/// Whether a bite leaves the finished wall of the task.
pub(crate) fn finishes(scene: &Scene, bite: &Bite) -> bool {
    match scene.step.task {
        TaskKind::WallSkim => bite.place == Place::Straight,
        TaskKind::SlotsThrough | TaskKind::SlotsBlind => {
            let sided = scene.bites.iter().any(|b| b.0.place == Place::Side);
            match bite.place {
                Place::Side | Place::Loop => true,
                Place::Straight => !sided,
                _ => false,
            }
        }
        _ => false,
    }
}
