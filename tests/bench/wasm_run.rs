//! The engine as WASM, in a browser.

use crate::chart::{self, Chart};
use crate::measured::{Jobs, Measured};
use crate::model::{STAGES, Solved, TOLD};
use crate::plates::Plates;
use crate::site::Site;
use serde_json::{Value, json};
use thinwright_jobfile::samples;

/// Works out so many jobs, the samples first.
pub(crate) async fn run(site: Site, count: usize) -> Jobs {
    site.open().await;
    let mut jobs = Vec::new();
    let mut memory = 0.0;
    for index in 0..count {
        let told = site
            .wait_for(include_str!("wasm.js"), vec![json!(index)])
            .await;
        let figure = |key: &str| {
            let figure = told[key].as_f64();
            figure.unwrap_or_else(|| panic!("job {index}: no {key} in {told}"))
        };
        memory = figure("memory").max(memory);
        jobs.push(Measured {
            name: told["name"].as_str().unwrap_or_default().to_owned(),
            checked: figure("checked"),
            done: figure("done"),
            checks: figure("checks"),
            feasible: told["feasible"] == json!(true),
        });
    }
    Jobs { jobs, memory }
}

/// The model problem on a mesh with so many elements across a rib, and the webs of the samples.
pub(crate) async fn plates(site: Site, across: f64) -> Plates {
    site.open().await;
    let count = samples().len();
    let arguments = vec![json!(across), json!(count)];
    let told = site.wait_for(include_str!("plates.js"), arguments).await;
    let solved = figures::<{ STAGES + 2 + TOLD }>(&told["solved"]);
    let (ms, rest) = solved.split_at(STAGES);
    Plates {
        solved: Solved {
            ms: ms.try_into().expect("times"),
            first: rest[0],
            nodes: rest[1],
            told: rest[2..].try_into().expect("what is told"),
        },
        webs: (0..count).map(|at| figures(&told["webs"][at])).collect(),
    }
}

/// The chart of a step of the first sample.
pub(crate) async fn chart(site: Site) -> Chart {
    site.open().await;
    let told = site
        .wait_for(include_str!("stability.js"), Vec::new())
        .await;
    let list = told
        .as_array()
        .unwrap_or_else(|| panic!("no chart: {told}"));
    let mut figures = list.iter().filter_map(Value::as_f64);
    let mut next = || figures.next().expect("a figure");
    Chart {
        step: next(),
        modes: next(),
        measured: next(),
        ms: figures.by_ref().take(chart::RUNS).collect(),
        limits: figures.collect(),
    }
}

/// Numbers out of a list.
fn figures<const N: usize>(list: &Value) -> [f64; N] {
    std::array::from_fn(|at| {
        let figure = list[at].as_f64();
        figure.unwrap_or_else(|| panic!("no figure {at} in {list}"))
    })
}
