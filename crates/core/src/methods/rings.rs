//! Lengths of clearing paths: by area and width to rank candidates, by real offsets to report.

use crate::job::Cutter;
use crate::pass::Detail;
use crate::plan::{clearing, wall_pass_length};
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
    if detail == Detail::Rough {
        return Level {
            path: shape.area / ae,
            opening: shape.opening,
        };
    }
    let (path, opening) = shape.lengths.get((cutter.d, ae), || {
        let rings = clearing(area, cutter.d * 500.0, ae * 1.0e3);
        let last = rings.rings.last().map_or(0.0, |r| r.length_mm);
        (rings.total_length_mm * 1.0e-3, last * 1.0e-3)
    });
    Level { path, opening }
}

/// Once along all walls of the region, m.
pub(super) fn walls(shape: &TaskShape, cutter: &Cutter, detail: Detail) -> f64 {
    let Target::Region { area, .. } = &shape.target else {
        return 0.0;
    };
    let mm = match detail {
        Detail::Rough => area.perimeter_mm(),
        Detail::Exact => wall_pass_length(area, cutter.d * 500.0),
    };
    mm * 1.0e-3
}

/// Once around the outside of an outline with a cutter's middle, m.
pub(super) fn around(shape: &TaskShape, cutter: &Cutter, detail: Detail) -> f64 {
    let Target::Around(area) = &shape.target else {
        return 0.0;
    };
    let mm = match detail {
        Detail::Rough => area.perimeter_mm() + core::f64::consts::PI * cutter.d * 1.0e3,
        Detail::Exact => area.offset(cutter.d * 500.0).perimeter_mm(),
    };
    mm * 1.0e-3
}
