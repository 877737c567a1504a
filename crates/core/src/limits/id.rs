//! The names of the limits, how severe each is, and in what quantity it is measured.

use thinwright_quantity::Kind;

/// What a broken limit may do.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Severity {
    /// Refuses a job.
    Stop,
    /// Refuses against a tolerance that was asked for.
    Quality,
    /// Never refuses; a way without the warning is preferred.
    Advice,
    /// Never refuses and steers nothing: tells what to listen for.
    Listen,
}

/// One line of the limit table.
#[derive(Clone, Copy, Debug)]
pub struct LimitSpec {
    /// The limit.
    pub id: LimitId,
    /// Its name in job files.
    pub key: &'static str,
    /// Its severity.
    pub severity: Severity,
    /// The quantity of demand and allowed.
    pub kind: Kind,
}

macro_rules! limit_ids {
    ($($(#[$doc:meta])* $name:ident $key:literal $severity:ident $kind:ident;)*) => {
        /// A limit.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum LimitId { $($(#[$doc])* $name,)* }
        const SPECS: &[LimitSpec] = &[$(LimitSpec {
            id: LimitId::$name, key: $key, severity: Severity::$severity, kind: Kind::$kind,
        },)*];
    };
}

limit_ids! {
    /// Step-down within the flutes.
    FluteLength "flute-length" Stop Length;
    /// Depth of the cut within the reach below the shank.
    Reach "reach" Stop Length;
    /// Depth below the surface around within the stick-out.
    StickOut "stick-out" Stop Length;
    /// Shank passes the recess wall.
    ShankClearance "shank-clearance" Stop Length;
    /// Corner radius of the cutter within the fillet allowed.
    Fillet "fillet" Quality Length;
    /// Surface speed below the upper end of the material's range.
    SurfaceSpeed "surface-speed" Advice SurfaceSpeed;
    /// Chip thicker than what the edge still cuts.
    Rubbing "rubbing" Advice ShortLength;
    /// Chip load high enough to carry the heat away.
    Heat "heat" Advice ShortLength;
    /// Stick-out to diameter.
    ToolLength "tool-length" Advice Ratio;
    /// Slot depth to width.
    DepthToWidth "depth-to-width" Advice Ratio;
    /// Runout against feed per tooth.
    RunoutShare "runout-share" Listen ShortLength;
    /// Feed within what the machine cuts reliably at.
    FeedReliable "feed" Stop FeedSpeed;
    /// Step-down times stepover within what is done on such machines.
    Practice "practice" Advice Ratio;
    /// Slope of the entry.
    EntryAngle "entry-angle" Stop Angle;
    /// Acceleration in peeling loops.
    LoopAcceleration "loop-acceleration" Stop Acceleration;
    /// Room for chips in the slot.
    ChipRoom "chip-room" Stop Ratio;
    /// Roughness of the floor.
    Roughness "roughness" Quality Roughness;
    /// Power at the spindle.
    SpindlePower "spindle-power" Stop Power;
    /// Thrust of the axes.
    AxisThrust "axis-thrust" Stop Force;
    /// Bending stress in the cutter.
    Breakage "breakage" Stop Stress;
    /// Grip of the hold.
    Holding "holding" Stop Force;
    /// Deflection in roughing against the allowance.
    RoughDeflection "rough-deflection" Advice ShortLength;
    /// Error of the slot's width.
    SlotWidth "slot-width" Quality ShortLength;
    /// Lean of the finished wall.
    WallLean "wall-lean" Advice ShortLength;
    /// Give of the rib beside the slot.
    RibSoftness "rib-softness" Quality ShortLength;
    /// Web softer than cutter and machine.
    WebSoftness "web-softness" Advice Stiffness;
    /// Tooth passing near the web's first tone.
    WebTone "web-tone" Advice Ratio;
    /// Span of the web to its thickness.
    WebSlenderness "web-slenderness" Advice Ratio;
    /// Error of the web's thickness.
    WebThickness "web-thickness" Quality ShortLength;
    /// Bending stress in the web.
    WebStress "web-stress" Stop Stress;
    /// Lift of the web by the helix.
    WebLift "web-lift" Advice ShortLength;
    /// Depth that is quiet at any speed, or at this one where only a tone is known.
    Chatter "chatter" Listen Length;
    /// Depth up to which a rounded corner does not make the web sing.
    WebSong "web-song" Listen Length;
    /// Depth that is quiet at this speed, measured: damping and cutting force are estimates still, so it steers and refuses nothing.
    Stability "stability" Advice Length;
}

impl LimitId {
    /// The limit's line of the table.
    pub fn spec(self) -> &'static LimitSpec {
        &SPECS[self as usize]
    }

    /// Every limit.
    pub fn all() -> impl Iterator<Item = LimitId> {
        SPECS.iter().map(|s| s.id)
    }
}
