//! Wall skim: the allowance off the walls, one thin pass a level.

use super::common::{mill, only, passes, plain, side};
use super::rings::walls;
use super::{Method, MethodId};
use crate::choice::up;
use crate::shape::Target;
use crate::strategy::Entry;
use crate::task::TaskKind;
use thinwright_mechanics::{corner, engagement};

pub(super) const METHOD: Method = Method {
    id: MethodId::WallSkim,
    fits: |_, shape, cutter| {
        only(shape, &[TaskKind::WallSkim])?;
        mill(cutter)?;
        passes(shape, cutter)
    },
    stepovers: |job, _, cutter| {
        // No less than what stands, as far as it can be typed.
        let leave = up(job.numbers.rough_allowance_mm * 1.0e-3, job.grid.depth);
        let share = (leave / cutter.d).min(0.5);
        (share, share)
    },
    deepest: |_, shape, cutter| shape.task.depth().min(cutter.flute_length),
    pass: |job, shape, cutter, choice, _| {
        // It takes what stands, whatever was typed.
        let ae = choice
            .ae
            .max(job.numbers.rough_allowance_mm * 1.0e-3)
            .min(cutter.d);
        let usual = side(job, ae, cutter.d, choice.ap);
        let levels = f64::from(choice.levels);
        // In a corner little wider than the cutter it is engaged much further.
        let corner = match &shape.target {
            Target::Region { corner, .. } if corner.is_finite() => *corner,
            _ => f64::INFINITY,
        };
        let turned = if corner.is_finite() {
            let angle = corner::engagement_in_arc(cutter.d, corner, ae);
            side(
                job,
                engagement::ae_for_angle(angle, cutter.d).min(cutter.d),
                cutter.d,
                choice.ap,
            )
        } else {
            usual
        };
        let mut pass = plain(
            usual,
            [Some(turned), None, None],
            levels * walls(shape, cutter),
        );
        pass.wall = Some(usual);
        pass.lifts = choice.levels;
        pass.stretch = 0.25 * shape.area.sqrt();
        pass
    },
    entry: |_, _, _, _| Entry::Side,
};
