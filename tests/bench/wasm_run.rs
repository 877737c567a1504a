//! The engine as WASM, in a browser.

use crate::measured::{Jobs, Measured};
use crate::site::Site;
use serde_json::json;

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
