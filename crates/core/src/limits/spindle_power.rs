//! Power at the spindle, at the speed that it turns.

use super::{Limit, LimitId, Move, Moves, Needs};
use crate::estimate::{BadEnd, Unknown};
use crate::strategy::{Lever, Measure};
use thinwright_mechanics::spindle;

pub(super) const LIMIT: Limit = Limit {
    id: LimitId::SpindlePower,
    source: "elhofy2013",
    needs: Needs::Load,
    moves: Moves::STILL.n(Move::Unknown).fz(Move::Harder),
    bad_ends: &[
        (Unknown::Kc, BadEnd::High),
        (Unknown::Efficiency, BadEnd::Low),
    ],
    levers: &[Lever::Stepover, Lever::StepDown, Lever::SpindleSpeed],
    measure: |case| {
        let torque = case.load.worst.mean_torque * case.force_factor();
        let motor = spindle::available_power(&case.job.machine.curve, case.choice.n);
        Some(Measure {
            demand: core::f64::consts::TAU * case.choice.n * torque,
            allowed: motor * case.get(Unknown::Efficiency),
        })
    },
};
