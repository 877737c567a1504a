//! Thin plates: what the web, the ribs and the rim give under the cutter.
//!
//! Closed forms and converged series of thin (Kirchhoff) plate theory. They answer at once, for the shapes that the
//! questionnaire draws most often, and stand as witnesses beside a finite-element solver.
//!
//! **Where this stops.** An open floor is right within 2 % while its thickness stays under span/35, 5 % at span/22, 12 % at
//! span/15. Within about three thicknesses of a clamped rim it is wrong whatever the slenderness (up to a factor of two, on
//! a deflection that is tiny there). Ribs between slots come out 12 % too stiff at width/thickness 2 and 32 % at 1. The clamp
//! is ideal: a wall that gives is not in it. Deflections are small against the thickness. All loads are points unless said.
//!
//! | symbol | words | SI unit |
//! |---|---|---|
//! | `e_mod`, `nu`, `rho` | Young's modulus, Poisson's ratio, density | Pa, -, kg/m^3 |
//! | `t` | thickness | m |
//! | D | bending rigidity, E t^3 / (12 (1 - nu^2)) | N m |
//! | `lambda2` | frequency parameter, omega a^2 sqrt(rho t / D) | - |
//! | compliance | deflection under a unit load, at the load | m/N |
#![warn(missing_docs)]

pub mod annulus;
mod annulus_modes;
#[cfg(test)]
mod any_input;
pub mod bed;
mod bessel;
mod dense;
pub mod disc;
pub mod fem;
mod legendre;
mod math;
pub mod mesh;
pub mod rectangle;
mod rectangle_edges;
pub mod ritz;
mod sheet;
pub mod stress;
pub mod strip;
mod waves;

pub use sheet::{PlateError, Sheet};
