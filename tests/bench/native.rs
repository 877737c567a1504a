//! The engine as a native program.

use crate::measured::{Jobs, Measured};
use crate::trial::{Stage, Trial, job};
use std::time::Instant;
use thinwright_catalog::Catalog;

/// Works out so many jobs, the samples first.
pub(crate) fn run(count: usize) -> Jobs {
    let catalog = Catalog::builtin();
    let jobs = (0..count).map(|index| measure(index, &catalog)).collect();
    Jobs {
        jobs,
        memory: most_memory(),
    }
}

fn measure(index: usize, catalog: &Catalog) -> Measured {
    let (name, answers) = job(index);
    let start = Instant::now();
    let ms = || start.elapsed().as_secs_f64() * 1.0e3;
    let mut trial = Trial::start(&answers, catalog);
    let (mut checked, mut stage) = (None, Stage::Working);
    while stage < Stage::Done {
        let from = ms();
        stage = trial.turn();
        trial.took(ms() - from);
        if stage >= Stage::Checked {
            checked.get_or_insert_with(ms);
        }
    }
    let done = ms();
    Measured {
        name,
        checked: checked.unwrap_or(done),
        done,
        #[allow(clippy::cast_precision_loss, reason = "far below 2^53")]
        checks: trial.checks() as f64,
        feasible: trial.feasible(),
    }
}

/// The most memory that this process ever held, bytes; 0 where the system does not tell it.
fn most_memory() -> f64 {
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let line = status.lines().find_map(|l| l.strip_prefix("VmHWM:"));
    let kib = line.and_then(|l| l.trim().strip_suffix(" kB")?.parse::<f64>().ok());
    kib.unwrap_or_default() * 1024.0
}
