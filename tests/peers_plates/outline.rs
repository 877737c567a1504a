//! The outlines of `shared/reference/outlines.json` as plans.

use crate::plates::{Place, Plan, Region, Shape};
use serde_json::Value;
use std::path::Path;
use thinwright_plate::fem::{Held, Stuff};

/// Factors from the units of the file to SI.
const MM: f64 = 1e-3;
const MPA: f64 = 1e6;

/// A row of the file that is a plate.
pub(crate) struct Case {
    pub(crate) id: String,
    /// Computed as a solid, not as a plate.
    pub(crate) solid: bool,
    pub(crate) plan: Plan,
    pub(crate) stuff: Stuff,
    /// N.
    pub(crate) force: f64,
    /// Places and radii, m.
    pub(crate) patches: Vec<(Place, f64)>,
    /// Deflections under the force, m.
    pub(crate) w: Vec<f64>,
    /// Tones, Hz.
    pub(crate) f: Vec<f64>,
    /// Bending stress of the mean moment, Pa.
    pub(crate) sigma: Vec<f64>,
    pub(crate) tolerance: f64,
}

/// The rows of the file.
pub(crate) fn rows() -> Vec<Value> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../shared/reference/outlines.json");
    serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap()
}

/// The plates among them.
pub(crate) fn cases() -> Vec<Case> {
    let rows = rows();
    let plates = rows
        .iter()
        .filter(|row| row["inputs"]["regions"].is_object());
    plates.map(case).collect()
}

/// A number of a row, in its unit.
pub(crate) fn number(value: &Value) -> f64 {
    value["value"].as_f64().unwrap()
}

fn numbers(value: &Value) -> Vec<f64> {
    let all = value.as_array().unwrap();
    all.iter().map(|v| v.as_f64().unwrap()).collect()
}

/// A list of a row in SI; empty where the row has none.
fn list(value: &Value, unit: f64) -> Vec<f64> {
    if value.is_null() {
        return Vec::new();
    }
    numbers(&value["value"]).iter().map(|v| unit * v).collect()
}

fn slot(value: &Value) -> Shape {
    let mm: Vec<f64> = numbers(value).iter().map(|v| MM * v).collect();
    Shape::Slot {
        from: [mm[0], mm[1]],
        to: [mm[2], mm[3]],
        width: mm[4],
    }
}

fn region(value: &Value) -> Region {
    let mm = |key: &str| -> Vec<f64> { numbers(&value[key]).iter().map(|v| MM * v).collect() };
    let shape = if value["circle"].is_array() {
        let mm = mm("circle");
        Shape::circle([mm[0], mm[1]], mm[2])
    } else {
        let mm = mm("rect");
        Shape::rect([mm[0], mm[1]], [mm[2], mm[3]], mm[4])
    };
    Region {
        shape,
        thickness: MM * value["thickness"].as_f64().unwrap(),
        bed: value["bed_N_per_m3"].as_f64().unwrap(),
    }
}

fn case(row: &Value) -> Case {
    let (inputs, expected) = (&row["inputs"], &row["expected"]);
    let all = |key: &str| inputs[key]["value"].as_array().unwrap();
    let edge = match inputs["edge"]["value"].as_str().unwrap() {
        "clamped" => Held::Clamped,
        "supported" => Held::Supported,
        "free" => Held::Free,
        other => panic!("no such edge: {other}"),
    };
    let radius = MM * number(&inputs["patch_radius"]);
    let place = |p: &Value| {
        let mm = numbers(p);
        ([MM * mm[0], MM * mm[1]], radius)
    };
    Case {
        id: row["id"].as_str().unwrap().to_owned(),
        solid: row["theory"] == "solid3d",
        plan: Plan {
            regions: all("regions").iter().map(region).collect(),
            slots: all("slots").iter().map(slot).collect(),
            marks: Vec::new(),
            drawn: Vec::new(),
            heavy: Vec::new(),
            edge,
        },
        stuff: Stuff {
            e_mod: MPA * number(&inputs["E"]),
            nu: number(&inputs["nu"]),
            rho: number(&inputs["rho"]),
        },
        force: number(&inputs["F"]),
        patches: all("points").iter().map(place).collect(),
        w: list(&expected["w"], MM),
        f: list(&expected["f"], 1.0),
        sigma: list(&expected["sigma_mean"], MPA),
        tolerance: row["tolerance_rel"].as_f64().unwrap(),
    }
}
