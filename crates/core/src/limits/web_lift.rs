//! Lift of a web that is not bonded to its backing, by the pull of an up-cut helix.

use super::{Limit, LimitId, Move, Moves, Needs};
use crate::estimate::{BadEnd, Unknown};
use crate::strategy::{Lever, Measure};

pub(super) const LIMIT: Limit = Limit {
    id: LimitId::WebLift,
    source: "timoshenko1959",
    needs: Needs::Load,
    moves: Moves::STILL.fz(Move::Harder),
    bad_ends: &[(Unknown::Kc, BadEnd::High)],
    levers: &[Lever::StepDown, Lever::FeedPerTooth, Lever::BoltedBoss],
    measure: |case| {
        let web = case.web()?;
        let pull = case.load.push_pull.1 * case.force_factor();
        if case.held.backing.pulls_up || pull <= 0.0 {
            return None;
        }
        Some(Measure {
            demand: pull * web.bare,
            allowed: case.job.numbers.web_lift_mm * 1.0e-3,
        })
    },
};
