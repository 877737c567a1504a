//! Points and segments of the plan.

use super::Point;

pub(crate) fn minus(a: Point, b: Point) -> Point {
    [a[0] - b[0], a[1] - b[1]]
}

/// The point a + s d.
pub(crate) fn along(a: Point, d: Point, s: f64) -> Point {
    [a[0] + s * d[0], a[1] + s * d[1]]
}

/// Between a and b, s from 0 to 1.
pub(crate) fn between(a: Point, b: Point, s: f64) -> Point {
    along(a, minus(b, a), s)
}

pub(crate) fn dot(a: Point, b: Point) -> f64 {
    a[0] * b[0] + a[1] * b[1]
}

pub(crate) fn cross(a: Point, b: Point) -> f64 {
    a[0] * b[1] - a[1] * b[0]
}

pub(crate) fn length(a: Point) -> f64 {
    dot(a, a).sqrt()
}

pub(crate) fn distance(a: Point, b: Point) -> f64 {
    length(minus(a, b))
}

/// Twice the signed area of a triangle, positive counter-clockwise.
pub(crate) fn turn(a: Point, b: Point, c: Point) -> f64 {
    cross(minus(b, a), minus(c, a))
}

/// Where the foot of `p` lies on a segment (0 to 1, held to its ends) and how far off it is.
pub(crate) fn foot(p: Point, [a, b]: [Point; 2]) -> (f64, f64) {
    let d = minus(b, a);
    let square = dot(d, d);
    let s = if square > 0.0 {
        (dot(minus(p, a), d) / square).clamp(0.0, 1.0)
    } else {
        0.0
    };
    (s, distance(p, along(a, d, s)))
}

/// Where two segments cross, as a share of each, if each has its ends strictly on both sides of the other.
pub(crate) fn crossing([a, b]: [Point; 2], [c, d]: [Point; 2]) -> Option<(f64, f64)> {
    let (ca, cb) = (turn(c, d, a), turn(c, d, b));
    let (ac, ad) = (turn(a, b, c), turn(a, b, d));
    let apart = |u: f64, v: f64| (u > 0.0 && v < 0.0) || (u < 0.0 && v > 0.0);
    (apart(ca, cb) && apart(ac, ad)).then(|| (ca / (ca - cb), ac / (ac - ad)))
}

/// The box around a segment.
pub(crate) fn bounds([a, b]: [Point; 2]) -> [Point; 2] {
    [
        [a[0].min(b[0]), a[1].min(b[1])],
        [a[0].max(b[0]), a[1].max(b[1])],
    ]
}

/// The middle of the circle through three points, and its radius; not finite for points on a line.
pub(crate) fn circle(a: Point, b: Point, c: Point) -> (Point, f64) {
    let (u, v) = (minus(b, a), minus(c, a));
    let double = 2.0 * cross(u, v);
    let (uu, vv) = (dot(u, u), dot(v, v));
    let middle = [
        (v[1] * uu - u[1] * vv) / double,
        (u[0] * vv - v[0] * uu) / double,
    ];
    (along(a, middle, 1.0), length(middle))
}

/// Sine of the least angle of a triangle over the share that an equilateral one has: 1 at best, 0 or less when flat or turned.
pub(crate) fn shape(a: Point, b: Point, c: Point) -> f64 {
    let sides = [distance(a, b), distance(b, c), distance(c, a)];
    let longest = sides[0].max(sides[1]).max(sides[2]);
    let shortest = sides[0].min(sides[1]).min(sides[2]);
    let middle = sides[0] + sides[1] + sides[2] - longest - shortest;
    let product = longest * middle;
    if product > 0.0 {
        turn(a, b, c) / product * 2.0 / 3.0_f64.sqrt()
    } else {
        0.0
    }
}
