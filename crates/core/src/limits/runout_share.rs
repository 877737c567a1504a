//! Runout against feed per tooth: above it, one flute does all the work.

use super::{Limit, LimitId, Move, Moves, Needs};
use crate::estimate::{BadEnd, Unknown};
use crate::strategy::{Lever, Measure};

pub(super) const LIMIT: Limit = Limit {
    id: LimitId::RunoutShare,
    source: "commonpractice",
    needs: Needs::Numbers,
    moves: Moves::STILL.fz(Move::Easier),
    bad_ends: &[(Unknown::Runout, BadEnd::High)],
    levers: &[Lever::FeedPerTooth],
    measure: |case| {
        (case.cutter.z > 1).then(|| Measure {
            demand: case.get(Unknown::Runout),
            allowed: case.choice.fz * case.job.numbers.runout_to_feed,
        })
    },
};
