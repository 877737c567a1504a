//! The web as it really is, as a map: lines of equal give in the manner of a topographic map, and its lowest tone.

mod contour;
#[cfg(test)]
mod fixture;
mod sight;

pub(crate) use sight::{sight, softest_step};
