//! Least distances between boundaries.

use super::{Area, Bounds, Point};

/// Distance from a point to a segment (mm).
pub(super) fn to_segment(p: Point, a: Point, b: Point) -> f64 {
    let (along, offset) = (b.minus(a), p.minus(a));
    let length2 = along.dot(along);
    let t = if length2 > 0.0 {
        (offset.dot(along) / length2).clamp(0.0, 1.0)
    } else {
        0.0
    };
    offset.minus(along.times(t)).norm()
}

fn cross_each_other(a: Point, b: Point, c: Point, d: Point) -> bool {
    let side = |p: Point, q: Point, r: Point| q.minus(p).cross(r.minus(p));
    side(a, b, c) * side(a, b, d) < 0.0 && side(c, d, a) * side(c, d, b) < 0.0
}

fn between(a: Point, b: Point, c: Point, d: Point) -> f64 {
    if cross_each_other(a, b, c, d) {
        return 0.0;
    }
    to_segment(a, c, d)
        .min(to_segment(b, c, d))
        .min(to_segment(c, a, b))
        .min(to_segment(d, a, b))
}

/// Gap between the upright boxes of two segments, never more than their distance.
fn box_gap(a: Point, b: Point, c: Point, d: Point) -> f64 {
    let gap =
        |a: f64, b: f64, c: f64, d: f64| (a.min(b) - c.max(d)).max(c.min(d) - a.max(b)).max(0.0);
    gap(a.x, b.x, c.x, d.x).max(gap(a.y, b.y, c.y, d.y))
}

/// Least distance between the boundaries of two areas (mm); 0 where they cross, infinite when one is empty.
pub fn distance(a: &Area, b: &Area) -> f64 {
    let mut least = f64::INFINITY;
    let boxed = |area: &'_ Area| -> Vec<_> {
        let corners = |ring: &[Point]| Bounds::of(ring.iter().copied());
        area.loops()
            .filter_map(|ring| Some((corners(ring)?, ring.to_vec())))
            .collect()
    };
    let others = boxed(b);
    for (box_a, ring_a) in boxed(a) {
        for (box_b, ring_b) in &others {
            if box_gap(box_a.min, box_a.max, box_b.min, box_b.max) >= least {
                continue;
            }
            for (p, q) in closed(&ring_a) {
                if box_gap(p, q, box_b.min, box_b.max) >= least {
                    continue;
                }
                for (r, s) in closed(ring_b) {
                    if box_gap(p, q, r, s) < least {
                        least = least.min(between(p, q, r, s));
                    }
                }
            }
        }
    }
    least
}

/// The segments of a closed loop.
fn closed(ring: &[Point]) -> impl Iterator<Item = (Point, Point)> {
    ring.iter()
        .zip(ring.iter().cycle().skip(1))
        .map(|(&a, &b)| (a, b))
}

/// Least distance from a point to the boundary of an area (mm); infinite when it is empty.
pub fn distance_point(area: &Area, point: Point) -> f64 {
    area.segments()
        .map(|(a, b)| to_segment(point, a, b))
        .fold(f64::INFINITY, f64::min)
}
