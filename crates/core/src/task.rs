//! What has to be cut: the tasks of an order, each with its heights.

use crate::part::Height;

/// A face of the part. A is the one with the recess that every part has.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Face {
    /// Face A.
    A,
    /// Face B.
    B,
}

impl Face {
    /// The opposite face.
    pub fn other(self) -> Face {
        match self {
            Face::A => Face::B,
            Face::B => Face::A,
        }
    }
}

/// What is cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum TaskKind {
    /// The raw face of the blank is skimmed.
    Facing,
    /// The bore through the middle is opened.
    Bore,
    /// The recess is cleared, but for allowances.
    Clearing,
    /// The allowance on the recess floor is taken off.
    FloorSkim,
    /// The allowance on the recess wall and the boss is taken off.
    WallSkim,
    /// The slots are cut through the web, into a backing or into air.
    SlotsThrough,
    /// The slots are cut blind, into stock that the other recess will remove.
    SlotsBlind,
    /// A groove along the outline, past the plane where the part is turned over.
    OutlineGroove,
    /// The outline is finished, with tabs that keep hold of the part.
    OutlineFinish,
}

/// One task of a setup, with the heights it works between.
///
/// Heights count from face B of the finished part upwards to face A; a task on face B works downwards in them.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Task {
    /// What is cut.
    pub kind: TaskKind,
    /// The face that looks at the spindle.
    pub face: Face,
    /// Height at which the cut starts (the stock's surface there).
    pub from: Height,
    /// Height at which it ends.
    pub to: Height,
}

impl Task {
    /// Depth of the cut, m.
    pub fn depth(&self) -> f64 {
        (self.from.m() - self.to.m()).abs()
    }
}
