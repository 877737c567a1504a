//! Surface speed below the upper end of the material's range. A low speed is no failure.

use super::{Limit, LimitId};
use crate::choice::surface_speeds;
use crate::strategy::{Lever, Measure};
use thinwright_mechanics::kinematics;

pub(super) const LIMIT: Limit = Limit {
    id: LimitId::SurfaceSpeed,
    source: "iso3002",
    bad_ends: &[],
    levers: &[Lever::SpindleSpeed],
    measure: |case| {
        Some(Measure {
            demand: kinematics::surface_speed(case.cutter.d, case.choice.n),
            allowed: surface_speeds(case.job, case.cutter).1,
        })
    },
};
