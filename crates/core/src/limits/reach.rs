//! Depth of the cut within the reach below the shank: deeper, a thicker shank meets the wall of its own cut.

use super::{Limit, LimitId, Moves, Needs};
use crate::strategy::Measure;
use crate::task::TaskKind;

pub(super) const LIMIT: Limit = Limit {
    id: LimitId::Reach,
    source: "iso13399",
    needs: Needs::Numbers,
    moves: Moves::STILL,
    bad_ends: &[],
    levers: &[],
    measure: |case| {
        let (cutter, shape) = (case.cutter, case.shape);
        // Over open ground, or with a shank no thicker than the cut, nothing is in the way.
        if cutter.shank <= cutter.d || shape.task.kind == TaskKind::Facing {
            return None;
        }
        Some(Measure {
            demand: if shape.room.is_some() {
                shape.task.depth()
            } else {
                shape.total_depth()
            },
            allowed: cutter.reach,
        })
    },
};
