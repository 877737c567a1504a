//! The drawing as a mesh of plates: what each triangle belongs to, by closed tests on the drawing.

use super::super::drawing::{Drawing, Outline, Slit};
use super::super::stock::Kind;
use core::f64::consts::{FRAC_PI_2, PI};
use std::cell::RefCell;
use std::rc::Rc;
use thinwright_plate::fem::Grid;
use thinwright_plate::mesh::{Fineness, Loop, LoopKind, mesh};

/// Chord error of round lines, m.
const CHORD: f64 = 1.0e-5;
/// Greatest edge as a share of the longer side; elements across a rib.
const EDGE_SHARE: f64 = 1.0 / 36.0;
const ACROSS: f64 = 4.0;
const LEAST_EDGE: f64 = 1.0e-4;
const MOST_NODES: usize = 40_000;
/// Where thin meets thick, the thin stiffness reaches so many finished webs into the thick part, as the search has it: a
/// plate's foot is stiffer than a solid's (`shared/reference/outlines.json`).
const REACH: f64 = 0.25;
/// Plans that are kept.
const KEPT: usize = 3;

/// A meshed drawing.
pub(super) struct Plan {
    pub(super) grid: Grid,
    /// What each triangle belongs to, steps moved by their reach.
    pub(super) of: Vec<Place>,
}

/// What a place of the part belongs to.
#[derive(Clone, Copy, Debug)]
pub(super) struct Place {
    /// With the steps between thin and thick where a plate wants them, and where they are drawn.
    pub(super) kind: Kind,
    pub(super) drawn: Kind,
    pub(super) boss: bool,
    /// Distance to the wall of the recess in face A, in face B, boss included, m; negative outside.
    pub(super) depth: [f64; 2],
}

thread_local! {
    static PLANS: RefCell<Vec<(String, Option<Rc<Plan>>)>> = const { RefCell::new(Vec::new()) };
}

/// The plan of a drawing, kept for its next step.
pub(super) fn plan(drawing: &Drawing) -> Option<Rc<Plan>> {
    let key = key(drawing);
    PLANS.with_borrow_mut(|plans| {
        if let Some(known) = plans.iter().find(|p| p.0 == key) {
            return known.1.clone();
        }
        let made = Plan::new(drawing).map(Rc::new);
        if plans.len() >= KEPT {
            plans.remove(0);
        }
        plans.push((key, made.clone()));
        made
    })
}

/// All that a plan depends on.
pub(super) fn key(drawing: &Drawing) -> String {
    let Drawing {
        outline,
        hollows,
        boss,
        bore,
        slits,
        ..
    } = drawing;
    format!("{outline:?} {hollows:?} {boss} {bore} {slits:?}")
}

/// Thickness of the finished web, m.
fn web(drawing: &Drawing) -> f64 {
    let floor = |at: usize, flat: f64| drawing.hollows[at].map_or(flat, |h| h.floor);
    floor(0, drawing.thickness) - floor(1, 0.0)
}

impl Plan {
    fn new(drawing: &Drawing) -> Option<Plan> {
        let reach = REACH * web(drawing);
        let fineness = Fineness {
            most: EDGE_SHARE * longer(&drawing.outline),
            across: ACROSS,
            least: LEAST_EDGE,
            most_nodes: MOST_NODES,
        };
        let grid = Grid::new(mesh(&lines(drawing, reach), &fineness).ok()?).ok()?;
        let count = grid.mesh().triangles.len();
        let of = (0..count).map(|t| place(drawing, reach, grid.middle(t).into()));
        Some(Plan {
            of: of.collect(),
            grid,
        })
    }
}

fn longer(outline: &Outline) -> f64 {
    match *outline {
        Outline::Round { radius } => 2.0 * radius,
        Outline::Box { length, width, .. } => length.max(width),
    }
}

fn place(drawing: &Drawing, reach: f64, at: (f64, f64)) -> Place {
    let middle = (at.0 * at.0 + at.1 * at.1).sqrt();
    let kind = |reach: f64| {
        let island = drawing.boss > 0.0 && middle < 0.5 * drawing.boss - reach;
        let hollow = |h: Outline| h.moved(reach).inside(at) > 0.0 && !island;
        Kind {
            part: true,
            hollow: drawing.hollows.map(|h| h.is_some_and(|h| hollow(h.plan))),
            bore: middle < 0.5 * drawing.bore,
            slit: drawing.slits.iter().any(|s| s.holds(at)),
        }
    };
    let to_boss = match drawing.boss > 0.0 {
        true => middle - 0.5 * drawing.boss,
        false => f64::INFINITY,
    };
    let depth = |h: Outline| h.inside(at).min(to_boss);
    let moved = kind(reach);
    Place {
        kind: moved,
        drawn: kind(0.0),
        boss: moved.hollow == [false; 2] && middle < 0.5 * drawing.boss,
        depth: drawing
            .hollows
            .map(|h| h.map_or(f64::NEG_INFINITY, |h| depth(h.plan))),
    }
}

/// Every line of the drawing at which thickness or rest may change.
fn lines(drawing: &Drawing, reach: f64) -> Vec<Loop> {
    let line = |points, kind| Loop { points, kind };
    let mut lines = vec![line(around(&drawing.outline), LoopKind::Outer)];
    let mut round = |radius: f64| {
        if radius > 0.0 {
            let circle = around(&Outline::Round { radius });
            lines.push(line(circle, LoopKind::Line));
        }
    };
    // The bore is solid until it is cut.
    round(0.5 * drawing.bore);
    round(0.5 * drawing.boss - reach);
    for hollow in drawing.hollows.iter().flatten() {
        lines.push(line(around(&hollow.plan.moved(reach)), LoopKind::Line));
    }
    lines.extend(drawing.slits.iter().map(|s| line(rim(s), LoopKind::Line)));
    lines
}

/// A quarter or half turn around a middle, both ends included.
fn arc(to: &mut Vec<[f64; 2]>, middle: (f64, f64), radius: f64, (from, turn): (f64, f64)) {
    if radius <= 0.0 {
        to.push([middle.0, middle.1]);
        return;
    }
    let step = 2.0 * libm::acos((1.0 - CHORD / radius).max(0.5));
    let mut count = 1.0;
    while turn > count * step {
        count += 1.0;
    }
    let mut k = 0.0;
    while k <= count {
        let angle = from + turn * k / count;
        to.push([
            middle.0 + radius * libm::cos(angle),
            middle.1 + radius * libm::sin(angle),
        ]);
        k += 1.0;
    }
}

/// Points around an outline.
fn around(outline: &Outline) -> Vec<[f64; 2]> {
    let (x, y, radius) = match *outline {
        Outline::Round { radius } => (0.0, 0.0, radius),
        Outline::Box {
            length,
            width,
            corner,
        } => (0.5 * length - corner, 0.5 * width - corner, corner),
    };
    let mut points = Vec::new();
    for (k, (sx, sy)) in (0..).zip([(1.0, 1.0), (-1.0, 1.0), (-1.0, -1.0), (1.0, -1.0)]) {
        let from = f64::from(k) * FRAC_PI_2;
        arc(&mut points, (sx * x, sy * y), radius, (from, FRAC_PI_2));
    }
    once(points)
}

/// Points around a slot.
fn rim(slit: &Slit) -> Vec<[f64; 2]> {
    let ahead = libm::atan2(slit.along.1, slit.along.0);
    let radius = 0.5 * slit.width;
    let mut points = Vec::new();
    arc(&mut points, slit.at(1.0), radius, (ahead - FRAC_PI_2, PI));
    arc(&mut points, slit.at(-1.0), radius, (ahead + FRAC_PI_2, PI));
    once(points)
}

/// Without points that come twice.
fn once(mut points: Vec<[f64; 2]>) -> Vec<[f64; 2]> {
    let same = |a: &[f64; 2], b: &[f64; 2]| {
        (a[0] - b[0]).abs() < 0.1 * CHORD && (a[1] - b[1]).abs() < 0.1 * CHORD
    };
    points.dedup_by(|a, b| same(a, b));
    while points.len() > 1 && same(&points[0], &points[points.len() - 1]) {
        points.pop();
    }
    points
}
