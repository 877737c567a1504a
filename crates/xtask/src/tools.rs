//! What a bare machine lacks is added here, or named in words when it can't be.

use crate::errand::{Fallible, command, output, run};
use std::path::Path;

const TARGET: &str = "wasm32-unknown-unknown";

/// The standard library for WASM.
pub(crate) fn wasm_target() -> Fallible<()> {
    let library = output(&mut command(
        "rustc",
        &["--print", "target-libdir", "--target", TARGET],
    ))?;
    if Path::new(library.trim()).exists() {
        return Ok(());
    }
    println!("adding the target {TARGET} to the Rust toolchain");
    run(&mut command("rustup", &["target", "add", TARGET])).map_err(|why| {
        format!("the Rust target {TARGET} is missing, and rustup could not add it.\n{why}")
    })
}
