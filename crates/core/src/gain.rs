//! What a change would bring: a strategy searched again with one thing changed.

use crate::estimate::Unknown;
use crate::field::FieldId;
use crate::limits::LimitId;
use crate::strategy::Lever;
use crate::task::TaskKind;
use thinwright_quantity::{Duration, Length};

/// What is changed.
#[derive(Clone, Debug, PartialEq)]
pub enum What {
    /// Something estimated is measured, and turns out as likely: known to the spread of a measurement.
    Measure(Unknown),
    /// A cutter of the rack has one flute more.
    OneMoreFlute {
        /// Its row.
        row: u8,
        /// Flutes then.
        flutes: u32,
    },
    /// A cutter of the rack stands out no further than its deepest cut needs.
    HoldShorter {
        /// Its row.
        row: u8,
        /// Stick-out then.
        stick_out: Length,
    },
    /// A cutter is bought.
    Buy(Geometry),
    /// The web is backed: row id of the backing.
    Back(String),
    /// The boss is bolted down.
    BoltBoss,
    /// Chips are cleared so: row id of the clearing.
    ClearChips(String),
    /// The person lets go of a choice.
    LetGo(FieldId),
}

/// A cutter by its sizes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Geometry {
    /// A drill, not an end mill.
    pub drill: bool,
    /// Cutting diameter, DC.
    pub d: Length,
    /// Flutes, ZEFP.
    pub flutes: u32,
    /// Flute length, APMX.
    pub flute_length: Length,
    /// Reach below the shank, LU.
    pub reach: Length,
    /// Shank diameter.
    pub shank: Length,
    /// Carbide, not high-speed steel.
    pub carbide: bool,
}

/// The number of a step that turns most.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Turned {
    /// What is cut.
    pub task: TaskKind,
    /// Which of its numbers.
    pub lever: Lever,
    /// From this, SI.
    pub from: f64,
    /// To this, SI.
    pub to: f64,
}

/// What a change would bring.
#[derive(Clone, Debug, PartialEq)]
pub struct Gain {
    /// The change.
    pub what: What,
    /// Time in all then.
    pub time: Duration,
    /// Time saved, s; negative where it takes longer, for fewer warnings.
    pub saved_s: f64,
    /// Warnings that go.
    pub cleared: Vec<(TaskKind, LimitId)>,
    /// What turns most, where the order of the work stays.
    pub turned: Option<Turned>,
}
