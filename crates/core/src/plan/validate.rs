//! What is wrong with an outline, with the numbers.

use super::{Area, Bounds, Contour, Edge, Point, Region};

/// Coordinates beyond this are no part (mm).
const REACH_MM: f64 = 1e4;
/// Points closer than this are one point (mm).
const SAME_MM: f64 = 1e-6;
/// How far an arc's two ends may differ in distance from its centre (mm).
const ARC_ERROR_MM: f64 = 1e-3;
/// Outlines that enclose less are lines (mm2).
const AREA_LEAST_MM2: f64 = 1e-6;
/// Chord error of the check for crossings (mm).
const CHECK_CHORD_MM: f64 = 0.01;
/// What two loops may share before they count as overlapping (mm2).
const OVERLAP_MM2: f64 = 0.01;

/// A fault of an outline. `hole` counts from 0.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum PlanError {
    /// A coordinate is not a number or infinite.
    NotFinite {
        /// Number of the edge, from 0.
        edge: usize,
    },
    /// A coordinate lies beyond what is computed.
    TooFar {
        /// The point.
        at: Point,
        /// The limit (mm).
        limit_mm: f64,
    },
    /// The last edge does not end where the outline began.
    Open {
        /// Distance between the two (mm).
        gap_mm: f64,
    },
    /// An edge has no length.
    EmptyEdge {
        /// Number of the edge, from 0.
        edge: usize,
        /// Where it is.
        at: Point,
    },
    /// The ends of an arc are not equally far from its centre.
    CrookedArc {
        /// Number of the edge, from 0.
        edge: usize,
        /// Radius at its begin (mm).
        from_mm: f64,
        /// Radius at its end (mm).
        to_mm: f64,
    },
    /// The outline encloses nothing.
    NoArea {
        /// What it encloses (mm2).
        area_mm2: f64,
    },
    /// The outline crosses or touches itself.
    Crossing {
        /// About where.
        at: Point,
    },
    /// A hole reaches outside the outer outline.
    HoleOutside {
        /// Which hole.
        hole: usize,
        /// How much of it lies outside (mm2).
        outside_mm2: f64,
    },
    /// Two holes overlap.
    HolesOverlap {
        /// One hole.
        first: usize,
        /// The other.
        second: usize,
        /// What they share (mm2).
        shared_mm2: f64,
    },
}

impl core::fmt::Display for PlanError {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match *self {
            Self::NotFinite { edge } => {
                write!(f, "edge {edge} has a coordinate that is not a number")
            }
            Self::TooFar { at, limit_mm } => {
                write!(f, "point ({}, {}) lies beyond {limit_mm} mm", at.x, at.y)
            }
            Self::Open { gap_mm } => write!(f, "the outline is open by {gap_mm} mm"),
            Self::EmptyEdge { edge, at } => {
                write!(f, "edge {edge} at ({}, {}) has no length", at.x, at.y)
            }
            Self::CrookedArc {
                edge,
                from_mm,
                to_mm,
            } => {
                write!(
                    f,
                    "arc {edge} begins at radius {from_mm} mm and ends at {to_mm} mm"
                )
            }
            Self::NoArea { area_mm2 } => write!(f, "the outline encloses {area_mm2} mm2"),
            Self::Crossing { at } => {
                write!(f, "the outline crosses itself near ({}, {})", at.x, at.y)
            }
            Self::HoleOutside { hole, outside_mm2 } => {
                write!(f, "hole {hole} lies outside by {outside_mm2} mm2")
            }
            Self::HolesOverlap {
                first,
                second,
                shared_mm2,
            } => {
                write!(f, "holes {first} and {second} share {shared_mm2} mm2")
            }
        }
    }
}

impl core::error::Error for PlanError {}

/// All faults of one outline; empty when it is sound.
pub fn validate_contour(contour: &Contour) -> Vec<PlanError> {
    let mut faults = Vec::new();
    for (edge, (from, piece)) in contour.pieces().enumerate() {
        let centre = match *piece {
            Edge::Arc { centre, .. } => centre,
            Edge::Line { to } => to,
        };
        let points = [from, piece.to(), centre];
        if !points.iter().all(|p| p.is_finite()) {
            faults.push(PlanError::NotFinite { edge });
        } else if let Some(&at) = points.iter().find(|p| p.x.abs().max(p.y.abs()) > REACH_MM) {
            faults.push(PlanError::TooFar {
                at,
                limit_mm: REACH_MM,
            });
        } else {
            check_edge(edge, from, piece, &mut faults);
        }
    }
    let gap_mm = contour
        .edges
        .last()
        .map_or(0.0, |last| last.to().distance(contour.start));
    if gap_mm > SAME_MM {
        faults.push(PlanError::Open { gap_mm });
    }
    if faults.is_empty() {
        let area_mm2 = contour.area();
        if area_mm2.abs() < AREA_LEAST_MM2 {
            faults.push(PlanError::NoArea { area_mm2 });
        } else if let Some(at) = first_crossing(&contour.flatten(CHECK_CHORD_MM)) {
            faults.push(PlanError::Crossing { at });
        }
    }
    faults
}

fn check_edge(edge: usize, from: Point, piece: &Edge, faults: &mut Vec<PlanError>) {
    match *piece {
        Edge::Line { to } if from.distance(to) <= SAME_MM => {
            faults.push(PlanError::EmptyEdge { edge, at: from });
        }
        Edge::Line { .. } => {}
        Edge::Arc { to, centre, .. } => {
            let (from_mm, to_mm) = (from.distance(centre), to.distance(centre));
            if (from_mm - to_mm).abs() > ARC_ERROR_MM {
                faults.push(PlanError::CrookedArc {
                    edge,
                    from_mm,
                    to_mm,
                });
            } else if from_mm <= SAME_MM {
                faults.push(PlanError::EmptyEdge { edge, at: from });
            }
        }
    }
}

/// First place where two edges of a closed loop that are not neighbours meet.
fn first_crossing(points: &[Point]) -> Option<Point> {
    let count = points.len();
    let side = |p: Point, q: Point, r: Point| q.minus(p).cross(r.minus(p));
    for i in 0..count {
        let (a, b) = (points[i], points[(i + 1) % count]);
        let reach = Bounds::of([a, b])?;
        for j in i + 2..count {
            if i == 0 && j + 1 == count {
                continue;
            }
            let (c, d) = (points[j], points[(j + 1) % count]);
            let apart = Bounds::of([c, d]).is_none_or(|other| !reach.meets(&other));
            if !apart
                && side(a, b, c) * side(a, b, d) <= 0.0
                && side(c, d, a) * side(c, d, b) <= 0.0
            {
                return Some(Point::new(f64::midpoint(a.x, b.x), f64::midpoint(a.y, b.y)));
            }
        }
    }
    None
}

/// All faults of a region: of each outline, and of the holes against the outside and each other.
pub fn validate_region(region: &Region) -> Vec<PlanError> {
    let mut faults = validate_contour(&region.outer);
    faults.extend(region.holes.iter().flat_map(validate_contour));
    if !faults.is_empty() {
        return faults;
    }
    let outer = Area::from_contour(&region.outer, CHECK_CHORD_MM);
    let holes: Vec<Area> = region
        .holes
        .iter()
        .map(|h| Area::from_contour(h, CHECK_CHORD_MM))
        .collect();
    for (hole, area) in holes.iter().enumerate() {
        let outside_mm2 = area.subtract(&outer).area_mm2();
        if outside_mm2 > OVERLAP_MM2 {
            faults.push(PlanError::HoleOutside { hole, outside_mm2 });
        }
        for (first, earlier) in holes.iter().enumerate().take(hole) {
            let shared_mm2 = earlier.intersect(area).area_mm2();
            if shared_mm2 > OVERLAP_MM2 {
                faults.push(PlanError::HolesOverlap {
                    first,
                    second: hole,
                    shared_mm2,
                });
            }
        }
    }
    faults
}
