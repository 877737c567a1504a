//! Stick-out to diameter.

use super::{Limit, LimitId, Moves, Needs};
use crate::strategy::{Lever, Measure};

pub(super) const LIMIT: Limit = Limit {
    id: LimitId::ToolLength,
    source: "commonpractice",
    needs: Needs::Cutter,
    moves: Moves::STILL,
    bad_ends: &[],
    levers: &[Lever::StickOut],
    measure: |case| {
        let (cutter, numbers) = (case.cutter, &case.job.numbers);
        // A thick shank hardly bends: only the thin part counts.
        let thin = if cutter.shank > cutter.d {
            cutter.reach
        } else {
            cutter.stick_out
        };
        Some(Measure {
            demand: thin.min(cutter.stick_out) / cutter.d,
            allowed: if cutter.carbide {
                numbers.reach_over_d_plain
            } else {
                numbers.reach_over_d_plain_hss
            },
        })
    },
};
