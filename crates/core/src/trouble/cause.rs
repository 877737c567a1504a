//! Causes of trouble: the limits that watch each, where it is at home, and what is changed first against it.

use super::moves::Move;
use super::sign::Spot;
use crate::field::Field;
use crate::limits::LimitId;

/// Something done by hand, that no number of the step stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Act {
    /// Air at the cut and a drop of lubricant; a sharp, bare edge.
    AirAndDrop,
    /// A new edge.
    NewEdge,
    /// Collet and shank cleaned and dried, the cutter pushed in, tightened as told.
    CleanCollet,
    /// Cleaned, seated again, turned in the collet.
    Reseat,
    /// The spindle set square to the table.
    Tram,
    /// Something solid behind the exit.
    BackExit,
    /// A ramp, a helix or a drilled hole in place of a straight plunge.
    GentlerEntry,
    /// Air at the cut, left and cleared again and again.
    ClearChips,
    /// The hold made surer.
    HoldSurer,
    /// Acceleration and rapids taken back.
    SlowerAxes,
    /// Backlash measured; finishing cuts run one way.
    MeasureBacklash,
    /// Both sides roughed, released, shimmed, skimmed.
    Release,
    /// The part outline cut first, or the skin held.
    HoldSkin,
    /// Tabs or a skin left, or the slug milled away.
    KeepSlug,
}

impl Act {
    /// The answer that what is read then belongs to.
    pub fn fills(self) -> Option<Field> {
        match self {
            Act::Reseat => Some(Field::Runout),
            Act::SlowerAxes => Some(Field::Acceleration),
            Act::MeasureBacklash => Some(Field::Backlash),
            Act::HoldSurer => Some(Field::HoldFirst),
            Act::ClearChips | Act::AirAndDrop => Some(Field::Chips),
            Act::NewEdge
            | Act::CleanCollet
            | Act::Tram
            | Act::BackExit
            | Act::GentlerEntry
            | Act::Release
            | Act::HoldSkin
            | Act::KeepSlug => None,
        }
    }
}

/// One line of the table of causes.
struct Spec {
    cause: Cause,
    key: &'static str,
    limits: &'static [LimitId],
    home: &'static [Spot],
    steady: bool,
    act: Option<Act>,
    moves: &'static [&'static [Move]],
}

macro_rules! causes {
    ($($(#[$doc:meta])* $name:ident $key:literal [$($limit:ident)*] [$($spot:ident)*] $steady:literal $act:expr,
        [$([$($step:ident)*])*];)*) => {
        /// A cause of trouble.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Cause { $($(#[$doc])* $name,)* }
        const CAUSES: &[Spec] = &[$(Spec {
            cause: Cause::$name, key: $key, limits: &[$(LimitId::$limit),*], home: &[$(Spot::$spot),*],
            steady: $steady, act: $act, moves: &[$(&[$(Move::$step),*]),*],
        },)*];
    };
}

// Cause, key, the limits that watch it, where it is at home (anywhere if empty), whether it comes again at the same place,
// what is done by hand first, and the changes of numbers in the order of practice; those in one bracket are rivals.
// A rule of thumb is no witness where the thing itself is worked out: slenderness says nothing that stress and bend do not.
causes! {
    /// The cutter vibrates by itself.
    ToolSings "tool-sings" [Chatter Stability] [Corner Opening Deep] true None,
        [[Shorter] [OtherSpeed] [FeedUpSpeedDown BothDown] [HalfDepth HalfWidth]];
    /// The web vibrates, by itself or with the teeth.
    WebSings "web-sings" [WebSong WebTone WebSoftness] [Middle] true None,
        [[Back Bolt] [OtherSpeed] [HalfDepth HalfWidth]];
    /// The web gives way under the cutter.
    WebMoves "web-moves" [WebThickness WebLift WebSoftness WebStress] [Middle Through] true None,
        [[Back Bolt] [HalfDepth] [LessFeed HalfWidth]];
    /// The chip is too thin: the edge rubs.
    ThinChip "thin-chip" [Rubbing Heat] [] true None, [[MoreFeed SlowerTurns]];
    /// Metal welds to the edge.
    BuiltUp "built-up" [Rubbing] [] false Some(Act::AirAndDrop), [[MoreFeed]];
    /// One flute does the work of all.
    Runout "runout" [RunoutShare] [] true Some(Act::Reseat), [[Reseat] [MoreFeed]];
    /// The edge is dull.
    Dull "dull" [] [] false Some(Act::NewEdge), [];
    /// The edge runs too fast.
    HotEdge "hot-edge" [SurfaceSpeed] [] true None, [[SlowerEdge]];
    /// The heat stays in the material.
    HeatStays "heat-stays" [Heat] [Corner Deep] true Some(Act::ClearChips), [[MoreFeed SlowerTurns]];
    /// The cutter creeps out of its collet.
    PulledOut "pulled-out" [] [Deep] false Some(Act::CleanCollet), [[HalfDepth]];
    /// The cutter bends away.
    CutterBends "cutter-bends" [SlotWidth WallLean RoughDeflection] [Corner Deep] true None,
        [[Shorter] [HalfWidth] [HalfDepth] [LessFeed]];
    /// The rib beside the slot gives way.
    RibGives "rib-gives" [RibSoftness] [] true None, [[HalfWidth HalfDepth] [LessFeed]];
    /// The spindle is not square to the table.
    Tram "tram" [] [] true Some(Act::Tram), [];
    /// Nothing stands behind the exit.
    LooseExit "loose-exit" [] [Through] true Some(Act::BackExit), [[MoreFeed]];
    /// It goes down too steeply for the cutter.
    SteepEntry "steep-entry" [EntryAngle] [Entering] true Some(Act::GentlerEntry), [];
    /// Chips pack and are cut again.
    ChipsPack "chips-pack" [ChipRoom DepthToWidth] [Deep Opening] false Some(Act::ClearChips), [[HalfDepth]];
    /// The cutter is bent beyond what it bears.
    Overloaded "overloaded" [Breakage] [Corner Opening Entering] false None,
        [[Shorter] [HalfDepth HalfWidth LessFeed]];
    /// The part moves in its hold.
    PartMoves "part-moves" [Holding] [Entering Through] false Some(Act::HoldSurer), [[HalfDepth HalfWidth LessFeed]];
    /// An axis stalls or loses steps.
    StepsLost "steps-lost" [AxisThrust LoopAcceleration FeedReliable] [Opening Entering Corner] false
        Some(Act::SlowerAxes), [[HalfDepth HalfWidth LessFeed]];
    /// The axes have play.
    Backlash "backlash" [] [Corner] true Some(Act::MeasureBacklash), [];
    /// The axes cannot follow the feed.
    AxesLag "axes-lag" [FeedReliable LoopAcceleration] [Corner] true None, [[LessFeed]];
    /// The spindle has too little power at its speed.
    Stalls "stalls" [SpindlePower] [Opening Corner Deep] true None, [[HalfWidth] [HalfDepth] [FasterTurns]];
    /// Stress in the blank is set free.
    Stress "stress" [] [] true Some(Act::Release), [];
    /// The clamps bend the part.
    Clamps "clamps" [] [] true Some(Act::Release), [];
    /// The last skin of waste comes loose.
    LooseSkin "loose-skin" [] [Through] false Some(Act::HoldSkin), [];
    /// A loose piece is pinched by the cutter.
    LooseSlug "loose-slug" [] [Through] false Some(Act::KeepSlug), [];
}

impl Cause {
    fn spec(self) -> &'static Spec {
        &CAUSES[self as usize]
    }

    /// Its key in the table.
    pub fn key(self) -> &'static str {
        self.spec().key
    }

    /// The limits that watch it; none for what no limit watches.
    pub fn limits(self) -> &'static [LimitId] {
        self.spec().limits
    }

    /// Where it mostly shows; anywhere if empty.
    pub(super) fn home(self) -> &'static [Spot] {
        self.spec().home
    }

    /// Whether it comes again at the same place.
    pub(super) fn steady(self) -> bool {
        self.spec().steady
    }

    /// What is done by hand first.
    pub fn act(self) -> Option<Act> {
        self.spec().act
    }

    /// Changes of numbers in the order of practice; rivals stand together.
    pub(super) fn moves(self) -> &'static [&'static [Move]] {
        self.spec().moves
    }

    /// Every cause.
    pub fn all() -> impl Iterator<Item = Cause> {
        CAUSES.iter().map(|c| c.cause)
    }

    /// The cause of a key.
    pub fn by_key(key: &str) -> Option<Cause> {
        CAUSES.iter().find(|c| c.key == key).map(|c| c.cause)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::trouble::Sign;
    use thinwright_catalog::Catalog;

    #[test]
    fn every_row_of_the_table_names_a_sign_and_a_cause_and_each_of_them_is_named() {
        let rows = Catalog::builtin().troubles;
        for row in &rows {
            assert!(Sign::by_key(&row.sign).is_some(), "{}", row.id);
            assert!(Cause::by_key(&row.cause).is_some(), "{}", row.id);
        }
        for sign in Sign::all() {
            assert!(rows.iter().any(|r| r.sign == sign.key()), "{sign:?}");
        }
        for cause in Cause::all() {
            assert!(rows.iter().any(|r| r.cause == cause.key()), "{cause:?}");
        }
        let twice =
            |a: usize, b: usize| (&rows[a].sign, &rows[a].cause) == (&rows[b].sign, &rows[b].cause);
        assert!((0..rows.len()).all(|a| (0..a).all(|b| !twice(a, b))));
    }

    #[test]
    fn something_is_changed_against_every_cause() {
        for cause in Cause::all() {
            assert!(
                cause.act().is_some() || !cause.moves().is_empty(),
                "{cause:?}"
            );
        }
    }
}
