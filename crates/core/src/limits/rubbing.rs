//! Chip against the edge's radius: thinner than a share of it, the edge rubs instead of cutting.
//!
//! Demand is the least chip that the edge cuts; what is allowed is the greatest chip thickness of the pass.

use super::{Limit, LimitId, Move, Moves, Needs};
use crate::strategy::{Lever, Measure};
use thinwright_mechanics::{chip, rubbing};

pub(super) const LIMIT: Limit = Limit {
    id: LimitId::Rubbing,
    source: "cheng2018",
    needs: Needs::Numbers,
    moves: Moves::STILL.fz(Move::Easier),
    bad_ends: &[],
    levers: &[Lever::FeedPerTooth, Lever::SpindleSpeed],
    measure: |case| {
        let edge = case.cutter.material.edge_radius_used.likely.si();
        let quarter = core::f64::consts::FRAC_PI_2;
        let ae = case.choice.ae.min(case.cutter.d);
        Some(Measure {
            demand: rubbing::least_chip(case.job.material.least_chip_ratio.likely, edge),
            allowed: chip::greatest_chip_thickness(case.choice.fz, ae, case.cutter.d, quarter),
        })
    },
};
