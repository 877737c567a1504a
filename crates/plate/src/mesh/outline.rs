//! Loops made fit to be meshed: checked, cleaned, counter-clockwise.

use super::buckets::{Buckets, short};
use super::planar::{bounds, cross, crossing, distance, dot, minus};
use super::{Fineness, Loop, LoopKind, MeshError, Point};

/// Greatest coordinate that is taken, m.
const FARTHEST: f64 = 1e3;
/// Points closer than this share of the least edge are one.
const SAME_POINT: f64 = 1e-3;
/// A loop whose area is under this share of its extent squared has none.
const FLAT: f64 = 1e-9;

/// A loop that went through the checks: counter-clockwise, no two neighbouring points the same.
pub(crate) struct Outline {
    pub(crate) points: Vec<Point>,
    pub(crate) kind: LoopKind,
}

impl Outline {
    /// A side, from point `i` to the next.
    pub(crate) fn side(&self, i: usize) -> [Point; 2] {
        [self.points[i], self.points[(i + 1) % self.points.len()]]
    }
}

/// The box around all points.
pub(crate) fn extent(outlines: &[Outline]) -> [Point; 2] {
    let mut all = outlines.iter().flat_map(|outline| &outline.points);
    let first = all.next().copied().unwrap_or_default();
    all.fold([first, first], |[low, high], p| {
        [
            [low[0].min(p[0]), low[1].min(p[1])],
            [high[0].max(p[0]), high[1].max(p[1])],
        ]
    })
}

/// Checks and cleans all loops; the outer one comes first, then holes, then lines, each kind in the order given.
pub(crate) fn outlines(loops: &[Loop], fineness: &Fineness) -> Result<Vec<Outline>, MeshError> {
    let mut outlines = Vec::new();
    for kind in [LoopKind::Outer, LoopKind::Hole, LoopKind::Line] {
        for (loop_index, given) in loops.iter().enumerate() {
            if given.kind != kind {
                continue;
            }
            let inside = |x: f64| x.is_finite() && x.abs() <= FARTHEST;
            if !given.points.iter().flatten().all(|&x| inside(x)) {
                return Err(MeshError::NotFinite);
            }
            let Some(points) = clean(&given.points, SAME_POINT * fineness.least) else {
                continue;
            };
            let outline = Outline { points, kind };
            if crosses_itself(&outline) {
                return Err(MeshError::SelfCrossing { loop_index });
            }
            outlines.push(outline);
        }
    }
    let outer = |outline: &&Outline| outline.kind == LoopKind::Outer;
    if outlines.iter().filter(outer).count() == 1 {
        Ok(outlines)
    } else {
        Err(MeshError::NoOutline)
    }
}

/// The points without repetitions, counter-clockwise; nothing if they enclose nothing.
fn clean(given: &[Point], same: f64) -> Option<Vec<Point>> {
    let mut points: Vec<Point> = Vec::with_capacity(given.len());
    for &p in given {
        if points.last().is_none_or(|&last| distance(last, p) > same) {
            points.push(p);
        }
    }
    while points.len() > 1 && distance(points[0], points[points.len() - 1]) <= same {
        points.pop();
    }
    let first = *points.first()?;
    let (mut double, mut reach) = (0.0, 0.0_f64);
    for (i, &p) in points.iter().enumerate() {
        let next = points[(i + 1) % points.len()];
        double += cross(minus(p, first), minus(next, first));
        reach = reach.max(distance(p, first));
    }
    if points.len() < 3 || double.abs() <= FLAT * reach * reach || reach <= same {
        return None;
    }
    if double < 0.0 {
        points.reverse();
    }
    Some(points)
}

/// Whether two sides cross, or two neighbours lie on each other.
fn crosses_itself(outline: &Outline) -> bool {
    let n = outline.points.len();
    let [low, high] = extent(std::slice::from_ref(outline));
    #[allow(clippy::cast_precision_loss, reason = "a number of points")]
    let cells = (n as f64).sqrt();
    let cell = (high[0] - low[0]).max(high[1] - low[1]) / cells;
    let mut seen = Buckets::new(low, high, cell);
    for i in 0..n {
        let side = outline.side(i);
        let (d, next) = (minus(side[1], side[0]), outline.side((i + 1) % n));
        let e = minus(next[1], next[0]);
        if dot(d, e) < 0.0 && cross(d, e).abs() <= FLAT * dot(d, d) {
            return true;
        }
        let [from, to] = bounds(side);
        let mut found = false;
        seen.visit(from, to, |j| {
            found |= crossing(side, outline.side(j as usize)).is_some();
        });
        if found {
            return true;
        }
        seen.put(short(i), from, to);
    }
    false
}
