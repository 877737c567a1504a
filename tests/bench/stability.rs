//! What stability costs: curves natively and by the peers, the chart of a step natively and as WASM, and what tests at the
//! machine change.

use crate::chart::{Chart, chart};
use crate::curves::{self, Curve};
use crate::made::{self, MADE, Made};
use crate::peer::{self, Peer};
use crate::site::visit;
use crate::{load, wasm_run};
use serde_json::Value;
use std::path::{Path, PathBuf};
use std::time::Instant;
use thinwright_catalog::Catalog;

/// All that was measured.
pub(crate) struct Stability {
    pub(crate) curves: Vec<Curve>,
    pub(crate) peer: Peer,
    pub(crate) native: Chart,
    pub(crate) wasm: Chart,
    pub(crate) made: Vec<[Made; MADE.len()]>,
    /// Load before anything, after the curves, when all was through, if the system tells.
    pub(crate) load: [Option<String>; 3],
}

/// One after the other.
pub(crate) async fn run(top: &Path, folder: PathBuf) -> Stability {
    println!("curves of limits by the peers");
    let peer = peer::run(top, peer::STABILITY);
    println!("curves of limits natively");
    let before = load();
    let most = |width: &str, modes| {
        let row = peer_rows(&peer, width, modes).next();
        let most = row.and_then(|row| row["most_m"].as_f64());
        most.expect("a peer's depth")
    };
    let curves = curves::run(most);
    let between = load();
    println!("a chart natively and as WASM");
    let start = Instant::now();
    let native = chart(&Catalog::builtin(), || {
        start.elapsed().as_secs_f64() * 1.0e3
    });
    let wasm = visit(folder, 1, wasm_run::chart).await;
    let bits = |chart: &Chart| -> Vec<u64> { chart.limits.iter().map(|l| l.to_bits()).collect() };
    assert!(!native.limits.is_empty(), "a chart");
    assert_eq!(bits(&native), bits(&wasm), "natively and as WASM");
    println!("samples with tests made at the machine");
    let made = made::run();
    Stability {
        curves,
        peer,
        native,
        wasm,
        made,
        load: [before, between, load()],
    }
}

/// What the peers' ways of working out a curve took.
pub(crate) fn peer_rows<'a>(
    peer: &'a Peer,
    width: &'a str,
    modes: usize,
) -> impl Iterator<Item = &'a Value> {
    let with = ["one mode", "two modes"][modes - 1];
    let rows = peer.told["rows"].as_array().into_iter().flatten();
    rows.filter(move |row| {
        let way = row["way"].as_str().unwrap_or_default();
        row["width"] == width && way.ends_with(with)
    })
}
