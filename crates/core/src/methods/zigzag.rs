//! Zigzag: a cutter of the slot's own width slopes down to and fro, one step-down a stroke, then one flat stroke.

use super::common::{
    SLOTS, all_runs, centre_cutting, count, full, mill, only, plain, run, same_width, zigzag,
};
use super::{Method, MethodId};

pub(super) const METHOD: Method = Method {
    id: MethodId::Zigzag,
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
        // Where a stroke turns back, two slopes lie on each other.
        let ends = full(2.0 * choice.ap, job.numbers.ramp_feed);
        let strokes = f64::from(choice.levels);
        let mut pass = plain(engaged, [Some(ends), None, None], all_runs(shape));
        pass.slow_path = strokes * all_runs(shape);
        pass.slow_share = job.numbers.ramp_feed;
        pass.lifts = count(shape);
        pass.stretch = run(shape);
        pass.wall = Some(engaged);
        pass
    },
    entry: |job, shape, _, choice| zigzag(job, shape, choice),
};
