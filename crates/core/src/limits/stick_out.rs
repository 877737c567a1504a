//! Depth below the surface around within the stick-out, so that the collet nut stays clear.

use super::{Limit, LimitId, Moves, Needs};
use crate::strategy::Measure;

pub(super) const LIMIT: Limit = Limit {
    id: LimitId::StickOut,
    source: "commonpractice",
    needs: Needs::Numbers,
    moves: Moves::STILL,
    bad_ends: &[],
    levers: &[],
    measure: |case| {
        let air = case.job.numbers.nut_clearance_mm * 1.0e-3;
        // In the open beside a slot the nut itself may go down where it clears the wall.
        let nut_clears = case.shape.room.is_some()
            && case.shape.wall_distance > case.job.machine.nut / 2.0 + air;
        let depth = if nut_clears {
            case.shape.task.depth()
        } else {
            case.shape.total_depth()
        };
        Some(Measure {
            demand: depth + air,
            allowed: case.cutter.stick_out,
        })
    },
};
