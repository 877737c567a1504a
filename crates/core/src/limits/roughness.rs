//! Roughness of the floor against the Rz asked for: from feed per revolution and the cutter's corner radius.

use super::{Limit, LimitId, Move, Moves, Needs};
use crate::strategy::{Lever, Measure};
use crate::task::TaskKind;
use thinwright_mechanics::surface;

pub(super) const LIMIT: Limit = Limit {
    id: LimitId::Roughness,
    source: "gate2002",
    needs: Needs::Numbers,
    moves: Moves::STILL.fz(Move::Harder),
    bad_ends: &[],
    levers: &[Lever::FeedPerTooth],
    measure: |case| {
        let allowed = case.job.wanted.finish?;
        if case.shape.task.kind != TaskKind::FloorSkim {
            return None;
        }
        let feed = case.choice.fz * f64::from(case.cutter.z);
        // A sharp corner is in truth a small radius.
        let radius = case
            .cutter
            .corner
            .max(case.job.numbers.sharp_corner_mm * 1.0e-3);
        Some(Measure {
            demand: surface::floor_roughness(feed, radius),
            allowed,
        })
    },
};
