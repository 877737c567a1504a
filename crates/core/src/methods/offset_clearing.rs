//! Offset clearing: passes at equal distance from the wall, from the inside outwards, level by level.

use super::common::{
    down_helix, full, helix, helix_cut, helix_hole, helix_path, mill, only, passes, plain,
    room_for_helix, side, turn,
};
use super::rings::level;
use super::{Method, MethodId};
use crate::task::TaskKind;

pub(super) const METHOD: Method = Method {
    id: MethodId::OffsetClearing,
    fits: |job, shape, cutter| {
        only(shape, &[TaskKind::Clearing])?;
        mill(cutter)?;
        passes(shape, cutter)?;
        room_for_helix(job, shape, cutter)
    },
    stepovers: |job, _, _| {
        (
            job.numbers.stepover_over_d_least,
            job.numbers.stepover_over_d_most,
        )
    },
    deepest: |_, shape, cutter| shape.task.depth().min(cutter.flute_length).min(cutter.d),
    pass: |job, shape, cutter, choice, detail| {
        let ring = level(shape, cutter, choice.ae, detail);
        let levels = f64::from(choice.levels);
        let hole = helix_hole(job, shape, cutter);
        let mut pass = plain(
            side(job, choice.ae, cutter.d, choice.ap),
            [
                Some(full(choice.ap, job.numbers.ramp_feed)),
                turn(job, shape, cutter, choice),
                Some(helix_cut(job, hole, cutter, choice)),
            ],
            levels * (ring.path - ring.opening).max(0.0),
        );
        pass.slow_path = levels * ring.opening;
        pass.slow_share = job.numbers.ramp_feed;
        let down = helix_path(job, hole, cutter, choice);
        down_helix(job, hole, cutter, &mut pass, down);
        pass.lifts = choice.levels;
        pass.stretch = 0.25 * shape.area.sqrt();
        pass
    },
    entry: |job, shape, cutter, choice| helix(job, helix_hole(job, shape, cutter), cutter, choice),
};
