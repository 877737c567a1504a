//! Exact outlines of straight lines and circular arcs: length, area, bounds, transform, flattening.

use core::f64::consts::{PI, TAU};

use super::Point;

/// Closest chord error that flattening follows (mm); below it the number of points is pointless.
const CHORD_ERROR_LEAST: f64 = 1e-4;
/// Greatest angle of one chord (rad): an octagon at worst.
const CHORD_ANGLE_GREATEST: f64 = PI / 4.0;
/// Most chords for one arc: within 0.01 mm up to a radius of 2 m.
const CHORDS_GREATEST: usize = 1024;
/// Share of the radius under which an arc's two ends count as one point: a full circle.
const FULL_CIRCLE: f64 = 1e-12;

/// One piece of a contour; it begins where the one before ended.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Edge {
    /// Straight to a point.
    Line {
        /// Its end.
        to: Point,
    },
    /// Along a circle; an arc that ends where it began is the full circle.
    Arc {
        /// Its end.
        to: Point,
        /// Centre of the circle.
        centre: Point,
        /// Counter-clockwise.
        ccw: bool,
    },
}

impl Edge {
    /// Where the edge ends.
    pub fn to(&self) -> Point {
        match *self {
            Self::Line { to } | Self::Arc { to, .. } => to,
        }
    }
}

/// Signed angle swept by an arc (rad), positive counter-clockwise, in (0, 2 pi] in size.
pub(super) fn sweep(from: Point, to: Point, centre: Point, ccw: bool) -> f64 {
    let (a, b) = (from.minus(centre), to.minus(centre));
    let full = if ccw { TAU } else { -TAU };
    if a.minus(b).norm() <= FULL_CIRCLE * a.norm().max(b.norm()) {
        return full;
    }
    let angle = libm::atan2(a.cross(b), a.dot(b));
    match (ccw, angle > 0.0) {
        (true, true) | (false, false) => angle,
        _ => angle + full,
    }
}

/// A closed outline of lines and arcs. The last edge ends at `start`.
#[derive(Debug, Clone, PartialEq)]
pub struct Contour {
    /// Where it begins and ends.
    pub start: Point,
    /// Its pieces in order.
    pub edges: Vec<Edge>,
}

/// An outline with holes, exact.
#[derive(Debug, Clone, PartialEq)]
pub struct Region {
    /// The outside; either direction.
    pub outer: Contour,
    /// What is not part of it; either direction.
    pub holes: Vec<Contour>,
}

impl Region {
    /// A region without holes.
    pub fn solid(outer: Contour) -> Self {
        Self {
            outer,
            holes: Vec::new(),
        }
    }

    /// Area of the outside less that of the holes (mm2).
    pub fn area_mm2(&self) -> f64 {
        let holes: f64 = self.holes.iter().map(|h| h.area().abs()).sum();
        self.outer.area().abs() - holes
    }
}

/// Least upright rectangle around something (mm).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bounds {
    /// Lower left corner.
    pub min: Point,
    /// Upper right corner.
    pub max: Point,
}

impl Bounds {
    /// Around all points; none when there are none.
    pub fn of(points: impl IntoIterator<Item = Point>) -> Option<Self> {
        points.into_iter().fold(None, |bounds, p| {
            Some(bounds.map_or(Self { min: p, max: p }, |b: Self| Self {
                min: Point::new(b.min.x.min(p.x), b.min.y.min(p.y)),
                max: Point::new(b.max.x.max(p.x), b.max.y.max(p.y)),
            }))
        })
    }

    /// Extent along x (mm).
    pub fn width(&self) -> f64 {
        self.max.x - self.min.x
    }

    /// Extent along y (mm).
    pub fn height(&self) -> f64 {
        self.max.y - self.min.y
    }

    /// The two share a point.
    pub fn meets(&self, other: &Self) -> bool {
        self.min.x <= other.max.x
            && other.min.x <= self.max.x
            && self.min.y <= other.max.y
            && other.min.y <= self.max.y
    }
}

impl Contour {
    /// Each edge with the point it begins at.
    pub fn pieces(&self) -> impl Iterator<Item = (Point, &Edge)> {
        let ends = self.edges.iter().map(Edge::to);
        core::iter::once(self.start).chain(ends).zip(&self.edges)
    }

    /// Length of the outline (mm), arcs exact.
    pub fn length(&self) -> f64 {
        self.pieces()
            .map(|(from, edge)| match *edge {
                Edge::Line { to } => from.distance(to),
                Edge::Arc { to, centre, ccw } => {
                    sweep(from, to, centre, ccw).abs() * from.distance(centre)
                }
            })
            .sum()
    }

    /// Enclosed area (mm2), arcs exact; positive when the outline runs counter-clockwise.
    pub fn area(&self) -> f64 {
        self.pieces()
            .map(|(from, edge)| {
                let chord = from.minus(self.start).cross(edge.to().minus(self.start));
                let bulge = match *edge {
                    Edge::Line { .. } => 0.0,
                    Edge::Arc { to, centre, ccw } => {
                        let (angle, radius) = (sweep(from, to, centre, ccw), from.distance(centre));
                        radius * radius * (angle - libm::sin(angle))
                    }
                };
                (chord + bulge) / 2.0
            })
            .sum()
    }

    /// Points on the outline whose chords leave it by no more than `chord_error` (mm); the first is not repeated.
    ///
    /// Points lie on the arcs (chords inside a convex outline), evenly between the arc's ends.
    pub fn flatten(&self, chord_error: f64) -> Vec<Point> {
        let mut points = Vec::with_capacity(self.edges.len());
        for (from, edge) in self.pieces() {
            points.push(from);
            if let Edge::Arc { to, centre, ccw } = *edge {
                let angle = sweep(from, to, centre, ccw);
                let radius = from.minus(centre);
                let count = chords(angle, radius.norm(), chord_error);
                points.extend(
                    (1..count).map(|i| centre.plus(radius.turned(angle * share(i, count)))),
                );
            }
        }
        points
    }

    /// Least upright rectangle around the outline, arcs exact; none for an outline that has no finite point.
    pub fn bounds(&self) -> Option<Bounds> {
        let mut points = vec![self.start];
        for (from, edge) in self.pieces() {
            points.push(edge.to());
            if let Edge::Arc { to, centre, ccw } = *edge {
                let radius = from.distance(centre);
                let angle = sweep(from, to, centre, ccw);
                let begin = libm::atan2(from.y - centre.y, from.x - centre.x);
                let quarters = [
                    (1.0, 0.0, 0.0),
                    (0.0, 1.0, PI / 2.0),
                    (-1.0, 0.0, PI),
                    (0.0, -1.0, -PI / 2.0),
                ];
                for (x, y, direction) in quarters {
                    let ahead = libm::fmod(
                        if ccw {
                            direction - begin
                        } else {
                            begin - direction
                        } + 2.0 * TAU,
                        TAU,
                    );
                    if ahead <= angle.abs() {
                        points.push(centre.plus(Point::new(x * radius, y * radius)));
                    }
                }
            }
        }
        Bounds::of(points.into_iter().filter(|p| p.is_finite()))
    }

    /// The outline turned counter-clockwise about the origin by an angle (rad), then moved.
    pub fn transform(&self, angle: f64, shift: Point) -> Self {
        let map = |p: Point| p.turned(angle).plus(shift);
        let edges = self.edges.iter().map(|edge| match *edge {
            Edge::Line { to } => Edge::Line { to: map(to) },
            Edge::Arc { to, centre, ccw } => Edge::Arc {
                to: map(to),
                centre: map(centre),
                ccw,
            },
        });
        Self {
            start: map(self.start),
            edges: edges.collect(),
        }
    }

    /// The same outline run the other way.
    pub fn reversed(&self) -> Self {
        let edges = self.pieces().map(|(from, edge)| match *edge {
            Edge::Line { .. } => Edge::Line { to: from },
            Edge::Arc { centre, ccw, .. } => Edge::Arc {
                to: from,
                centre,
                ccw: !ccw,
            },
        });
        let mut edges: Vec<Edge> = edges.collect();
        edges.reverse();
        Self {
            start: self.edges.last().map_or(self.start, Edge::to),
            edges,
        }
    }
}

/// Number of chords that follow an arc within the error.
pub(super) fn chords(angle: f64, radius: f64, chord_error: f64) -> usize {
    let error = chord_error.max(CHORD_ERROR_LEAST);
    let step = 2.0 * libm::acos((1.0 - error / radius.max(error)).max(0.0));
    let count = (angle.abs() / step.min(CHORD_ANGLE_GREATEST)).ceil();
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a small count; the cast saturates"
    )]
    let count = count as usize;
    count.clamp(1, CHORDS_GREATEST)
}

/// i / n as a fraction.
#[allow(clippy::cast_precision_loss, reason = "counts are small")]
pub(super) fn share(i: usize, n: usize) -> f64 {
    i as f64 / n as f64
}
