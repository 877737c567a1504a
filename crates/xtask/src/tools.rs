//! What a bare machine lacks is added here, or named in words when it can't be.

use crate::errand::{Fallible, command, output, run};
use std::path::{Path, PathBuf};

const TARGET: &str = "wasm32-unknown-unknown";

/// Programs that the browser tests start, and the Debian packages that hold them.
const PROGRAMS: &[(&str, &str)] = &[
    ("chromium", "chromium"),
    ("chromedriver", "chromium-driver"),
    ("pdftotext", "poppler-utils"),
];

/// Everything that `cargo xtask test` needs.
pub(crate) fn all() -> Fallible<()> {
    wasm_target()?;
    component("fmt", "rustfmt")?;
    component("clippy", "clippy")?;
    browser()
}

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

/// A part of the Rust toolchain that is a cargo command.
fn component(subcommand: &str, name: &str) -> Fallible<()> {
    if output(&mut command("cargo", &[subcommand, "--version"])).is_ok() {
        return Ok(());
    }
    println!("adding {name} to the Rust toolchain");
    run(&mut command("rustup", &["component", "add", name]))
        .map_err(|why| format!("{name} is missing, and rustup could not add it.\n{why}"))
}

/// A browser, its driver, and a reader for what it prints.
fn browser() -> Fallible<()> {
    let missing: Vec<&str> = PROGRAMS
        .iter()
        .filter(|(program, _)| find(program).is_none())
        .map(|(_, package)| *package)
        .collect();
    if missing.is_empty() {
        return Ok(());
    }
    let packages = missing.join(" ");
    let by_hand = format!(
        "the browser tests need these Debian packages (elsewhere: Chromium, ChromeDriver and pdftotext on the PATH).\n\
         Install them and run this again:  sudo apt-get install {packages}"
    );
    let root = output(&mut command("id", &["-u"])).is_ok_and(|id| id.trim() == "0");
    if !root || find("apt-get").is_none() {
        return Err(by_hand);
    }
    println!("installing {packages}");
    let told = |why| format!("{why}\n{by_hand}");
    run(&mut command("apt-get", &["update", "-qq"])).map_err(told)?;
    let mut install = command(
        "apt-get",
        &["install", "-y", "-qq", "--no-install-recommends"],
    );
    run(install
        .args(missing)
        .env("DEBIAN_FRONTEND", "noninteractive"))
    .map_err(told)
}

/// A program on the PATH.
pub(crate) fn find(program: &str) -> Option<PathBuf> {
    let path = std::env::var_os("PATH")?;
    std::env::split_paths(&path)
        .map(|folder| folder.join(program))
        .find(|file| file.is_file())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn programs_are_found_on_the_path_only() {
        assert!(find("sh").is_some());
        assert_eq!(find("a program that nobody has"), None);
    }
}
