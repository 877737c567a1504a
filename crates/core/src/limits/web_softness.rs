//! The web under the cutter against cutter and machine: where the part is the softest link, it needs help.

use super::{Limit, LimitId, Moves, Needs};
use crate::estimate::{BadEnd, Unknown};
use crate::strategy::{Lever, Measure};

pub(super) const LIMIT: Limit = Limit {
    id: LimitId::WebSoftness,
    source: "timoshenko1959",
    needs: Needs::Cutter,
    moves: Moves::STILL,
    bad_ends: &[
        (Unknown::MachineStiffness, BadEnd::High),
        (Unknown::BedStiffness, BadEnd::Low),
    ],
    levers: &[Lever::WebThickness, Lever::Backing, Lever::BoltedBoss],
    measure: |case| {
        Some(Measure {
            demand: 1.0 / case.chain(),
            allowed: 1.0 / case.web_compliance()?,
        })
    },
};
