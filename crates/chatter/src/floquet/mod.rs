//! Stability over one tooth period, exactly: the theory of Floquet for a delay of one period.
//!
//! A vibration that multiplies by m from one tooth to the next was 1/m of itself one tooth earlier. With that the delay
//! is gone: at depth b the state over one tooth period obeys an ordinary equation whose cutting stiffness is scaled by
//! b (1 - 1/m), and m is a multiplier when it is an eigenvalue of that equation's transition matrix (characteristic matrices of
//! periodic delay equations: `szalai2006`, from memory; the series below are our own).
//!
//! The transition matrix is an entire function of the strength of the cut: `march` works out its power series once
//! for a speed, for all depths. Its characteristic polynomial in 1/m = w is then a power series in w, and the cut is stable when
//! that has no zero in the unit disk (`disk`). So one depth more costs a microsecond, and nothing is lost between samples
//! of a circle.
//!
//! Witnesses (collocation, simulation in time) and how far they agree: `shared/reference/README.md`.

mod disk;
mod march;
mod nodes;
mod period;
mod series;
mod small;
mod song;
mod system;
#[cfg(test)]
mod tests;
mod windows;
mod zeros;

pub use period::{Crossing, Kind, Period};
pub use song::Song;
pub use system::{MOST_MODES, Moving, System};

/// What counts as nothing among coefficients of series whose variable stays within 1.
const TINY: f64 = 1.0e-10;
/// Most powers of one element; never reached where elements are as short as they are made.
const MOST_LEVELS: usize = 40;
