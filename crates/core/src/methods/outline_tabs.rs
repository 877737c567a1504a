//! Outline with tabs: around the outside to depth, but for tabs that keep hold of the part.

use super::common::{full, mill, only, plain};
use super::rings::around;
use super::{Method, MethodId};
use crate::strategy::Entry;
use crate::task::TaskKind;

pub(super) const METHOD: Method = Method {
    id: MethodId::OutlineTabs,
    fits: |_, shape, cutter| {
        only(shape, &[TaskKind::OutlineFinish])?;
        mill(cutter)
    },
    stepovers: |_, _, _| (1.0, 1.0),
    deepest: |job, shape, cutter| {
        shape
            .task
            .depth()
            .min(cutter.flute_length)
            .min(job.numbers.slot_depth_over_d * cutter.d)
    },
    pass: |_, shape, cutter, choice, _| {
        let engaged = full(choice.ap, 1.0);
        let mut pass = plain(
            engaged,
            [None; 3],
            f64::from(choice.levels) * around(shape, cutter),
        );
        pass.lifts = 1;
        pass
    },
    entry: |_, _, _, _| Entry::Side,
};
