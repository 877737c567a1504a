//! Grip: what friction, screws or stops hold against the greatest sideways force.

use super::{Limit, LimitId, Move, Moves, Needs};
use crate::estimate::{BadEnd, Unknown};
use crate::strategy::{Lever, Measure};

pub(super) const LIMIT: Limit = Limit {
    id: LimitId::Holding,
    source: "derived",
    needs: Needs::Load,
    moves: Moves::STILL.fz(Move::Harder),
    bad_ends: &[
        (Unknown::Kc, BadEnd::High),
        (Unknown::Runout, BadEnd::High),
        (Unknown::Friction, BadEnd::Low),
        (Unknown::Grip, BadEnd::Low),
    ],
    levers: &[Lever::Grip, Lever::StepDown],
    measure: |case| {
        let peak = case.hardest().peak_lateral;
        let lift = case.load.push_pull.1 * case.force_factor();
        Some(Measure {
            demand: peak * case.force_factor() * case.job.numbers.hold_safety,
            allowed: crate::grip::capacity(case, lift),
        })
    },
};
