//! Bending stress in the web under the cutter's patch against its yield strength.

use super::{Limit, LimitId, Move, Moves, Needs};
use crate::estimate::{BadEnd, Unknown};
use crate::strategy::{Lever, Measure};

pub(super) const LIMIT: Limit = Limit {
    id: LimitId::WebStress,
    source: "timoshenko1959",
    needs: Needs::Load,
    moves: Moves::STILL.fz(Move::Harder),
    bad_ends: &[(Unknown::Kc, BadEnd::High), (Unknown::Runout, BadEnd::High)],
    levers: &[Lever::WebThickness, Lever::Backing, Lever::StepDown],
    measure: |case| {
        let web = case.web()?;
        let push = case.hardest().peak_axial.abs() * case.force_factor();
        Some(Measure {
            demand: push * web.stress(case.cutter.d / 2.0) * case.job.numbers.web_stress_safety,
            allowed: case.job.material.yield_strength.si(),
        })
    },
};
