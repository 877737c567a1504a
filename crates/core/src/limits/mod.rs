//! Limits: what a cut asks for against what is allowed. One limit a file; this one lists them.

mod hold;
mod id;
mod remedy;

pub(crate) use hold::{Warnings, first_broken, warnings};
pub use hold::{finding, utilisation};
pub use id::{LimitId, LimitSpec, Severity};
pub(crate) use remedy::remedies;

use crate::case::Case;
use crate::estimate::{BadEnd, Unknown};
use crate::strategy::{Lever, Measure};

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
    web_softness, web_tone, web_slenderness, web_thickness, web_stress, web_lift, chatter,
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

/// A limit: data and one function.
pub struct Limit {
    /// Which.
    pub id: LimitId,
    /// Literature key of the rule or formula.
    pub source: &'static str,
    /// What has to be worked out before it can be held.
    pub needs: Needs,
    /// The bad ends of what it depends on.
    pub bad_ends: &'static [(Unknown, BadEnd)],
    /// What can help, the most usual first.
    pub levers: &'static [Lever],
    /// The limit itself; `None` where it does not apply.
    pub measure: fn(&Case) -> Option<Measure>,
}
