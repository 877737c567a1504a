//! What the person has told of the trouble in a step, and what was tried against it.

use crate::units::restate;
use std::rc::Rc;
use thinwright_core::pin::Place;
use thinwright_core::trouble::{Act, Against, Cause, Move, Repeats, Said, Sign, Spot};
use thinwright_core::{Answers, FieldId};
use thinwright_quantity::{Frequency, Kind, UnitSystem, parse};

/// Something that was done against a cause.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Done {
    /// By hand.
    Act(Act),
    /// A change of numbers.
    Move(Move),
}

/// A change that was made.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Tried {
    /// Against what.
    pub(super) cause: Cause,
    /// What was done.
    pub(super) done: Done,
    /// The answers that changed, and all as they were before.
    pub(super) fields: Vec<FieldId>,
    pub(super) before: Rc<Answers>,
}

/// Where the talk stands.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) enum Stage {
    /// Signs are told, causes are shown.
    #[default]
    Asking,
    /// A change was made: what happened?
    Made(Tried),
    /// It is gone.
    Gone,
}

/// All that was told.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Told {
    /// The place of the step that it is of.
    pub(super) place: Option<Place>,
    pub(super) signs: Vec<Sign>,
    pub(super) spot: Option<Spot>,
    pub(super) repeats: Option<Repeats>,
    /// As typed.
    pub(super) tone: String,
    /// Changes made, and whether it was better then.
    pub(super) tried: Vec<(Tried, bool)>,
    pub(super) stage: Stage,
}

impl Tried {
    /// What takes it back, as typed in a system of units.
    pub(super) fn back(&self, units: UnitSystem) -> Vec<(FieldId, String)> {
        let before = restate(&self.before, units);
        let text = |id: &FieldId| (*id, before.text(*id).to_owned());
        self.fields.iter().map(text).collect()
    }
}

impl Told {
    /// What was told of a place; what was told of another is no more.
    pub(super) fn of(&self, place: Place) -> Told {
        if self.place == Some(place) {
            return self.clone();
        }
        Told {
            place: Some(place),
            ..Told::default()
        }
    }

    /// With a sign, or without it if it was there.
    pub(super) fn turned(mut self, sign: Sign) -> Told {
        match self.signs.iter().position(|s| *s == sign) {
            Some(at) => {
                self.signs.remove(at);
            }
            None => self.signs.push(sign),
        }
        self
    }

    /// The tone that was typed; an error where that is none.
    pub(super) fn heard(&self, answers: &Answers) -> Result<Option<Frequency>, ()> {
        if self.tone.trim().is_empty() {
            return Ok(None);
        }
        match parse(Kind::Frequency, &self.tone, answers.units) {
            Ok(hz) if hz > 0.0 => Ok(Some(Frequency::from_si(hz))),
            _ => Err(()),
        }
    }

    /// As the core takes it, with signs that readings add.
    pub(super) fn said(&self, answers: &Answers, read: &[(Sign, f64)]) -> Said {
        let own = self.signs.iter().map(|sign| (*sign, 1.0));
        let other = read.iter().filter(|(sign, _)| !self.signs.contains(sign));
        Said {
            signs: own.chain(other.copied()).collect(),
            spot: self.spot,
            repeats: self.repeats,
            tone: self.heard(answers).ok().flatten(),
            tried: self
                .tried
                .iter()
                .map(|(t, better)| (t.cause, *better))
                .collect(),
        }
    }

    /// A cause, without the changes that did not help.
    pub(super) fn against(&self, cause: Cause, answers: &Answers) -> Against {
        let failed = self
            .tried
            .iter()
            .filter(|(t, better)| t.cause == cause && !better);
        let moves = failed.filter_map(|(t, _)| match t.done {
            Done::Move(step) => Some(step),
            Done::Act(_) => None,
        });
        Against {
            cause,
            tone: self.heard(answers).ok().flatten(),
            tried: moves.collect(),
        }
    }

    /// Whether something done by hand is still to be done.
    pub(super) fn open(&self, act: Act) -> bool {
        let done = |(t, _): &(Tried, bool)| t.done == Done::Act(act);
        !self.tried.iter().any(done)
    }

    /// What happened after the change in hand.
    pub(super) fn answered(mut self, better: bool, gone: bool) -> Told {
        if let Stage::Made(tried) = std::mem::take(&mut self.stage) {
            self.tried.push((tried, better));
        }
        if gone {
            self.stage = Stage::Gone;
        }
        self
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use thinwright_core::Field;

    fn tried(done: Done) -> Stage {
        Stage::Made(Tried {
            cause: Cause::ToolSings,
            done,
            fields: Vec::new(),
            before: Rc::new(Answers::new(UnitSystem::Metric)),
        })
    }

    #[test]
    fn what_was_told_of_another_step_is_no_more() {
        let told = Told::default().of(Place::Slots).turned(Sign::Hum);
        assert_eq!(told.of(Place::Slots).signs, [Sign::Hum]);
        assert!(told.of(Place::Bore).signs.is_empty());
        assert!(told.turned(Sign::Hum).signs.is_empty());
    }

    #[test]
    fn a_change_that_did_not_help_is_not_offered_again() {
        let answers = Answers::new(UnitSystem::Metric);
        let told = Told {
            stage: tried(Done::Move(Move::Shorter)),
            ..Told::default()
        };
        let told = told.answered(false, false);
        assert_eq!(
            told.against(Cause::ToolSings, &answers).tried,
            [Move::Shorter]
        );
        assert!(told.against(Cause::WebSings, &answers).tried.is_empty());
        assert_eq!(told.said(&answers, &[]).tried, [(Cause::ToolSings, false)]);
        let mut told = told;
        told.stage = tried(Done::Act(Act::NewEdge));
        assert!(told.open(Act::NewEdge));
        let told = told.answered(true, true);
        assert!(!told.open(Act::NewEdge) && told.stage == Stage::Gone);
        // What made it better may be done once more.
        assert_eq!(
            told.against(Cause::ToolSings, &answers).tried,
            [Move::Shorter]
        );
    }

    #[test]
    fn what_stood_there_comes_back_in_the_units_of_today() {
        let mut before = Answers::new(UnitSystem::Metric);
        let id = FieldId::in_row(Field::PinStepDown, Place::Slots.row());
        let none = FieldId::in_row(Field::PinFeed, Place::Slots.row());
        before.set_text(id, "0.5");
        let tried = Tried {
            cause: Cause::ToolSings,
            done: Done::Move(Move::HalfDepth),
            fields: vec![id, none],
            before: Rc::new(before),
        };
        let nothing = (none, String::new());
        let back = |units| tried.back(units);
        assert_eq!(
            back(UnitSystem::Metric),
            [(id, "0.5".to_owned()), nothing.clone()]
        );
        let inch = back(UnitSystem::Inch);
        let meant = parse(Kind::Length, &inch[0].1, UnitSystem::Inch).unwrap();
        assert!(
            (meant - 0.5e-3).abs() < 1.0e-9 && inch[1] == nothing,
            "{inch:?}"
        );
    }

    #[test]
    fn a_tone_is_read_as_typed() {
        let answers = Answers::new(UnitSystem::Metric);
        let heard = |tone: &str| {
            let tone = tone.to_owned();
            Told {
                tone,
                ..Told::default()
            }
            .heard(&answers)
        };
        assert_eq!(heard("1850"), Ok(Some(Frequency::from_si(1850.0))));
        assert_eq!(heard("1,85 kHz"), Ok(Some(Frequency::from_si(1850.0))));
        assert_eq!(
            (heard("  "), heard("high"), heard("-3")),
            (Ok(None), Err(()), Err(()))
        );
    }
}
