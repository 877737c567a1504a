//! What the cutter meets in a step: every way in which it is engaged.

use super::scene::Scene;
use thinwright_core::methods::MethodId;
use thinwright_core::strategy::Entry;
use thinwright_core::task::TaskKind;
use thinwright_mechanics::engagement::{Immersion, ae_for_angle};
use thinwright_mechanics::{corner, slot};
use thinwright_quantity::Speed;

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
            all.extend(helix(scene));
            all.push(unsure(full(Place::Opening, ap, ramp)));
        }
        MethodId::OffsetClearing => {
            all.push(along(scene, Place::Straight, ae, ap));
            all.extend(opening(scene));
            all.extend(helix(scene));
            all.extend(turns(scene));
        }
        MethodId::LightClearing => {
            all.push(along(scene, Place::Straight, ae, ap));
            all.extend(loops(scene, ap));
            all.extend(helix(scene));
            all.extend(turns(scene));
        }
        MethodId::FloorSkim => {
            all.push(along(scene, Place::Straight, ae, ap));
            all.push(full(Place::Opening, ap, 1.0));
            all.extend(helix(scene));
            all.extend(turns(scene));
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
    if let Some(corner) = corner(scene, ae, scene.ap()) {
        all.push(corner);
        all.push(unsure(Bite {
            share: 1.0,
            ..corner
        }));
    }
}

/// The helix down: all around at the depth of its pitch. The chip is what the cutter's middle moves; a cautious reader
/// reckons with the feed at the wall.
fn helix(scene: &Scene) -> Vec<Bite> {
    let Entry::Helix {
        pitch, centre_feed, ..
    } = scene.step.entry
    else {
        return Vec::new();
    };
    let middle = full(Place::Entry, pitch.si(), share(scene, Some(centre_feed)));
    let wall = unsure(full(Place::Entry, pitch.si(), scene.ramp()));
    vec![middle, wall]
}

/// A feed that is told apart, or else the step's own, as a share of it.
fn share(scene: &Scene, told: Option<Speed>) -> f64 {
    told.map_or(1.0, |feed| feed.si() / scene.step.vf.si())
}

/// A bite at a feed that is told apart. That is rounded down to what can be typed: a cautious reader adds one step.
fn at_told(scene: &Scene, told: Option<Speed>, bite: Bite) -> Vec<Bite> {
    let share = share(scene, told);
    let step = scene.job.grid.vf / scene.step.vf.si();
    let next = unsure(Bite {
        share: (share + step).min(1.0),
        ..bite
    });
    vec![Bite { share, ..bite }, next]
}

/// The first pass of a level, at full width.
fn opening(scene: &Scene) -> Vec<Bite> {
    let bite = full(Place::Opening, scene.ap(), 1.0);
    at_told(scene, scene.step.opening_feed, bite)
}

/// Strokes that slope down by a step-down each: one stroke back from its beginning the floor lies two steps higher. A
/// cautious reader takes both step-downs whole.
fn stroke_ends(scene: &Scene) -> Vec<Bite> {
    let end = |deep: f64| full(Place::StrokeEnd, deep, scene.ramp());
    let twice = 2.0 * scene.ap();
    let mut all = vec![unsure(end(twice))];
    if scene.step.levels > 1 {
        all.push(end(twice.min(scene.stand.depth())));
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

/// The corner along the wall, at the feed that is told for it.
fn corner(scene: &Scene, ae: f64, ap: f64) -> Option<Bite> {
    let (radius, d) = (scene.corner()?, scene.cutter.d);
    let angle = corner::engagement_in_arc(d, radius.max(0.5 * d), ae);
    Some(Bite {
        share: share(scene, scene.step.corner_feed),
        ..turned(scene, Place::Corner, angle, ap)
    })
}

/// Turns of the passes inside the wall's, at the feed that is told for corners: offset inwards, they have no radius left,
/// whatever the wall's.
fn turns(scene: &Scene) -> Vec<Bite> {
    if scene.corner().is_none() {
        return Vec::new();
    }
    let angle = corner::engagement_sharp(scene.cutter.d, scene.ae());
    let bite = turned(scene, Place::Corner, angle, scene.ap());
    at_told(scene, scene.step.corner_feed, bite)
}

/// Both sides of a slot, level by level.
fn sides(scene: &Scene) -> Bite {
    let rest = scene.slot_width() - scene.cutter.d;
    along(scene, Place::Side, 0.5 * rest, scene.ap())
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
