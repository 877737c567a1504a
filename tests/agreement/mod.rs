//! Reference cases read from `shared/reference`, run against the computation, and the table of how well they agree.
#![allow(dead_code, reason = "not every runner asks for all of it")]

pub(crate) mod table;

use serde_json::Value;
use std::collections::BTreeMap;
use std::path::Path;

/// One reference case.
pub(crate) struct Row {
    pub(crate) id: String,
    pub(crate) topic: String,
    pub(crate) tolerance: f64,
    known: String,
    inputs: BTreeMap<String, Vec<f64>>,
    expected: BTreeMap<String, Vec<f64>>,
    /// Words among the expected values.
    words: BTreeMap<String, String>,
}

/// What the computation gives for a case, by the name of the expected value; numbers in SI.
pub(crate) type Answer = Vec<(&'static str, Vec<f64>)>;

/// Lengths and force that customary units are made of.
const INCH: f64 = 0.0254;
const FOOT: f64 = 0.3048;
const POUND_FORCE: f64 = 4.448_221_615_260_5;
const KILOGRAM_FORCE: f64 = 9.806_65;
/// 550 foot-pounds per second, W.
const HORSEPOWER: f64 = 550.0 * FOOT * POUND_FORCE;

/// Factor from a unit of the files to SI.
fn si(unit: &str) -> f64 {
    match unit {
        "-" | "text" | "HB" | "HRC" | "m" | "N" | "Pa" | "N/m" | "N/m^2" | "Hz" | "kg"
        | "kg/m^3" | "rad" | "rad/s" | "m/s" | "s" | "W" | "N m" => 1.0,
        "mm" => 1e-3,
        "um" => 1e-6,
        "in" => INCH,
        "MPa" | "N/mm2" | "N/um" => 1e6,
        "GPa" | "J/mm3" | "kW s/cm3" => 1e9,
        "kgf/mm2" => KILOGRAM_FORCE * 1e6,
        "kW" => 1e3,
        "hp" => HORSEPOWER,
        "%" => 1e-2,
        "min" => 60.0,
        "1/min" | "m/min" => 1.0 / 60.0,
        "mm/min" => 1e-3 / 60.0,
        "in/min" => INCH / 60.0,
        "ft/min" => FOOT / 60.0,
        "mm3/min" => 1e-9 / 60.0,
        "cm3/min" => 1e-6 / 60.0,
        "in3/min" => INCH.powi(3) / 60.0,
        "mm3/(min kW)" => 1e-12 / 60.0,
        "in3/(min hp)" => INCH.powi(3) / (60.0 * HORSEPOWER),
        "hp min/in3" => 60.0 * HORSEPOWER / INCH.powi(3),
        "in lbf/in3" => POUND_FORCE / INCH.powi(2),
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

/// Values that are words.
fn words(value: &Value) -> BTreeMap<String, String> {
    let all = value.as_object().unwrap().iter();
    let word = |value: &Value| match value {
        Value::Bool(flag) => Some(flag.to_string()),
        other => other.as_str().map(str::to_owned),
    };
    let said = all.filter_map(|(name, quantity)| Some((name.clone(), word(&quantity["value"])?)));
    said.collect()
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
        known: value["read_or_memory"].as_str().unwrap().to_owned(),
        inputs: quantities(&value["inputs"]),
        expected: quantities(&value["expected"]),
        words: words(&value["expected"]),
    };
    all.as_array().unwrap().iter().map(row).collect()
}

impl Row {
    /// An input in SI.
    pub(crate) fn input(&self, name: &str) -> f64 {
        self.list(name)[0]
    }

    /// An input that may be missing.
    pub(crate) fn input_or(&self, name: &str, instead: f64) -> f64 {
        self.inputs
            .get(name)
            .and_then(|all| all.first().copied())
            .unwrap_or(instead)
    }

    /// Whether there is such an input.
    pub(crate) fn has(&self, name: &str) -> bool {
        self.inputs.contains_key(name)
    }

    /// An input with several numbers, in SI.
    pub(crate) fn list(&self, name: &str) -> &[f64] {
        self.inputs
            .get(name)
            .unwrap_or_else(|| panic!("{}: no input {name}", self.id))
    }

    /// A count among the inputs.
    pub(crate) fn count(&self, name: &str) -> u32 {
        #[allow(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "a count"
        )]
        let count = self.input(name) as u32;
        count
    }

    /// What is printed for a value, in SI: for rows of tables, where the printed value is what is checked.
    pub(crate) fn printed(&self, name: &str) -> &[f64] {
        self.expected
            .get(name)
            .unwrap_or_else(|| panic!("{}: nothing printed for {name}", self.id))
    }

    /// The words that are printed for a value.
    pub(crate) fn said(&self, name: &str) -> &str {
        self.words
            .get(name)
            .unwrap_or_else(|| panic!("{}: nothing said of {name}", self.id))
    }

    /// Whether a value is printed.
    pub(crate) fn prints(&self, name: &str) -> bool {
        self.expected.contains_key(name)
    }
}

/// A case that is left out or disagrees, and why.
pub(crate) type Listed<'a> = (&'a str, &'a str);

/// What a runner has to say of the cases of its file.
pub(crate) struct Runner<'a> {
    /// Name of the file in `shared/reference`.
    pub(crate) file: &'a str,
    /// What is computed for a case.
    pub(crate) answer: &'a dyn Fn(&Row) -> Option<Answer>,
    /// Complaints about a case that is an entry of a table with a counterpart in `shared/data`.
    pub(crate) tabled: &'a dyn Fn(&Row) -> Option<Vec<String>>,
    /// Cases that nothing here can answer.
    pub(crate) waiting: &'a [Listed<'a>],
    /// Cases whose printed value is known to disagree.
    pub(crate) disagreeing: &'a [Listed<'a>],
}

/// What became of the cases of a file.
#[derive(Default)]
struct Outcome<'a> {
    complaints: Vec<String>,
    tabled: usize,
    topics: BTreeMap<&'a str, Tally<'a>>,
}

/// Errors of one topic, and how many of its values are known in which way.
#[derive(Default)]
struct Tally<'a> {
    errors: Vec<f64>,
    known: BTreeMap<&'a str, usize>,
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
            // Beside nothing, the error is what is found.
            let error = if *printed == 0.0 {
                value.abs()
            } else {
                (value / printed - 1.0).abs()
            };
            if error.is_nan() || error > row.tolerance {
                return Err(format!("{}: {name} {value:e} against {printed:e}", row.id));
            }
            worst = worst.max(error);
        }
    }
    Ok(worst)
}

impl Runner<'_> {
    /// Runs one case.
    fn case<'a>(&self, row: &'a Row, outcome: &mut Outcome<'a>) {
        let is_in = |list: &[Listed]| list.iter().any(|(id, _)| *id == row.id);
        let (answer, tabled) = ((self.answer)(row), (self.tabled)(row));
        let answered = answer.is_some() || tabled.is_some();
        match (answered, is_in(self.waiting)) {
            (true, true) => outcome
                .complaints
                .push(format!("{}: is run now, take it off the list", row.id)),
            (false, false) => outcome
                .complaints
                .push(format!("{}: neither run nor listed", row.id)),
            _ => {}
        }
        let mut found = Vec::new();
        let mut error = None;
        if let Some(answer) = answer {
            match compare(row, &answer) {
                Ok(worst) => error = Some(worst),
                Err(complaint) => found.push(complaint),
            }
        }
        if let Some(complaints) = tabled {
            outcome.tabled += 1;
            found.extend(complaints);
        }
        if !is_in(self.disagreeing) {
            outcome.complaints.append(&mut found);
            if let Some(error) = error {
                let tally = outcome.topics.entry(&row.topic).or_default();
                tally.errors.push(error);
                *tally.known.entry(&row.known).or_default() += 1;
            }
        } else if found.is_empty() {
            outcome
                .complaints
                .push(format!("{}: agrees now, take it off the list", row.id));
        }
    }

    /// Runs every case of the file and checks the agreement by topic against the table that is kept.
    ///
    /// Fails when a case disagrees, when one is neither run nor listed, when a listed one is gone or can be run, when one
    /// known to disagree agrees, and when the table that is kept tells something else.
    #[allow(clippy::print_stdout, reason = "the table is for people")]
    pub(crate) fn run(&self) {
        let rows = rows(self.file);
        let mut outcome = Outcome::default();
        for row in &rows {
            self.case(row, &mut outcome);
        }
        for (id, _) in self.waiting.iter().chain(self.disagreeing) {
            if !rows.iter().any(|row| row.id == *id) {
                let gone = format!("{id}: listed, but not in {}", self.file);
                outcome.complaints.push(gone);
            }
        }
        let section = table::section(self, rows.len(), &mut outcome);
        println!("{section}");
        let mut complaints = outcome.complaints;
        // A table of cases that fail is of no use.
        if complaints.is_empty() {
            complaints.extend(table::keep(self.file, &section));
        }
        assert!(
            complaints.is_empty(),
            "{} complaints:\n{}",
            complaints.len(),
            complaints.join("\n")
        );
    }
}

/// Runs every case of a file without rows of tables but those that `waiting` lists with a reason.
pub(crate) fn run(file: &str, waiting: &[Listed], answer: impl Fn(&Row) -> Option<Answer>) {
    let runner = Runner {
        file,
        answer: &answer,
        tabled: &|_| None,
        waiting,
        disagreeing: &[],
    };
    runner.run();
}
