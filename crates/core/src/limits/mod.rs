//! Limits: what a cut asks for against what is allowed. One limit a file; this one lists them.

mod hold;
mod id;
mod remedy;

pub(crate) use hold::{Warnings, at_worst, warnings};
pub use hold::{finding, utilisation};
pub use id::{LimitId, LimitSpec, Severity};
pub(crate) use remedy::remedies;

use crate::case::Case;
use crate::estimate::{BadEnd, Unknown};
use crate::strategy::{Lever, Measure};
use crate::vibration::TipKnown;

macro_rules! limits {
    ($($file:ident),* $(,)?) => {
        $(mod $file;)*
        /// Every limit, cheapest first.
        pub const LIMITS: &[Limit] = &[$($file::LIMIT),*];
    };
}

limits! {
    flute_length, reach, stick_out, shank_clearance, fillet, surface_speed, rubbing, heat, tool_length,
    depth_to_width, runout_share, feed_reliable, practice, entry_angle, loop_acceleration, chip_room, roughness,
    spindle_power, axis_thrust, breakage, holding, rough_deflection, slot_width, wall_lean, rib_softness,
    web_softness, web_tone, web_slenderness, web_thickness, web_stress, web_lift, chatter, web_song, stability,
}

/// The bad ends that stability is told at: those of the limit that holds.
pub(crate) fn stability_ends(known: TipKnown) -> &'static [(Unknown, BadEnd)] {
    match known {
        TipKnown::Measured => stability::LIMIT.bad_ends,
        TipKnown::Nothing | TipKnown::Frequency => chatter::LIMIT.bad_ends,
    }
}

/// Whether tooth passing at a spindle speed, 1/s, or a low multiple, comes near the web's tone in some world.
pub(crate) fn drums(case: &Case, n: f64) -> bool {
    let choice = crate::choice::Choice { n, ..*case.choice };
    let there = Case {
        choice: &choice,
        ..*case
    };
    at_worst(&web_tone::LIMIT, &there).is_some_and(|m| m.utilisation() > 1.0)
}

/// What a limit looks at: it decides when it is held.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Needs {
    /// Only cutter, task and web: no numbers of the step change it.
    Cutter,
    /// The numbers of the step.
    Numbers,
    /// The loads of the step.
    Load,
}

/// How the utilisation of a limit moves as one number of a step grows and the others stay, where it is above a half:
/// what lies below rules nothing out, and forces of two signs may cancel there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Move {
    /// It stays.
    Still,
    /// It grows, or stays.
    Harder,
    /// It falls, or stays.
    Easier,
    /// It goes one way only; which, depends on the job.
    OneWay,
    /// Nothing is promised.
    Unknown,
}

/// How a limit moves with spindle speed (at the same feed per tooth) and with feed per tooth: what the search rules
/// numbers out by. A test holds every promise against candidates drawn by lot.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Moves {
    /// With spindle speed.
    pub n: Move,
    /// With feed per tooth.
    pub fz: Move,
}

impl Moves {
    /// Neither moves it.
    pub const STILL: Moves = Moves {
        n: Move::Still,
        fz: Move::Still,
    };

    /// The same, but so with spindle speed.
    pub const fn n(self, n: Move) -> Moves {
        Moves { n, ..self }
    }

    /// The same, but so with feed per tooth.
    pub const fn fz(self, fz: Move) -> Moves {
        Moves { fz, ..self }
    }
}

/// A limit: data and one function.
pub struct Limit {
    /// Which.
    pub id: LimitId,
    /// Literature key of the rule or formula.
    pub source: &'static str,
    /// What has to be worked out before it can be held.
    pub needs: Needs,
    /// How it moves with the numbers of the step.
    pub moves: Moves,
    /// The bad ends of what it depends on.
    pub bad_ends: &'static [(Unknown, BadEnd)],
    /// What can help, the most usual first.
    pub levers: &'static [Lever],
    /// The limit itself; `None` where it does not apply.
    pub measure: fn(&Case) -> Option<Measure>,
}
