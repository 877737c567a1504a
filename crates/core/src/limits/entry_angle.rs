//! Slope of helix or ramp within what the material takes.

use super::{Limit, LimitId, Moves, Needs};
use crate::strategy::{Entry, Lever, Measure};

pub(super) const LIMIT: Limit = Limit {
    id: LimitId::EntryAngle,
    source: "commonpractice",
    needs: Needs::Numbers,
    moves: Moves::STILL,
    bad_ends: &[],
    levers: &[Lever::StepDown],
    measure: |case| {
        let method = crate::methods::METHODS
            .iter()
            .find(|m| m.id == case.method)?;
        let angle = match (method.entry)(case.job, case.shape, case.cutter, case.choice) {
            Entry::Helix { angle, .. } | Entry::Zigzag { angle, .. } => angle.si(),
            Entry::Side | Entry::Drilled { .. } | Entry::Plunge { .. } => return None,
        };
        Some(Measure {
            demand: angle,
            allowed: case.job.material.ramp.1.si(),
        })
    },
};
