//! The flattened area that is computed with: booleans, offsets, measures.

use super::engine::{self, Boolean, Shapes};
use super::{Bounds, Contour, Point, Region};

/// A set of polygons with holes that do not overlap (mm).
///
/// Arcs have become chords within the chord error asked for; results of booleans and offsets lie on a grid of 2^-16 mm.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Area {
    shapes: Shapes,
}

impl Area {
    /// Nothing.
    pub fn empty() -> Self {
        Self::default()
    }

    /// An exact region flattened within `chord_error` (mm); crossing loops are resolved, points that are no numbers left out.
    pub fn from_region(region: &Region, chord_error: f64) -> Self {
        let wound = |contour: &Contour| {
            let mut points = contour.flatten(chord_error);
            points.retain(|p| p.is_finite());
            if ring_area(&points) < 0.0 {
                points.reverse();
            }
            points
        };
        let outer = vec![vec![wound(&region.outer)]];
        let holes: Shapes = region.holes.iter().map(|hole| vec![wound(hole)]).collect();
        Self {
            shapes: engine::combine(&outer, &holes, Boolean::Subtract),
        }
    }

    /// One contour flattened within `chord_error` (mm).
    pub fn from_contour(contour: &Contour, chord_error: f64) -> Self {
        Self::from_region(&Region::solid(contour.clone()), chord_error)
    }

    /// What is in either.
    pub fn union(&self, other: &Self) -> Self {
        Self {
            shapes: engine::combine(&self.shapes, &other.shapes, Boolean::Union),
        }
    }

    /// What is in any of them.
    pub fn union_all<'a>(areas: impl IntoIterator<Item = &'a Self>) -> Self {
        let all: Shapes = areas
            .into_iter()
            .flat_map(|a| a.shapes.iter().cloned())
            .collect();
        Self {
            shapes: engine::combine(&all, &[], Boolean::Union),
        }
    }

    /// What is in both.
    pub fn intersect(&self, other: &Self) -> Self {
        if !self.may_meet(other) {
            return Self::empty();
        }
        Self {
            shapes: engine::combine(&self.shapes, &other.shapes, Boolean::Intersect),
        }
    }

    /// What is in this one only.
    pub fn subtract(&self, other: &Self) -> Self {
        if !self.may_meet(other) {
            return self.clone();
        }
        Self {
            shapes: engine::combine(&self.shapes, &other.shapes, Boolean::Subtract),
        }
    }

    pub(super) fn may_meet(&self, other: &Self) -> bool {
        matches!((self.bounds(), other.bounds()), (Some(a), Some(b)) if a.meets(&b))
    }

    /// The area with its boundary moved by `distance_mm` (negative: inwards), joins rounded.
    ///
    /// The boundary is right to 0.01 mm, the chord error of this area's own flattening apart, up to 2000 mm of distance.
    pub fn offset(&self, distance_mm: f64) -> Self {
        Self {
            shapes: engine::offset(&self.shapes, distance_mm),
        }
    }

    /// Size of the area (mm2).
    pub fn area_mm2(&self) -> f64 {
        self.loops().map(ring_area).sum()
    }

    /// Nothing larger than `min_area` (mm2) is left.
    pub fn is_empty(&self, min_area: f64) -> bool {
        self.shapes.is_empty() || self.area_mm2() <= min_area
    }

    /// No circle of radius `half_width` (mm) fits in it.
    ///
    /// Area <= perimeter x inscribed radius holds for every area, which settles most cases without an offset.
    pub fn is_thin(&self, half_width: f64) -> bool {
        self.area_mm2() <= self.perimeter_mm() * half_width
            && self.offset(-half_width).shapes.is_empty()
    }

    /// The area without the pieces that are smaller than `min_area` (mm2) or thinner than twice `half_width` (mm).
    pub fn without_slivers(&self, min_area: f64, half_width: f64) -> Self {
        let kept = self
            .components()
            .into_iter()
            .filter(|p| !p.is_empty(min_area) && !p.is_thin(half_width));
        Self {
            shapes: kept.flat_map(|piece| piece.shapes).collect(),
        }
    }

    /// Length of all boundaries (mm).
    pub fn perimeter_mm(&self) -> f64 {
        self.loops().map(ring_length).sum()
    }

    /// Every boundary loop: outsides counter-clockwise, holes clockwise, the area always to the left.
    pub fn loops(&self) -> impl Iterator<Item = &[Point]> {
        self.shapes.iter().flatten().map(Vec::as_slice)
    }

    /// Number of boundary loops.
    pub fn loop_count(&self) -> usize {
        self.shapes.iter().map(Vec::len).sum()
    }

    /// Number of connected pieces.
    pub fn component_count(&self) -> usize {
        self.shapes.len()
    }

    /// The connected pieces, each an area.
    pub fn components(&self) -> Vec<Self> {
        self.shapes
            .iter()
            .map(|shape| Self {
                shapes: vec![shape.clone()],
            })
            .collect()
    }

    /// Least upright rectangle around it; none when empty.
    pub fn bounds(&self) -> Option<Bounds> {
        Bounds::of(
            self.shapes
                .iter()
                .filter_map(|s| s.first())
                .flatten()
                .copied(),
        )
    }

    /// The point is inside (on the boundary: either).
    pub fn contains(&self, point: Point) -> bool {
        let crossings = self.segments().filter(|(a, b)| {
            (a.y > point.y) != (b.y > point.y)
                && point.x < a.x + (point.y - a.y) / (b.y - a.y) * (b.x - a.x)
        });
        crossings.count() % 2 == 1
    }

    /// Every boundary segment, from and to.
    pub fn segments(&self) -> impl Iterator<Item = (Point, Point)> {
        self.loops().flat_map(|ring| {
            ring.iter()
                .zip(ring.iter().cycle().skip(1))
                .map(|(&a, &b)| (a, b))
        })
    }
}

/// Signed area of a closed loop (mm2).
pub(super) fn ring_area(ring: &[Point]) -> f64 {
    let Some(&origin) = ring.first() else {
        return 0.0;
    };
    let pairs = ring.iter().zip(ring.iter().skip(1));
    pairs
        .map(|(a, b)| a.minus(origin).cross(b.minus(origin)))
        .sum::<f64>()
        / 2.0
}

/// Length of a closed loop (mm).
pub(super) fn ring_length(ring: &[Point]) -> f64 {
    ring.iter()
        .zip(ring.iter().cycle().skip(1))
        .map(|(a, b)| a.distance(*b))
        .sum()
}
