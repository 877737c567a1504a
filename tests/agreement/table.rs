//! The table of agreement that is kept in `shared/reference`: one section for each file of cases.

use super::{Outcome, Runner};
use std::fmt::Write;
use std::path::{Path, PathBuf};

/// Set to write the table instead of comparing with it.
const UPDATE: &str = "UPDATE_AGREEMENT";
/// Errors below this are rounding, and differ from one platform to the next.
const ROUNDING: f64 = 1e-8;
/// How a value may be known, as the cases say.
const KNOWN: [&str; 4] = ["read", "derived", "memory", "mixed"];
/// Files in the order of their sections.
const FILES: [&str; 4] = [
    "mechanics.json",
    "plates.json",
    "outlines.json",
    "stability.json",
];
const HEADER: &str = "# How well the computation agrees with what is published

Written by the tests that run the cases, never by hand: `UPDATE_AGREEMENT=1 cargo test -p workspace-tests`.
Errors are relative to the printed value, the worst of each case; a case stays within the tolerance that stands beside it.
A value is *read* in its source, *derived* from formulas or an independent computation, quoted from *memory*, or *mixed*.
";

/// An error in percent with two digits.
fn percent(error: f64) -> String {
    if error < ROUNDING {
        return "below 0.000001 %".to_owned();
    }
    let short: f64 = format!("{:.1e}", 100.0 * error).parse().unwrap();
    format!("{short} %")
}

/// The section of a file: how many cases are run, and how well each topic agrees.
pub(super) fn section(runner: &Runner, cases: usize, outcome: &mut Outcome) -> String {
    let computed: usize = outcome.topics.values().map(|one| one.errors.len()).sum();
    let mut text = format!(
        "## {}\n\n{cases} cases: {computed} computed; {} compared with a row of the data, computed or not; {} that disagree \
         and are explained; {} that nothing here answers.\n\n",
        runner.file,
        outcome.tabled,
        runner.disagreeing.len(),
        runner.waiting.len()
    );
    text += "| topic | computed | read | derived | memory | mixed | median error | worst error |\n";
    text += "|---|---|---|---|---|---|---|---|\n";
    for (topic, tally) in &mut outcome.topics {
        tally.errors.sort_by(f64::total_cmp);
        let count = tally.errors.len();
        let known = KNOWN.map(|how| tally.known.get(how).copied().unwrap_or(0));
        if known.iter().sum::<usize>() != count {
            let unknown = format!("{topic}: a case says otherwise how it is known");
            outcome.complaints.push(unknown);
        }
        let [read, derived, memory, mixed] = known;
        writeln!(
            text,
            "| {topic} | {count} | {read} | {derived} | {memory} | {mixed} | {} | {} |",
            percent(tally.errors[count / 2]),
            percent(tally.errors[count - 1])
        )
        .unwrap();
    }
    text
}

fn place() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../shared/reference/AGREEMENT.md")
}

/// The section of a file in the whole table; empty if it has none.
fn cut_out<'a>(whole: &'a str, file: &str) -> &'a str {
    let Some(start) = whole.find(&format!("## {file}\n")) else {
        return "";
    };
    let rest = &whole[start..];
    let end = rest[1..].find("\n## ").map_or(rest.len(), |at| at + 2);
    rest[..end].trim_end()
}

/// Compares a section with the one that is kept, or writes it; a complaint if they differ.
pub(crate) fn keep(file: &str, section: &str) -> Option<String> {
    let kept = std::fs::read_to_string(place()).unwrap_or_default();
    let mut whole = HEADER.to_owned();
    for name in FILES {
        let part = if name == file {
            section.trim_end()
        } else {
            cut_out(&kept, name)
        };
        if !part.is_empty() {
            whole += &format!("\n{part}\n");
        }
    }
    if std::env::var_os(UPDATE).is_some() {
        std::fs::write(place(), whole).unwrap();
        return None;
    }
    (whole != kept).then(|| {
        format!("shared/reference/AGREEMENT.md tells something else of {file}: write it anew with {UPDATE}=1")
    })
}
