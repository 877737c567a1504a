//! The bench: the engine natively and as WASM, the built page, and what of it is fetched; what stability costs.
//! `cargo xtask bench` builds what it needs and runs it; with `BENCH_ONLY=stability` only that part.
#![allow(
    clippy::print_stdout,
    clippy::panic,
    clippy::expect_used,
    reason = "a bench tells its figures, and ends when something is broken"
)]

#[path = "../browser/devtools.rs"]
#[allow(dead_code, reason = "the bench reads no log")]
mod devtools;
#[path = "../browser/driver.rs"]
#[allow(clippy::unwrap_used, reason = "shared with the browser tests")]
mod driver;
#[path = "../../crates/xtask/src/server.rs"]
#[allow(dead_code, reason = "the errand tries several ports")]
mod server;

mod chart;
mod curves;
mod made;
mod measured;
mod model;
mod native;
#[path = "../plates/mod.rs"]
#[allow(clippy::unwrap_used, reason = "shared with the tests")]
mod outlines;
mod page;
mod peer;
mod plates;
mod plates_report;
mod report;
mod site;
mod sizes;
mod spread;
mod stability;
mod stability_report;
mod trial;
mod wasm_run;
mod webs;

use page::Slowed;
use plates::Plates;
use plates_report::AllPlates;
use report::{Figures, report};
use site::visit;
use std::path::{Path, PathBuf};
use thinwright_jobfile::samples;

/// How the processor is slowed, to stand for a telephone or an old machine.
const SLOWED: [Slowed; 3] = [Slowed::Not, Slowed::Page(4), Slowed::Both(4)];

/// Names the one part that is measured; all of them without it.
const ONLY: &str = "BENCH_ONLY";

/// Arguments: how many jobs to draw, the folder of the WASM program, the revision.
#[tokio::main(flavor = "current_thread")]
async fn main() {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let [drawn, wasm, revision] = arguments.as_slice() else {
        panic!("run it by `cargo xtask bench`");
    };
    let top = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    match std::env::var(ONLY).as_deref() {
        Err(_) => {
            let drawn = drawn.parse().expect("a number of jobs");
            all(&top, wasm, (revision, drawn)).await;
            stability(&top, wasm, revision).await;
        }
        Ok("stability") => stability(&top, wasm, revision).await,
        Ok(other) => panic!("{ONLY}: there is no part {other}"),
    }
}

/// All but stability.
async fn all(top: &Path, wasm: &str, (revision, drawn): (&str, usize)) {
    let count = samples().len() + drawn;
    let dist = top.join("dist");
    let load = load();
    println!("{count} jobs natively");
    let native = native::run(count);
    let plates = all_plates(top, PathBuf::from(wasm)).await;
    println!("{count} jobs as WASM");
    let folder = PathBuf::from(wasm);
    let wasm = visit(folder, 1, move |site| wasm_run::run(site, count)).await;
    let mut pages = Vec::new();
    for slowed in SLOWED {
        println!("the page, slowed: {slowed:?}");
        pages.push((slowed, page::run(&dist, slowed).await));
    }
    let text = report(&Figures {
        revision: revision.to_owned(),
        load,
        native,
        wasm,
        pages,
        plates,
        sizes: sizes::of(&dist).expect("the page is built"),
    });
    write(top, "RESULTS.md", &text);
}

/// Curves and charts of limits, and what tests at the machine change.
async fn stability(top: &Path, wasm: &str, revision: &str) {
    let measured = stability::run(top, PathBuf::from(wasm)).await;
    write(
        top,
        "STABILITY.md",
        &stability_report::report(revision, &measured),
    );
}

fn write(top: &Path, name: &str, text: &str) {
    println!("\n{text}");
    let file = top.join("tests").join("bench").join(name);
    std::fs::write(file, text).expect("the results can be written");
}

/// Plates here, by the peers, and in a browser, one after the other.
async fn all_plates(top: &Path, folder: PathBuf) -> AllPlates {
    let before = load();
    let across = plates::across(top);
    println!("plates natively, {across} elements across a rib");
    let native = plates::run(across);
    println!("plates by the peers");
    let peer = peer::run(top, peer::PLATES);
    println!("plates as WASM");
    let wasm = visit(folder, 1, move |site| wasm_run::plates(site, across)).await;
    let bits = |plates: &Plates| plates.solved.told.map(f64::to_bits);
    assert_eq!(bits(&native), bits(&wasm), "natively and as WASM");
    AllPlates {
        native,
        wasm,
        peer,
        solid: plates::solid(top),
        load: [before, load()],
    }
}

/// Programs that run or wait for a processor, on average over a minute, if the system tells.
fn load() -> Option<String> {
    let text = std::fs::read_to_string("/proc/loadavg").ok()?;
    Some(text.split_whitespace().next()?.to_owned())
}
