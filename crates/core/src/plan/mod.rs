//! Planar geometry of the part: exact outlines, areas computed with, offsets, and what a cutter reaches.
//!
//! Coordinates are millimetres (f64), x to the right, y up; angles in radians, counter-clockwise. An exact shape is a
//! [`Contour`] of lines and arcs, a [`Region`] adds holes; an [`Area`] is the flattened form that is computed with.
//!
//! Why `i_overlay` (measured against `cavalier_contours` 0.9, which keeps arcs): both were right in 400 booleans and 1200 offsets;
//! arcs are exact and offsets faster there, but it takes sines of the platform and cannot combine regions with holes, so
//! it would come on top (about 90 kB packed each). On the integer grid, with our own raw offset, lengths are right to 5e-5.

mod area;
mod arrange;
mod clearing;
mod contour;
mod distance;
mod engine;
mod profile;
mod raw_offset;
mod reach;
mod shapes;
mod validate;
mod widest;

#[cfg(test)]
mod tests;

pub use area::Area;
pub use arrange::{Arrangement, Cell, arrange};
pub use clearing::{Bend, Clearing, Ring, clearing, wall_pass_length};
pub use contour::{Bounds, Contour, Edge, Region};
pub use distance::{distance, distance_point};
pub use profile::{LEAST_SHARE, Profile};
pub use reach::{leftover, narrowest_width, opened};
pub use validate::{PlanError, validate_contour, validate_region};
pub use widest::widest_circle;

/// A point of the plane (mm).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Point {
    /// To the right (mm).
    pub x: f64,
    /// Up (mm).
    pub y: f64,
}

impl Point {
    /// The point at (x, y) (mm).
    pub const fn new(x: f64, y: f64) -> Self {
        Self { x, y }
    }

    /// Both coordinates are numbers.
    pub fn is_finite(self) -> bool {
        self.x.is_finite() && self.y.is_finite()
    }

    /// Distance to another point (mm).
    pub fn distance(self, other: Self) -> f64 {
        self.minus(other).norm()
    }

    pub(crate) fn plus(self, other: Self) -> Self {
        Self::new(self.x + other.x, self.y + other.y)
    }

    pub(crate) fn minus(self, other: Self) -> Self {
        Self::new(self.x - other.x, self.y - other.y)
    }

    pub(crate) fn times(self, factor: f64) -> Self {
        Self::new(self.x * factor, self.y * factor)
    }

    pub(crate) fn dot(self, other: Self) -> f64 {
        self.x * other.x + self.y * other.y
    }

    pub(crate) fn cross(self, other: Self) -> f64 {
        self.x * other.y - self.y * other.x
    }

    pub(crate) fn norm(self) -> f64 {
        self.dot(self).sqrt()
    }

    /// This vector turned counter-clockwise by an angle (rad).
    pub(crate) fn turned(self, angle: f64) -> Self {
        let (s, c) = (libm::sin(angle), libm::cos(angle));
        Self::new(self.x * c - self.y * s, self.x * s + self.y * c)
    }
}
