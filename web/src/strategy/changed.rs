//! Two strategies compared, in words: which answer changed, and what it did to web, limits, order, steps and time.

use crate::state::{Shown, is_pin};
use crate::text::{self, now_and_before};
use std::collections::BTreeSet;
use thinwright_catalog::Catalog;
use thinwright_core::field::Input;
use thinwright_core::limits::{LimitId, Severity};
use thinwright_core::strategy::{OrderVerdict, Setup, Step, Strategy, WebReport};
use thinwright_core::task::{Face, TaskKind};
use thinwright_core::{FieldId, Outcome};
use thinwright_quantity::{Stiffness, UnitSystem, parse};
use thinwright_words::{Speaker, band, face, limit_name, task_name, utilisation};

/// A line: what, and how it is now and was before.
type Line = (String, String);

/// The two sides that are compared.
struct Two<'a> {
    before: Speaker<'a>,
    now: Speaker<'a>,
}

/// What changed, the cause first; nothing where nothing did.
pub(super) fn changed(
    catalog: &Catalog,
    before: &Shown,
    now: &Shown,
    units: UnitSystem,
) -> Vec<Line> {
    let two = Two {
        before: Speaker::new(units, catalog, &before.answers),
        now: Speaker::new(units, catalog, &now.answers),
    };
    let mut lines = two.answers();
    match (&*before.outcome, &*now.outcome) {
        (Outcome::Feasible(a), Outcome::Feasible(b)) => {
            lines.extend(two.web(a, b));
            lines.extend(two.limits(a, b));
            lines.extend(two.order(a, b));
            lines.extend(two.holds(a, b));
            lines.extend(two.steps(a, b));
            let time = [two.now.time(b.time), two.before.time(a.time)];
            lines.extend(differ(text::time(), time));
        }
        (Outcome::Feasible(_), Outcome::Refused(_)) => {
            lines.push((text::verdict().into(), text::now_refused().into()));
        }
        (Outcome::Refused(_), Outcome::Feasible(_)) => {
            lines.push((text::verdict().into(), text::now_feasible().into()));
        }
        (Outcome::Refused(_), Outcome::Refused(_)) => {}
    }
    lines
}

/// A line where the two texts differ: now, then before.
fn differ(what: &str, [now, before]: [String; 2]) -> Option<Line> {
    (now != before).then(|| (what.to_owned(), now_and_before(&now, &before)))
}

fn steps(strategy: &Strategy) -> impl Iterator<Item = (&Setup, &Step)> {
    strategy
        .setups
        .iter()
        .flat_map(|setup| setup.steps.iter().map(move |step| (setup, step)))
}

/// The web at its softest over all cuts.
fn softest(strategy: &Strategy) -> Option<&WebReport> {
    let webs = steps(strategy).filter_map(|(_, step)| step.web.as_ref());
    webs.min_by(|a, b| a.stiffness.si().total_cmp(&b.stiffness.si()))
}

/// The same in the best order that neither backs the web nor bolts the boss, if one was worked out to its end.
fn softest_alone(strategy: &Strategy) -> Option<Stiffness> {
    let alone = strategy
        .orders
        .iter()
        .filter(|o| o.backing == "none" && !o.boss_bolted);
    alone
        .filter_map(|o| match o.verdict {
            OrderVerdict::Works { softest_web, .. } => softest_web,
            OrderVerdict::Fails { .. } => None,
        })
        .next()
}

/// The greatest utilisation of a limit over all steps.
fn worst(strategy: &Strategy, limit: LimitId) -> Option<f64> {
    let of_limit = steps(strategy)
        .flat_map(|(_, s)| &s.findings)
        .filter(|f| f.limit == limit);
    of_limit
        .map(thinwright_core::strategy::Finding::utilisation)
        .max_by(f64::total_cmp)
}

impl Two<'_> {
    fn answers(&self) -> Vec<Line> {
        let (a, b) = (self.before.answers, self.now.answers);
        let places: BTreeSet<FieldId> = a.iter().chain(b.iter()).map(|(id, _)| *id).collect();
        let line = |id: FieldId| {
            differ(
                &self.now.place(id),
                [said(&self.now, id), said(&self.before, id)],
            )
        };
        // A whole unit system changes every text and no answer.
        if a.units == b.units {
            places.into_iter().filter_map(line).collect()
        } else {
            Vec::new()
        }
    }

    fn web(&self, a: &Strategy, b: &Strategy) -> Vec<Line> {
        let alone = softest_alone(a).zip(softest_alone(b));
        let (Some(a), Some(b)) = (softest(a), softest(b)) else {
            return Vec::new();
        };
        let value = |w: &WebReport| self.now.stiffness(w.stiffness);
        let alone = alone.map(|(a, b)| [b, a].map(|k| self.now.stiffness(k)));
        [
            differ(text::web_stiffness(), [value(b), value(a)]),
            alone.and_then(|both| differ(text::web_stiffness_alone(), both)),
        ]
        .into_iter()
        .flatten()
        .collect()
    }

    fn limits(&self, a: &Strategy, b: &Strategy) -> Vec<Line> {
        let holds = self.now.catalog.numbers.utilisation_holds;
        let moved = |limit: LimitId| {
            let (ua, ub) = (worst(a, limit)?, worst(b, limit)?);
            let other =
                band(ua, holds) != band(ub, holds) && limit.spec().severity != Severity::Listen;
            let said = |u: f64| format!("{} ({})", utilisation(u), band(u, holds).word());
            other
                .then(|| differ(limit_name(limit), [said(ub), said(ua)]))
                .flatten()
        };
        LimitId::all().filter_map(moved).collect()
    }

    fn order(&self, a: &Strategy, b: &Strategy) -> Option<Line> {
        let (a, b) = (a.orders.first()?, b.orders.first()?);
        differ(text::order(), [self.now.order(b), self.before.order(a)])
    }

    /// Only where the two have the same number of setups; else the order says it.
    fn holds(&self, a: &Strategy, b: &Strategy) -> Vec<Line> {
        if a.setups.len() != b.setups.len() {
            return Vec::new();
        }
        let pairs = a.setups.iter().zip(&b.setups).enumerate();
        let line = |(at, (a, b)): (usize, (&Setup, &Setup))| {
            differ(
                &text::setup(at + 1),
                [self.now.setup(b), self.before.setup(a)],
            )
        };
        pairs.filter_map(line).collect()
    }

    fn steps(&self, a: &Strategy, b: &Strategy) -> Vec<Line> {
        let keys = |s: &Strategy| {
            steps(s)
                .map(|(setup, step)| (setup.face_up, step.task))
                .collect::<BTreeSet<_>>()
        };
        let (ka, kb) = (keys(a), keys(b));
        let find = |s: &Strategy, key: (Face, TaskKind), speaker: &Speaker<'_>| {
            let found = steps(s).find(|(setup, step)| (setup.face_up, step.task) == key);
            found.map_or_else(Vec::new, |(_, step)| choices(speaker, step))
        };
        let line = |key: &(Face, TaskKind)| {
            let what = format!("{}, {}", task_name(key.1), face(key.0));
            let (now, before) = (find(b, *key, &self.now), find(a, *key, &self.before));
            let only = |these: &[String], those: &[String]| {
                let other = these
                    .iter()
                    .enumerate()
                    .filter(|(at, text)| those.get(*at) != Some(*text));
                let other: Vec<&str> = other.map(|(_, text)| text.as_str()).collect();
                if these.is_empty() {
                    text::no_such_step().to_owned()
                } else {
                    other.join(", ")
                }
            };
            differ(&what, [only(&now, &before), only(&before, &now)])
        };
        ka.union(&kb).filter_map(line).collect()
    }
}

/// An answer as people read it.
pub(crate) fn said(speaker: &Speaker<'_>, id: FieldId) -> String {
    let answers = speaker.answers;
    match (answers.text(id).trim(), id.field.spec().input) {
        ("", _) if is_pin(id) => text::searched().to_owned(),
        _ if is_pin(id) => speaker.kept_value(id),
        ("", _) => text::left_to_table().to_owned(),
        (typed, Input::Quantity(kind)) => parse(kind, typed, answers.units)
            .map_or_else(|_| typed.to_owned(), |si| speaker.value(kind, si)),
        (typed, _) => speaker.answer(id.field, typed).to_owned(),
    }
}

/// What was chosen for a step, in the same order for every step.
fn choices(speaker: &Speaker<'_>, step: &Step) -> Vec<String> {
    vec![
        speaker.cutter(step.cutter),
        thinwright_words::method_name(step.method).to_owned(),
        speaker.spindle_speed(step.n),
        speaker.feed(step.vf),
        text::stepover_of(&speaker.length(step.ae)),
        text::step_down_of(&speaker.length(step.ap)),
    ]
}

#[cfg(test)]
mod tests;
