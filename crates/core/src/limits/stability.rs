//! The depth that is quiet at the step's speed, where frequency and stiffness at the tip were measured: it steers. It refuses
//! nothing: damping and cutting force stay estimates, and at their bad ends shops cut far deeper every day.

use super::{Limit, LimitId, Move, Moves, Needs};
use crate::estimate::{BadEnd, Unknown};
use crate::strategy::{Lever, Measure};
use crate::quiet::quiet_here;
use crate::vibration::{TipKnown, tip_known};

pub(super) const LIMIT: Limit = Limit {
    id: LimitId::Stability,
    source: "szalai2006",
    needs: Needs::Load,
    // A thicker chip presses less for each micrometre more.
    moves: Moves::STILL.n(Move::Unknown).fz(Move::Easier),
    bad_ends: &[
        (Unknown::Kc, BadEnd::High),
        (Unknown::MachineStiffness, BadEnd::Low),
        (Unknown::Damping, BadEnd::Low),
    ],
    levers: &[
        Lever::SpindleSpeed,
        Lever::StepDown,
        Lever::Stepover,
        Lever::StickOut,
        Lever::Flutes,
    ],
    measure: |case| {
        (tip_known(case) == TipKnown::Measured).then_some(())?;
        Some(Measure {
            demand: case.choice.ap,
            allowed: quiet_here(case)?,
        })
    },
};
