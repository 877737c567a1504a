//! Checks against the outside, and the rules of the house.

pub mod jobs;
