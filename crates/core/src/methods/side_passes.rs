//! Side passes: a smaller cutter opens the middle on a zigzag, then takes each side to width.

use super::common::{
    SLOTS, all_runs, centre_cutting, count, full, mill, only, plain, run, share_of_width, sides,
    zigzag,
};
use super::{Method, MethodId};

pub(super) const METHOD: Method = Method {
    id: MethodId::SidePasses,
    fits: |job, shape, cutter| {
        only(shape, SLOTS)?;
        mill(cutter)?;
        let numbers = &job.numbers;
        share_of_width(
            shape,
            cutter,
            numbers.slot_cutter_share_least,
            numbers.slot_cutter_share_most,
        )?;
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
    pass: |job, shape, cutter, choice, _| {
        let engaged = full(choice.ap, 1.0);
        // The zigzag that opens the middle turns back where two slopes lie on each other.
        let ends = full(2.0 * choice.ap, job.numbers.ramp_feed);
        let (wall, around) = sides(job, shape, cutter, choice);
        let mut pass = plain(
            engaged,
            [Some(wall), Some(ends), None],
            all_runs(shape) + around,
        );
        pass.slow_path = f64::from(choice.levels) * all_runs(shape);
        pass.slow_share = job.numbers.ramp_feed;
        pass.lifts = 2 * count(shape);
        pass.stretch = run(shape);
        pass.wall = Some(wall);
        pass
    },
    entry: |job, shape, _, choice| zigzag(job, shape, choice),
};
