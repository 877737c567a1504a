//! Readings at the machine: what a measured thickness, width, power, weight or swing says of stiffness, force and set-up.
//!
//! Each reading is held against what was reckoned for the step. It comes with what the instrument leaves open, and so does
//! what it says: a range, never a number. Nonsense is refused with the numbers that make it so.

mod chip_weight;
mod runout;
mod slot_width;
mod spindle_load;
mod web_thickness;

pub use chip_weight::{ChipWeight, Removed, chip_weight};
pub use runout::{Swing, runout};
pub use slot_width::{Slot, SlotWidth, slot_width};
pub use spindle_load::{SpindleLoad, spindle_load};
pub use web_thickness::{Web, WebThickness, web_thickness};

/// What a reading says, with the range that the instrument leaves. Unit: that of what it is about.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Said {
    /// At least.
    pub low: f64,
    /// As read.
    pub likely: f64,
    /// At most.
    pub high: f64,
}

impl Said {
    /// A value give or take an error, both in the same unit; never below 0.
    pub(crate) fn around(value: f64, error: f64) -> Said {
        Said {
            low: (value - error).max(0.0),
            likely: value,
            high: value + error,
        }
    }

    /// The same in parts of something else that is known.
    pub(crate) fn over(self, whole: f64) -> Said {
        Said {
            low: self.low / whole,
            likely: self.likely / whole,
            high: self.high / whole,
        }
    }

    /// Whether a value lies in the range.
    pub fn holds(&self, value: f64) -> bool {
        (self.low..=self.high).contains(&value)
    }

    /// Half of the width of the range, as a share of the value.
    pub fn share(&self) -> f64 {
        0.5 * (self.high - self.low) / self.likely.max(f64::MIN_POSITIVE)
    }
}

/// Why a reading says nothing. SI.
#[derive(Clone, Copy, Debug, PartialEq)]
#[non_exhaustive]
pub enum Unreadable {
    /// Not a number, or below what can be.
    Impossible {
        /// What was given.
        value: f64,
        /// The least that can be.
        least: f64,
    },
    /// Larger than what it was taken from.
    Above {
        /// What was given.
        value: f64,
        /// What it was taken from.
        whole: f64,
    },
    /// What was read is not more than the instrument's own error.
    BelowError {
        /// What was read.
        value: f64,
        /// The error.
        error: f64,
    },
    /// So far from what was reckoned that it is the reading or the set-up that is wrong.
    TooFar {
        /// Read over reckoned.
        ratio: f64,
        /// The most that is believed.
        most: f64,
    },
    /// The step has nothing to hold this against.
    NothingReckoned,
}

/// A number that is at least this.
fn at_least(value: f64, least: f64) -> Result<f64, Unreadable> {
    match value.is_finite() && value >= least {
        true => Ok(value),
        false => Err(Unreadable::Impossible { value, least }),
    }
}

/// A number above 0.
fn above_nothing(value: f64) -> Result<f64, Unreadable> {
    match value.is_finite() && value > 0.0 {
        true => Ok(value),
        false => Err(Unreadable::Impossible { value, least: 0.0 }),
    }
}

/// Refuses a ratio of read to reckoned that nothing but a wrong reading explains.
fn believed(ratio: f64, most: f64) -> Result<f64, Unreadable> {
    match ratio.is_finite() && ratio <= most && ratio >= 1.0 / most {
        true => Ok(ratio),
        false => Err(Unreadable::TooFar { ratio, most }),
    }
}
