//! Lengths of clearing paths: by a profile of the region at first, by real offsets for what is taken.

use crate::job::Cutter;
use crate::pass::Detail;
use crate::plan::LEAST_SHARE;
use crate::shape::{Target, TaskShape};

/// One level of clearing, m.
#[derive(Clone, Copy, Debug)]
pub(super) struct Level {
    /// Path of all rings.
    pub(super) path: f64,
    /// Path of the innermost ring, which is cut at full width.
    pub(super) opening: f64,
}

/// One level of offset passes at stepover `ae` (m).
pub(super) fn level(shape: &TaskShape, cutter: &Cutter, ae: f64, detail: Detail) -> Level {
    let Target::Region { area, .. } = &shape.target else {
        return Level {
            path: 0.0,
            opening: 0.0,
        };
    };
    let (path, opening) = match detail {
        Detail::Exact => shape.lengths.passes(area, shape.widest, (cutter.d, ae)),
        Detail::Least => {
            let profile = shape.lengths.profile(area, shape.widest);
            let (path, last) = profile.passes(cutter.d * 500.0, ae * 1.0e3);
            let share = LEAST_SHARE * 1.0e-3;
            (share * path, share * last)
        }
    };
    Level { path, opening }
}

/// Once along all walls of the region, m.
pub(super) fn walls(shape: &TaskShape, cutter: &Cutter) -> f64 {
    match &shape.target {
        Target::Region { area, .. } => shape.lengths.walls(area, cutter.d),
        Target::Slots(_) | Target::Around(_) | Target::Over(_) => 0.0,
    }
}

/// Once around the outside of an outline with a cutter's middle, m.
pub(super) fn around(shape: &TaskShape, cutter: &Cutter) -> f64 {
    match &shape.target {
        Target::Around(area) => shape.lengths.around(area, cutter.d),
        Target::Slots(_) | Target::Region { .. } | Target::Over(_) => 0.0,
    }
}
