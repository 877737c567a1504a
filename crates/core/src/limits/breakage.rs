//! Greatest bending stress in the cutter against the rupture strength of what it is made of.

use super::{Limit, LimitId, Move, Moves, Needs};
use crate::estimate::{BadEnd, Unknown};
use crate::strategy::{Lever, Measure};

pub(super) const LIMIT: Limit = Limit {
    id: LimitId::Breakage,
    source: "derived",
    needs: Needs::Load,
    moves: Moves::STILL.fz(Move::Harder),
    bad_ends: &[
        (Unknown::Kc, BadEnd::High),
        (Unknown::Runout, BadEnd::High),
        (Unknown::Rupture, BadEnd::Low),
    ],
    levers: &[Lever::StepDown, Lever::FeedPerTooth, Lever::StickOut],
    measure: |case| {
        let rupture =
            case.cutter.material.rupture_strength.likely.si() * case.get(Unknown::Rupture);
        Some(Measure {
            demand: case.bending() * case.force_factor() * case.job.numbers.tool_breakage_safety,
            allowed: rupture,
        })
    },
};
