//! What a search costs, counted and not timed: checks of candidates, forces, webs, path lengths, and what it asks of
//! the memory. A change that costs more than it says is noticed on any machine, however busy.
//!
//! `UPDATE_COUNTS=1` rewrites `tests/counts.txt`; read the difference before it is committed.
#![cfg(test)]

mod counting;
// Part of the bench, which has no test of its own.
#[path = "bench/spread.rs"]
mod spread;

use counting::{Memory, measured};
use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::path::{Path, PathBuf};
use thinwright_catalog::Catalog;
use thinwright_core::{Answers, Cache, Progress, Search, read};
use thinwright_jobfile::samples;
use workspace_tests::jobs::random_jobs;

/// Jobs drawn by lot, beside the samples.
const DRAWN: u64 = 20;
/// So much more than was written, in parts of the whole, is too much: compilers differ in what they keep off the heap.
const MORE: f64 = 0.03;
/// So much less asks for the lower figure to be written, so that it is held from then on.
const LESS: f64 = 0.10;
/// Few are not measured in parts.
const FEW: u64 = 8;
/// What is counted, in the order of the columns.
const COLUMNS: [&str; 6] = [
    "checks",
    "loads",
    "webs",
    "lengths",
    "allocations",
    "peak KiB",
];

type Counts = [u64; COLUMNS.len()];

fn file() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("counts.txt")
}

/// Counts one job, nothing at hand from before.
fn count(answers: &Answers, catalog: &Catalog) -> Counts {
    let job = read(answers, catalog).unwrap();
    let (effort, Memory { allocations, peak }) = measured(|| {
        let mut search = Search::new(job, Cache::default());
        while !matches!(search.advance(u64::MAX), Progress::Done(_)) {}
        search.effort()
    });
    [
        effort.checks,
        effort.loads,
        effort.webs,
        effort.lengths,
        allocations,
        peak.div_ceil(1024),
    ]
}

fn counted() -> BTreeMap<String, Counts> {
    let catalog = Catalog::builtin();
    let named = samples()
        .iter()
        .map(|sample| (sample.id.to_owned(), sample.job().answers));
    let drawn = random_jobs(DRAWN).map(|(seed, answers)| (format!("drawn-{seed:02}"), answers));
    named
        .chain(drawn)
        .map(|(name, answers)| (name, count(&answers, &catalog)))
        .collect()
}

fn written(text: &str) -> BTreeMap<String, Counts> {
    let mut all = BTreeMap::new();
    for line in text.lines().filter(|line| !line.starts_with('#')) {
        let mut words = line.split_whitespace();
        let name = words.next().expect("a name").to_owned();
        let counts: Vec<u64> = words.map(|word| word.parse().expect("a count")).collect();
        all.insert(name, counts.try_into().expect("all counts"));
    }
    all
}

fn to_write(all: &BTreeMap<String, Counts>) -> String {
    let mut text = format!("# {:<18}", "job");
    for column in COLUMNS {
        write!(text, "{column:>13}").unwrap();
    }
    for (name, counts) in all {
        write!(text, "\n{name:<20}").unwrap();
        for count in counts {
            write!(text, "{count:>13}").unwrap();
        }
    }
    text + "\n"
}

/// What grew, and what shrank so far that the file should say so.
fn differences(was: &BTreeMap<String, Counts>, is: &BTreeMap<String, Counts>) -> Vec<String> {
    let mut told = Vec::new();
    if !was.keys().eq(is.keys()) {
        told.push("other jobs than those written".to_owned());
    }
    for (name, counts) in is {
        let Some(before) = was.get(name) else {
            continue;
        };
        for (column, (now, before)) in COLUMNS.iter().zip(counts.iter().zip(before)) {
            #[allow(clippy::cast_precision_loss, reason = "far below 2^53")]
            let share = *now as f64 / (*before).max(1) as f64 - 1.0;
            if now.abs_diff(*before) > FEW && !(-LESS..=MORE).contains(&share) {
                told.push(format!(
                    "{name}: {column} {before} -> {now} ({:+.1} %)",
                    share * 100.0
                ));
            }
        }
    }
    told
}

#[test]
fn a_search_costs_what_is_written() {
    let is = counted();
    if std::env::var_os("UPDATE_COUNTS").is_some() {
        std::fs::write(file(), to_write(&is)).unwrap();
        return;
    }
    let text = std::fs::read_to_string(file()).unwrap_or_default();
    let told = differences(&written(&text), &is);
    assert!(
        told.is_empty(),
        "{}\nIf this is meant: UPDATE_COUNTS=1 cargo test -p workspace-tests --test counts",
        told.join("\n")
    );
}

#[test]
fn more_and_much_less_are_noticed() {
    let of = |checks: u64| BTreeMap::from([("a".to_owned(), [checks, 0, 1, 2, 3, 4])]);
    let was = written(&to_write(&of(1000)));
    assert_eq!(was, of(1000));
    for (now, noticed) in [(1000, 0), (1029, 0), (1031, 1), (905, 0), (890, 1), (0, 1)] {
        assert_eq!(differences(&was, &of(now)).len(), noticed, "{now}");
    }
    assert_eq!(differences(&BTreeMap::new(), &of(1)).len(), 1);
    // A count that was nothing.
    assert_eq!(differences(&of(0), &of(9)).len(), 1);
}

#[test]
fn memory_is_counted_by_thread() {
    let (kept, memory) = measured(|| {
        drop(vec![0_u8; 100_000]);
        vec![0_u8; 5000]
    });
    assert_eq!((memory.allocations, memory.peak), (2, 100_000));
    // What was there before does not count, nor does what another thread takes.
    let ((), memory) = measured(|| {
        drop(kept);
        let taken = std::thread::scope(|s| s.spawn(|| vec![0_u8; 1 << 20]).join());
        assert_eq!(taken.unwrap().len(), 1 << 20);
    });
    assert!(memory.peak < 100_000, "{memory:?}");
}
