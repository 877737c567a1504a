//! Feed within what the machine cuts reliably at.

use super::{Limit, LimitId, Move, Moves, Needs};
use crate::strategy::{Lever, Measure};

pub(super) const LIMIT: Limit = Limit {
    id: LimitId::FeedReliable,
    source: "commonpractice",
    needs: Needs::Numbers,
    moves: Moves::STILL.n(Move::Harder).fz(Move::Harder),
    bad_ends: &[],
    levers: &[Lever::FeedPerTooth, Lever::SpindleSpeed],
    measure: |case| {
        Some(Measure {
            demand: case.choice.vf,
            // A typed grid may step over the limit by half a step.
            allowed: case.job.machine.feed.max(case.job.grid.vf),
        })
    },
};
