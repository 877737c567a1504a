//! Free span of the web to its thickness: a first filter of the trade, which the stiffness overrides.

use super::{Limit, LimitId, Moves, Needs};
use crate::strategy::{Lever, Measure};

pub(super) const LIMIT: Limit = Limit {
    id: LimitId::WebSlenderness,
    source: "commonpractice",
    needs: Needs::Cutter,
    moves: Moves::STILL,
    bad_ends: &[],
    levers: &[Lever::WebThickness, Lever::Backing, Lever::BoltedBoss],
    measure: |case| {
        let web = case.web()?;
        let numbers = &case.job.numbers;
        let backed = case.held.backing.bed.likely > 0.0;
        Some(Measure {
            demand: web.span / web.thickness,
            allowed: if backed {
                numbers.span_over_web_full
            } else {
                numbers.span_over_web_backing
            },
        })
    },
};
