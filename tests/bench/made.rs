//! What a tap and a push change: samples as they are, with tones, with a push test, with both.

use crate::trial::job;
use std::time::Instant;
use thinwright_catalog::Catalog;
use thinwright_core::limits::LimitId;
use thinwright_core::strategy::Strategy;
use thinwright_core::task::TaskKind;
use thinwright_core::{Answers, Cache, Field, FieldId, Known, Outcome, Progress, Search, read};

/// Samples looked at, the first ones.
pub(crate) const SAMPLES: usize = 3;
/// What was done at the machine before the answers were given.
pub(crate) const MADE: [(&str, bool, bool); 4] = [
    ("as it is", false, false),
    ("tap", true, false),
    ("push", false, true),
    ("both", true, true),
];
/// Tone of the first cutter, and of all others.
const TONES: [&str; 2] = ["1850 Hz", "2400 Hz"];
/// A push test along X and Y.
const PUSH: [(Field, &str); 7] = [
    (Field::PushForce, "50 N"),
    (Field::PushArm, "25 mm"),
    (Field::PushRod, "8 mm"),
    (Field::PushXUp, "0.035 mm"),
    (Field::PushXDown, "0.03 mm"),
    (Field::PushYUp, "0.03 mm"),
    (Field::PushYDown, "0.026 mm"),
];
/// Runs of which the quickest counts.
const RUNS: usize = 3;

/// A sample with some tests made.
pub(crate) struct Made {
    /// Until the strategy was final, and until all was told, ms.
    pub(crate) ms: [f64; 2],
    /// Time of the strategy, min, or the task that is refused, and the limits that stand in its way.
    pub(crate) minutes: Result<f64, (TaskKind, Vec<LimitId>)>,
    pub(crate) steps: Vec<Cutting>,
}

/// Numbers of a step.
#[derive(Clone, Copy, PartialEq)]
pub(crate) struct Cutting {
    pub(crate) task: TaskKind,
    /// Number of the cutter, from 1.
    pub(crate) cutter: u8,
    /// Spindle speed, 1/min, and step-down, mm.
    pub(crate) n: f64,
    pub(crate) ap: f64,
}

/// Each sample with each of [`MADE`].
pub(crate) fn run() -> Vec<[Made; MADE.len()]> {
    let catalog = Catalog::builtin();
    let of = |sample| MADE.map(|(_, tap, push)| made(sample, (tap, push), &catalog));
    (0..SAMPLES).map(of).collect()
}

fn made(sample: usize, (tap, push): (bool, bool), catalog: &Catalog) -> Made {
    let (name, mut answers) = job(sample);
    if tap {
        tapped(&mut answers);
    }
    if push {
        for (field, text) in PUSH {
            answers.set(field, text, Known::Measured);
        }
    }
    let job = read(&answers, catalog).unwrap_or_else(|p| panic!("{name}: {p:?}"));
    let (mut ms, mut last) = ([f64::INFINITY; 2], None);
    for _ in 0..RUNS {
        let start = Instant::now();
        let mut search = Search::new(job.clone(), Cache::default());
        let outcome = search.decide();
        let decided = start.elapsed();
        while !matches!(search.advance(u64::MAX), Progress::Done(_)) {}
        for (least, took) in ms.iter_mut().zip([decided, start.elapsed()]) {
            *least = least.min(took.as_secs_f64() * 1.0e3);
        }
        last = Some(outcome);
    }
    let (minutes, steps) = match last.expect("an outcome") {
        Outcome::Feasible(strategy) => (Ok(strategy.time.to_minutes()), cuttings(&strategy)),
        Outcome::Refused(refusal) => (Err((refusal.task, refusal.conflict)), Vec::new()),
    };
    Made { ms, minutes, steps }
}

/// Tones of all end mills.
fn tapped(answers: &mut Answers) {
    for row in 0..answers.rack_rows() {
        if answers.text(FieldId::in_row(Field::CutterKind, row)) != "drill" {
            let tone = TONES[usize::from(row > 0)];
            let place = FieldId::in_row(Field::CutterTone, row);
            answers.set(place, tone, Known::Measured);
        }
    }
}

fn cuttings(strategy: &Strategy) -> Vec<Cutting> {
    let steps = strategy.setups.iter().flat_map(|setup| &setup.steps);
    let cutting = steps.map(|step| Cutting {
        task: step.task,
        cutter: step.cutter + 1,
        n: step.n.to_rpm(),
        ap: step.ap.to_mm(),
    });
    cutting.collect()
}
