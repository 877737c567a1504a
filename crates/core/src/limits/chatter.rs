//! The depth that is quiet at any speed: something to listen for, never a veto while nothing is measured.

use super::{Limit, LimitId, Move, Moves, Needs};
use crate::estimate::{BadEnd, Unknown};
use crate::listen;
use crate::strategy::{Lever, Measure};

pub(super) const LIMIT: Limit = Limit {
    id: LimitId::Chatter,
    source: "altintas1995",
    needs: Needs::Load,
    moves: Moves::STILL.fz(Move::Unknown),
    bad_ends: &[
        (Unknown::Kc, BadEnd::High),
        (Unknown::MachineStiffness, BadEnd::Low),
        (Unknown::Damping, BadEnd::Low),
    ],
    levers: &[Lever::StepDown, Lever::StickOut],
    measure: |case| {
        Some(Measure {
            demand: case.choice.ap,
            allowed: listen::quiet_depth(case)?,
        })
    },
};
