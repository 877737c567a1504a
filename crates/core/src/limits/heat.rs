//! Chip load high enough to carry the heat away, in what melts or burns.

use super::{Limit, LimitId, Move, Moves, Needs};
use crate::strategy::{Lever, Measure};

pub(super) const LIMIT: Limit = Limit {
    id: LimitId::Heat,
    source: "commonpractice",
    needs: Needs::Numbers,
    moves: Moves::STILL.fz(Move::Easier),
    bad_ends: &[],
    levers: &[Lever::FeedPerTooth, Lever::SpindleSpeed],
    measure: |case| {
        let least = case.job.material.heat?;
        Some(Measure {
            demand: least.si(),
            allowed: case.choice.fz,
        })
    },
};
