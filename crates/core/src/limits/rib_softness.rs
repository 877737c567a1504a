//! Give of the rib beside the slot being cut, with its neighbour already open, against the slot's tolerance.

use super::{Limit, LimitId, Move, Moves, Needs};
use crate::estimate::{BadEnd, Unknown};
use crate::strategy::{Lever, Measure};

pub(super) const LIMIT: Limit = Limit {
    id: LimitId::RibSoftness,
    source: "gere2004",
    needs: Needs::Load,
    moves: Moves::STILL.fz(Move::Harder),
    bad_ends: &[(Unknown::Kc, BadEnd::High)],
    levers: &[Lever::StepDown, Lever::FeedPerTooth],
    measure: |case| {
        let allowed = case.slot_tolerance()?;
        let rib = case.known.rib.filter(|_| !case.shape.slots().is_empty())?;
        let forces = case.load.wall.unwrap_or(case.load.usual);
        Some(Measure {
            demand: forces.mean_normal.abs() * case.force_factor() * rib.open,
            allowed,
        })
    },
};
