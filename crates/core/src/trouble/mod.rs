//! When it goes wrong: what was seen, heard and measured in a step; the likely causes, ranked by what the step's own limits
//! say; and the first change, worked out.
//!
//! How likely a cause is: how well the signs fit it (a table), times how plausible it is that one of its limits was really
//! exceeded (the finding's own range), times what else is known. See [`rank()`] and [`plausible()`].

mod advise;
mod cause;
mod change;
mod clue;
mod evaluate;
mod moves;
mod plausible;
mod rank;
mod sign;
mod stand;

pub use advise::{Advice, Against, advise};
pub use cause::{Act, Cause};
pub use change::{Change, Numbers, Shift, Take, Value};
pub use clue::{Clue, Known};
pub use moves::Move;
pub use plausible::plausible;
pub use rank::{Said, Suspect, rank};
pub use sign::{Group, Repeats, Sign, Spot};
