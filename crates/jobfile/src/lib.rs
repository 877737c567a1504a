//! Job files: versioned JSON of answers, and outcomes on their way between threads and programs.
//!
//! A job file keeps what the person typed, exactly as typed; strategies are worked out anew, never stored. Any bytes give
//! either a value or an error that names the place, and nothing else ever happens: see [`JobFile::read`]. The core's
//! types know nothing of JSON; the private tree in `node` stands between the two.
#![warn(missing_docs)]

mod answers;
mod digest;
mod error;
mod job;
mod link;
mod message;
mod node;
mod object;
mod outcome;
mod record;
mod samples;
pub mod shop;
mod store;
mod wire;

pub use digest::digest;
pub use error::{JobFileError, Wanted};
pub use job::{ENGINE, JobFile, VERSION};
pub use link::{LINK_START, LinkError, LinkedJob};
pub use message::{ChartOf, Covered, FromWorker, MESSAGE_VERSION, Order, Report, ToWorker};
pub use outcome::{OUTCOME_VERSION, decode, encode};
pub use record::{Learned, Ran, Record, untaught};
pub use samples::{Sample, samples};
pub use store::{Damaged, SavedMachine, Store};

#[cfg(test)]
mod tests;
