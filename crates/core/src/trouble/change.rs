//! The first change against a cause, with its numbers worked out anew and what it does to every limit.

use super::evaluate::{Came, evaluate};
use super::moves::{Move, Variation};
use super::stand::Stand;
use crate::limits::{LimitId, Severity};
use crate::pin::Place;
use crate::strategy::{Measure, Step, Strategy};
use crate::{Field, FieldId};
use thinwright_quantity::{Duration, Length, Speed, SpindleSpeed};

/// Utilisations that differ by less are told as one.
const SAME: f64 = 0.005;

/// A value that an answer takes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Value {
    /// A quantity, in the SI unit of its kind.
    Si(f64),
    /// A word of the field's list.
    Key(&'static str),
    /// A whole number.
    Count(u32),
}

/// An answer to be given for a change.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Take {
    /// The field.
    pub field: FieldId,
    /// What it takes.
    pub value: Value,
}

/// The numbers of a step.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Numbers {
    /// Spindle speed.
    pub n: SpindleSpeed,
    /// Feed.
    pub vf: Speed,
    /// Feed per tooth.
    pub fz: Length,
    /// Stepover.
    pub ae: Length,
    /// Step-down.
    pub ap: Length,
    /// Levels.
    pub levels: u32,
    /// Stick-out of the cutter.
    pub stick_out: Length,
    /// Time of the step.
    pub time: Duration,
}

/// How a limit moves with a change: at the bad ends of what is not known.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shift {
    /// The limit.
    pub limit: LimitId,
    /// Utilisation before.
    pub before: f64,
    /// Utilisation after.
    pub after: f64,
    /// What is asked for and what is allowed, after; none where the limit does not apply any more.
    pub measure: Option<Measure>,
}

impl Shift {
    /// Whether it is broken by the change.
    pub fn breaks(&self) -> bool {
        self.after > 1.0 && (self.before <= 1.0 || self.after > self.before + SAME)
    }

    /// Whether that refuses the change.
    pub fn refuses(&self) -> bool {
        self.breaks() && self.limit.spec().severity <= Severity::Quality
    }
}

/// A change that was worked out.
#[derive(Clone, Debug, PartialEq)]
pub struct Change {
    /// What is changed.
    pub step: Move,
    /// The numbers before and after.
    pub from: Numbers,
    /// The same after.
    pub to: Numbers,
    /// The limit behind the cause, and how it moves; none where no limit watches the cause.
    pub own: Option<Shift>,
    /// Every other limit that moves and comes near, the nearest after first.
    pub others: Vec<Shift>,
    /// What the person reads afterwards: the field for it, and what is aimed at, SI.
    pub aim: Option<(Field, f64)>,
    /// Answers to be given to take the change over; empty where nothing but hands change anything.
    pub take: Vec<Take>,
}

impl Change {
    /// Whether no limit that refuses is broken by it.
    pub fn holds(&self) -> bool {
        !self.others.iter().chain(&self.own).any(Shift::refuses)
    }

    /// What its limit comes to.
    pub(super) fn reached(&self) -> f64 {
        self.own.map_or(0.0, |own| own.after)
    }
}

/// A variation worked out, beside what stands there before.
pub(super) fn change(
    step: Move,
    stand: &Stand,
    (before, limit): (&Came, Option<LimitId>),
    (variation, told, strategy): (&Variation, &Step, &Strategy),
) -> Change {
    let after = evaluate(&variation.stand, &variation.cutter, &variation.choice);
    let shift = |limit: LimitId| Shift {
        limit,
        before: before.of(limit),
        after: after.of(limit),
        measure: after
            .limits
            .iter()
            .find(|(id, _)| *id == limit)
            .map(|(_, m)| *m),
    };
    let near = stand.job.numbers.utilisation_holds;
    let moves = |s: &Shift| (s.after - s.before).abs() > SAME && s.after.max(s.before) > near;
    let all = LimitId::all().filter(|id| Some(*id) != limit).map(shift);
    let mut others: Vec<Shift> = all.filter(moves).collect();
    others.sort_by(|a, b| b.after.total_cmp(&a.after));
    Change {
        step,
        from: numbers(&stand.choice, stand.cutter.stick_out, before.time),
        to: numbers(&variation.choice, variation.cutter.stick_out, after.time),
        own: limit.map(shift),
        others,
        aim: variation.aim,
        take: take(variation, told, strategy),
    }
}

fn numbers(choice: &crate::choice::Choice, stick_out: f64, time: f64) -> Numbers {
    Numbers {
        n: SpindleSpeed::from_si(choice.n),
        vf: Speed::from_si(choice.vf),
        fz: Length::from_si(choice.fz),
        ae: Length::from_si(choice.ae),
        ap: Length::from_si(choice.ap),
        levels: choice.levels,
        stick_out: Length::from_si(stick_out),
        time: Duration::from_si(time),
    }
}

/// Answers that take a change over: this step is kept as it was worked out, so that one thing changes and not all.
fn take(variation: &Variation, told: &Step, strategy: &Strategy) -> Vec<Take> {
    if variation.aim.is_some() {
        return Vec::new();
    }
    let mut setups = strategy.setups.iter();
    let face = setups.find(|s| s.steps.iter().any(|step| step.number == told.number));
    let Some(face) = face.map(|s| s.face_up) else {
        return Vec::new();
    };
    let row = Place::at(told.task, face).row();
    let pin = |field: Field, value: Value| Take {
        field: FieldId::in_row(field, row),
        value,
    };
    let choice = &variation.choice;
    let mut take = vec![
        pin(Field::PinCutter, Value::Count(u32::from(told.cutter) + 1)),
        pin(Field::PinMethod, Value::Key(told.method.key())),
        pin(Field::PinSpeed, Value::Si(choice.n)),
        pin(Field::PinFeed, Value::Si(choice.vf)),
        pin(Field::PinStepover, Value::Si(choice.ae)),
        pin(Field::PinStepDown, Value::Si(choice.ap)),
    ];
    take.extend(variation.take);
    take
}
