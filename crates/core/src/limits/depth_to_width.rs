//! Depth of a slot to its width.

use super::{Limit, LimitId, Moves, Needs};
use crate::strategy::{Lever, Measure};

pub(super) const LIMIT: Limit = Limit {
    id: LimitId::DepthToWidth,
    source: "commonpractice",
    needs: Needs::Cutter,
    moves: Moves::STILL,
    bad_ends: &[],
    levers: &[Lever::WebThickness],
    measure: |case| {
        let width = case.shape.slot_width();
        width.is_finite().then(|| Measure {
            demand: case.shape.task.depth() / width,
            allowed: case.job.numbers.slot_depth_over_width_care,
        })
    },
};
