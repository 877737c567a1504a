//! A reasoned no: which task has no way, what was tried, and the smallest single change that would make it possible.

use crate::answers::Answers;
use crate::cache::Cache;
use crate::conflict::conflict;
use crate::field::{Field, FieldId, Group, Input};
use crate::gain::{Gain, What};
use crate::job::Job;
use crate::judge::{Scene, judge};
use crate::limits::LimitId;
use crate::loads::LoadBook;
use crate::order::plans;
use crate::order_reports::order_report;
use crate::read::read;
use crate::series;
use crate::setting::{estimates, held};
use crate::shape::TaskShape;
use crate::solve::{Solved, Solver, WorkedPlan};
use crate::strategy::{Change, Refusal};
use crate::tally::Tally;
use crate::task::TaskKind;
use crate::trials::{Tried, changed, cheapest_of, released};
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

/// The search for what would make a job possible whose every plan gets stuck.
pub(crate) struct Mending {
    /// The plan that gets furthest, which tells most.
    furthest: Option<usize>,
    conflict: Vec<LimitId>,
    fields: Vec<FieldId>,
    released: Vec<What>,
    changes: Vec<(f64, Change)>,
    gains: Vec<Tried>,
}

impl Mending {
    /// Starts it; what is in conflict is found at once.
    pub(crate) fn new(job: &Job, all: &[WorkedPlan]) -> Mending {
        let done = |p: &WorkedPlan| p.ways().count();
        let numbered = all.iter().enumerate();
        let furthest = numbered.max_by_key(|(i, p)| (done(p), std::cmp::Reverse(*i)));
        let furthest = furthest.map(|(i, _)| i);
        let stuck = furthest.and_then(|i| all[i].stuck().map(|s| (&all[i], s)));
        Mending {
            furthest,
            conflict: stuck.map_or_else(Vec::new, |(p, s)| conflict(job, p, s)),
            fields: stuck.map_or_else(Vec::new, |_| changeable(job)),
            released: released(job),
            changes: Vec::new(),
            gains: Vec::new(),
        }
    }

    /// Pieces of work: each choice that can be let go, cutters to buy, each answer that can be changed.
    pub(crate) fn pieces(&self) -> usize {
        self.released.len() + 1 + self.fields.len()
    }

    /// One piece of work.
    pub(crate) fn advance(
        &mut self,
        job: &Job,
        all: &[WorkedPlan],
        piece: usize,
        books: (&mut Cache, &Tally),
    ) {
        if let Some(what) = self.released.get(piece) {
            self.gains.extend(without(job, what, books));
            return;
        }
        let piece = piece - self.released.len();
        if piece == 0 {
            self.gains.extend(series::that_frees(job, books));
            return;
        }
        let stuck = self
            .furthest
            .and_then(|i| all[i].stuck().map(|s| (&all[i], s)));
        if let (Some((worked, stuck)), Some(field)) = (stuck, self.fields.get(piece - 1)) {
            self.changes.extend(change(job, worked, stuck, *field));
        }
    }
}

/// What a job is possible with when a choice is let go.
fn without(job: &Job, what: &What, (cache, tally): (&mut Cache, &Tally)) -> Option<Tried> {
    let free = changed(job, what)?;
    let any = |_: &crate::order::Plan| true;
    let worked = cheapest_of(&free, Solver::default(), (any, (cache, tally)))?;
    let gain = Gain {
        what: what.clone(),
        time: thinwright_quantity::Duration::from_si(worked.time),
        saved_s: 0.0,
        cleared: Vec::new(),
        turned: None,
    };
    Some((-worked.rank(), gain))
}

/// The refusal as far as it is known.
pub(crate) fn refusal(job: &Job, all: &[WorkedPlan], mending: Option<&Mending>) -> Refusal {
    let furthest = mending.and_then(|m| m.furthest);
    let stuck = furthest.and_then(|i| all[i].stuck());
    let mut changes = mending.map_or_else(Vec::new, |m| m.changes.clone());
    // The smallest first: lengths by themselves, anything else by its share of a length that is easily changed.
    changes.sort_by(|a, b| a.0.total_cmp(&b.0));
    changes.truncate(MOST_CHANGES);
    let gains = mending.map_or(&[][..], |m| &m.gains);
    Refusal {
        task: stuck.map_or(TaskKind::Clearing, |s| s.task.kind),
        tried: stuck.map_or_else(Vec::new, |s| s.found.judged.failed.clone()),
        conflict: mending.map_or_else(Vec::new, |m| m.conflict.clone()),
        gains: gains.iter().map(|tried| tried.1.clone()).collect(),
        changes: changes.into_iter().map(|(_, change)| change).collect(),
        orders: all.iter().map(|plan| order_report(job, plan)).collect(),
    }
}

/// The answers of a job that a person may be able to change.
fn changeable(job: &Job) -> Vec<FieldId> {
    let rows: Vec<u8> = job
        .rack
        .iter()
        .filter(|c| !c.drill)
        .map(|c| c.row)
        .collect();
    let fields = CHANGEABLE.iter().flat_map(|field| -> Vec<FieldId> {
        if field.spec().group.repeats() {
            rows.iter()
                .map(|row| FieldId::in_row(*field, *row))
                .collect()
        } else {
            vec![(*field).into()]
        }
    });
    fields.collect()
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

/// A job with one size of a cutter changed, where nothing but the cutter depends on it.
fn with_cutter(job: &Job, field: FieldId, to: f64) -> Option<Job> {
    let mut job = job.clone();
    let cutter = job.rack.iter_mut().find(|c| Some(c.row) == field.row)?;
    match field.field {
        Field::CutterDiameter => cutter.d = to,
        Field::CutterFluteLength => cutter.flute_length = to,
        Field::CutterReach => cutter.reach = to,
        Field::CutterShank => cutter.shank = to,
        Field::CutterStickOut => cutter.stick_out = to,
        _ => return None,
    }
    let inside = cutter.flute_length.max(cutter.reach) <= cutter.stick_out;
    inside.then_some(job)
}

/// A job with one answer changed, read anew.
fn with_answer(job: &Job, field: FieldId, kind: Kind, to: f64) -> Option<Job> {
    let mut answers: Answers = job.tables.0.clone();
    let text = format(kind, to, answers.units, Rounding::Nearest);
    answers.set_text(field, text);
    read(&answers, &job.tables.1).ok()
}

/// Whether the stuck task has a way once one answer is changed.
fn frees(
    job: &Job,
    worked: &WorkedPlan,
    stuck: &Solved,
    (field, kind, to): (FieldId, Kind, f64),
) -> bool {
    let changed = if field.field.spec().group == Group::Cutters {
        with_cutter(job, field, to)
    } else {
        with_answer(job, field, kind, to)
    };
    let Some(changed) = changed else {
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
                    loads: &LoadBook::default(),
                    tally: &Tally::default(),
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
