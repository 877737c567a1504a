//! Physical quantities as small types: parsing what people type, formatting what they read.
//!
//! A quantity is one `f64` in SI behind a name, so that a length cannot be taken for a force; constructors and getters
//! say the unit. Values are finite wherever they come from [`parse`]; [`format()`] prints `-` for what is not.
#![warn(missing_docs)]

mod define;
mod format;
mod geometry;
mod kind;
mod load;
mod matter;
mod motion;
mod parse;
mod unit;

pub use format::{Rounding, format, format_bare};
pub use geometry::{Angle, Length};
pub use kind::{Kind, UnitSystem, unit_name};
pub use load::{Force, Power, Stiffness, Stress, Torque};
pub use matter::{Density, Duration};
pub use motion::{Acceleration, Frequency, Speed, SpindleSpeed};
pub use parse::{ParseError, ParseErrorKind, parse};
