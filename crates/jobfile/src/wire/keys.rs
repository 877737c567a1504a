//! Names: limits, methods, orders, tasks and the rest of the plain enums.

use super::{Wire, wire_word};
use crate::error::{JobFileError, Wanted};
use crate::node::Node;
use crate::object::{not, text};
use thinwright_core::estimate::Unknown;
use thinwright_core::limits::{LimitId, Severity};
use thinwright_core::methods::MethodId;
use thinwright_core::order::OrderId;
use thinwright_core::strategy::Lever;
use thinwright_core::task::{Face, TaskKind};

impl Wire for LimitId {
    fn put(&self) -> Node {
        Node::text(self.spec().key)
    }

    fn take(place: &str, node: &Node) -> Result<LimitId, JobFileError> {
        let key = text(place, node)?;
        LimitId::all()
            .find(|l| l.spec().key == key)
            .ok_or_else(|| not(place, Wanted::KnownName))
    }
}

impl Wire for MethodId {
    fn put(&self) -> Node {
        Node::text(self.key())
    }

    fn take(place: &str, node: &Node) -> Result<MethodId, JobFileError> {
        let key = text(place, node)?;
        MethodId::all()
            .find(|m| m.key() == key)
            .ok_or_else(|| not(place, Wanted::KnownName))
    }
}

wire_word!(Face { "A" A, "B" B, });
wire_word!(Severity { "stop" Stop, "quality" Quality, "advice" Advice, "listen" Listen, });

wire_word!(TaskKind {
    "facing" Facing,
    "bore" Bore,
    "clearing" Clearing,
    "floor-skim" FloorSkim,
    "wall-skim" WallSkim,
    "slots-through" SlotsThrough,
    "slots-blind" SlotsBlind,
    "outline-groove" OutlineGroove,
    "outline-finish" OutlineFinish,
});

wire_word!(OrderId {
    "one-face" OneFace,
    "slots-into-stock" SlotsIntoStock,
    "slots-before-skim" SlotsBeforeSkim,
    "slots-last" SlotsLast,
    "no-slots" NoSlots,
});

wire_word!(Unknown {
    "kc" Kc,
    "machine-stiffness" MachineStiffness,
    "runout" Runout,
    "thrust" Thrust,
    "friction" Friction,
    "grip" Grip,
    "bed-stiffness" BedStiffness,
    "efficiency" Efficiency,
    "damping" Damping,
    "rupture" Rupture,
    "web-tone" WebTone,
});

wire_word!(Lever {
    "stick-out" StickOut,
    "step-down" StepDown,
    "stepover" Stepover,
    "feed-per-tooth" FeedPerTooth,
    "spindle-speed" SpindleSpeed,
    "flutes" Flutes,
    "corner-radius" CornerRadius,
    "web-thickness" WebThickness,
    "grip" Grip,
    "backing" Backing,
    "bolted-boss" BoltedBoss,
    "clearing" Clearing,
});
