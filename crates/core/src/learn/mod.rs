//! What a machine has taught: steps that were run narrow the ranges of its stiffness, its damping and the cutting force.
//!
//! The rule. What is not known is a world: stiffness of the machine, specific cutting force, damping. Inside the ranges of
//! the job's answers worlds stand on a coarse grid (`world`), each as likely as the ranges say: half of them below the
//! likely value, half above, evenly by ratio; and how far the depths are off that are worked out without a tone. Each thing that was seen has a likelihood in each world (`seen`); what was
//! seen multiplies, so that the order does not matter. Then from each range that tail is cut off which what was seen has
//! left at most a fifth of the plausibility it had (`rule`). So nothing seen cuts nothing off, what was seen far from any
//! limit next to nothing, and what is kept holds eight tenths of all at least.
//!
//! **It never widens.** The ranges that are kept lie inside those of the tables and of the person's own figures, which they
//! are met with when the answers are read ([`crate::read()`]); if the two have nothing in common, that is a problem.
//! **It loosens no limit of safety.** What can refuse a job for the sake of machine, cutter and hold
//! ([`crate::limits::Severity::Stop`]: breakage, thrust, grip, power, speeds, stress in the web) is held at the bad ends
//! as they were before anything was learned. Quality, advice and what is listened for use what was learned.

mod answered;
mod rule;
mod run;
mod seen;
mod world;

pub use answered::{LEARNED, forgotten, is_machines, texts};
pub use rule::{Taught, teach};
pub use run::{Outcome, Run, seen};
pub use seen::{Edge, Force, Give, Seen, Song};
pub use world::{Quantity, World};

pub(crate) use answered::narrow;

#[cfg(test)]
mod tests;
