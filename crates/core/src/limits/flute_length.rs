//! Step-down within the flutes: beyond them the shank rubs on the wall just cut.

use super::{Limit, LimitId, Moves, Needs};
use crate::strategy::{Lever, Measure};

pub(super) const LIMIT: Limit = Limit {
    id: LimitId::FluteLength,
    source: "iso13399",
    needs: Needs::Numbers,
    moves: Moves::STILL,
    bad_ends: &[],
    levers: &[Lever::StepDown],
    measure: |case| {
        Some(Measure {
            demand: case.choice.ap,
            allowed: case.cutter.flute_length,
        })
    },
};
