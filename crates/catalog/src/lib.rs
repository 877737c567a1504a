//! The only reader of shared/data.
