//! What the person keeps, in words: which choice, what of a step, and what it costs.

use crate::Speaker;
use crate::language::tr;
use crate::say;
use crate::text::{list, lower_first};
use thinwright_core::field::{Field, FieldId, Group, Input};
use thinwright_core::gain::{Gain, What};
use thinwright_core::pin::Place;
use thinwright_core::strategy::Outcome;
use thinwright_quantity::parse;

/// Beside a choice that no step takes up as things stand.
pub fn waits() -> &'static str {
    tr("waits: no such step in this strategy")
}

impl Speaker<'_> {
    /// What is kept at a place, as people read it: the typed text where it cannot be read.
    pub fn kept_value(&self, id: FieldId) -> String {
        let typed = self.answers.text(id).trim();
        let cutter = (id.field == Field::PinCutter)
            .then(|| typed.parse::<u8>().ok()?.checked_sub(1))
            .flatten();
        match (cutter, id.field.spec().input) {
            (Some(row), _) => self.cutter(row),
            (None, Input::Quantity(kind)) => parse(kind, typed, self.answers.units)
                .map_or_else(|_| typed.to_owned(), |si| self.value(kind, si)),
            (None, _) => self.answer(id.field, typed).to_owned(),
        }
    }

    /// Place and value of a choice that is kept: `Slots: spindle speed: 12 000 rpm`.
    pub fn kept(&self, id: FieldId) -> String {
        format!("{}: {}", self.place(id), self.kept_value(id))
    }

    /// What a kept choice costs, as an outcome tells it.
    pub fn price(&self, id: FieldId, outcome: &Outcome) -> String {
        let of = |gains: &[Gain]| {
            let found = gains.iter().find(|g| g.what == What::LetGo(id));
            found.cloned()
        };
        match outcome {
            Outcome::Feasible(strategy) => match of(&strategy.gains) {
                Some(gain) if self.free(&gain) => tr("costs nothing").to_owned(),
                Some(gain) => say!("let go: {brings}", brings = self.brings(&gain)),
                None => tr("what it costs is not known").to_owned(),
            },
            Outcome::Refused(refusal) => match of(&refusal.gains) {
                Some(gain) => say!(
                    "let go: possible, {time} in all",
                    time = self.time(gain.time)
                ),
                None => tr("letting go of it alone does not make the job possible").to_owned(),
            },
        }
    }

    /// What is kept of a step, by name, for a sheet: `Kept by hand: cutter and feed.`
    pub fn kept_at(&self, place: Place) -> Option<String> {
        let kept = self.answers.iter().filter(|(id, answer)| {
            let group = id.field.spec().group;
            let here = group == Group::StepPins && id.row == Some(place.row());
            here && !answer.text.trim().is_empty()
        });
        let names: Vec<String> = kept
            .map(|(id, _)| lower_first(crate::field(id.field).label))
            .collect();
        (!names.is_empty()).then(|| say!("Kept by hand: {names}.", names = list(&names)))
    }

    /// What is kept of the whole job, each with its value.
    pub fn kept_of_job(&self) -> Vec<String> {
        let kept = self.answers.iter().filter(|(id, answer)| {
            id.field.spec().group == Group::Pins && !answer.text.trim().is_empty()
        });
        kept.map(|(id, _)| self.kept(*id)).collect()
    }
}
