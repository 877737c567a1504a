//! What `advise` answers: a checked strategy, or a reasoned no.

use crate::estimate::Unknown;
use crate::field::FieldId;
use crate::gain::Gain;
use crate::limits::{LimitId, Severity};
use crate::methods::MethodId;
use crate::picture::WebError;
use crate::stability::StabilityReport;
use crate::task::{Face, TaskKind};
pub use crate::verdict::{Considered, Decided, OrderReport, OrderVerdict, Verdict};
use thinwright_quantity::{
    Angle, Duration, Force, Frequency, Length, Power, Speed, SpindleSpeed, Stiffness, Stress,
    Torque,
};

/// The answer to a job without problems.
#[derive(Clone, Debug, PartialEq)]
pub enum Outcome {
    /// A strategy whose every limit was held.
    Feasible(Box<Strategy>),
    /// No strategy: what stands in the way, and what would help.
    Refused(Box<Refusal>),
}

/// A checked strategy.
#[derive(Clone, Debug, PartialEq)]
pub struct Strategy {
    /// The clampings, in order.
    pub setups: Vec<Setup>,
    /// Cutting, entries, lifts, cutter changes, turning over and making the backing.
    pub time: Duration,
    /// The same with the price of the warnings that are left, and of unusual allowances: what plans are compared by.
    pub reckoned: Duration,
    /// How many times a cutter is changed.
    pub cutter_changes: u32,
    /// The orders and holdings worked out, the chosen one first, then by time.
    pub orders: Vec<OrderReport>,
    /// Answers that were left to a table, and the value that the table gave.
    pub defaults: Vec<Defaulted>,
    /// Ids of the cautions that apply to the job as a whole.
    pub cautions: Vec<String>,
    /// What a change would bring, the most worth first.
    pub gains: Vec<Gain>,
    /// Error budget of the web's thickness over the turn-over.
    pub turn_over: Option<TurnOver>,
    /// Why the web could not be worked out somewhere: the limits on it were not held there.
    pub web_error: Option<WebError>,
}

/// One clamping of the part.
#[derive(Clone, Debug, PartialEq)]
pub struct Setup {
    /// The face that looks at the spindle.
    pub face_up: Face,
    /// Row id of the hold.
    pub hold: String,
    /// Row id of the backing under the web (`none` where there is nothing to back).
    pub backing: String,
    /// Whether the boss is bolted down.
    pub boss_bolted: bool,
    /// Thickness of the stock as it is clamped.
    pub stock: Length,
    /// The cuts.
    pub steps: Vec<Step>,
}

/// One cut with its numbers, as they are typed into a path program.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// Number on the sheet, from 1.
    pub number: u32,
    /// What is cut.
    pub task: TaskKind,
    /// How.
    pub method: MethodId,
    /// Row of the rack.
    pub cutter: u8,
    /// Spindle speed, already as typed.
    pub n: SpindleSpeed,
    /// Feed rate, already as typed.
    pub vf: Speed,
    /// Feed per tooth that follows from them.
    pub fz: Length,
    /// Surface speed that follows.
    pub vc: Speed,
    /// Stepover, already as typed.
    pub ae: Length,
    /// Step-down, already as typed.
    pub ap: Length,
    /// How many levels.
    pub levels: u32,
    /// Height where the cut starts and ends, above the face that the part lies on in this setup.
    pub z: (Length, Length),
    /// Allowance left on walls and on the floor.
    pub leave: (Length, Length),
    /// How the cutter gets in.
    pub entry: Entry,
    /// Feed rate of the first pass of a level, at full width, where it has to be lower.
    pub opening_feed: Option<Speed>,
    /// Feed rate in corners, where it has to be lower.
    pub corner_feed: Option<Speed>,
    /// Time of this step without cutter change.
    pub time: Duration,
    /// Length of the cutter's path at feed.
    pub path: Length,
    /// Loads at the likely value of everything.
    pub loads: Loads,
    /// What the web is like under this cut.
    pub web: Option<WebReport>,
    /// The ribs beside the slots, where slots are cut.
    pub rib: Option<RibReport>,
    /// Every limit, the closest first.
    pub findings: Vec<Finding>,
    /// What else was worked out for this task, and why it was set aside.
    pub considered: Vec<Considered>,
    /// Whether it will sing; none for drills.
    pub stability: Option<StabilityReport>,
    /// How to find the depth that runs quietly.
    pub listen: Option<Listen>,
    /// Ids of the cautions of this step.
    pub cautions: Vec<String>,
}

impl Step {
    /// Whether a row of the rack is used in this step: as its cutter, or to drill its holes.
    pub fn uses(&self, row: u8) -> bool {
        let drilled = matches!(self.entry, Entry::Drilled { drill, .. } if drill == row);
        self.cutter == row || drilled
    }
}

/// How the cutter gets to depth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Entry {
    /// From outside the stock, sideways.
    Side,
    /// Down a helix.
    Helix {
        /// Diameter of the hole that the helix opens.
        hole: Length,
        /// Diameter of the circle of the cutter's middle.
        centre_circle: Length,
        /// Depth per turn.
        pitch: Length,
        /// Slope of the path.
        angle: Angle,
        /// Feed of the cutter's middle on the helix.
        centre_feed: Speed,
    },
    /// To and fro along the slot, sloping down.
    Zigzag {
        /// Slope of the path.
        angle: Angle,
        /// Feed on the slope.
        feed: Speed,
    },
    /// Into a hole that was drilled before.
    Drilled {
        /// Diameter of the hole.
        hole: Length,
        /// Row of the drill in the rack.
        drill: u8,
        /// Spindle speed of the drill.
        n: SpindleSpeed,
        /// Feed of the drill.
        feed: Speed,
        /// Depth after which to lift and clear chips.
        peck: Length,
    },
    /// Straight down (drills).
    Plunge {
        /// Feed down.
        feed: Speed,
        /// Depth after which to lift and clear chips.
        peck: Length,
    },
}

/// Loads of a step at likely values.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Loads {
    /// Greatest sideways force in a revolution.
    pub peak_lateral: Force,
    /// Mean sideways force: what the axes feel.
    pub mean_lateral: Force,
    /// Mean force along the tool; negative lifts the work.
    pub mean_axial: Force,
    /// Greatest torque.
    pub torque: Torque,
    /// Power at the cutter.
    pub power: Power,
    /// Mean and greatest chip thickness.
    pub chip: (Length, Length),
    /// Deflection of cutter, holder and machine at the cut.
    pub deflection: Length,
    /// Greatest bending stress in the cutter.
    pub stress: Stress,
}

/// The web under the cutter, in the state that the part is in.
#[derive(Clone, Debug, PartialEq)]
pub struct WebReport {
    /// Thickness that is left under the cut.
    pub thickness: Length,
    /// Stiffness under the cutter at the softest place.
    pub stiffness: Stiffness,
    /// The same without backing.
    pub unbacked: Stiffness,
    /// Stiffness of cutter and machine together, sideways, at the likely value.
    pub chain: Stiffness,
    /// First frequency.
    pub frequency: Frequency,
    /// Tooth passing frequency of the step.
    pub tooth_passing: Frequency,
    /// Where the softest place is, from the middle of the part.
    pub softest: Length,
    /// For clearing: what the other way would meet at its softest place, level by level or in one level from the inside
    /// outwards.
    pub other_way: Option<Stiffness>,
    /// By how much the mesh came out too stiff, as a share: it is set right in the figures above.
    pub error: f64,
}

/// The ribs beside the slots being cut, sideways.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RibReport {
    /// Between two open slots.
    pub open: Stiffness,
    /// While the neighbour is not cut yet.
    pub solid: Stiffness,
}

/// Demand against what is allowed, both in the SI unit of the limit's kind.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measure {
    /// What the cut asks for.
    pub demand: f64,
    /// What is allowed.
    pub allowed: f64,
}

impl Measure {
    /// Demand / allowed; anything that is not a number counts as infinite.
    pub fn utilisation(&self) -> f64 {
        let u = if self.demand <= 0.0 {
            0.0
        } else {
            self.demand / self.allowed
        };
        if u.is_finite() && u >= 0.0 {
            u
        } else {
            f64::INFINITY
        }
    }
}

/// One limit, held against one step.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// The limit.
    pub limit: LimitId,
    /// Whether it can refuse.
    pub severity: Severity,
    /// With everything at its likely value.
    pub at_likely: Measure,
    /// With the unknowns at their bad ends; what counts.
    pub at_worst: Measure,
    /// The unknown whose range costs most, if any does.
    pub set_by: Option<Unknown>,
    /// What would help, with its size.
    pub remedies: Vec<Remedy>,
}

impl Finding {
    /// Utilisation at the bad ends.
    pub fn utilisation(&self) -> f64 {
        self.at_worst.utilisation()
    }
}

/// Something that can be changed to help.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Lever {
    /// Stick-out of the cutter.
    StickOut,
    /// Step-down.
    StepDown,
    /// Stepover.
    Stepover,
    /// Feed per tooth.
    FeedPerTooth,
    /// Spindle speed.
    SpindleSpeed,
    /// Number of flutes.
    Flutes,
    /// Corner radius of the cutter.
    CornerRadius,
    /// Thickness of the web.
    WebThickness,
    /// Clamping force.
    Grip,
    /// A backing under the web.
    Backing,
    /// The boss bolted down.
    BoltedBoss,
    /// Better chip clearing.
    Clearing,
}

/// A lever and what it brings.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Remedy {
    /// What to change.
    pub lever: Lever,
    /// To which value, in the SI unit of the lever.
    pub to: f64,
    /// The finding's utilisation then.
    pub utilisation: f64,
}

/// How to find the depth that runs quietly, by ear.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Listen {
    /// Depth that is quiet at any speed, at likely values.
    pub quiet: Length,
    /// Depth to start at.
    pub start: Length,
    /// Step by which to go deeper while it stays quiet.
    pub increment: Length,
    /// The depth that the strategy reckons with.
    pub planned: Length,
}

/// An answer that was left to a table.
#[derive(Clone, Debug, PartialEq)]
pub struct Defaulted {
    /// The field.
    pub field: FieldId,
    /// The value as text, in the job's units.
    pub value: String,
}

/// Errors that add up in the web's thickness when the part is turned over.
#[derive(Clone, Debug, PartialEq)]
pub struct TurnOver {
    /// Each contribution: id of its row in the numbers table, and size.
    pub parts: Vec<(&'static str, Length)>,
    /// Root of the sum of squares.
    pub total: Length,
    /// Tolerance asked for.
    pub allowed: Option<Length>,
}

/// A reasoned no.
#[derive(Clone, Debug, PartialEq)]
pub struct Refusal {
    /// The task that cannot be done.
    pub task: TaskKind,
    /// Each cutter and method tried, with what stands in its way.
    pub tried: Vec<Considered>,
    /// Limits that cannot be met together: whatever the numbers, one of these is broken.
    pub conflict: Vec<LimitId>,
    /// Cutters and choices that would make the job possible.
    pub gains: Vec<Gain>,
    /// Single changes that would make this task possible, the smallest first.
    pub changes: Vec<Change>,
    /// The orders worked out.
    pub orders: Vec<OrderReport>,
}

/// A single change of an answer that would make the job possible.
#[derive(Clone, Debug, PartialEq)]
pub struct Change {
    /// The answer.
    pub field: FieldId,
    /// Its value now, in the SI unit of the field.
    pub from: f64,
    /// The value that would do.
    pub to: f64,
}
