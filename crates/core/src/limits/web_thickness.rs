//! Error of the web's thickness: what the cutter pushes it down by, with the errors of turning over.

use super::{Limit, LimitId, Move, Moves, Needs};
use crate::estimate::{BadEnd, Unknown};
use crate::strategy::{Lever, Measure};
use crate::task::TaskKind;

pub(super) const LIMIT: Limit = Limit {
    id: LimitId::WebThickness,
    source: "timoshenko1959",
    needs: Needs::Load,
    moves: Moves::STILL.fz(Move::Unknown),
    bad_ends: &[
        (Unknown::Kc, BadEnd::High),
        (Unknown::BedStiffness, BadEnd::Low),
    ],
    levers: &[
        Lever::Backing,
        Lever::BoltedBoss,
        Lever::StepDown,
        Lever::FeedPerTooth,
    ],
    measure: |case| {
        let allowed = case.job.wanted.web?;
        if case.shape.task.kind != TaskKind::FloorSkim {
            return None;
        }
        let (push, pull) = case.load.push_pull;
        let backed = case.web_compliance()?;
        // What is glued down holds upwards too.
        let up = if case.held.backing.pulls_up {
            backed
        } else {
            case.web()?.bare
        };
        let give = (push * backed).max(pull * up);
        let bend = give * case.force_factor();
        Some(Measure {
            demand: libm::hypot(bend, case.known.turn_over),
            allowed,
        })
    },
};
