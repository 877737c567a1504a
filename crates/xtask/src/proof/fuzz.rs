//! `cargo xtask proof fuzz`: a coverage-guided search for bytes that break a reader. A number behind it shortens the search
//! to so many thousandths of the whole one.
//!
//! The programs are a workspace of their own (`tests/fuzz`), built with the compiler's coverage counters and linked with the
//! search of LLVM, which needs a C++ compiler. What leads somewhere new joins the corpus, which ordinary tests replay.

use crate::bench;
use crate::errand::{Fallible, command, root, run, target_folder, write};
use crate::tools;
use std::fmt::Write as _;
use std::path::Path;

/// The readers, and how many inputs each is tried with: ten million and more in all.
const READERS: [(&str, u64); 6] = [
    ("job", 5_200_000),
    ("link", 800_000),
    ("shop", 200_000),
    ("store", 1_400_000),
    ("message", 1_000_000),
    ("words", 2_500_000),
];
/// Longest input, bytes: room for a small file of each kind.
const LONGEST: u32 = 4_096;
/// An input that takes longer hangs, s.
const HANG: u32 = 10;
/// Most bytes that a reader's corpus keeps: the smallest inputs, and those that the search began with.
const KEPT: u64 = 140_000;
/// What the names of the first inputs begin with.
const FIRST: &str = "first-";
/// Counters of edges and of comparisons, where the search reads them.
const FLAGS: &str = "-Cpasses=sancov-module -Cllvm-args=-sanitizer-coverage-level=4 \
    -Cllvm-args=-sanitizer-coverage-inline-8bit-counters -Cllvm-args=-sanitizer-coverage-pc-table \
    -Cllvm-args=-sanitizer-coverage-trace-compares";
/// Named, so that the flags are not those of build scripts too.
const HOST: &str = "x86_64-unknown-linux-gnu";
const HEAD: &str = "\
# What the fuzzer has found

`cargo xtask proof fuzz` writes this. Each reader is held to what `targets.rs` says of any bytes: no panic, no hang, and what
is read well loses nothing when it is written and read again. Whatever breaks that ends the search with an error, so that a
line here says that nothing did.

";

/// Builds the programs, searches, and writes `tests/fuzz/RESULTS.md`.
pub(super) fn fuzz(share: Option<&str>) -> Fallible<()> {
    let thousandths = match share {
        None => 1_000,
        Some(text) => text
            .parse()
            .map_err(|e| format!("{text}: how many thousandths of the whole search? {e}"))?,
    };
    tools::find("c++").ok_or("c++ is not on the PATH: the search of LLVM is built with it")?;
    let work = target_folder()?.join("fuzz");
    build(&work)?;
    let mut table = String::from(
        "| reader | inputs tried | seconds | a second | corpus |\n| --- | --- | --- | --- | --- |\n",
    );
    let mut all = 0;
    for (reader, inputs) in READERS {
        let inputs = (inputs * thousandths / 1_000).max(1);
        let (tried, seconds) = search(&work, reader, inputs)?;
        let kept = minimise(&work, reader)?;
        all += tried;
        let rate = tried / seconds.max(1);
        // Writing to a text cannot fail.
        let _ = writeln!(
            table,
            "| {reader} | {tried} | {seconds} | {rate} | {kept} |"
        );
    }
    let engine = bench::revision();
    let text = format!(
        "{HEAD}Engine: {engine}. {all} inputs in all, {LONGEST} bytes at most each.\n\n{table}"
    );
    write(&root().join("tests/fuzz/RESULTS.md"), text)
}

fn build(work: &Path) -> Fallible<()> {
    let cargo = std::env::var("CARGO").unwrap_or_else(|_| "cargo".to_owned());
    let mut build = command(&cargo, &["build", "--release", "--target", HOST]);
    build.current_dir(root().join("tests/fuzz"));
    run(build.env("RUSTFLAGS", FLAGS).env("CARGO_TARGET_DIR", work))
}

/// The program of a reader.
fn program(work: &Path, reader: &str) -> String {
    let built = work.join(HOST).join("release").join(reader);
    built.display().to_string()
}

/// Searches from the corpus on, in a folder of its own; gives the inputs tried and the seconds.
fn search(work: &Path, reader: &str, inputs: u64) -> Fallible<(u64, u64)> {
    let found = work.join("found").join(reader);
    std::fs::create_dir_all(&found).map_err(|e| format!("{}: {e}", found.display()))?;
    let corpus = root().join("tests/fuzz/corpus").join(reader);
    let mut search = command(&program(work, reader), &[]);
    search.arg(&found).arg(corpus).args([
        format!("-runs={inputs}"),
        format!("-max_len={LONGEST}"),
        format!("-timeout={HANG}"),
        format!("-artifact_prefix={}/", work.display()),
        "-print_final_stats=0".to_owned(),
    ]);
    let done = search.output().map_err(|e| format!("{search:?}: {e}"))?;
    let told = String::from_utf8_lossy(&done.stderr);
    if !done.status.success() {
        return Err(format!("{reader}: {}\n{told}", done.status));
    }
    // `Done 1000000 runs in 12 second(s)`
    let end = told
        .lines()
        .rev()
        .find_map(|line| line.strip_prefix("Done "));
    let mut words = end.unwrap_or_default().split_whitespace();
    let number = |word: Option<&str>| word.and_then(|w| w.parse::<u64>().ok());
    let both = number(words.next()).zip(number(words.nth(2)));
    both.ok_or_else(|| format!("{reader}: the search does not say how much it has tried\n{told}"))
}

/// What leads somewhere new joins the corpus; gives the number of its files.
fn minimise(work: &Path, reader: &str) -> Fallible<usize> {
    let corpus = root().join("tests/fuzz/corpus").join(reader);
    let found = work.join("found").join(reader);
    let mut merge = command(&program(work, reader), &["-merge=1"]);
    merge.arg(format!("-max_len={LONGEST}"));
    let done = merge.arg(&corpus).arg(found).output();
    let done = done.map_err(|e| format!("{merge:?}: {e}"))?;
    if !done.status.success() {
        let told = String::from_utf8_lossy(&done.stderr);
        return Err(format!("{reader}: {}\n{told}", done.status));
    }
    trim(&corpus).map_err(|e| format!("{}: {e}", corpus.display()))
}

/// Takes the largest inputs out of a corpus until it is small; gives the number of those that stay.
fn trim(corpus: &Path) -> std::io::Result<usize> {
    let mut files = Vec::new();
    for file in std::fs::read_dir(corpus)? {
        let file = file?;
        let first = file.file_name().to_string_lossy().starts_with(FIRST);
        files.push((!first, file.metadata()?.len(), file.path()));
    }
    files.sort();
    let (mut bytes, mut stay) = (0, 0);
    for (found, length, path) in files {
        if found && bytes + length > KEPT {
            std::fs::remove_file(path)?;
        } else {
            bytes += length;
            stay += 1;
        }
    }
    Ok(stay)
}
