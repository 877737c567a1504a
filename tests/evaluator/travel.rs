//! How far the cutter travels, at which feed, with how many lifts: from the drawing, as far as it says so.

use super::Complaints;
use super::drawing::Outline;
use super::scene::Scene;
use super::stops::shortest_run;
use core::f64::consts::PI;
use thinwright_core::methods::MethodId;
use thinwright_core::strategy::Entry;
use thinwright_core::task::TaskKind;
use thinwright_mechanics::{entry, slot};

/// A part of the path: its length (least, most), m, the feed there, m/s, and the least way between two stops, m.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Leg {
    pub(crate) length: (f64, f64),
    pub(crate) feed: f64,
    pub(crate) stops: f64,
}

/// The whole way of a step.
#[derive(Clone, Debug)]
pub(crate) struct Travel {
    pub(crate) legs: Vec<Leg>,
    /// Lifts to clear air and back.
    pub(crate) lifts: f64,
}

/// Flattened arcs, rounded ends, tips between passes: what lengths may differ by.
const LENGTHS: f64 = 0.03;
/// A clearing path around a boss in a box, over area by stepover.
const AROUND_BOSS: (f64, f64) = (0.75, 1.25);

impl Travel {
    fn length(&self) -> (f64, f64) {
        self.legs.iter().fold((0.0, 0.0), |(a, b), leg| {
            (a + leg.length.0, b + leg.length.1)
        })
    }
}

/// The told path is one that does the work.
pub(crate) fn check(scene: &Scene, out: &mut Complaints) {
    let travel = of(scene);
    let told = scene.step.path.si();
    let rule = format!("path of {:?}", scene.step.method);
    out.between((&rule, scene.step.number), told, travel.length(), LENGTHS);
    cover(scene, out);
}

/// Whatever the passes are, they must sweep the floor: no place further than a radius from the middle's path.
fn cover(scene: &Scene, out: &mut Complaints) {
    let (step, d) = (scene.step, scene.cutter.d);
    let area = match step.task {
        TaskKind::Facing => scene.drawing.blank.area(),
        TaskKind::Clearing | TaskKind::FloorSkim => floor_area(scene),
        _ => return,
    };
    let swept = step.path.si() / f64::from(step.levels) * d + 0.25 * PI * d * d;
    if swept < area {
        let figures = format!("{swept} m2 swept of {area}");
        out.add(
            "path too short to sweep the floor",
            step.number,
            area / swept,
            figures,
        );
    }
}

/// Area of a recess less what is left on its walls, m2.
fn floor_area(scene: &Scene) -> f64 {
    let left = scene.step.leave.0.si();
    let boss = 0.5 * scene.drawing.boss;
    let hole = if boss > 0.0 {
        PI * (boss + left) * (boss + left)
    } else {
        0.0
    };
    let plan = scene.hollow().map(|h| h.plan.moved(-left));
    plan.map_or(0.0, |p| p.area() - hole)
}

/// What the drawing says of the way of a step.
pub(crate) fn of(scene: &Scene) -> Travel {
    let step = scene.step;
    let (levels, d, vf) = (f64::from(step.levels), scene.cutter.d, step.vf.si());
    let ramp = vf * scene.ramp();
    let drawing = scene.drawing;
    let runs: f64 = drawing.slits.iter().map(|s| s.run()).sum();
    #[allow(clippy::cast_precision_loss, reason = "a few hundred slots")]
    let count = drawing.slits.len() as f64;
    let slotted = |length: f64, feed: f64| leg(length, feed, shortest_run(scene));
    match step.method {
        MethodId::Facing => facing(scene),
        MethodId::BoreHelix => {
            let circle = PI * (drawing.bore - d);
            let mut down = helix(scene, 1.0);
            down.length = (down.length.0 + circle, down.length.1 + circle);
            let legs = vec![down];
            Travel { legs, lifts: 1.0 }
        }
        MethodId::OffsetClearing | MethodId::LightClearing | MethodId::FloorSkim => clearing(scene),
        MethodId::WallSkim => {
            let each = walls(scene);
            let legs = vec![leg(levels * each, vf, 0.2 * floor_area(scene).sqrt())];
            Travel {
                legs,
                lifts: levels,
            }
        }
        MethodId::OutlineGroove | MethodId::OutlineTabs => {
            let around = round_outside(scene);
            let legs = vec![leg(levels * around, vf, f64::INFINITY)];
            Travel { legs, lifts: 1.0 }
        }
        MethodId::FullWidth => Travel {
            legs: vec![slotted(levels * runs, vf), slotted(levels * runs, ramp)],
            lifts: count,
        },
        MethodId::Zigzag => Travel {
            legs: vec![slotted(runs, vf), slotted(levels * runs, ramp)],
            lifts: count,
        },
        MethodId::SidePasses => Travel {
            legs: vec![
                slotted(runs + around_sides(scene), vf),
                slotted(levels * runs, ramp),
            ],
            lifts: 2.0 * count,
        },
        MethodId::Peeling => peeling(scene, runs, count),
        MethodId::DrilledEnds => {
            let sides = if d < 0.97 * scene.slot_width() {
                around_sides(scene)
            } else {
                0.0
            };
            Travel {
                legs: vec![slotted(levels * runs + sides, vf)],
                lifts: levels * count,
            }
        }
    }
}

/// Loops along every slot, a helix into each.
fn peeling(scene: &Scene, runs: f64, count: f64) -> Travel {
    let levels = f64::from(scene.step.levels);
    let radius = 0.5 * (scene.slot_width() - scene.cutter.d);
    let loops = levels * runs / scene.ae() * slot::loop_path(radius, scene.ae());
    // Loops run on without a stop from end to end of a slot.
    let around = leg(loops, scene.step.vf.si(), loops / (levels * count));
    Travel {
        legs: vec![around, helix(scene, count)],
        lifts: levels * count,
    }
}

fn leg(length: f64, feed: f64, stops: f64) -> Leg {
    Leg {
        length: (length, length),
        feed,
        stops,
    }
}

/// Down the told helix to the whole depth, at the feed that is told for its middle.
fn helix(scene: &Scene, count: f64) -> Leg {
    let Entry::Helix {
        hole,
        pitch,
        centre_feed,
        ..
    } = scene.step.entry
    else {
        return leg(0.0, 1.0, f64::INFINITY);
    };
    let (hole, pitch) = (hole.si(), pitch.si());
    // A level that is typed a little too deep is gone down all the way.
    let depth = scene.ap() * f64::from(scene.step.levels);
    let turns = depth / pitch;
    let way = entry::path_per_turn(pitch, hole, scene.cutter.d);
    leg(count * turns * way, centre_feed.si(), hole - scene.cutter.d)
}

/// Parallel passes, the cutter run out at both ends.
fn facing(scene: &Scene) -> Travel {
    let (ae, d, levels) = (scene.ae(), scene.cutter.d, f64::from(scene.step.levels));
    let area = scene.drawing.blank.area();
    let (length, width) = match scene.drawing.blank {
        Outline::Box { length, width, .. } => (length, width),
        Outline::Round { radius } => (2.0 * radius, 2.0 * radius),
    };
    let passes = libm::ceil(length.max(width) / ae) + 1.0;
    let most = passes * (length.min(width) + 2.0 * d);
    let other = (libm::ceil(length.min(width) / ae) + 1.0) * (length.max(width) + 2.0 * d);
    let one = Leg {
        length: (levels * area / ae, levels * most.max(other)),
        feed: scene.step.vf.si(),
        stops: length.min(width),
    };
    Travel {
        legs: vec![one],
        lifts: 1.0,
    }
}

/// Offset passes from the wall inwards: all of a level, and the innermost, which opens; (least, most) of each.
fn rings(scene: &Scene) -> ((f64, f64), (f64, f64)) {
    let (ae, radius) = (scene.ae(), 0.5 * scene.cutter.d);
    let Some(hollow) = scene.hollow() else {
        return ((0.0, 0.0), (0.0, 0.0));
    };
    let left = scene.step.leave.0.si();
    let boss = 0.5 * scene.drawing.boss;
    let edges = hollow.plan.edge() + 2.0 * PI * boss;
    if boss > 0.0 && matches!(hollow.plan, Outline::Box { .. }) {
        let even = floor_area(scene) / ae;
        return ((AROUND_BOSS.0 * even, AROUND_BOSS.1 * even), (0.0, edges));
    }
    let (mut all, mut last, mut idle) = (0.0, 0.0, 0.0);
    let mut away = left + radius;
    loop {
        let outer = hollow.plan.moved(-away);
        let inner = if boss > 0.0 { boss + away } else { 0.0 };
        let half = 0.5 * (0.5 * outer.across() - inner);
        if half <= 0.5e-9 {
            break;
        }
        let ring = outer.edge() + 2.0 * PI * inner;
        if all > 0.0 && half + ae <= radius {
            // The pass before has swept all that this one would.
            idle += ring;
        } else {
            last = ring;
            all += ring;
        }
        away += ae;
    }
    // Tips in the corners of passes that lie further apart than a radius, and a last pass that is but a point.
    let tips = if ae > radius { 16.0 * ae } else { 0.0 };
    let most = idle + tips;
    (
        (all, all + most),
        (0.0_f64.min(last), last.max(most) + 16.0 * ae),
    )
}

fn clearing(scene: &Scene) -> Travel {
    let (step, vf) = (scene.step, scene.step.vf.si());
    let levels = f64::from(step.levels);
    let ((all_low, all_high), (open_low, open_high)) = rings(scene);
    let stops = 0.2 * floor_area(scene).sqrt();
    let mut legs = vec![helix(scene, 1.0)];
    let mut lay = |length: (f64, f64), feed: f64, stops: f64| {
        legs.push(Leg {
            length: (levels * length.0, levels * length.1),
            feed,
            stops,
        });
    };
    match step.method {
        MethodId::OffsetClearing => {
            lay(
                ((all_low - open_high).max(0.0), all_high - open_low),
                vf,
                stops,
            );
            lay((open_low, open_high), vf * scene.ramp(), stops);
        }
        MethodId::LightClearing => {
            let ae = scene.ae();
            let radius = 0.5 * (scene.entry_hole().unwrap_or(0.0) - scene.cutter.d);
            let loops = |opening: f64| opening / ae * slot::loop_path(radius, ae);
            let most = (all_high - open_low).max(0.0) + loops(open_high);
            lay((all_low, most), vf, stops);
        }
        _ => lay((all_low, all_high), vf, stops),
    }
    Travel {
        legs,
        lifts: levels,
    }
}

/// Once along all walls of the recess with the cutter's middle, m.
fn walls(scene: &Scene) -> f64 {
    let radius = 0.5 * scene.cutter.d;
    let boss = 0.5 * scene.drawing.boss;
    let inner = if boss > 0.0 {
        2.0 * PI * (boss + radius)
    } else {
        0.0
    };
    let outer = scene.hollow().map(|h| h.plan.moved(-radius).edge());
    outer.unwrap_or(0.0) + inner
}

/// Once around the part with the cutter's middle, m.
fn round_outside(scene: &Scene) -> f64 {
    scene.drawing.outline.moved(0.5 * scene.cutter.d).edge()
}

/// Around the sides of all slots, level by level, m.
fn around_sides(scene: &Scene) -> f64 {
    let rest = scene.slot_width() - scene.cutter.d;
    let rounds = f64::from(scene.step.levels);
    let each = scene
        .drawing
        .slits
        .iter()
        .map(|s| 2.0 * s.run() + PI * rest);
    rounds * each.sum::<f64>()
}
