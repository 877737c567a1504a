//! `cargo xtask bench`: builds the page and the bench, and lets it measure.

use crate::errand::{Fallible, cargo, command, fresh_folder, output, run, target_folder, write};
use crate::{dist, page, tools};
use std::path::{Path, PathBuf};
use wasm_bindgen_cli_support::Bindgen;

const PACKAGE: &str = "workspace-tests";
const PROGRAM: &str = "bench-wasm";
const TARGET: &str = "wasm32-unknown-unknown";
/// Jobs drawn by lot, unless the command says how many.
const DRAWN: u32 = 200;
/// The page around the engine: it does nothing until it is asked to.
const EMPTY: &str = "<!doctype html><meta charset=\"utf-8\"><title>bench</title>\n";

/// Builds, measures, and writes `tests/bench/RESULTS.md`.
pub(crate) fn bench(drawn: Option<&str>) -> Fallible<()> {
    let drawn = match drawn {
        Some(text) => text
            .parse()
            .map_err(|e| format!("{text}: how many jobs to draw? {e}"))?,
        None => DRAWN,
    };
    tools::all()?;
    let built = page::build()?;
    dist::write_folder(&built)?;
    let folder = engine()?;
    let mut bench = cargo(&["run", "--quiet", "--release", "--package", PACKAGE]);
    // So that a bench that fails still closes its browser.
    bench.args(["--config", "profile.release.panic=\"unwind\""]);
    bench.args(["--features", "bench", "--bin", "bench", "--"]);
    bench.arg(drawn.to_string()).arg(folder).arg(revision());
    run(&mut bench)
}

/// The engine alone as WASM, with its glue, in a folder that can be served.
fn engine() -> Fallible<PathBuf> {
    let mut build = cargo(&["build", "--release", "--target", TARGET]);
    build.args(["--package", PACKAGE, "--features", "bench-wasm"]);
    run(build.args(["--bin", PROGRAM]))?;
    let target = target_folder()?;
    let built = target.join(TARGET).join("release");
    let folder = target.join("bench");
    fresh_folder(&folder)?;
    bind(&built.join(format!("{PROGRAM}.wasm")), &folder)?;
    write(&folder.join("index.html"), EMPTY)?;
    Ok(folder)
}

fn bind(wasm: &Path, folder: &Path) -> Fallible<()> {
    let mut bindgen = Bindgen::new();
    bindgen
        .input_path(wasm)
        .out_name("bench")
        .typescript(false)
        .web(true)
        .and_then(|bindgen| bindgen.omit_default_module_path(true).generate(folder))
        .map_err(|e| format!("wasm-bindgen: {e:#}"))
}

/// The revision that is measured, and whether something was changed since.
pub(crate) fn revision() -> String {
    let git = |arguments: &[&str]| output(&mut command("git", arguments));
    let Ok(revision) = git(&["rev-parse", "--short", "HEAD"]) else {
        return "unknown".to_owned();
    };
    // What was changed in the folders that the figures depend on.
    let changed = git(&[
        "status",
        "--porcelain",
        "--",
        "crates",
        "web",
        "shared",
        "Cargo.toml",
    ]);
    let changed = changed.is_ok_and(|list| !list.trim().is_empty());
    let mark = if changed { " with changes" } else { "" };
    format!("{}{mark}", revision.trim())
}
