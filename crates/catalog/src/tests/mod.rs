//! The tables built in are sound, and unsound ones are refused at their place.

mod built_in;
mod published;
mod refusals;
