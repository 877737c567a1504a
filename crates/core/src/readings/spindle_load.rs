//! Power drawn while cutting, less what it draws idle at the same speed: what the cutting force really is.

use super::{Said, Unreadable, above_nothing, at_least, believed};
use crate::strategy::Step;
use thinwright_catalog::Numbers;

/// A power that was read, in true watts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpindleLoad {
    /// While it cuts.
    pub cutting: f64,
    /// Idle, at the same speed.
    pub idle: f64,
    /// Feed that was run over the step's.
    pub feed_share: f64,
}

/// What a power says: cutting force over what was reckoned at likely values.
///
/// Of the watts above idle 60 to 80 % reach the cutter. Where less was fed, less was asked: power goes with the feed to the
/// power of 1 - `mc`.
/// Units: W. Source: shopreports; the shares are rows of the numbers table.
///
/// # Errors
/// What cannot be: idle above cutting, a difference that the meter does not show, a factor that nobody believes.
pub fn spindle_load(
    read: SpindleLoad,
    step: &Step,
    mc: f64,
    numbers: &Numbers,
) -> Result<Said, Unreadable> {
    let cutting = above_nothing(read.cutting)?;
    let idle = at_least(read.idle, 0.0)?;
    let fed = above_nothing(read.feed_share)?;
    if idle > cutting {
        return Err(Unreadable::Above {
            value: idle,
            whole: cutting,
        });
    }
    let drawn = cutting - idle;
    let error = numbers.reading_power_share * libm::hypot(cutting, idle);
    if drawn <= error {
        return Err(Unreadable::BelowError {
            value: drawn,
            error,
        });
    }
    let reckoned = step.loads.power.si() * libm::pow(fed, 1.0 - mc);
    let reckoned = above_nothing(reckoned).map_err(|_| Unreadable::NothingReckoned)?;
    let (least, most) = (numbers.reading_power_least, numbers.reading_power_most);
    let said = Said {
        low: least * (drawn - error),
        likely: 0.5 * (least + most) * drawn,
        high: most * (drawn + error),
    };
    let factor = said.over(reckoned);
    believed(factor.likely, numbers.reading_odd)?;
    Ok(factor)
}
