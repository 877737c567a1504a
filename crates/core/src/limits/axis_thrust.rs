//! Mean sideways force against the thrust at which an axis stalls or loses steps.

use super::{Limit, LimitId, Move, Moves, Needs};
use crate::estimate::{BadEnd, Unknown};
use crate::strategy::{Lever, Measure};

pub(super) const LIMIT: Limit = Limit {
    id: LimitId::AxisThrust,
    source: "commonpractice",
    needs: Needs::Load,
    moves: Moves::STILL.fz(Move::Harder),
    bad_ends: &[(Unknown::Kc, BadEnd::High), (Unknown::Thrust, BadEnd::Low)],
    levers: &[Lever::StepDown, Lever::Stepover, Lever::FeedPerTooth],
    measure: |case| {
        Some(Measure {
            demand: case.load.worst.mean_lateral * case.force_factor(),
            allowed: case.get(Unknown::Thrust),
        })
    },
};
