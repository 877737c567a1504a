//! The page in a real browser: `cargo xtask test` builds it, then runs these with the feature `browser`.
#![allow(
    clippy::panic,
    clippy::unwrap_used,
    reason = "a broken page is told by a failing test"
)]

#[path = "../../crates/xtask/src/server.rs"]
#[allow(
    dead_code,
    reason = "the errand serves for ever, a test until it has seen enough"
)]
mod server;

mod devtools;
mod driver;
mod faults;
mod find;
mod paper;
mod person;
mod visit;

mod chart;
mod confirm;
mod files;
mod hear;
mod keeping;
mod kept;
mod keyboard;
mod languages;
mod lectern;
mod link;
mod mending;
mod opening;
mod pace;
mod parity;
mod printing;
mod run;
mod searching;
mod shop;
mod thinner;
mod trouble;
mod update;
mod web;
mod widths;
