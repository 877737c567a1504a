//! The same problems by general-purpose programs in Python, where there is one; else what was measured before.

use serde_json::Value;
use std::path::Path;
use std::process::Command;

/// What a peer needs.
pub(crate) struct Peer {
    /// What it wrote: `tests/peers/timing.json`, `stability-timing.json`.
    pub(crate) told: Value,
    /// Whether it ran just now.
    pub(crate) now: bool,
}

/// Peers of the plates.
pub(crate) const PLATES: (&str, &str) = ("plates.py", "timing.json");
/// Peers of stability.
pub(crate) const STABILITY: (&str, &str) = ("stability.py", "stability-timing.json");

/// Lets peers run: their script, and the file that it writes.
pub(crate) fn run(top: &Path, (script, times): (&str, &str)) -> Peer {
    let folder = top.join("tests").join("peers");
    let mut python = Command::new("python3");
    let done = python.arg(folder.join(script)).arg("timing").output();
    let file = std::fs::read_to_string(folder.join(times));
    Peer {
        told: serde_json::from_str(&file.expect("times of the peers")).expect("JSON"),
        now: done.is_ok_and(|done| done.status.success()),
    }
}

impl Peer {
    /// The one whose plates are shear-flexible, as ours are.
    pub(crate) fn mindlin(&self) -> &Value {
        &self.told["peers"][0]
    }

    /// Its time of a stage, ms.
    pub(crate) fn ms(&self, stage: &str) -> f64 {
        let seconds = self.mindlin()["seconds_least"][stage].as_f64();
        seconds.expect("a time") * 1.0e3
    }
}
