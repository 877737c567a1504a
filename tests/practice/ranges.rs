//! Ranges that others print or run, and which cuts they are for: `shared/reference/ranges.json`.

use serde_json::Value;
use std::path::Path;

/// Lengths that customary units are made of, mm.
const INCH: f64 = 25.4;
const FOOT: f64 = 304.8;

/// A range of one quantity; an end that nobody gives is missing.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Span {
    pub(crate) low: Option<f64>,
    pub(crate) high: Option<f64>,
}

/// What a row says of a quantity.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Says {
    /// The same for every cutter.
    Range(Span),
    /// For some diameters, mm; straight lines between them.
    ByDiameter(Vec<(f64, Span)>),
    /// A word, not a number.
    Word(String),
}

/// A row: a range for some cuts.
pub(crate) struct Row {
    pub(crate) id: String,
    pub(crate) topic: String,
    pub(crate) source: String,
    pub(crate) known: String,
    /// What a reader must know; empty for a printed table, whose case has its own.
    pub(crate) note: String,
    /// Each quantity: its name, its unit, and what is said of it.
    pub(crate) says: Vec<(String, &'static str, Says)>,
    inputs: Value,
}

impl Row {
    /// A word of the inputs; empty if it is not there.
    pub(crate) fn word(&self, name: &str) -> &str {
        self.inputs[name]["value"].as_str().unwrap_or("")
    }

    /// Whether a list of words that the row may give holds this one; every word does if it gives none.
    pub(crate) fn admits(&self, name: &str, word: &str) -> bool {
        let list = self.word(name);
        list.is_empty() || list.split(' ').any(|one| one == word)
    }

    /// Whether a value lies between two ends that the row may give.
    pub(crate) fn between(&self, [from, to]: [&str; 2], value: f64) -> bool {
        let end = |name: &str| self.inputs[name]["value"].as_f64();
        // A typed value may lie on an end.
        let hair = 1.0e-9;
        end(from).is_none_or(|from| value >= from - hair)
            && end(to).is_none_or(|to| value <= to + hair)
    }
}

impl Says {
    /// The range at a diameter in mm; nothing beyond the printed diameters.
    pub(crate) fn at(&self, d: f64) -> Option<Span> {
        let all = match self {
            Says::Range(span) => return Some(*span),
            Says::Word(_) => return None,
            Says::ByDiameter(all) => all,
        };
        // A diameter that is typed in inches is hit within rounding.
        let next = all.iter().position(|one| one.0 >= d - 1.0e-6)?;
        let (a, b) = (&all[next.saturating_sub(1)], &all[next]);
        if next == 0 && d < b.0 - 1.0e-6 {
            return None;
        }
        let share = if b.0 > a.0 {
            (d - a.0) / (b.0 - a.0)
        } else {
            0.0
        };
        let between = |from: Option<f64>, to: Option<f64>| Some(from? + share * (to? - from?));
        Some(Span {
            low: between(a.1.low, b.1.low),
            high: between(a.1.high, b.1.high),
        })
    }
}

fn file(name: &str) -> Vec<Value> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../shared/reference");
    let text = std::fs::read_to_string(folder.join(name)).unwrap();
    serde_json::from_str(&text).unwrap()
}

/// Unit of the table and factor to it.
fn unit(printed: &str) -> (&'static str, f64) {
    match printed {
        "-" => ("", 1.0),
        "mm" => ("mm", 1.0),
        "in" => ("mm", INCH),
        "um" => ("µm", 1.0),
        "m/min" => ("m/min", 1.0),
        "ft/min" => ("m/min", FOOT / 1.0e3),
        "deg" => ("°", 1.0),
        "W s/mm3" => ("W s/mm³", 1.0),
        "N/um" => ("N/µm", 1.0),
        "N m" => ("N m", 1.0),
        "mm/s2" => ("mm/s²", 1.0),
        other => panic!("the unit {other} has no factor"),
    }
}

/// Two ends, either of which may be `null`.
fn ends(value: &Value, factor: f64) -> Span {
    let end = |at: usize| value[at].as_f64().map(|v| v * factor);
    Span {
        low: end(0),
        high: end(1),
    }
}

fn own(row: &Value) -> Vec<(String, &'static str, Says)> {
    let said = row["expected"].as_object().into_iter().flatten();
    said.map(|(name, quantity)| {
        let (unit, factor) = unit(quantity["unit"].as_str().unwrap());
        let says = match quantity["value"].as_str() {
            Some(word) => Says::Word(word.to_owned()),
            None => Says::Range(ends(&quantity["value"], factor)),
        };
        (name.clone(), unit, says)
    })
    .collect()
}

/// The printed values of a case whose names begin so, with their least and greatest; lists stay lists.
fn printed(case: &Value, name: &str, diameters: &[f64]) -> Option<(&'static str, Says)> {
    let found: Vec<&Value> = ["", "_min", "_max", "_rough", "_finish"]
        .iter()
        .filter_map(|end| case["expected"].get(format!("{name}{end}")))
        .collect();
    let (unit, factor) = unit(found.first()?["unit"].as_str()?);
    let span = |values: Vec<f64>| Span {
        low: values.iter().copied().reduce(f64::min),
        high: values.iter().copied().reduce(f64::max),
    };
    if found[0]["value"].is_array() {
        let at = |index: usize| {
            let values = found.iter().filter_map(|f| f["value"][index].as_f64());
            span(values.map(|v| v * factor).collect())
        };
        let all = diameters.iter().enumerate().map(|(i, d)| (*d, at(i)));
        return Some((unit, Says::ByDiameter(all.collect())));
    }
    let values = found.iter().filter_map(|f| f["value"].as_f64());
    Some((
        unit,
        Says::Range(span(values.map(|v| v * factor).collect())),
    ))
}

/// What a case of `mechanics.json` prints, by the names used here.
fn of_case(case: &Value, upper: bool) -> Vec<(String, &'static str, Says)> {
    let list = case["inputs"]["diameters"]["value"].as_array();
    let diameters: Vec<f64> = list
        .into_iter()
        .flatten()
        .filter_map(Value::as_f64)
        .collect();
    let mut says = Vec::new();
    for (ours, theirs) in [
        ("vc", "vc"),
        ("fz", "fz"),
        ("fz_over_d", "fz_over_D"),
        ("fz", "chip_load"),
        ("slope", "ramp"),
        ("ap_over_d", "ap_over_D_max"),
    ] {
        if let Some((unit, mut found)) = printed(case, theirs, &diameters) {
            if let (true, Says::Range(span)) = (upper, &mut found) {
                span.low = None;
            }
            says.push((ours.to_owned(), unit, found));
        }
    }
    let inches = |name: &str| case["expected"][name]["value"].as_f64().map(|v| v * INCH);
    if let (Some(quarter), Some(whole)) = (inches("fz_quarter_inch"), inches("fz_one_inch")) {
        let one = |fz: f64| Span {
            low: Some(fz),
            high: Some(fz),
        };
        let all = vec![(0.25 * INCH, one(quarter)), (INCH, one(whole))];
        says.push(("fz".to_owned(), "mm", Says::ByDiameter(all)));
    }
    says
}

/// Every row, those of printed tables with the numbers that stand in `mechanics.json`.
pub(crate) fn rows() -> Vec<Row> {
    let cases = file("mechanics.json");
    let read = |row: Value| {
        let word = |value: &Value| value.as_str().unwrap_or("").to_owned();
        let case = row["inputs"]["case"]["value"].as_str();
        let case = case.map(|id| {
            let found = cases.iter().find(|one| one["id"] == id);
            found.unwrap_or_else(|| panic!("no case {id}"))
        });
        let upper = row["inputs"]["side"]["value"] == "upper";
        let says = case.map_or_else(|| own(&row), |case| of_case(case, upper));
        let from = case.unwrap_or(&row);
        assert!(!says.is_empty(), "{} says nothing", row["id"]);
        Row {
            id: word(&row["id"]),
            topic: word(&row["topic"]),
            source: word(&from["source"]),
            known: word(&from["read_or_memory"]),
            note: word(&row["note"]),
            says,
            inputs: row["inputs"].clone(),
        }
    };
    file("ranges.json").into_iter().map(read).collect()
}
