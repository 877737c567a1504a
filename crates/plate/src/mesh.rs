//! Triangles on the real outline of a plate: conforming, graded, no finer than the narrow places ask for.
//!
//! The edge length at each place comes from the distance between lines that face each other, from their curvature and
//! from the caller's bounds, and grows slowly from there. Lines are divided by it, drawn into one another so that nearly
//! coincident ones become one, and what lies between is filled by constrained Delaunay triangulation with points where
//! triangles are too large; then free nodes are moved for shape. The same input gives the same mesh, bit for bit.
//!
//! **Where this stops.** Lines that only change the thickness may move by 0.15 of the edge length where they nearly
//! coincide. Round lines are replaced by chords between points on them, so areas of round things come out small.

mod buckets;
mod crossings;
mod fill;
mod gaps;
mod lines;
mod outline;
mod planar;
mod resample;
mod size;
mod smooth;
#[cfg(test)]
mod tests;

/// A point of the plan, m.
type Point = [f64; 2];

/// A closed line of the plan.
#[derive(Clone, Debug, PartialEq)]
pub struct Loop {
    /// Points on it, m, finely (chord error about 0.005 mm), in either direction; the first is not repeated.
    pub points: Vec<[f64; 2]>,
    /// What it bounds.
    pub kind: LoopKind,
}

/// What a loop bounds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LoopKind {
    /// Where the plate ends; there is exactly one.
    Outer,
    /// A hole, not meshed inside.
    Hole,
    /// Thickness or support changes here; both sides are meshed.
    Line,
}

/// How fine a mesh shall be.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fineness {
    /// Greatest length of an edge, m (aimed at: single edges come out up to a third longer).
    pub most: f64,
    /// Elements across a rib at its narrowest place; slots and rims get half as many, at least one. At least 1.
    pub across: f64,
    /// Least length of an edge, m (aimed at).
    pub least: f64,
    /// Most nodes of the mesh.
    pub most_nodes: usize,
}

/// Triangles.
#[derive(Clone, Debug, PartialEq)]
pub struct Mesh {
    /// Nodes, m; each belongs to a triangle.
    pub nodes: Vec<[f64; 2]>,
    /// Nodes of each triangle, counter-clockwise.
    pub triangles: Vec<[u32; 3]>,
}

/// Why there is no mesh.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum MeshError {
    /// Not exactly one outer loop that encloses anything.
    NoOutline,
    /// A coordinate is not finite or beyond a kilometre.
    NotFinite,
    /// The fineness is not positive and finite, or `least` exceeds `most`, or `across` is under 1 or over 20.
    Fineness,
    /// A loop crosses itself or turns back on itself.
    SelfCrossing {
        /// Its place among the loops given.
        loop_index: usize,
    },
    /// A rib, slot or rim is so narrow over some length that its elements would be under the least edge.
    Unresolved {
        /// Its width, m.
        width: f64,
        /// The size of the elements across it, m.
        edge: f64,
    },
    /// The mesh would have more nodes than allowed.
    TooLarge {
        /// Nodes when it was given up.
        nodes: usize,
    },
    /// The triangulation failed.
    Triangulation,
}

/// Most elements across a rib that are taken.
const MOST_ACROSS: f64 = 20.0;
/// Greatest ratio of the bounds of the edge length.
const MOST_RATIO: f64 = 1e6;

impl Fineness {
    fn is_sound(&self) -> bool {
        let bounded = self.most.is_finite() && self.least > 0.0 && self.least <= self.most;
        bounded
            && self.most <= MOST_RATIO * self.least
            && self.across >= 1.0
            && self.across <= MOST_ACROSS
    }
}

/// Conforming triangles between the loops.
///
/// Loops may cross, touch or coincide with each other, in part or whole; where they nearly coincide, later ones go to
/// the nodes of earlier ones (the outer loop comes first, then holes, then lines, each kind in the order given). A loop that
/// encloses no area is left out. What lies outside the outer loop or inside a hole is not meshed.
///
/// Units: all lengths m.
///
/// # Errors
/// See [`MeshError`]; every input gives a mesh or one of these.
pub fn mesh(loops: &[Loop], fineness: &Fineness) -> Result<Mesh, MeshError> {
    if !fineness.is_sound() {
        return Err(MeshError::Fineness);
    }
    let outlines = outline::outlines(loops, fineness)?;
    let (sizes, samples) = gaps::sizes(&outlines, fineness)?;
    let lines = lines::draw(&outlines, &samples, &sizes, fineness)?;
    fill::triangles(lines, outline::extent(&outlines), &sizes, fineness)
}
