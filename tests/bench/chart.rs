//! The chart of a step of the first sample once a tone is typed. The same code natively and as WASM; the clock is the caller's.

use crate::trial::job;
use thinwright_catalog::Catalog;
use thinwright_core::stability::{Lobes, StabilityReport, lobes};
use thinwright_core::{Answers, Field, FieldId, Known, Outcome, decide, read};

/// Runs of which the median counts.
pub(crate) const RUNS: usize = 20;
/// The tone of the first cutter.
const TONE: &str = "1850 Hz";
/// What a chart has where nothing sings.
const QUIET: f64 = -1.0;

/// A chart, and how long it took.
pub(crate) struct Chart {
    /// The step's number on the sheet.
    pub(crate) step: f64,
    /// What vibrates under it.
    pub(crate) modes: f64,
    /// Whether the stiffness binds as measured, 1 or 0: a job that is refused then is looked at with it estimated.
    pub(crate) measured: f64,
    /// Each run, ms, in the order in which they ran.
    pub(crate) ms: Vec<f64>,
    /// The first depth that sings at each speed, m; -1 where none does.
    pub(crate) limits: Vec<f64>,
}

/// Decides, and draws the first chart that there is several times.
pub(crate) fn chart(catalog: &Catalog, now: impl Fn() -> f64) -> Chart {
    let (found, measured) = match report(catalog, Known::Measured) {
        Some(found) => (Some(found), 1.0),
        None => (report(catalog, Known::Estimated), 0.0),
    };
    let (number, report) = found.expect("a step that may sing, its tone known");
    let (mut ms, mut drawn) = (Vec::new(), None);
    for _ in 0..RUNS {
        let from = now();
        drawn = lobes(&report);
        ms.push(now() - from);
    }
    let limits = drawn.map_or(Vec::new(), |chart: Lobes| chart.limit);
    #[allow(clippy::cast_precision_loss, reason = "a small count")]
    Chart {
        step: f64::from(number),
        modes: report.modes.len() as f64,
        measured,
        ms,
        limits: limits
            .iter()
            .map(|limit| limit.map_or(QUIET, |depth| depth.si()))
            .collect(),
    }
}

/// The first step of which there is a chart, and its number.
fn report(catalog: &Catalog, stiffness: Known) -> Option<(u32, StabilityReport)> {
    let mut answers: Answers = job(0).1;
    answers.set(FieldId::in_row(Field::CutterTone, 0), TONE, Known::Measured);
    let text = answers.text(Field::Stiffness.into()).to_owned();
    answers.set(Field::Stiffness, text, stiffness);
    let job = read(&answers, catalog).ok()?;
    let Outcome::Feasible(strategy) = decide(&job) else {
        return None;
    };
    let mut steps = strategy.setups.iter().flat_map(|setup| &setup.steps);
    steps.find_map(|step| {
        let report = step.stability.as_ref()?;
        lobes(report).map(|_| (step.number, report.clone()))
    })
}
