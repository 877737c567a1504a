//! Every sentence that people read: a kind and its numbers in, words out.
//!
//! The page, the sheet and the command line say the same thing because they take it from here. Nothing here computes a
//! physical value, and no sentence stands anywhere else. [`Speaker`] carries what sentences depend on: the unit system,
//! the tables' names and the rack as it was typed; [`language`] says it in another language.
#![warn(missing_docs)]

mod cautions;
mod checks;
mod choices;
mod considered;
pub mod drawing;
mod fields;
mod figures;
mod gains;
pub mod hear;
pub mod language;
pub mod lectern;
mod limits;
mod listen;
pub mod map;
mod methods;
mod orders;
mod pins;
mod plain;
mod problems;
mod refusals;
mod remedies;
pub mod run;
mod setups;
pub mod sheet;
mod speaker;
pub mod stability;
mod steps;
mod tasks;
mod text;
pub mod trouble;
mod turn_over;
mod unknowns;
mod verdicts;
mod web;

pub use checks::{after_turn_over, before_start, cautions_heading, heights, hold_points};
pub use choices::choice;
pub use fields::{FieldText, field, group};
pub use figures::{bare, marked, unit, written};
pub use gains::{GAIN_KINDS, GainKind, place_name};
pub use limits::{limit_meaning, limit_name};
pub use methods::{method_how, method_name};
pub use orders::{order_name, order_why, telling};
pub use pins::waits;
pub use plain::plain;
pub use setups::face;
pub use speaker::Speaker;
pub use steps::TypedValue;
pub use tasks::{task_name, task_why};
pub use unknowns::{known, unknown_how, unknown_name};
pub use verdicts::{Band, band, severity, utilisation, verdict};

#[cfg(test)]
mod tests;
