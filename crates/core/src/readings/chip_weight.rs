//! Weight of the chips of a timed cut: what was really removed.

use super::{Said, Unreadable, above_nothing, at_least};
use thinwright_catalog::Numbers;

/// Chips that were weighed. SI.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ChipWeight {
    /// Weight of the chips, kg.
    pub weight: f64,
    /// Time of the cut, s.
    pub time: f64,
    /// Density of the material, kg/m3.
    pub density: f64,
    /// What the step removes at its numbers in a second of cutting, m3/s: stepover, step-down and feed.
    pub reckoned: f64,
}

/// What it says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Removed {
    /// Removal rate, m3/s.
    pub rate: Said,
    /// The same over what was reckoned.
    pub share: Said,
}

/// What the weight of the chips of a timed cut says.
///
/// 2.7 g of aluminium in a minute are 1 cm3/min. Good to 5 to 10 %: it shows a feed knob that is not at 100 %, and depth that
/// was lost.
/// Units: kg, s, kg/m3, m3/s. Source: commonpractice.
///
/// # Errors
/// What cannot be: no weight, no time, nothing to hold it against.
pub fn chip_weight(read: ChipWeight, numbers: &Numbers) -> Result<Removed, Unreadable> {
    let weight = at_least(read.weight, 0.0)?;
    let (time, density) = (above_nothing(read.time)?, above_nothing(read.density)?);
    let reckoned = above_nothing(read.reckoned).map_err(|_| Unreadable::NothingReckoned)?;
    let rate = weight / density / time;
    let ratio = rate / reckoned;
    if ratio > numbers.reading_odd {
        return Err(Unreadable::TooFar {
            ratio,
            most: numbers.reading_odd,
        });
    }
    let rate = Said::around(rate, rate * numbers.reading_chips_share);
    Ok(Removed {
        rate,
        share: rate.over(reckoned),
    })
}
