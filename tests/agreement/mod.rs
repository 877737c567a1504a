//! Reference cases read from `shared/reference`, run against the computation, and the table of how well they agree.

use serde_json::Value;
use std::collections::BTreeMap;
use std::path::Path;

/// One reference case.
pub(crate) struct Row {
    pub(crate) id: String,
    topic: String,
    tolerance: f64,
    inputs: BTreeMap<String, Vec<f64>>,
    expected: BTreeMap<String, Vec<f64>>,
}

/// What the computation gives for a case, by the name of the expected value; numbers in SI.
pub(crate) type Answer = Vec<(&'static str, Vec<f64>)>;

/// Factor from a unit of the files to SI.
fn si(unit: &str) -> f64 {
    match unit {
        "-" | "m" | "N" | "Pa" | "N/m" | "N/m^2" | "Hz" | "kg" | "kg/m^3" | "rad" | "rad/s"
        | "m/s" => 1.0,
        "mm" => 1e-3,
        "MPa" => 1e6,
        "1/min" => 1.0 / 60.0,
        "deg" => core::f64::consts::PI / 180.0,
        other => panic!("the unit {other} has no factor to SI"),
    }
}

/// Every number in a value, lists laid end to end; words and truth values have none.
fn numbers(value: &Value, factor: f64, found: &mut Vec<f64>) {
    match value {
        Value::Number(number) => found.push(number.as_f64().unwrap() * factor),
        Value::Array(all) => all.iter().for_each(|one| numbers(one, factor, found)),
        Value::Null | Value::Bool(_) | Value::String(_) | Value::Object(_) => {}
    }
}

fn quantities(value: &Value) -> BTreeMap<String, Vec<f64>> {
    let named = value.as_object().unwrap().iter().map(|(name, quantity)| {
        let mut found = Vec::new();
        numbers(
            &quantity["value"],
            si(quantity["unit"].as_str().unwrap()),
            &mut found,
        );
        (name.clone(), found)
    });
    named.collect()
}

/// The cases of a file in `shared/reference`.
pub(crate) fn rows(file: &str) -> Vec<Row> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../shared/reference")
        .join(file);
    let text = std::fs::read_to_string(&path).unwrap();
    let all: Value = serde_json::from_str(&text).unwrap();
    let row = |value: &Value| Row {
        id: value["id"].as_str().unwrap().to_owned(),
        topic: value["topic"].as_str().unwrap().to_owned(),
        tolerance: value["tolerance_rel"].as_f64().unwrap(),
        inputs: quantities(&value["inputs"]),
        expected: quantities(&value["expected"]),
    };
    all.as_array().unwrap().iter().map(row).collect()
}

impl Row {
    /// An input in SI.
    pub(crate) fn input(&self, name: &str) -> f64 {
        self.list(name)[0]
    }

    /// An input that may be missing.
    #[allow(dead_code, reason = "not every runner asks")]
    pub(crate) fn input_or(&self, name: &str, instead: f64) -> f64 {
        self.inputs
            .get(name)
            .and_then(|all| all.first().copied())
            .unwrap_or(instead)
    }

    /// Whether there is such an input.
    #[allow(dead_code, reason = "not every runner asks")]
    pub(crate) fn has(&self, name: &str) -> bool {
        self.inputs.contains_key(name)
    }

    /// An input with several numbers, in SI.
    pub(crate) fn list(&self, name: &str) -> &[f64] {
        self.inputs
            .get(name)
            .unwrap_or_else(|| panic!("{}: no input {name}", self.id))
    }
}

/// Errors of one topic.
#[derive(Default)]
struct Tally {
    rows: usize,
    errors: Vec<f64>,
}

/// Greatest relative error of an answer; a message if it lacks a value or has a wrong count.
fn compare(row: &Row, answer: &Answer) -> Result<f64, String> {
    let mut worst = 0.0_f64;
    for (name, expected) in &row.expected {
        let Some((_, found)) = answer.iter().find(|(given, _)| given == name) else {
            return Err(format!("{}: {name} was not computed", row.id));
        };
        if found.len() != expected.len() {
            return Err(format!(
                "{}: {name} has {} values, not {}",
                row.id,
                found.len(),
                expected.len()
            ));
        }
        for (value, printed) in found.iter().zip(expected) {
            let error = (value / printed - 1.0).abs();
            if error.is_nan() || error > row.tolerance {
                return Err(format!("{}: {name} {value:e} against {printed:e}", row.id));
            }
            worst = worst.max(error);
        }
    }
    Ok(worst)
}

/// Runs every case of the file but those that `waiting` lists with a reason; prints the agreement by topic.
///
/// Fails when a case disagrees, when one is neither run nor listed, and when a listed one is gone or can be run.
#[allow(clippy::print_stdout, reason = "the table is for people")]
pub(crate) fn run(file: &str, waiting: &[(&str, &str)], answer: impl Fn(&Row) -> Option<Answer>) {
    let rows = rows(file);
    let mut complaints = Vec::new();
    let mut topics: BTreeMap<&str, Tally> = BTreeMap::new();
    for row in &rows {
        let listed = waiting.iter().any(|(id, _)| *id == row.id);
        match (answer(row), listed) {
            (Some(_), true) => {
                complaints.push(format!("{}: is run now, take it off the list", row.id));
            }
            (None, false) => {
                complaints.push(format!("{}: neither run nor listed", row.id));
            }
            (None, true) => {}
            (Some(answer), false) => match compare(row, &answer) {
                Ok(error) => {
                    let tally = topics.entry(&row.topic).or_default();
                    tally.rows += 1;
                    tally.errors.push(error);
                }
                Err(complaint) => complaints.push(complaint),
            },
        }
    }
    for (id, _) in waiting {
        if !rows.iter().any(|row| row.id == *id) {
            complaints.push(format!("{id}: listed, but not in {file}"));
        }
    }
    println!("{file}: {} cases, {} waiting\n", rows.len(), waiting.len());
    println!(
        "{:<42} {:>5} {:>12} {:>12}",
        "topic", "cases", "median", "worst"
    );
    for (topic, tally) in &mut topics {
        tally.errors.sort_by(f64::total_cmp);
        let median = tally.errors[tally.errors.len() / 2];
        let worst = tally.errors[tally.errors.len() - 1];
        println!(
            "{topic:<42} {:>5} {:>10.5} % {:>10.5} %",
            tally.rows,
            100.0 * median,
            100.0 * worst
        );
    }
    assert!(
        complaints.is_empty(),
        "{} complaints:\n{}",
        complaints.len(),
        complaints.join("\n")
    );
}
