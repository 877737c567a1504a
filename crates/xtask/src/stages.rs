//! `cargo xtask test`: everything that must hold, in order; the first stage that fails ends it.

use crate::errand::{Fallible, cargo, run};
use crate::{dist, page, single, tools};
use std::io::{BufRead as _, BufReader};
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

/// Tests counted over all stages.
#[derive(Debug, Default, PartialEq)]
struct Count {
    passed: u64,
    failed: u64,
}

type Stage = (&'static str, fn(&mut Count) -> Fallible<()>);

const STAGES: &[Stage] = &[
    ("tools", |_| tools::all()),
    ("format", |_| run(&mut cargo(&["fmt", "--all", "--check"]))),
    ("lints", |_| {
        lints(&["--workspace", "--all-targets", "--all-features"])
    }),
    ("lints of the page", |_| {
        lints(&[
            "--package",
            "thinwright-web",
            "--target",
            "wasm32-unknown-unknown",
        ])
    }),
    ("tests", |count| tests(count, &["--workspace"])),
    ("documentation", |_| documentation()),
    ("page", |_| page()),
    ("browser", browser),
];

/// Runs every stage and closes with the counts.
pub(crate) fn test() -> Fallible<()> {
    let mut count = Count::default();
    let mut times = Vec::new();
    let mut done = Ok(());
    for (name, stage) in STAGES {
        println!("== {name}");
        let start = Instant::now();
        let outcome = stage(&mut count);
        times.push((*name, start.elapsed()));
        if let Err(why) = outcome {
            println!("{why}");
            // A stage that fails without a failed test is one failure.
            count.failed = count.failed.max(1);
            done = Err(format!("stage failed: {name}"));
            break;
        }
    }
    close(&times, &count);
    done
}

fn close(times: &[(&str, Duration)], count: &Count) {
    println!("\n== time by stage");
    for (name, time) in times {
        println!("{:>7.1} s  {name}", time.as_secs_f64());
    }
    let all: Duration = times.iter().map(|(_, time)| *time).sum();
    println!("{:>7.1} s  in all\n", all.as_secs_f64());
    println!("{} passed, {} failed", count.passed, count.failed);
}

fn lints(what: &[&str]) -> Fallible<()> {
    run(cargo(&["clippy"]).args(what).args(["--", "-D", "warnings"]))
}

fn documentation() -> Fallible<()> {
    run(cargo(&["doc", "--workspace", "--no-deps"]).env("RUSTDOCFLAGS", "-D warnings"))
}

fn page() -> Fallible<()> {
    let built = page::build()?;
    dist::write_folder(&built)?;
    single::write_file(&built)
}

fn browser(count: &mut Count) -> Fallible<()> {
    let what = [
        "--package",
        "workspace-tests",
        "--features",
        "browser",
        "--test",
        "browser",
    ];
    tests(count, &what)
}

fn tests(count: &mut Count, what: &[&str]) -> Fallible<()> {
    let mut command = cargo(&["test", "--no-fail-fast"]);
    let failed_before = count.failed;
    let done = counted(command.args(what), count);
    match count.failed - failed_before {
        0 => done,
        failed => Err(format!("{failed} tests failed")),
    }
}

/// Runs a command, shows what it prints and adds up the results in it.
fn counted(command: &mut Command, count: &mut Count) -> Fallible<()> {
    let told = |e: std::io::Error| format!("cargo test: {e}");
    let mut child = command.stdout(Stdio::piped()).spawn().map_err(told)?;
    if let Some(stdout) = child.stdout.take() {
        for line in BufReader::new(stdout).split(b'\n') {
            let line = line.map_err(told)?;
            let line = String::from_utf8_lossy(&line);
            println!("{line}");
            add(count, &line);
        }
    }
    let status = child.wait().map_err(told)?;
    if status.success() {
        Ok(())
    } else {
        Err(format!("cargo test: {status}"))
    }
}

/// Reads the closing line of one test program.
fn add(count: &mut Count, line: &str) {
    let Some(results) = line.strip_prefix("test result: ") else {
        return;
    };
    let number = |word: &str| {
        let (before, _) = results.split_once(&format!(" {word};"))?;
        before.rsplit(' ').next()?.parse::<u64>().ok()
    };
    count.passed += number("passed").unwrap_or_default();
    count.failed += number("failed").unwrap_or_default();
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn closing_lines_are_added_up() {
        let mut count = Count::default();
        add(
            &mut count,
            "test result: ok. 12 passed; 0 failed; 1 ignored; 0 measured; 3 filtered out; finished in 0.01s",
        );
        add(
            &mut count,
            "test result: FAILED. 3 passed; 2 failed; 0 ignored; 0 measured; 0 filtered out; finished in 0.00s",
        );
        add(&mut count, "test some::name ... ok");
        assert_eq!(
            count,
            Count {
                passed: 15,
                failed: 2
            }
        );
    }

    #[test]
    fn a_failing_command_fails_the_stage_even_without_a_failed_test() {
        let mut count = Count::default();
        assert!(counted(&mut Command::new("false"), &mut count).is_err());
        assert!(counted(&mut Command::new("true"), &mut count).is_ok());
    }
}
