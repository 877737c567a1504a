//! The engine alone as WASM, for the bench: a page drives it turn by turn and looks at its own clock.
#![allow(
    unreachable_pub,
    clippy::new_without_default,
    clippy::cast_precision_loss,
    reason = "what the glue calls must be public, by its own name; a script's numbers are floats"
)]

mod chart;
mod model;
#[path = "../plates/mod.rs"]
#[allow(clippy::unwrap_used, reason = "shared with the tests")]
mod outlines;
mod trial;
mod webs;

use thinwright_catalog::Catalog;
use trial::{Trial, job};
use wasm_bindgen::prelude::wasm_bindgen;

#[wasm_bindgen]
extern "C" {
    /// The page's clock, ms.
    #[wasm_bindgen(js_namespace = performance)]
    fn now() -> f64;
}

/// The tables, read.
#[wasm_bindgen]
pub struct Bench(Catalog);

/// A job under way.
#[wasm_bindgen]
pub struct Work(Trial);

#[wasm_bindgen]
impl Bench {
    /// Reads the tables.
    #[wasm_bindgen(constructor)]
    pub fn new() -> Bench {
        Bench(Catalog::builtin())
    }

    /// Draws a job; what that takes is nobody's time.
    pub fn draw(&self, index: usize) -> Drawn {
        let (name, answers) = job(index);
        Drawn { name, answers }
    }

    /// Reads a drawn job and starts its search.
    pub fn start(&self, drawn: &Drawn) -> Work {
        Work(Trial::start(&drawn.answers, &self.0))
    }

    /// What the webs of a sample cost.
    pub fn webs(&self, index: usize) -> Vec<f64> {
        webs::webs(index, &self.0, now).to_vec()
    }

    /// The chart of a step of the first sample: its number, modes, how its stiffness is known, times, limits.
    pub fn chart(&self) -> Vec<f64> {
        let chart = chart::chart(&self.0, now);
        let all = [chart.step, chart.modes, chart.measured].into_iter();
        all.chain(chart.ms).chain(chart.limits).collect()
    }

    /// The model problem: times, the first run's time, nodes, what is told.
    pub fn solve(&self, across: f64) -> Vec<f64> {
        let solved = model::solve(across, now);
        let sizes = [solved.first, solved.nodes];
        let all = solved.ms.into_iter().chain(sizes).chain(solved.told);
        all.collect()
    }
}

/// A job's name and answers.
#[wasm_bindgen]
pub struct Drawn {
    name: String,
    answers: thinwright_core::Answers,
}

#[wasm_bindgen]
impl Drawn {
    /// Its name.
    pub fn name(&self) -> String {
        self.name.clone()
    }
}

#[wasm_bindgen]
impl Work {
    /// One turn; gives the stage as a number: 0 working, 1 checked, 2 done.
    pub fn turn(&mut self) -> u8 {
        self.0.turn() as u8
    }

    /// How long the last turn took, ms.
    pub fn took(&mut self, ms: f64) {
        self.0.took(ms);
    }

    /// Whether there is a strategy.
    pub fn feasible(&self) -> bool {
        self.0.feasible()
    }

    /// Checks of candidates so far.
    pub fn checks(&self) -> f64 {
        self.0.checks() as f64
    }
}

fn main() {}
