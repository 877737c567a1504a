//! A job: the answers, read and made whole with the tables. SI throughout, planar coordinates in mm.

use crate::estimate::{Estimate, Estimates, Known, UNKNOWNS};
use crate::part::Part;
use crate::pin::Pins;
use crate::quiet_book::QuietBook;
use crate::refuse::Tables;
use crate::strategy::Defaulted;
use thinwright_catalog::{
    BackingRow, ClearingRow, CutterMaterialRow, HoldRow, MachineRow, MaterialRow, Numbers,
};
use thinwright_mechanics::spindle::CurvePoint;
use thinwright_quantity::UnitSystem;

/// Everything that a strategy depends on.
#[derive(Clone, Debug, PartialEq)]
pub struct Job {
    /// What the part is called.
    pub name: String,
    /// The unit system of typed values.
    pub units: UnitSystem,
    /// The part.
    pub part: Part,
    /// The row of the material.
    pub material: MaterialRow,
    /// Tangent of the steepest ramp that the material takes.
    pub steepest: f64,
    /// How the blank was made.
    pub form: Form,
    /// The machine.
    pub machine: Machine,
    /// The cutters at hand.
    pub rack: Vec<Cutter>,
    /// Holding.
    pub holding: Holding,
    /// Tolerances asked for.
    pub wanted: Wanted,
    /// What is not known for sure.
    pub estimates: Estimates,
    /// The same as they were before anything was learned, where anything was: limits of safety are held there.
    pub(crate) untaught: Option<Box<Estimates>>,
    /// What is taken as measured, to see what measuring it would bring.
    pub(crate) settled: [bool; UNKNOWNS.len()],
    /// A cut that runs well here.
    pub good_cut: Option<GoodCut>,
    /// What the person keeps in their own hands.
    pub pins: Pins,
    /// The values that a person types.
    pub grid: Grid,
    /// Margins and defaults.
    pub numbers: Numbers,
    /// Answers that were left to a table.
    pub defaults: Vec<Defaulted>,
    /// Quiet depths that were worked out.
    pub(crate) quiet: QuietBook,
    /// What it was read from, to try changes.
    pub(crate) tables: Tables,
}

/// How a blank was made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// Not known: taken as rolled.
    Unknown,
    /// Rolled: stress inside.
    Rolled,
    /// Stretched after rolling: little stress.
    Stretched,
    /// Cast plate: least stress.
    Cast,
    /// Extruded.
    Extruded,
}

/// A machine: its class with the person's own figures over it.
#[derive(Clone, Debug, PartialEq)]
pub struct Machine {
    /// The row of its class.
    pub class: MachineRow,
    /// Least and greatest spindle speed, 1/s.
    pub n: (f64, f64),
    /// Motor power over speed.
    pub curve: Vec<CurvePoint>,
    /// Feed at which it still cuts reliably, m/s.
    pub feed: f64,
    /// Rapid feed, m/s.
    pub rapid: f64,
    /// Acceleration of the axes, m/s2.
    pub acceleration: f64,
    /// Diameter of the collet nut, m.
    pub nut: f64,
    /// Backlash, m.
    pub backlash: f64,
    /// Time of a cutter change, s.
    pub change: f64,
    /// Frequency at which the spindle rings, Hz.
    pub tone: Option<f64>,
    /// What a push test gave.
    pub push: Option<Push>,
}

/// What a push test gave along each axis that was pushed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Push {
    /// Along X, Y and Z.
    pub axes: [Option<Pushed>; 3],
}

impl Push {
    /// The stiffness of the softer of the two directions sideways that were pushed.
    pub fn softer(&self) -> Option<Estimate> {
        let sideways = self.axes[..2].iter().flatten().map(|p| p.stiffness);
        sideways.min_by(|a, b| a.likely.total_cmp(&b.likely))
    }

    /// The greater lost motion of the two directions sideways, m.
    pub fn lost(&self) -> Option<f64> {
        let sideways = self.axes[..2].iter().flatten().map(|p| p.lost);
        sideways.reduce(f64::max)
    }
}

/// What a push test gave along one axis.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pushed {
    /// Stiffness, N/m.
    pub stiffness: Estimate,
    /// Movement that did not come back, m: backlash and friction.
    pub lost: f64,
}

/// How a cutter rings when it is tapped.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ring {
    /// Frequency along X and along Y, Hz.
    pub frequency: (f64, f64),
    /// Damping ratio, if it was found.
    pub damping: Option<f64>,
}

/// A cutter of the rack.
#[derive(Clone, Debug, PartialEq)]
pub struct Cutter {
    /// Row in the rack.
    pub row: u8,
    /// A drill, not an end mill.
    pub drill: bool,
    /// Cutting diameter, m.
    pub d: f64,
    /// Flutes.
    pub z: u32,
    /// Flute length, m.
    pub flute_length: f64,
    /// Reach below the shank, m.
    pub reach: f64,
    /// Shank diameter, m.
    pub shank: f64,
    /// Stick-out, m.
    pub stick_out: f64,
    /// Corner radius, m.
    pub corner: f64,
    /// Helix angle, rad.
    pub helix: f64,
    /// Carbide, not high-speed steel.
    pub carbide: bool,
    /// Cuts to its centre.
    pub centre_cutting: bool,
    /// What it is made of.
    pub material: CutterMaterialRow,
    /// Greatest spindle speed that is marked on it, 1/s.
    pub marked: Option<f64>,
    /// How it rings, if it was tapped.
    pub ring: Option<Ring>,
}

/// How the part is held.
#[derive(Clone, Debug, PartialEq)]
pub struct Holding {
    /// Hold of the first setup.
    pub first: HoldRow,
    /// Hold after the part is turned over.
    pub second: HoldRow,
    /// The backings that the person can make: `none` and the best one.
    pub backings: Vec<BackingRow>,
    /// Whether the boss can be bolted down.
    pub boss_bolted: bool,
    /// How chips leave.
    pub chips: ClearingRow,
    /// How many parts.
    pub quantity: u32,
}

/// Tolerances, m; `None` where nothing was asked.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wanted {
    /// Web thickness, plus or minus.
    pub web: Option<f64>,
    /// Slot width, plus or minus.
    pub slot: Option<f64>,
    /// Flatness.
    pub flatness: Option<f64>,
    /// Roughness Rz of floors.
    pub finish: Option<f64>,
    /// Largest fillet where wall and floor meet.
    pub fillet: Option<f64>,
}

/// A cut that runs well on this machine in this material.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GoodCut {
    /// Diameter, m.
    pub d: f64,
    /// Flutes.
    pub z: u32,
    /// Spindle speed, 1/s.
    pub n: f64,
    /// Feed, m/s.
    pub vf: f64,
    /// Stepover, m.
    pub ae: f64,
    /// Step-down, m.
    pub ap: f64,
}

/// The steps in which a person types numbers, SI.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Grid {
    /// Spindle speed, 1/s.
    pub n: f64,
    /// Feed, m/s.
    pub vf: f64,
    /// Stepover and step-down, m.
    pub depth: f64,
}

impl Job {
    /// Least and greatest spindle speed for a cutter, 1/s: the machine's, but no faster than what is marked on the cutter,
    /// unless the machine cannot turn as slowly.
    pub fn speeds_of(&self, cutter: &Cutter) -> (f64, f64) {
        let (least, most) = self.machine.n;
        let most = cutter
            .marked
            .map_or(most, |marked| most.min(marked).max(least));
        (least, most)
    }

    /// Whether the machine has backlash worth a thought when choosing the cutting direction.
    pub fn loose(&self) -> bool {
        self.machine.backlash > self.numbers.backlash_climb_um * 1.0e-6
    }

    /// How well a range is known.
    pub fn known(&self, unknown: crate::estimate::Unknown) -> Known {
        self.estimates[unknown as usize].known
    }
}
