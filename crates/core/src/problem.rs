//! Problems with the answers: each at its field, with the offending numbers.

use crate::field::FieldId;
use crate::plan::PlanError;
use thinwright_quantity::{Length, ParseError};

/// A problem with one answer.
#[derive(Clone, Debug, PartialEq)]
pub struct Problem {
    /// Where it stands.
    pub field: FieldId,
    /// What is wrong.
    pub kind: ProblemKind,
}

/// What can be wrong with an answer.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum ProblemKind {
    /// The text is not a quantity.
    Text(ParseError),
    /// An answer that has no default is missing.
    Missing,
    /// None of the keys that the field takes.
    NoSuchChoice,
    /// Below the least value that makes sense (SI).
    TooSmall {
        /// What was given.
        value: f64,
        /// The least.
        least: f64,
    },
    /// Above the greatest value that makes sense (SI).
    TooLarge {
        /// What was given.
        value: f64,
        /// The greatest.
        greatest: f64,
    },
    /// The two recesses leave no web.
    NoWeb {
        /// Thickness of the part.
        thickness: Length,
        /// Depth of the recess in face A.
        depth_a: Length,
        /// Depth of the recess in face B.
        depth_b: Length,
    },
    /// Thickness, depths and web are all given and do not agree.
    WebDisagrees {
        /// Thickness of the part.
        thickness: Length,
        /// Depth of the recess in face A.
        depth_a: Length,
        /// Depth of the recess in face B.
        depth_b: Length,
        /// The web as typed.
        web: Length,
    },
    /// The web, with the one depth that is given, leaves nothing for the other recess.
    WebTooThick {
        /// Thickness of the part.
        thickness: Length,
        /// The depth that is given.
        depth: Length,
        /// The web as typed.
        web: Length,
    },
    /// Something does not fit inside something else.
    DoesNotFit {
        /// Its size.
        size: Length,
        /// The room there is.
        room: Length,
        /// What it should fit into.
        into: Into,
    },
    /// Slots run into each other.
    SlotsMeet {
        /// Width of the rib that would be left.
        rib: Length,
    },
    /// A slot leaves the recess floor.
    SlotLeavesFloor {
        /// Distance by which it does.
        by: Length,
    },
    /// A slot runs into the boss.
    SlotMeetsBoss {
        /// Overlap.
        by: Length,
    },
    /// The outline crosses itself or is otherwise no outline.
    Outline(PlanError),
    /// The rack is empty.
    EmptyRack,
    /// Of the six numbers of a good cut, some are given and this one is not.
    GoodCutIncomplete,
}

/// What something should have fitted into.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Into {
    /// The outline of the part.
    Outline,
    /// The recess.
    Recess,
    /// The boss.
    Boss,
    /// The length of the same thing.
    OwnLength,
    /// The stick-out of the cutter.
    StickOut,
    /// Half the cutter's diameter.
    CutterRadius,
    /// The shorter side of the recess, for its corners.
    RecessSide,
}
