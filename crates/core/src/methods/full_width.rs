//! Full width: a cutter of the slot's own width; each level is entered on a slope and then run flat.

use super::common::{
    SLOTS, all_runs, centre_cutting, count, full, mill, only, plain, run, same_width, zigzag,
};
use super::{Method, MethodId};

pub(super) const METHOD: Method = Method {
    id: MethodId::FullWidth,
    fits: |_, shape, cutter| {
        only(shape, SLOTS)?;
        mill(cutter)?;
        same_width(shape, cutter)?;
        centre_cutting(cutter)
    },
    stepovers: |_, _, _| (1.0, 1.0),
    deepest: |job, shape, cutter| {
        shape
            .task
            .depth()
            .min(cutter.flute_length)
            .min(job.numbers.slot_depth_over_d * cutter.d)
    },
    pass: |job, shape, _, choice, _| {
        let engaged = full(choice.ap, 1.0);
        let levels = f64::from(choice.levels);
        let mut pass = plain(engaged, [None; 3], levels * all_runs(shape));
        pass.slow_path = levels * all_runs(shape);
        pass.slow_share = job.numbers.ramp_feed;
        pass.lifts = count(shape);
        pass.stretch = run(shape);
        pass.wall = Some(engaged);
        pass
    },
    entry: |job, shape, _, choice| zigzag(job, shape, choice),
};
