//! What the person keeps in their own hands: one entry for each choice, and the list of all with their prices.

mod entry;
mod job;
mod list;

pub(crate) use entry::PinEntry;
pub(crate) use list::{KEPT, Kept, KeptProps};

use crate::form::Questions;
use crate::state::{Shown, State, pins};
use std::rc::Rc;
use thinwright_core::field::Group;
use thinwright_core::part::Height;
use thinwright_core::pin::Place;
use thinwright_core::strategy::Strategy;
use thinwright_core::task::{Face, Task, TaskKind};
use thinwright_core::{FieldId, Outcome};
use thinwright_quantity::UnitSystem;
use thinwright_words::Speaker;
use yew::prelude::*;

/// A choice that is kept.
#[derive(Clone, PartialEq)]
pub(crate) struct Pin {
    pub(crate) id: FieldId,
    /// As typed.
    pub(crate) text: AttrValue,
    pub(crate) problem: Option<AttrValue>,
}

/// Everything that is kept, and what a cutter is chosen from.
#[derive(Clone, PartialEq)]
pub(crate) struct Keeping {
    pub(crate) pins: Rc<Vec<Pin>>,
    /// The names of the cutters, row by row.
    pub(crate) rack: Rc<Vec<AttrValue>>,
    pub(crate) units: UnitSystem,
}

impl Keeping {
    pub(crate) fn of(state: &State, questions: &Questions) -> Keeping {
        let pin = |(id, text): (FieldId, &str)| Pin {
            id,
            text: text.to_owned().into(),
            problem: questions.problems.get(&id).cloned(),
        };
        let speaker = Speaker::new(state.answers.units, &state.catalog, &state.answers);
        let cutter = |row| AttrValue::from(speaker.cutter(row));
        let mut kept: Vec<Pin> = pins(&state.answers).map(pin).collect();
        // Of the whole job first, then place by place.
        kept.sort_by_key(|pin| (pin.id.row, pin.id.field));
        Keeping {
            pins: Rc::new(kept),
            rack: Rc::new((0..state.answers.rack_rows()).map(cutter).collect()),
            units: state.answers.units,
        }
    }

    /// What is kept at a field.
    pub(crate) fn pin(&self, id: FieldId) -> Option<&Pin> {
        self.pins.iter().find(|pin| pin.id == id)
    }

    /// What is kept of a step at a place.
    pub(crate) fn at(&self, place: Place) -> impl Iterator<Item = &Pin> {
        self.pins.iter().filter(move |pin| {
            pin.id.field.spec().group == Group::StepPins && pin.id.row == Some(place.row())
        })
    }
}

/// The place of the part that a step works at.
pub(crate) fn place_of(face: Face, kind: TaskKind) -> Place {
    // Heights do not tell places apart.
    Place::of(&Task {
        kind,
        face,
        from: Height::default(),
        to: Height::default(),
    })
}

/// The places at which a strategy has steps, with the number of the first step of each.
fn places(strategy: &Strategy) -> Vec<(Place, u32)> {
    let mut out: Vec<(Place, u32)> = Vec::new();
    for setup in &strategy.setups {
        for step in &setup.steps {
            let place = place_of(setup.face_up, step.task);
            if out.iter().all(|(p, _)| *p != place) {
                out.push((place, step.number));
            }
        }
    }
    out
}

/// The number of the step that carries the entry of a place: the first there.
pub(crate) fn carrier(shown: Option<&Shown>, place: Place) -> Option<u32> {
    match &*shown?.outcome {
        Outcome::Feasible(strategy) => {
            let places = places(strategy);
            places.into_iter().find(|(p, _)| *p == place).map(|p| p.1)
        }
        Outcome::Refused(_) => None,
    }
}
