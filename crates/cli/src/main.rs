//! The command line: a job file in, a strategy out.
fn main() {}
