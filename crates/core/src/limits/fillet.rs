//! Corner radius of the cutter within the fillet that the drawing allows where wall and floor meet.

use super::{Limit, LimitId, Moves, Needs};
use crate::strategy::Measure;
use crate::task::TaskKind;

pub(super) const LIMIT: Limit = Limit {
    id: LimitId::Fillet,
    source: "iso13399",
    needs: Needs::Numbers,
    moves: Moves::STILL,
    bad_ends: &[],
    levers: &[],
    measure: |case| {
        let allowed = case.job.wanted.fillet?;
        (case.shape.task.kind == TaskKind::WallSkim).then_some(Measure {
            demand: case.cutter.corner,
            allowed,
        })
    },
};
