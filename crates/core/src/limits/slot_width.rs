//! Error of the slot's width, against the tolerance asked for.
//!
//! A repeatable offset of a side pass is recut, so only its scatter counts; a cutter as wide as the slot cannot
//! be corrected: runout widens the slot, and so does the part of the deflection that changes within a revolution.

use super::{Limit, LimitId, Move, Moves, Needs};
use crate::estimate::{BadEnd, Unknown};
use crate::methods::SAME_WIDTH;
use crate::strategy::{Lever, Measure};

pub(super) const LIMIT: Limit = Limit {
    id: LimitId::SlotWidth,
    source: "commonpractice",
    needs: Needs::Load,
    moves: Moves::STILL.fz(Move::Harder),
    bad_ends: &[
        (Unknown::Kc, BadEnd::High),
        (Unknown::MachineStiffness, BadEnd::Low),
        (Unknown::Runout, BadEnd::High),
    ],
    levers: &[Lever::StepDown, Lever::FeedPerTooth, Lever::StickOut],
    measure: |case| {
        let allowed = case.slot_tolerance()?;
        if case.shape.slots().is_empty() {
            return None;
        }
        let forces = case.load.wall.unwrap_or(case.load.usual);
        let runout = case.get(Unknown::Runout);
        let scale = case.force_factor();
        // A cutter narrower than the slot cuts its sides apart.
        let demand = match case.cutter.d < SAME_WIDTH * case.shape.slot_width() {
            true => {
                let offset = forces.mean_normal.abs() * scale * case.chain();
                let place = case.job.machine.class.positioning.si();
                // A slot has two sides.
                2.0 * case.job.numbers.deflection_scatter * offset + place + runout
            }
            false => {
                let swing = 0.5 * (forces.peak_normal - forces.least_normal) * scale;
                swing * case.load.tip + runout
            }
        };
        Some(Measure { demand, allowed })
    },
};
