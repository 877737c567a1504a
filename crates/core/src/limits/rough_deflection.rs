//! Deflection in roughing against the allowance, less a skin that the finishing cut must find.

use super::{Limit, LimitId, Move, Moves, Needs};
use crate::estimate::{BadEnd, Unknown};
use crate::strategy::{Lever, Measure};
use crate::task::TaskKind;

pub(super) const LIMIT: Limit = Limit {
    id: LimitId::RoughDeflection,
    source: "commonpractice",
    needs: Needs::Load,
    moves: Moves::STILL.fz(Move::Harder),
    bad_ends: &[
        (Unknown::Kc, BadEnd::High),
        (Unknown::MachineStiffness, BadEnd::Low),
    ],
    levers: &[Lever::StepDown, Lever::FeedPerTooth, Lever::StickOut],
    measure: |case| {
        if case.shape.task.kind != TaskKind::Clearing {
            return None;
        }
        let skin = case.job.numbers.safe_skin_mm * 1.0e-3;
        Some(Measure {
            demand: case.load.usual.mean_normal.abs() * case.force_factor() * case.chain(),
            allowed: (case.shape.leave.0 - skin).max(0.0),
        })
    },
};
