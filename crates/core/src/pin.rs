//! What the person keeps in their own hands: choices that the search leaves as they are, and checks.

use crate::methods::MethodId;
use crate::order::OrderId;
use crate::task::{Face, Task, TaskKind};
use std::collections::BTreeMap;
use thinwright_catalog::Numbers;

macro_rules! places {
    ($($(#[$doc:meta])* $name:ident $key:literal;)*) => {
        /// A place of the part at which choices can be fixed, whatever the order of the work.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Place { $($(#[$doc])* $name,)* }
        const PLACES: &[(Place, &str)] = &[$((Place::$name, $key),)*];
    };
}

places! {
    /// The raw face A.
    FacingA "facing-a";
    /// The raw face B.
    FacingB "facing-b";
    /// The bore.
    Bore "bore";
    /// Clearing of the recess in face A.
    ClearingA "clearing-a";
    /// Clearing of the recess in face B.
    ClearingB "clearing-b";
    /// Floor of the recess in face A.
    FloorA "floor-a";
    /// Floor of the recess in face B.
    FloorB "floor-b";
    /// Wall of the recess in face A.
    WallA "wall-a";
    /// Wall of the recess in face B.
    WallB "wall-b";
    /// The slots, through or blind, from either face.
    Slots "slots";
    /// The groove along the outline.
    Groove "groove";
    /// The outline.
    Outline "outline";
}

impl Place {
    /// The place that a task works at.
    pub fn of(task: &Task) -> Place {
        Place::at(task.kind, task.face)
    }

    /// The place at which something is cut from a face.
    pub fn at(kind: TaskKind, face: Face) -> Place {
        let by_face = |a, b| if face == Face::A { a } else { b };
        match kind {
            TaskKind::Facing => by_face(Place::FacingA, Place::FacingB),
            TaskKind::Bore => Place::Bore,
            TaskKind::Clearing => by_face(Place::ClearingA, Place::ClearingB),
            TaskKind::FloorSkim => by_face(Place::FloorA, Place::FloorB),
            TaskKind::WallSkim => by_face(Place::WallA, Place::WallB),
            TaskKind::SlotsThrough | TaskKind::SlotsBlind => Place::Slots,
            TaskKind::OutlineGroove => Place::Groove,
            TaskKind::OutlineFinish => Place::Outline,
        }
    }

    /// Its name in job files.
    pub fn key(self) -> &'static str {
        PLACES[self as usize].1
    }

    /// The row of its pins among the answers.
    pub fn row(self) -> u8 {
        self as u8
    }

    /// The place of a row.
    pub fn by_row(row: u8) -> Option<Place> {
        PLACES.get(usize::from(row)).map(|p| p.0)
    }

    /// The place of a name in job files.
    pub fn by_key(key: &str) -> Option<Place> {
        PLACES.iter().find(|p| p.1 == key).map(|p| p.0)
    }

    /// Every place.
    pub fn all() -> impl Iterator<Item = Place> {
        PLACES.iter().map(|p| p.0)
    }
}

/// Choices of one step that are kept, SI.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct StepPin {
    /// Row of the cutter in the rack.
    pub cutter: Option<u8>,
    /// The method.
    pub method: Option<MethodId>,
    /// Spindle speed, 1/s.
    pub n: Option<f64>,
    /// Feed, m/s.
    pub vf: Option<f64>,
    /// Stepover, m.
    pub ae: Option<f64>,
    /// Step-down, m.
    pub ap: Option<f64>,
}

/// The table of numbers with the allowances of skims that are kept.
pub(crate) fn kept_allowances(pins: &Pins, numbers: &Numbers) -> Numbers {
    let (wall, floor) = pins.allowances();
    let mm = |kept: Option<f64>, table: f64| kept.map_or(table, |m| m * 1.0e3);
    Numbers {
        rough_allowance_mm: mm(wall, numbers.rough_allowance_mm),
        // A floor can be skimmed in several levels, but none goes deeper than what stands.
        floor_allowance_mm: mm(floor, 0.0).max(numbers.floor_allowance_mm),
        ..*numbers
    }
}

/// Everything that is kept.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Pins {
    /// When the slots are cut.
    pub order: Option<OrderId>,
    /// The face cut first.
    pub first: Option<Face>,
    /// Whether the web is backed.
    pub backed: Option<bool>,
    /// Whether the boss is bolted down.
    pub bolted: Option<bool>,
    /// The machine's own highest spindle speed, 1/s, where the person keeps a lower one.
    pub top_speed: Option<f64>,
    /// Choices of single steps.
    pub steps: BTreeMap<Place, StepPin>,
}

impl Pins {
    /// What walls must be left with, and floors at least, m, where their skims are kept: the stepover of a wall's skim is
    /// what stands there, the step-down of a floor's no more than that.
    pub fn allowances(&self) -> (Option<f64>, Option<f64>) {
        let at = |places: [Place; 2], get: fn(&StepPin) -> Option<f64>| {
            let pinned = places.iter().filter_map(|place| self.steps.get(place));
            pinned.filter_map(get).reduce(f64::max)
        };
        (
            at([Place::WallA, Place::WallB], |step| step.ae),
            at([Place::FloorA, Place::FloorB], |step| step.ap),
        )
    }

    /// What is kept of a task's choices.
    pub fn at(&self, task: &Task) -> StepPin {
        self.steps
            .get(&Place::of(task))
            .copied()
            .unwrap_or_default()
    }
}
