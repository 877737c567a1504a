//! Floor skim: one thin level over the floor, from its softest place towards what carries it.

use super::common::{
    down_helix, full, helix, helix_cut, helix_hole, helix_path, mill, only, passes, plain,
    room_for_helix, side, turn,
};
use super::rings::level;
use super::{Method, MethodId};
use crate::task::TaskKind;

pub(super) const METHOD: Method = Method {
    id: MethodId::FloorSkim,
    fits: |job, shape, cutter| {
        only(shape, &[TaskKind::FloorSkim])?;
        mill(cutter)?;
        passes(shape, cutter)?;
        room_for_helix(job, shape, cutter)
    },
    stepovers: |job, _, _| {
        (
            job.numbers.skim_stepover_over_d,
            job.numbers.skim_stepover_over_d,
        )
    },
    deepest: |_, shape, _| shape.task.depth(),
    pass: |job, shape, cutter, choice, detail| {
        let ring = level(shape, cutter, choice.ae, detail);
        let levels = f64::from(choice.levels);
        let hole = helix_hole(job, shape, cutter);
        let mut pass = plain(
            side(job, choice.ae, cutter.d, choice.ap),
            [
                Some(full(choice.ap, 1.0)),
                turn(job, shape, cutter, choice),
                Some(helix_cut(job, hole, cutter, choice)),
            ],
            levels * ring.path,
        );
        let down = helix_path(job, hole, cutter, choice);
        down_helix(job, hole, cutter, &mut pass, down);
        pass.lifts = choice.levels;
        pass.stretch = 0.25 * shape.area.sqrt();
        pass
    },
    entry: |job, shape, cutter, choice| helix(job, helix_hole(job, shape, cutter), cutter, choice),
};
