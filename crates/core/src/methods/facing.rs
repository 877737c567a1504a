//! Facing: parallel passes over the raw face of the blank.

use super::common::{mill, only, plain, side};
use super::{Method, MethodId};
use crate::strategy::Entry;
use crate::task::TaskKind;

pub(super) const METHOD: Method = Method {
    id: MethodId::Facing,
    fits: |_, shape, cutter| {
        only(shape, &[TaskKind::Facing])?;
        mill(cutter)
    },
    stepovers: |job, _, _| {
        (
            job.numbers.stepover_over_d_rough,
            job.numbers.stepover_over_d_most,
        )
    },
    deepest: |_, shape, cutter| shape.task.depth().min(cutter.flute_length),
    pass: |job, shape, cutter, choice, _| {
        let usual = side(job, choice.ae, cutter.d, choice.ap);
        let levels = f64::from(choice.levels);
        // Each pass runs out past both edges by a radius.
        let width = shape.area.sqrt();
        let path = levels * (shape.area / choice.ae) * (1.0 + cutter.d / width);
        let mut pass = plain(usual, [None; 3], path);
        pass.stretch = width + cutter.d;
        pass
    },
    entry: |_, _, _, _| Entry::Side,
};
