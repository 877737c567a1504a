//! Shank past the recess wall, where a slot lies deeper than the reach below the face.

use super::{Limit, LimitId, Moves, Needs};
use crate::strategy::Measure;

pub(super) const LIMIT: Limit = Limit {
    id: LimitId::ShankClearance,
    source: "derived",
    needs: Needs::Numbers,
    moves: Moves::STILL,
    bad_ends: &[],
    levers: &[],
    measure: |case| {
        let (cutter, shape) = (case.cutter, case.shape);
        let clears = shape.total_depth() <= cutter.reach || cutter.shank <= cutter.d;
        if shape.room.is_none() || clears {
            return None;
        }
        // The cutter's middle runs within half the difference of slot and cutter from the slot's middle line.
        let aside = 0.5 * (shape.slot_width() - cutter.d).max(0.0);
        Some(Measure {
            demand: cutter.shank / 2.0 + case.job.numbers.shank_clearance_mm * 1.0e-3,
            allowed: (shape.wall_distance - aside).max(0.0),
        })
    },
};
