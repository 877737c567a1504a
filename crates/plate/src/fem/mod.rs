//! Plates by finite elements: any outline, any thickness, open slots, rim and boss as thick as they are, on whatever bed.
//!
//! A [`Grid`] is made once for a plan. A [`Layout`] says what stands where in one state of the part; a [`Plate`] is that state,
//! factored: it answers compliance under a patch of contact, deflection, bending moment and tones.
//!
//! **Element.** DKMT (see `element`), the choice measured against P2 elements in `tests/plate_elements.rs`.
//! **What is left out.** The middle plane may jump where thickness does (1.3 % on a floor stepped from one side), large
//! deflections, and damping. Beds push and pull alike: a face that only bears must be left out when the load lifts.
//!
//! | symbol | words | SI unit |
//! |---|---|---|
//! | `w` | deflection, down where the load pushes down | m |
//! | `beta` | slope of the normal; `beta` + grad w is the shear strain | rad |
//! | `bed` | pressure over deflection of what lies under the plate (Winkler) | Pa/m |

mod element;
mod factor;
mod grid;
mod inverse;
mod modes;
mod patch;
mod pattern;
mod plate;
#[cfg(test)]
mod tests;

pub use grid::Grid;
pub use modes::Tone;
pub use patch::Patch;
pub use plate::Plate;

/// What shear does.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Theory {
    /// The plate gives in shear too (Mindlin).
    ShearFlexible,
    /// It does not (Kirchhoff): for thin plates, and as a witness. Twelve to thirty per cent too stiff on narrow ribs.
    Thin,
}

/// What a plate is made of.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stuff {
    /// Young's modulus \[Pa\].
    pub e_mod: f64,
    /// Poisson's ratio \[-\].
    pub nu: f64,
    /// Density \[kg/m^3\].
    pub rho: f64,
}

/// How a node is held.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Held {
    /// Not at all.
    #[default]
    Free,
    /// Its deflection is.
    Supported,
    /// Deflection and slopes are.
    Clamped,
}

/// What stands where, in one state of the part.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Layout {
    /// Thickness of each triangle \[m\]; 0 where it is open.
    pub thickness: Vec<f64>,
    /// Bed under each triangle \[Pa/m\].
    pub bed: Vec<f64>,
    /// How each node is held.
    pub held: Vec<Held>,
}

/// Why a plate gives no answer.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum FemError {
    /// A modulus, density, thickness or bed that is none.
    Value {
        /// What was given.
        value: f64,
    },
    /// The layout is not one of this grid.
    Mismatch,
    /// Nothing is solid.
    Empty,
    /// The part is in this many pieces.
    Pieces {
        /// How many.
        count: usize,
    },
    /// Nothing holds the part.
    Unheld,
}
