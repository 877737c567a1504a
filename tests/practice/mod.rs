//! Advice against ranges that others print or run.

pub(crate) mod compare;
pub(crate) mod jobs;
pub(crate) mod ranges;
pub(crate) mod reasons;
pub(crate) mod table;
pub(crate) mod values;
