//! The cases of `shared/reference/milling.json` as numbers.
#![allow(dead_code, reason = "not every test asks for all of it")]

use serde_json::Value;
use std::path::Path;

const FILE: &str = "../shared/reference/milling.json";

/// One mode, SI; `along` a unit vector: feed, normal to it, cutter's axis.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Mode {
    pub(crate) k: f64,
    pub(crate) zeta: f64,
    pub(crate) omega: f64,
    pub(crate) along: [f64; 3],
}

/// The first limit of a case.
pub(crate) struct Limit {
    /// A depth, m; a factor of the force where the corner counts.
    pub(crate) at: f64,
    /// Critical multiplier, its imaginary part not negative.
    pub(crate) multiplier: (f64, f64),
    pub(crate) kind: String,
    /// Spectral radius at 0.97 and 1.03 of the limit.
    pub(crate) around: [f64; 2],
    /// The strongest frequency, rad/s, and how strong the next is beside it.
    pub(crate) tone: f64,
    pub(crate) next_tone: f64,
}

/// One case, SI.
pub(crate) struct Drawn {
    pub(crate) id: String,
    pub(crate) sort: String,
    pub(crate) z: u32,
    pub(crate) phi_st: f64,
    pub(crate) phi_ex: f64,
    pub(crate) kt: f64,
    pub(crate) kr_ratio: f64,
    /// Turns per second.
    pub(crate) n: f64,
    pub(crate) modes: Vec<Mode>,
    /// Radius of the corner and planned depth, m.
    pub(crate) corner: Option<(f64, f64)>,
    /// How far the search went.
    pub(crate) most: f64,
    pub(crate) limit: Option<Limit>,
}

fn number(value: &Value) -> f64 {
    value
        .as_f64()
        .unwrap_or_else(|| panic!("{value} is no number"))
}

fn numbers<const N: usize>(value: &Value) -> [f64; N] {
    core::array::from_fn(|i| number(&value[i]))
}

fn text(value: &Value) -> String {
    value
        .as_str()
        .unwrap_or_else(|| panic!("{value} is no text"))
        .to_owned()
}

fn mode(value: &Value) -> Mode {
    Mode {
        k: number(&value["k"]),
        zeta: number(&value["zeta"]),
        omega: 2.0 * core::f64::consts::PI * number(&value["hertz"]),
        along: numbers(&value["along"]),
    }
}

fn limit(row: &Value) -> Option<Limit> {
    (!row["limit"].is_null()).then(|| Limit {
        at: number(&row["limit"]),
        multiplier: numbers::<2>(&row["multiplier"]).into(),
        kind: text(&row["kind"]),
        around: numbers(&row["around"]),
        tone: 2.0 * core::f64::consts::PI * number(&row["tone"]),
        next_tone: number(&row["next_tone"]),
    })
}

fn drawn(row: &Value) -> Drawn {
    let z = row["z"].as_u64().and_then(|z| u32::try_from(z).ok());
    Drawn {
        id: text(&row["id"]),
        sort: text(&row["sort"]),
        z: z.expect("a count of teeth"),
        phi_st: number(&row["phi_st"]),
        phi_ex: number(&row["phi_ex"]),
        kt: number(&row["kt"]),
        kr_ratio: number(&row["kr_ratio"]),
        n: number(&row["n"]),
        modes: row["modes"]
            .as_array()
            .map_or_else(Vec::new, |all| all.iter().map(mode).collect()),
        corner: row
            .get("corner")
            .map(|r| (number(r), number(&row["planned"]))),
        most: number(&row["most"]),
        limit: limit(row),
    }
}

/// All cases, in the order of the file.
pub(crate) fn all() -> Vec<Drawn> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(FILE);
    let text = std::fs::read_to_string(path).expect("milling.json");
    let rows: Vec<Value> = serde_json::from_str(&text).expect("a list of cases");
    rows.iter().map(drawn).collect()
}
