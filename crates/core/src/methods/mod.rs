//! Methods: the ways to cut a task. One method a file; this one lists them.

mod common;
mod id;
mod rings;

pub(crate) use common::{SAME_WIDTH, corner_share};
pub use id::{METHOD_KEYS, MethodId, Rejection};

use crate::choice::Choice;
use crate::job::{Cutter, Job};
use crate::pass::{Detail, Pass};
use crate::shape::TaskShape;
use crate::strategy::Entry;

macro_rules! methods {
    ($($file:ident),* $(,)?) => {
        $(mod $file;)*
        /// Every method.
        pub const METHODS: &[Method] = &[$($file::METHOD),*];
    };
}

methods! {
    facing, bore_helix, offset_clearing, light_clearing, floor_skim, wall_skim,
    full_width, zigzag, side_passes, peeling, drilled_ends, outline_groove, outline_tabs,
}

/// A method: what it fits, what to try, what the cutter meets.
pub struct Method {
    /// Which.
    pub id: MethodId,
    /// Whether a cutter can do the task this way at all.
    pub fits: fn(&Job, &TaskShape, &Cutter) -> Result<(), Rejection>,
    /// The least and the greatest stepover worth trying, as shares of the diameter; both 1 for the full width.
    pub stepovers: fn(&Job, &TaskShape, &Cutter) -> (f64, f64),
    /// The greatest step-down worth trying, m.
    pub deepest: fn(&Job, &TaskShape, &Cutter) -> f64,
    /// What the cutter meets and how far it travels.
    pub pass: fn(&Job, &TaskShape, &Cutter, &Choice, Detail) -> Pass,
    /// How it gets to depth.
    pub entry: fn(&Job, &TaskShape, &Cutter, &Choice) -> Entry,
}
