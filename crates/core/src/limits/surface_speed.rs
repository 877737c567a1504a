//! Surface speed below the upper end of the material's range; in a dry cut below its middle, as the upper half is
//! for cutters kept wet. A low speed is no failure.

use super::{Limit, LimitId, Move, Moves, Needs};
use crate::choice::greatest_surface_speed;
use crate::strategy::{Lever, Measure};
use thinwright_mechanics::kinematics;

pub(super) const LIMIT: Limit = Limit {
    id: LimitId::SurfaceSpeed,
    source: "iso3002",
    needs: Needs::Numbers,
    moves: Moves::STILL.n(Move::Harder),
    bad_ends: &[],
    levers: &[Lever::SpindleSpeed],
    measure: |case| {
        Some(Measure {
            demand: kinematics::surface_speed(case.cutter.d, case.choice.n),
            allowed: greatest_surface_speed(case.job, case.cutter),
        })
    },
};
