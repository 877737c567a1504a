//! Constructors of the common outlines, all counter-clockwise.

use super::{Contour, Edge, Point};

/// A straight side shorter than this is rounding left over between two arcs (mm).
const SIDE_LEAST_MM: f64 = 1e-9;

impl Contour {
    /// A circle.
    pub fn circle(centre: Point, radius: f64) -> Self {
        let right = Point::new(centre.x + radius, centre.y);
        let left = Point::new(centre.x - radius, centre.y);
        Self {
            start: right,
            edges: vec![
                Edge::Arc {
                    to: left,
                    centre,
                    ccw: true,
                },
                Edge::Arc {
                    to: right,
                    centre,
                    ccw: true,
                },
            ],
        }
    }

    /// An upright rectangle, `length` along x and `width` along y, its corners rounded (radius held to half the shorter side).
    pub fn rectangle(centre: Point, length: f64, width: f64, corner_radius: f64) -> Self {
        let (a, b) = (length / 2.0, width / 2.0);
        let r = corner_radius.max(0.0).min(a.min(b));
        let at = |x: f64, y: f64| Point::new(centre.x + x, centre.y + y);
        let round = |to: Point, middle: Point| Edge::Arc {
            to,
            centre: middle,
            ccw: true,
        };
        let mut edges = Vec::with_capacity(8);
        // Each corner: the line up to its arc, then the arc.
        let corners = [
            (at(a - r, -b), at(a, -b + r), at(a - r, -b + r)),
            (at(a, b - r), at(a - r, b), at(a - r, b - r)),
            (at(-a + r, b), at(-a, b - r), at(-a + r, b - r)),
            (at(-a, -b + r), at(-a + r, -b), at(-a + r, -b + r)),
        ];
        let start = corners[3].1;
        let mut from = start;
        for (line_end, arc_end, middle) in corners {
            if from.distance(line_end) > SIDE_LEAST_MM {
                edges.push(Edge::Line { to: line_end });
            }
            if r > 0.0 {
                edges.push(round(arc_end, middle));
            }
            from = if r > 0.0 { arc_end } else { line_end };
        }
        Self { start, edges }
    }

    /// A slot with round ends of radius `width` / 2, `length` over all, lying along `direction` (rad).
    pub fn slot(centre: Point, length: f64, width: f64, direction: f64) -> Self {
        let r = width / 2.0;
        if length <= width {
            return Self::circle(centre, r);
        }
        let along = Point::new(1.0, 0.0).turned(direction);
        let across = Point::new(-along.y * r, along.x * r);
        let half = along.times(length / 2.0 - r);
        let (far, near) = (centre.plus(half), centre.minus(half));
        Self {
            start: near.minus(across),
            edges: vec![
                Edge::Line {
                    to: far.minus(across),
                },
                Edge::Arc {
                    to: far.plus(across),
                    centre: far,
                    ccw: true,
                },
                Edge::Line {
                    to: near.plus(across),
                },
                Edge::Arc {
                    to: near.minus(across),
                    centre: near,
                    ccw: true,
                },
            ],
        }
    }

    /// Straight lines from point to point and back to the first.
    pub fn polygon(points: &[Point]) -> Self {
        let start = points.first().copied().unwrap_or(Point::new(0.0, 0.0));
        let rest = points.iter().skip(1).chain(points.first());
        Self {
            start,
            edges: rest.map(|&to| Edge::Line { to }).collect(),
        }
    }
}
