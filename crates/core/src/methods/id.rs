//! The names of the methods, and why one may not fit.

use crate::strategy::Measure;

macro_rules! method_ids {
    ($($(#[$doc:meta])* $name:ident $key:literal;)*) => {
        /// A way to cut.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum MethodId { $($(#[$doc])* $name,)* }
        const KEYS: &[(MethodId, &str)] = &[$((MethodId::$name, $key),)*];
        /// The names of the methods in job files, in order.
        pub const METHOD_KEYS: &[&str] = &[$($key,)*];
    };
}

method_ids! {
    /// Parallel passes over the raw face.
    Facing "facing";
    /// Down a helix and round the wall.
    BoreHelix "bore-helix";
    /// Passes at equal distance from the wall, level by level.
    OffsetClearing "offset-clearing";
    /// Thin passes at the full depth.
    LightClearing "light-clearing";
    /// One thin level over the floor.
    FloorSkim "floor-skim";
    /// One thin pass along the wall.
    WallSkim "wall-skim";
    /// A cutter as wide as the slot, level by level.
    FullWidth "full-width";
    /// To and fro along the slot, sloping down.
    Zigzag "zigzag";
    /// A smaller cutter opens the middle, then passes along the sides.
    SidePasses "side-passes";
    /// Peeling loops at depth.
    Peeling "peeling";
    /// Ends drilled first, then level by level between them.
    DrilledEnds "drilled-ends";
    /// A groove around the outline, level by level.
    OutlineGroove "outline-groove";
    /// The outline to depth, but for tabs.
    OutlineTabs "outline-tabs";
}

impl MethodId {
    /// Its name in job files.
    pub fn key(self) -> &'static str {
        KEYS[self as usize].1
    }

    /// Every method.
    pub fn all() -> impl Iterator<Item = MethodId> {
        KEYS.iter().map(|k| k.0)
    }
}

/// Why a cutter cannot do a task by a method at all.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Rejection {
    /// The method is not for this task.
    NotForThis,
    /// A drill cannot do it.
    NotADrill,
    /// It takes a drill and the rack has none that fits.
    NoDrill,
    /// The cutter is wider than the way.
    TooWide(Measure),
    /// The cutter is so narrow that the method makes no sense.
    TooNarrow(Measure),
    /// The cutter's radius is larger than the corner that it must leave.
    CornerTooTight(Measure),
    /// The cutter does not cut to its centre and there is no room to get in another way.
    NotCentreCutting,
    /// No helix fits into the room there is.
    NoRoomToEnter(Measure),
    /// The person has fixed the choice otherwise.
    Pinned,
}
