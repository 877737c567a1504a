//! Lean of the finished wall: what the cutter bends more at its tip than at the top of the step-down.

use super::{Limit, LimitId, Move, Moves, Needs};
use crate::case::beam;
use crate::estimate::{BadEnd, Unknown};
use crate::strategy::{Lever, Measure};
use crate::task::TaskKind;
use thinwright_mechanics::tool_beam;

pub(super) const LIMIT: Limit = Limit {
    id: LimitId::WallLean,
    source: "derived",
    needs: Needs::Load,
    moves: Moves::STILL.fz(Move::Harder),
    bad_ends: &[(Unknown::Kc, BadEnd::High)],
    levers: &[Lever::StepDown, Lever::StickOut, Lever::FeedPerTooth],
    measure: |case| {
        if case.shape.task.kind != TaskKind::WallSkim {
            return None;
        }
        let beam = beam(case.cutter);
        let half = 0.5 * case.choice.ap;
        let tip = tool_beam::compliance_at(&beam, half, 0.0);
        let top = tool_beam::compliance_at(&beam, half, case.choice.ap.min(beam.stick_out));
        Some(Measure {
            demand: case.load.usual.mean_normal.abs() * case.force_factor() * (tip - top).max(0.0),
            allowed: case.job.numbers.wall_lean_mm * 1.0e-3,
        })
    },
};
