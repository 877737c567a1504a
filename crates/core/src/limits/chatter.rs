//! The depth that is quiet at any speed, or at this one where a tone was tapped: something to listen for, never a veto while
//! the stiffness is not measured.

use super::{Limit, LimitId, Move, Moves, Needs};
use crate::estimate::{BadEnd, Unknown};
use crate::strategy::{Lever, Measure};
use crate::quiet::{quiet, quiet_here};
use crate::vibration::{TipKnown, tip_known};

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
    levers: &[
        Lever::StepDown,
        Lever::Stepover,
        Lever::StickOut,
        Lever::Flutes,
    ],
    measure: |case| {
        let allowed = match tip_known(case) {
            TipKnown::Nothing => quiet(case)?,
            // Speeds can be picked; how deep is a guess as long as the stiffness is.
            TipKnown::Frequency => quiet_here(case)?,
            TipKnown::Measured => return None,
        };
        Some(Measure {
            demand: case.choice.ap,
            allowed,
        })
    },
};
