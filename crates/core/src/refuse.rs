//! A reasoned no: which task has no way, what was tried, and the smallest single change that would make it possible.

use crate::answers::Answers;
use crate::assemble::order_report;
use crate::field::{Field, FieldId, Input};
use crate::job::Job;
use crate::judge::{Scene, judge};
use crate::order::plans;
use crate::read::read;
use crate::search::{Solved, WorkedPlan};
use crate::setting::{estimates, held};
use crate::shape::TaskShape;
use crate::strategy::{Change, Refusal};
use crate::task::TaskKind;
use std::rc::Rc;
use thinwright_quantity::{Kind, Rounding, UnitSystem, format};

/// Answers that a person may be able to change, and that can free a task that is stuck.
const CHANGEABLE: &[Field] = &[
    Field::SlotLength,
    Field::SlotInner,
    Field::SlotWidth,
    Field::Web,
    Field::DepthA,
    Field::DepthB,
    Field::RecessCornerA,
    Field::RecessCornerB,
    Field::RecessDiameterA,
    Field::RecessDiameterB,
    Field::Boss,
    Field::Bore,
    Field::SlotTolerance,
    Field::WebTolerance,
    Field::Power,
    Field::CutterReach,
    Field::CutterFluteLength,
    Field::CutterStickOut,
    Field::CutterShank,
    Field::CutterDiameter,
];
/// Sizes are moved by these shares of themselves, until one frees the task.
const MOVES: [f64; 4] = [0.02, 0.1, 0.3, 0.8];
/// What the whole of an answer that is no length weighs against lengths, m.
const EASY_LENGTH: f64 = 0.01;
/// Halvings of the last move.
const HALVINGS: u32 = 5;
/// Changes that are told.
const MOST_CHANGES: usize = 3;

/// The refusal of a job whose every plan gets stuck.
pub(crate) fn refusal(job: &Job, all: &[WorkedPlan]) -> Refusal {
    // The plan that gets furthest tells most.
    let done = |p: &WorkedPlan| {
        p.setups
            .iter()
            .flatten()
            .filter(|s| s.way.is_some())
            .count()
    };
    let furthest = all
        .iter()
        .enumerate()
        .max_by_key(|(i, p)| (done(p), std::cmp::Reverse(*i)));
    let stuck = furthest.and_then(|(_, p)| p.stuck().map(|s| (p, s)));
    Refusal {
        task: stuck.map_or(TaskKind::Clearing, |(_, s)| s.task.kind),
        tried: stuck.map_or_else(Vec::new, |(_, s)| s.found.judged.failed.clone()),
        changes: stuck.map_or_else(Vec::new, |(p, s)| changes(job, p, s)),
        orders: all.iter().map(order_report).collect(),
    }
}

/// Single changes that free the stuck task, the smallest first: lengths by themselves, anything else by its share of
/// a length that is easily changed.
fn changes(job: &Job, worked: &WorkedPlan, stuck: &Solved) -> Vec<Change> {
    let rows = job.rack.iter().filter(|c| !c.drill).map(|c| c.row);
    let rows: Vec<u8> = rows.collect();
    let fields = CHANGEABLE.iter().flat_map(|field| -> Vec<FieldId> {
        if field.spec().group == crate::field::Group::Cutters {
            rows.iter()
                .map(|row| FieldId::in_row(*field, *row))
                .collect()
        } else {
            vec![(*field).into()]
        }
    });
    let mut found: Vec<(f64, Change)> = fields
        .filter_map(|field| change(job, worked, stuck, field))
        .collect();
    found.sort_by(|a, b| a.0.total_cmp(&b.0));
    found.truncate(MOST_CHANGES);
    found.into_iter().map(|(_, change)| change).collect()
}

fn change(job: &Job, worked: &WorkedPlan, stuck: &Solved, field: FieldId) -> Option<(f64, Change)> {
    let Input::Quantity(kind) = field.field.spec().input else {
        return None;
    };
    let answers = &job.tables.0;
    let text = answers.text(field);
    let from = thinwright_quantity::parse(kind, text, answers.units)
        .ok()
        .filter(|v| *v > 0.0)?;
    let frees = |to: f64| frees(job, worked, stuck, (field, kind, to));
    for share in MOVES {
        for sign in [-1.0, 1.0] {
            let far = from * (1.0 + sign * share);
            if !frees(far) {
                continue;
            }
            let (mut bad, mut good) = (from, far);
            for _ in 0..HALVINGS {
                let middle = 0.5 * (bad + good);
                if frees(middle) {
                    good = middle;
                } else {
                    bad = middle;
                }
            }
            // Told as it would be typed, away from what fails.
            let to = typed(
                good,
                kind,
                answers.units,
                if good < from {
                    Rounding::Down
                } else {
                    Rounding::Up
                },
            );
            let to = if frees(to) { to } else { good };
            let size = match kind {
                Kind::Length | Kind::ShortLength | Kind::Roughness => (to - from).abs(),
                _ => EASY_LENGTH * (to - from).abs() / from,
            };
            return Some((size, Change { field, from, to }));
        }
    }
    None
}

/// A size rounded to a tenth of a millimetre (or five thousandths of an inch), or to three digits.
fn typed(value: f64, kind: Kind, units: UnitSystem, rounding: Rounding) -> f64 {
    let step = match (kind, units) {
        (Kind::Length, UnitSystem::Metric) => 1.0e-4,
        (Kind::Length, UnitSystem::Inch) => 1.27e-4,
        _ => return value,
    };
    match rounding {
        Rounding::Down => libm::floor(value / step + 1.0e-6) * step,
        Rounding::Up | Rounding::Nearest => libm::ceil(value / step - 1.0e-6) * step,
    }
}

/// Whether the stuck task has a way once one answer is changed.
fn frees(
    job: &Job,
    worked: &WorkedPlan,
    stuck: &Solved,
    (field, kind, to): (FieldId, Kind, f64),
) -> bool {
    let mut answers: Answers = job.tables.0.clone();
    let text = format(kind, to, answers.units, Rounding::Nearest);
    answers.set_text(field, text);
    let Ok(changed) = read(&answers, &job.tables.1) else {
        return false;
    };
    let same = |p: &crate::order::Plan| {
        p.order == worked.plan.order
            && p.first == worked.plan.first
            && p.setups.len() == worked.plan.setups.len()
    };
    let Some(plan) = plans(&changed).into_iter().find(same) else {
        return false;
    };
    let mut state = changed.part.raw();
    for setup in &plan.setups {
        for task in &setup.tasks {
            if task.kind == stuck.task.kind && task.face == stuck.task.face {
                let shape = TaskShape::new(&changed, *task, &state);
                let estimates = estimates(&changed, setup);
                // The web's own answer does not free a task; what was known before serves.
                let scene = Scene {
                    job: &changed,
                    shape: &shape,
                    known: &stuck.found.known,
                    held: held(&changed, setup),
                    estimates: &estimates,
                    loads: &crate::loads::LoadBook::default(),
                    tally: &crate::tally::Tally::default(),
                };
                return !judge(&scene, false).ways.is_empty();
            }
            state = changed.part.after(&state, task);
        }
    }
    false
}

/// The answers and tables that a job was read from, kept to try changes.
pub(crate) type Tables = Rc<(Answers, thinwright_catalog::Catalog)>;
