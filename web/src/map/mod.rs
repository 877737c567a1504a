//! The web as it really is, as a map: lines of equal give in the manner of a topographic map, and its lowest tone.

mod chart;
mod contour;
#[cfg(test)]
mod fixture;
mod give;
mod ground;
mod label;
mod legend;
mod levels;
mod places;
mod sample;
mod sight;
mod steps;
#[cfg(test)]
mod tests;
mod tone;
mod view;

pub(crate) use chart::{Shows, chart};
pub(crate) use ground::Paper;
pub(crate) use legend::key;
pub(crate) use sample::{Run, along};
pub(crate) use sight::{sight, softest_step, steps};
pub(crate) use view::WebView;
