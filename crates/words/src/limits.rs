//! Limits in words: a short name, and what a finding means with both of its numbers.

use crate::Speaker;
use crate::language::tr;
use crate::say;
use thinwright_core::limits::LimitId;
use thinwright_core::strategy::{Finding, Measure};

macro_rules! limits {
    ($($name:ident: $short:literal, $meaning:literal, $broken:literal;)*) => {
        /// A limit's short name.
        pub fn limit_name(limit: LimitId) -> &'static str {
            tr(match limit {
                $(LimitId::$name => $short,)*
            })
}

        /// What it means when the limit is broken, in a few words.
        pub fn limit_meaning(limit: LimitId) -> &'static str {
            tr(match limit {
                $(LimitId::$name => $broken,)*
            })
}

        /// Demand and allowed, already in words, as a clause.
        fn clause(limit: LimitId, demand: &str, allowed: &str) -> String {
            match limit {
                $(LimitId::$name => say!($meaning, d = demand, a = allowed),)*
            }
        }
    };
}

limits! {
    FluteLength: "flute length", "the step-down is {d}, the flutes are {a} long", "above the flutes the shank rubs";
    Reach: "reach", "the cut lies {d} deep, the cutter reaches {a} below its thicker shank", "the shank meets the wall";
    StickOut: "stick-out", "the collet nut needs {d} of stick-out to stay clear, the cutter stands out {a}",
        "the nut touches the part";
    ShankClearance: "shank clearance", "half the shank and its air take {d} beside the slot, the recess wall leaves {a}",
        "the shank touches the recess wall";
    Fillet: "fillet", "the cutter's corner radius is {d}, the drawing allows {a} at the floor",
        "it leaves too much where wall and floor meet";
    SurfaceSpeed: "surface speed", "the edge runs at {d}, this material takes up to {a}", "the edge wears fast";
    Rubbing: "rubbing", "the edge needs a chip of {d} to cut, the thickest one here is {a}", "it rubs instead of cutting";
    Heat: "heat", "it takes a chip load of {d} to carry the heat away, this one is {a}", "the material melts or burns";
    ToolLength: "tool length", "the thin part is {d} times as long as it is thick, up to {a} needs no care",
        "it bends and sings easily";
    DepthToWidth: "slot depth to width", "the slot is {d} times as deep as it is wide, up to {a} needs no care",
        "chips pack: clear them at each level";
    RunoutShare: "runout", "the cutter runs out by {d}, at this chip load {a} is fair", "one flute does most of the work";
    FeedReliable: "feed", "the feed is {d}, this machine cuts true up to {a}", "it rounds corners and may lose steps";
    Practice: "daily practice", "step-down times stepover is {d} of the diameter squared, such machines do {a} every day",
        "more than is usually done: go there by steps";
    EntryAngle: "entry slope", "the cutter goes down at {d}, this material takes {a}", "too steep to cut its way down";
    LoopAcceleration: "loop acceleration", "the loops ask for {d}, the axes give {a}", "the loops come out flattened";
    ChipRoom: "chip room", "loose chips of one level fill {d} of the open slot, this clearing keeps up with {a}",
        "chips pack and break the cutter";
    Roughness: "floor roughness", "feed marks on the floor are Rz {d}, Rz {a} was asked for", "rougher than asked for";
    SpindlePower: "spindle power", "the cut takes {d}, the spindle gives {a} at this speed", "the spindle stalls";
    AxisThrust: "axis thrust", "the cut pushes back with {d} on average, an axis holds {a}", "an axis stalls or loses steps";
    Breakage: "breakage", "bending stress with its safety is {d}, the cutter's material breaks at {a}", "the cutter may snap";
    Holding: "grip", "the cut pulls with {d}, safety included; the hold keeps {a}", "the part may move or fly";
    RoughDeflection: "roughing bend", "cutter and machine bend by {d}, the allowance can spare {a}",
        "roughing may cut into the finished size";
    SlotWidth: "slot width", "the slot may come out off by {d}, {a} is allowed", "the slot is out of its tolerance";
    WallLean: "wall lean", "the wall leans by {d}, {a} is usual", "take the same pass a second time";
    RibSoftness: "rib softness", "the rib beside the slot gives way by {d}, {a} is allowed",
        "the rib springs back and the slot comes out narrow";
    WebSoftness: "web softness", "the web is {a} under the cutter; cutter and machine are {d}", "the web is the softest link";
    WebTone: "web tone", "a multiple of tooth passing should keep {d} of the web's tone away from it and keeps {a}",
        "the web may drum: another speed helps";
    WebSlenderness: "web span", "the free span is {d} times the web's thickness, held like this up to {a} is usual",
        "back the web, or watch it";
    WebThickness: "web thickness", "the web may come out off by {d}, {a} is allowed", "the web is out of its tolerance";
    WebStress: "web stress", "stress in the web with its safety is {d}, the material yields at {a}", "the web stays bent";
    WebLift: "web lift", "the helix lifts the web by {d}, {a} is usual", "the floor comes out thin in the middle";
    Chatter: "quiet depth", "the step-down is {d}, {a} is quiet as far as is known", "it may sing: go there by ear";
    WebSong: "web song", "the step-down is {d}, the rounded corner lets the web be up to {a}", "the web may sing along the cutter";
    Stability: "stability", "the step-down is {d}, {a} is quiet at this speed as measured", "as far as can be told it will sing: go there by ear";
}

impl Speaker<'_> {
    /// A limit's measure in words, both numbers shown; starts small, no full stop.
    pub fn measure(&self, limit: LimitId, measure: &Measure) -> String {
        let (demand, allowed) = (
            self.of_limit(limit, measure.demand),
            self.of_limit(limit, measure.allowed),
        );
        let clause = clause(limit, &demand, &allowed);
        if measure.utilisation() > 1.0 {
            // The clause may hold a colon or a comma of its own; a colon at the end reads as the reason.
            format!("{clause}: {}", limit_meaning(limit))
        } else {
            clause
        }
    }

    /// A finding in words, at the unfavourable end of what is estimated.
    pub fn finding(&self, finding: &Finding) -> String {
        self.measure(finding.limit, &finding.at_worst)
    }
}
