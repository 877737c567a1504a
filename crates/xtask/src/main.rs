//! The errands: `cargo xtask build | package | serve | test | bench | proof`. Nothing needs installing first but Rust by rustup.
#![allow(
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "an errand reports to the terminal"
)]

mod bench;
mod dictionaries;
mod dist;
mod errand;
mod fingerprint;
mod html;
mod page;
mod proof;
mod server;
mod single;
mod sizes;
mod stages;
mod tools;

use errand::Fallible;
use std::process::ExitCode;
use std::sync::atomic::AtomicBool;

const USAGE: &str = "\
cargo xtask serve     build the page and serve it on this machine
cargo xtask build     build the page into dist/
cargo xtask package   build the page, and the whole of it as one file: dist-single/thinwright.html
cargo xtask test      install what the tests need and run every one of them
cargo xtask bench     measure engine and page; a number behind it: so many jobs drawn by lot
cargo xtask proof     the whole visit in a browser, as a new user makes it, and Lighthouse; or the parts named behind it
cargo xtask proof fuzz  a search for bytes that break a reader; a number behind it: so many thousandths of the whole one
";

/// Ports tried, in this order, when the page is served.
const PORTS: std::ops::Range<u16> = 8080..8180;

fn main() -> ExitCode {
    let errand = std::env::args().nth(1);
    let done = match errand.as_deref() {
        Some("serve") => serve(),
        Some("build") => build(),
        Some("test") => stages::test(),
        Some("bench") => bench::bench(std::env::args().nth(2).as_deref()),
        Some("package") => package(),
        Some("proof") => proof::proof(std::env::args().skip(2)),
        _ => Err(USAGE.to_owned()),
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(why) => {
            eprintln!("{why}");
            ExitCode::FAILURE
        }
    }
}

fn build() -> Fallible<()> {
    tools::wasm_target()?;
    let built = page::build()?;
    dist::write_folder(&built)
}

fn package() -> Fallible<()> {
    tools::wasm_target()?;
    let built = page::build()?;
    dist::write_folder(&built)?;
    single::write_file(&built)
}

fn serve() -> Fallible<()> {
    build()?;
    let server = server::Server::bind(errand::root().join("dist"), PORTS)
        .map_err(|e| format!("no free port among {PORTS:?}: {e}"))?;
    println!("The page is at {}  (Ctrl+C ends it)", server.address());
    server.run(&AtomicBool::new(true));
    Ok(())
}
