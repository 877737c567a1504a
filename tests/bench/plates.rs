//! Plates as a native program: which mesh of the model problem is fine enough, what it costs, and the webs of the samples.

use crate::model::{Solved, once, solve};
use crate::webs::{FIGURES, webs};
use serde_json::Value;
use std::path::Path;
use std::time::Instant;
use thinwright_catalog::Catalog;
use thinwright_jobfile::samples;

/// Elements across a rib that are tried, coarse to fine.
const ACROSS: [f64; 12] = [
    1.0, 1.5, 2.0, 2.25, 2.5, 2.75, 3.0, 3.25, 3.5, 4.0, 5.0, 6.0,
];
/// How near the solid both ribs must come.
const NEAR: f64 = 0.03;
const SOLID: &str = "cS-t4";
const FORCE: f64 = 100.0;

/// Plates at one place: here or in a browser.
pub(crate) struct Plates {
    pub(crate) solved: Solved,
    /// Of each sample, see `webs`.
    pub(crate) webs: Vec<[f64; FIGURES]>,
}

/// The coarsest mesh from which on all finer ones are near, so that none is near by chance.
pub(crate) fn across(top: &Path) -> f64 {
    let solid = solid(top);
    let near = |across: &f64| {
        let off = off(&once(*across, || 0.0), &solid);
        off[1].abs() <= NEAR && off[2].abs() <= NEAR
    };
    let fine = ACROSS.iter().rev().take_while(|across| near(across)).last();
    *fine.expect("a fine mesh comes near the solid")
}

/// Measures.
pub(crate) fn run(across: f64) -> Plates {
    let start = Instant::now();
    let now = || start.elapsed().as_secs_f64() * 1.0e3;
    let catalog = Catalog::builtin();
    let of = |index| webs(index, &catalog, now);
    Plates {
        solved: solve(across, now),
        webs: (0..samples().len()).map(of).collect(),
    }
}

/// Deflections of the solid, m: boss, two ribs, open web, near the boss.
pub(crate) fn solid(top: &Path) -> Vec<f64> {
    let file = top.join("shared").join("reference").join("plates.json");
    let text = std::fs::read_to_string(file).expect("the reference is there");
    let rows: Vec<Value> = serde_json::from_str(&text).expect("rows");
    let row = rows.iter().find(|row| row["id"] == SOLID);
    let w = row.and_then(|row| row["expected"]["w"]["value"].as_array());
    let w = w.expect("deflections of the solid").iter();
    w.map(|w| w.as_f64().expect("a number") * 1.0e-3).collect()
}

/// How far what was solved is off the solid's deflections, as shares.
pub(crate) fn off(solved: &Solved, solid: &[f64]) -> Vec<f64> {
    let both = solved.told.iter().zip(solid);
    both.map(|(c, w)| FORCE * c / w - 1.0).collect()
}
