//! Methods, and why one does not fit, in words.

use crate::Speaker;
use crate::language::tr;
use crate::say;
use thinwright_core::methods::{MethodId, Rejection};
use thinwright_core::strategy::Measure;
use thinwright_quantity::Kind;

/// A method's name.
pub fn method_name(method: MethodId) -> &'static str {
    tr(match method {
        MethodId::Facing => "parallel passes",
        MethodId::BoreHelix => "helix to size",
        MethodId::OffsetClearing => "offset passes, level by level",
        MethodId::LightClearing => "thin passes at full depth",
        MethodId::FloorSkim => "one light level",
        MethodId::WallSkim => "one light pass",
        MethodId::FullWidth => "full width, level by level",
        MethodId::Zigzag => "zigzag ramp",
        MethodId::SidePasses => "smaller cutter, then the sides",
        MethodId::Peeling => "peeling loops",
        MethodId::DrilledEnds => "ends drilled first",
        MethodId::OutlineGroove => "groove, level by level",
        MethodId::OutlineTabs => "level by level, tabs left",
    })
}

/// How a method goes, in one line.
pub fn method_how(method: MethodId) -> &'static str {
    tr(match method {
        MethodId::Facing => "pass beside pass over the whole face",
        MethodId::BoreHelix => "down a helix, then once round the wall",
        MethodId::OffsetClearing => {
            "from the middle outwards, each pass at the same distance from the last, then the next level"
        }
        MethodId::LightClearing => {
            "down to depth at once, then many thin passes: more flute works, less force acts sideways"
        }
        MethodId::FloorSkim => "over the whole floor once, at the finished depth",
        MethodId::WallSkim => "round the walls once, at full depth or in few levels",
        MethodId::FullWidth => "a cutter as wide as the slot, one thin level after the other",
        MethodId::Zigzag => {
            "to and fro along the slot, a little deeper with each stroke, no straight plunge"
        }
        MethodId::SidePasses => "a smaller cutter opens the middle, then takes each side to size",
        MethodId::Peeling => {
            "a smaller cutter goes in small circles along the slot, each peeling a thin sickle off"
        }
        MethodId::DrilledEnds => {
            "a drill opens both ends, then the cutter goes between them level by level"
        }
        MethodId::OutlineGroove => "round the outline in a groove of the cutter's width",
        MethodId::OutlineTabs => "round the outline to depth, lifting over the tabs",
    })
}

impl Speaker<'_> {
    /// Why a cutter cannot do it by a method at all: starts small, no full stop.
    pub fn rejection(&self, rejection: &Rejection) -> String {
        let size = |si: f64| self.value(Kind::Length, si);
        match *rejection {
            Rejection::NotForThis => tr("not a way to do this").to_owned(),
            Rejection::NotADrill => tr("a drill does not cut sideways").to_owned(),
            Rejection::NoDrill => tr("the rack has no drill that fits").to_owned(),
            Rejection::TooWide(Measure { demand, allowed }) => {
                say!(
                    "too wide: \u{D8} {demand} where {allowed} fits at most",
                    demand = size(demand),
                    allowed = size(allowed)
                )
            }
            Rejection::TooNarrow(Measure { demand, allowed }) => {
                say!(
                    "too narrow: \u{D8} {allowed} where it takes at least {demand}",
                    allowed = size(allowed),
                    demand = size(demand)
                )
            }
            Rejection::CornerTooTight(Measure { demand, allowed }) => {
                say!(
                    "its radius {demand} does not go into the corner R {allowed}",
                    demand = size(demand),
                    allowed = size(allowed)
                )
            }
            Rejection::NotCentreCutting => {
                tr("does not cut to its centre, and there is no other way in").to_owned()
            }
            Rejection::Pinned => tr("you have kept another choice here").to_owned(),
            Rejection::NoRoomToEnter(Measure { demand, allowed }) => {
                say!(
                    "its entry helix needs \u{D8} {demand}, the room is \u{D8} {allowed}",
                    demand = size(demand),
                    allowed = size(allowed)
                )
            }
        }
    }
}
