//! The program as it is run: exit status, what goes where.

use std::io::Write;
use std::path::PathBuf;
use std::process::{Command, Output, Stdio};
use thinwright_core::Outcome;
use thinwright_jobfile::{Sample, decode};

fn sample(id: &str) -> &'static str {
    Sample::by_id(id)
        .unwrap_or_else(|| panic!("no sample {id}"))
        .text
}

/// Runs the program with text on standard input.
fn run(args: &[&str], input: &str) -> Output {
    let mut child = Command::new(env!("CARGO_BIN_EXE_thinwright"))
        .args(args)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("the program starts");
    // The program may end without reading: a broken pipe is then what is expected.
    let _ = child
        .stdin
        .take()
        .expect("a pipe")
        .write_all(input.as_bytes());
    child.wait_with_output().expect("the program ends")
}

fn out(output: &Output) -> String {
    String::from_utf8(output.stdout.clone()).expect("text")
}

fn err(output: &Output) -> String {
    String::from_utf8(output.stderr.clone()).expect("text")
}

/// Bad input: status 2, nothing on standard output, every one of these on standard error.
fn bad(args: &[&str], input: &str, told: &[&str]) {
    let output = run(args, input);
    assert_eq!(output.status.code(), Some(2), "{args:?}");
    assert_eq!(out(&output), "");
    for text in told {
        assert!(
            err(&output).contains(text),
            "{text} is not in:\n{}",
            err(&output)
        );
    }
}

#[test]
fn a_strategy_is_status_0() {
    let by_name = run(&["--sample", "grille-frame"], "");
    assert_eq!(by_name.status.code(), Some(0), "{}", err(&by_name));
    assert_eq!(err(&by_name), "");
    let text = out(&by_name);
    assert!(
        text.starts_with("Grille frame; acetal (POM-C); belt-driven router\n"),
        "{text}"
    );
    assert!(text.contains("spindle speed n: "), "{text}");
    let by_input = run(&["-"], sample("grille-frame"));
    assert_eq!(out(&by_input), text);
    let file =
        PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../shared/samples/grille-frame.json");
    let by_file = run(&[file.to_str().unwrap()], "");
    assert_eq!(out(&by_file), text);
}

#[test]
fn a_no_is_status_1_with_its_reason_on_standard_output() {
    let output = run(&["--sample", "impossible"], "");
    assert_eq!(output.status.code(), Some(1));
    assert_eq!(err(&output), "");
    assert!(
        out(&output).contains("There is no way to "),
        "{}",
        out(&output)
    );
}

#[test]
fn json_is_the_same_outcome() {
    let output = run(&["--sample", "grille-frame", "--json"], "");
    assert_eq!(output.status.code(), Some(0));
    let outcome = decode(&out(&output)).unwrap();
    assert!(matches!(outcome, Outcome::Feasible(strategy) if !strategy.setups.is_empty()));
}

#[test]
fn units_change_what_is_printed_and_nothing_else() {
    let mm = out(&run(&["--sample", "grille-frame"], ""));
    let inch = out(&run(&["--sample", "grille-frame", "--units", "inch"], ""));
    assert!(mm.contains(" mm/min") && !mm.contains(" in/min"));
    assert!(inch.contains(" in/min") && !inch.contains(" mm/min"));
    let speeds = |text: &str| {
        text.lines()
            .filter(|l| l.contains("spindle speed n"))
            .map(str::to_owned)
            .collect::<Vec<_>>()
    };
    assert_eq!(speeds(&mm), speeds(&inch));
    assert!(!speeds(&mm).is_empty());
}

#[test]
fn a_language_changes_what_is_said_and_no_number() {
    let english = out(&run(&["--sample", "grille-frame"], ""));
    let digits = |text: &str| {
        ('0'..='9')
            .map(|d| text.matches(d).count())
            .collect::<Vec<_>>()
    };
    let is_broken = |word: &&str| {
        let inside = word.trim_end_matches('.').contains('.');
        inside && word.parse::<f64>().is_ok()
    };
    let broken: Vec<&str> = english.split_whitespace().filter(is_broken).collect();
    assert!(broken.len() > 20, "{english}");
    for tag in ["de", "es"] {
        let output = run(&["--sample", "grille-frame", "--language", tag], "");
        assert_eq!(output.status.code(), Some(0), "{}", err(&output));
        let text = out(&output);
        assert!(!text.contains("spindle speed n: "), "{text}");
        for number in &broken {
            let marked = number.replace('.', ",");
            assert!(
                text.contains(&marked) && !text.contains(*number),
                "{marked}: {text}"
            );
        }
        // A language may have a digit in a unit of its own, as in 1/min; none may lack one.
        let mut kept = digits(&text).into_iter().zip(digits(&english));
        assert!(kept.all(|(here, there)| here >= there), "{text}");
    }
    let wrong = "--language takes de, en or es";
    bad(
        &["--sample", "grille-frame", "--language", "la"],
        "",
        &[wrong],
    );
}

#[test]
fn every_problem_is_told_at_its_field() {
    let text = sample("mirror-back-plate")
        .replacen(
            r#""part.thickness": {"text":"19""#,
            r#""part.thickness": {"text":"12""#,
            1,
        )
        .replacen(
            r#""cutter.1.diameter": {"text":"6""#,
            r#""cutter.1.diameter": {"text":"six""#,
            1,
        )
        .replacen(r#""text":"al_6082_t6""#, r#""text":"unobtainium""#, 1);
    bad(
        &["-"],
        &text,
        &[
            "standard input: part.web (Web thickness): this web leaves nothing for the other recess: 12 - 9 - 4 = -1 mm",
            "cutter.1.diameter (Cutter 1: cutting diameter): \u{201C}six\u{201D} is not a number",
            "material.row (Material): \u{201C}unobtainium\u{201D} is in no table",
        ],
    );
}

#[test]
fn bad_input_is_status_2() {
    bad(
        &["-"],
        "not json",
        &["standard input: not JSON: line 1, column 2"],
    );
    bad(
        &["-"],
        &sample("impossible").replacen("_job\": 2", "_job\": 9", 1),
        &["newer program: format 9"],
    );
    bad(
        &["-"],
        &sample("impossible").replacen("boss-bolted", "boss-bolded", 1),
        &["answers.holding.boss-bolded"],
    );
    bad(&["no-such-file.json"], "", &["no-such-file.json: "]);
    bad(
        &[env!("CARGO_MANIFEST_DIR")],
        "",
        &[env!("CARGO_MANIFEST_DIR")],
    );
    bad(&["--sample", "none"], "", &["there is no such sample"]);
    bad(&[], "", &["which job file?", "thinwright JOBFILE"]);
    bad(&["--wrong"], "", &["--wrong is not known"]);
}

#[test]
fn help_and_lists_are_status_0() {
    for (args, told) in [
        (["--help"], "exit status: 0"),
        (["--version"], "thinwright "),
        (["--samples"], "mirror-back-plate: "),
    ] {
        let output = run(&args, "");
        assert_eq!(output.status.code(), Some(0));
        assert!(out(&output).contains(told), "{}", out(&output));
    }
}
