//! The ear: what can be heard of knocks on a part or a cutter, and of a cut.
//!
//! Samples go in (full scale 1, at a rate), frequencies and damping come out, or the plain statement that nothing was
//! found. A microphone's level cannot be trusted, so no result rests on loudness: a frequency does not depend on it, and
//! damping only on how evenly it falls.
//!
//! | symbol | words | SI unit |
//! |---|---|---|
//! | `n` | speed of the spindle | 1/s |
//! | `z` | teeth | - |
//! | `sigma` | decay of the height of a ring, exp(-sigma t) | 1/s |
//!
//! The same samples give the same result on the same build. Unlike the other kernels' the last bit may differ between
//! builds: the transform's factors come from the platform's own functions. No strategy rests on that bit: a person reads
//! the figure and types it in.
#![warn(missing_docs)]

pub mod agreement;
pub mod lines;
mod math;
mod onset;
mod peaks;
pub mod recording;
mod ring;
#[cfg(test)]
mod sounds;
pub mod spectrum;
#[cfg(test)]
mod survey;
pub mod taps;
pub mod tones;
mod transform;

pub use agreement::{Agreed, agreement};
pub use lines::{Lines, Nearest, Origin, lines};
pub use recording::Unheard;
pub use spectrum::{Column, Scale, Spectrum, spectrum};
pub use taps::{Tap, Taps, taps};
pub use tones::{Tone, Tones, tones};
