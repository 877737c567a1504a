//! A job as a link and as a code: handed on, and taken in when the page is opened by one.

mod address;
mod arrived;
mod code;
mod compare;
mod panel;

pub(crate) use address::{Home, base};
pub(crate) use arrived::{Arrived, ArrivedProps};
pub(crate) use code::code;
pub(crate) use panel::Share;
