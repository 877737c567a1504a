//! The command line: a job file in, a strategy out.

mod args;
mod language;
mod run;

use std::io::{self, Write};
use std::process::ExitCode;

fn main() -> ExitCode {
    let done = run::run(std::env::args_os().skip(1));
    // A reader that has gone away is no fault of the job: the exit status still tells.
    let _ = io::stdout().lock().write_all(done.out.as_bytes());
    let _ = io::stderr().lock().write_all(done.err.as_bytes());
    ExitCode::from(done.status)
}
