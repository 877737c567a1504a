//! The trade: answers in, a checked strategy out.
//!
//! `Answers` are read into a [`job::Job`], every problem found at once; a [`search::Search`] works out every plan
//! (order, faces, backing) with every cutter and method, holds every limit at the bad end of what is not known, and
//! tells the cheapest plan that holds, or why there is none. Pure: no clock, no I/O, no globals, no panic on any input.
#![warn(missing_docs)]

pub mod again;
pub mod answers;
mod assemble;
#[cfg(test)]
mod brute_force;
mod cache;
pub mod case;
mod cheapest;
pub mod choice;
pub mod confirm;
mod conflict;
pub mod estimate;
pub mod field;
mod field_id;
pub mod gain;
mod generate;
mod grip;
pub mod heard;
pub mod job;
mod judge;
pub mod learn;
mod lengths;
pub mod limits;
mod listen;
mod loads;
mod look;
pub mod methods;
mod numbers;
pub mod order;
mod order_reports;
pub mod part;
pub mod pass;
pub mod picture;
pub mod pin;
pub mod plan;
pub mod problem;
mod quiet;
mod quiet_book;
mod read;
pub mod readings;
mod refuse;
pub mod search;
mod series;
mod setting;
pub mod shape;
mod solve;
pub mod stability;
pub mod strategy;
mod tally;
pub mod task;
mod time;
mod trials;
pub mod trouble;
pub mod verdict;
pub mod vibration;
pub mod web;

pub use answers::{Answer, Answers};
pub use estimate::Known;
pub use field::{FIELDS, Field, FieldId};
pub use job::Job;
pub use picture::{Detail, Sight, Tone, WebError, WebPicture, picture};
pub use problem::{Problem, ProblemKind};
pub use read::read;
pub use search::{Cache, Progress, Search};
pub use setting::known;
pub use strategy::Outcome;
pub use tally::Effort;

/// Works out the strategy of a job in one go, but not what a change would bring.
pub fn decide(job: &Job) -> Outcome {
    Search::new(job.clone(), Cache::default()).decide()
}

/// Works out the strategy of a job in one go.
pub fn advise(job: &Job) -> Outcome {
    let mut search = Search::new(job.clone(), Cache::default());
    loop {
        if let Progress::Done(outcome) = search.advance(u64::MAX) {
            return outcome;
        }
    }
}
