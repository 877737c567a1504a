//! Acceleration in peeling loops: v2 / r.

use super::{Limit, LimitId, Move, Moves, Needs};
use crate::strategy::{Lever, Measure};
use thinwright_mechanics::slot;

pub(super) const LIMIT: Limit = Limit {
    id: LimitId::LoopAcceleration,
    source: "derived",
    needs: Needs::Numbers,
    moves: Moves::STILL.n(Move::Harder).fz(Move::Harder),
    bad_ends: &[],
    levers: &[Lever::FeedPerTooth],
    measure: |case| {
        let radius = case.pass.loop_radius?;
        Some(Measure {
            demand: slot::loop_acceleration(case.choice.vf, radius),
            allowed: case.job.machine.acceleration,
        })
    },
};
