//! Room for chips: the loose chips of the last level against the slot that is open behind the cutter.

use super::{Limit, LimitId, Moves, Needs};
use crate::methods::MethodId;
use crate::strategy::{Lever, Measure};

pub(super) const LIMIT: Limit = Limit {
    id: LimitId::ChipRoom,
    source: "derived",
    needs: Needs::Numbers,
    moves: Moves::STILL,
    bad_ends: &[],
    levers: &[Lever::StepDown, Lever::Clearing],
    measure: |case| {
        if case.shape.slots().is_empty() || case.shape.task.depth() <= case.shape.slot_width() {
            // A slot no deeper than wide throws its chips out.
            return None;
        }
        // Loops and side passes open the slot beside the cutter; chips of a full-width level have only the slot.
        let share = match case.method {
            MethodId::Peeling => case.cutter.d / case.shape.slot_width(),
            _ => 1.0,
        };
        Some(Measure {
            demand: share * case.job.material.bulk_factor.likely * case.choice.ap
                / case.shape.task.depth(),
            allowed: case.job.holding.chips.depth_factor,
        })
    },
};
