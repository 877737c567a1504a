//! The raw offset of one loop, before the parts that fold over are taken away.
//!
//! Every edge sweeps a strip as wide as the distance. Neighbouring strips share their corner where both edges are long
//! enough (a mitre); else each keeps its square end and the loop passes through the vertex, which turns the overlap
//! into negative winding. Winding of the result = winding of the loop, plus (outwards) or minus (inwards) the number of
//! strips and fans over a point; so "winding > 0" is exactly the offset area.

use super::Point;
use super::contour::{chords, share};

/// A mitre may stand out beyond the round join by this much (mm).
const MITRE_ERROR_MM: f64 = 0.002;
/// Chord error of a round join (mm).
const JOIN_ERROR_MM: f64 = 0.004;
/// Points closer than this are one point (mm): an arc that has shrunk to nothing leaves such points.
const SAME_MM: f64 = 1e-3;
/// The same as a share of the distance: the grid's rounding turns an edge a little, the distance makes much of it.
const SAME_SHARE: f64 = 3e-6;

/// One edge and the turn to the next.
struct Side {
    direction: Point,
    length: f64,
    /// Turn at the end of the edge (rad), positive to the left.
    turn: f64,
    /// The vertex at its end opens a gap between the strips (else they overlap).
    gap: bool,
    /// Length that sharing the corner takes off the edge (mm).
    taken: f64,
}

/// The distance at which the first edge of the loop shrinks to nothing, if that is before `distance` (mm).
///
/// All chords of an arc shrink at once; stopping there turns them into one corner instead of many folds.
pub(super) fn first_collapse(ring: &[Point], distance: f64) -> Option<f64> {
    let points = distinct(ring, distance);
    let count = points.len();
    if count < 3 {
        return None;
    }
    let sides = sides(&points, distance);
    let part = |i: usize| sides[i].length / (sides[(i + count - 1) % count].taken + sides[i].taken);
    let least = (0..count).map(part).fold(f64::INFINITY, f64::min);
    (least < 1.0).then_some(least * distance)
}

/// The loop moved to its right by `distance` (to its left when negative) (mm); it may fold over itself.
pub(super) fn raw_offset(ring: &[Point], distance: f64) -> Vec<Point> {
    let points = distinct(ring, distance);
    let count = points.len();
    if count < 3 {
        return Vec::new();
    }
    let sides = sides(&points, distance);
    let long_enough =
        |i: usize| sides[(i + count - 1) % count].taken + sides[i].taken <= sides[i].length;
    let fits: Vec<bool> = (0..count).map(long_enough).collect();
    let mut result = Vec::with_capacity(count + 16);
    for i in 0..count {
        let next = (i + 1) % count;
        let (side, vertex) = (&sides[i], points[next]);
        let out = |direction: Point| Point::new(direction.y, -direction.x).times(distance);
        let (first, last) = (out(side.direction), out(sides[next].direction));
        let middle = first
            .plus(last)
            .times(1.0 / (1.0 + libm::cos(side.turn)).max(1e-12));
        if side.gap {
            if middle.norm() - distance.abs() <= MITRE_ERROR_MM {
                result.push(vertex.plus(middle));
            } else {
                let steps = chords(side.turn, distance.abs(), JOIN_ERROR_MM);
                result.extend(
                    (0..=steps).map(|k| vertex.plus(first.turned(side.turn * share(k, steps)))),
                );
            }
        } else if fits[i] && fits[next] {
            result.push(vertex.plus(middle));
        } else {
            result.extend([vertex.plus(first), vertex, vertex.plus(last)]);
        }
    }
    result
}

fn distinct(ring: &[Point], distance: f64) -> Vec<Point> {
    let same = SAME_MM + SAME_SHARE * distance.abs();
    let mut points: Vec<Point> = Vec::with_capacity(ring.len());
    for &p in ring {
        if points.last().is_none_or(|last| last.distance(p) > same) {
            points.push(p);
        }
    }
    while points.len() > 1 && points[0].distance(points[points.len() - 1]) <= same {
        points.pop();
    }
    points
}

fn sides(points: &[Point], distance: f64) -> Vec<Side> {
    let count = points.len();
    let vector = |i: usize| points[(i + 1) % count].minus(points[i % count]);
    let side = |i: usize| {
        let (u, v) = (vector(i), vector(i + 1));
        let length = u.norm();
        let turn = libm::atan2(u.cross(v), u.dot(v));
        let gap = turn * distance > 0.0;
        let taken = if gap {
            0.0
        } else {
            distance.abs() * libm::tan(turn.abs() / 2.0).abs()
        };
        Side {
            direction: u.times(1.0 / length),
            length,
            turn,
            gap,
            taken,
        }
    };
    (0..count).map(side).collect()
}
