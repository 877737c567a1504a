//! Plans of typical parts, flattened as callers do.

use crate::mesh::{Fineness, Loop, LoopKind, Mesh, MeshError, mesh};
use std::f64::consts::PI;

/// Chord error of the flattening, m.
const CHORD: f64 = 5e-6;

/// An arc without its end point.
fn arc(middle: [f64; 2], r: f64, from: f64, turn: f64) -> Vec<[f64; 2]> {
    let n = (turn.abs() / (2.0 * libm::acos(1.0 - CHORD / r)))
        .ceil()
        .max(3.0);
    let at = |i: u32| from + turn * f64::from(i) / n;
    (0..)
        .take_while(|&i| f64::from(i) < n)
        .map(|i| {
            [
                middle[0] + r * libm::cos(at(i)),
                middle[1] + r * libm::sin(at(i)),
            ]
        })
        .collect()
}

pub(super) fn circle(kind: LoopKind, middle: [f64; 2], r: f64) -> Loop {
    Loop {
        points: arc(middle, r, 0.0, 2.0 * PI),
        kind,
    }
}

/// A slot with round ends between the middles of its ends.
pub(super) fn slot([x0, y0]: [f64; 2], [x1, y1]: [f64; 2], width: f64) -> Loop {
    let turn = libm::atan2(y1 - y0, x1 - x0);
    let mut points = arc([x1, y1], 0.5 * width, turn - 0.5 * PI, PI);
    points.extend(arc([x0, y0], 0.5 * width, turn + 0.5 * PI, PI));
    let mut ends = points.clone();
    // The tangent points where an arc ends are the next arc's opposite side.
    let add = |a: f64, x: f64, y: f64| {
        [
            x + 0.5 * width * libm::cos(a),
            y + 0.5 * width * libm::sin(a),
        ]
    };
    let half = ends.len() / 2;
    ends.insert(half, add(turn + 0.5 * PI, x1, y1));
    ends.push(add(turn + 1.5 * PI, x0, y0));
    points = ends;
    Loop {
        points,
        kind: LoopKind::Line,
    }
}

/// A rectangle about the origin, with round corners if `r` is not 0.
pub(super) fn rectangle(kind: LoopKind, [w, h]: [f64; 2], r: f64) -> Loop {
    let mut points = Vec::new();
    for (i, [sx, sy]) in [[1.0, 1.0], [-1.0, 1.0], [-1.0, -1.0], [1.0, -1.0]]
        .into_iter()
        .enumerate()
    {
        let middle = [sx * (0.5 * w - r), sy * (0.5 * h - r)];
        let from = 0.5 * PI * [0.0, 1.0, 2.0, 3.0][i];
        if r > 0.0 {
            points.extend(arc(middle, r, from, 0.5 * PI));
            let end = from + 0.5 * PI;
            points.push([
                middle[0] + r * libm::cos(end),
                middle[1] + r * libm::sin(end),
            ]);
        } else {
            points.push(middle);
        }
    }
    Loop { points, kind }
}

/// Groups of parallel slots around a middle: `per_group` slots `width` wide with ribs of `rib` between, from `inner` on.
pub(super) fn groups(
    groups: u32,
    per_group: u32,
    (width, length, rib): (f64, f64, f64),
    inner: f64,
) -> Vec<Loop> {
    let mut slots = Vec::new();
    for g in 0..groups {
        let angle = 2.0 * PI * f64::from(g) / f64::from(groups);
        let (s, c) = (libm::sin(angle), libm::cos(angle));
        let turned = |x: f64, y: f64| [c * x - s * y, s * x + c * y];
        for i in 0..per_group {
            let y = (f64::from(i) - 0.5 * f64::from(per_group - 1)) * (width + rib);
            let (from, to) = (inner + 0.5 * width, inner + length - 0.5 * width);
            slots.push(slot(turned(from, y), turned(to, y), width));
        }
    }
    slots
}

/// The disc: rim 80, two recesses, boss 18, bore 5, six groups of three slots 4 x 30 with ribs of 4. mm to m.
pub(super) fn disc(second_recess: f64) -> Vec<Loop> {
    let mut loops = vec![
        circle(LoopKind::Outer, [0.0; 2], 0.08),
        circle(LoopKind::Line, [0.0; 2], 0.07),
        circle(LoopKind::Line, [0.0; 2], second_recess),
        circle(LoopKind::Line, [0.0; 2], 0.018),
        circle(LoopKind::Hole, [0.0; 2], 0.005),
    ];
    loops.extend(groups(6, 3, (0.004, 0.03, 0.004), 0.03));
    loops
}

/// The rectangle 140 x 90 with a rounded recess and six slots 5 x 60.
pub(super) fn bracket() -> Vec<Loop> {
    let mut loops = vec![
        rectangle(LoopKind::Outer, [0.14, 0.09], 0.0),
        rectangle(LoopKind::Line, [0.126, 0.076], 0.006),
    ];
    for i in 0..6 {
        let x = (f64::from(i) - 2.5) * 0.015;
        loops.push(slot([x, -0.0275], [x, 0.0275], 0.005));
    }
    loops
}

/// Sixty slots 2 x 40 with ribs of 1.5 in a rectangle.
pub(super) fn comb() -> Vec<Loop> {
    let mut loops = vec![
        rectangle(LoopKind::Outer, [0.24, 0.08], 0.003),
        rectangle(LoopKind::Line, [0.23, 0.07], 0.004),
    ];
    for i in 0..60 {
        let x = (f64::from(i) - 29.5) * 0.0035;
        loops.push(slot([x, -0.019], [x, 0.019], 0.002));
    }
    loops
}

pub(super) const COARSE: Fineness = Fineness {
    most: 0.008,
    across: 2.0,
    least: 0.0004,
    most_nodes: 20_000,
};
pub(super) const FINE: Fineness = Fineness {
    most: 0.004,
    across: 3.0,
    least: 0.0003,
    most_nodes: 40_000,
};

/// Every typical plan, with its name.
pub(super) fn typical() -> Vec<(&'static str, Vec<Loop>)> {
    let mut shifted = disc(0.07);
    shifted[2] = circle(LoopKind::Line, [0.006, 0.002], 0.068);
    let mut open = bracket();
    open.push(rectangle(LoopKind::Line, [0.2, 0.03], 0.0));
    vec![
        ("disc, recesses the same", disc(0.07)),
        ("disc, recesses 0.5 mm apart", disc(0.0695)),
        ("disc, recesses 3 mm apart", disc(0.067)),
        ("disc, recesses cross", shifted),
        ("rectangle, six slots", bracket()),
        ("rectangle, a channel across", open),
        ("sixty slots", comb()),
        ("plain disc", vec![circle(LoopKind::Outer, [0.0; 2], 0.08)]),
        (
            "plain rectangle",
            vec![rectangle(LoopKind::Outer, [0.06, 0.03], 0.0)],
        ),
    ]
}

pub(super) fn made(loops: &[Loop], fineness: &Fineness) -> Mesh {
    mesh(loops, fineness).unwrap_or_else(|why| panic!("{why:?}"))
}

pub(super) fn failed(loops: &[Loop], fineness: &Fineness) -> MeshError {
    match mesh(loops, fineness) {
        Ok(mesh) => panic!("a mesh of {} nodes", mesh.nodes.len()),
        Err(why) => why,
    }
}
