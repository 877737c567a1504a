//! Peeling: loops at depth in a slot wider than the cutter, a thin chip at a time.

use super::common::{
    SLOTS, all_runs, centre_cutting, count, down_helix, helix, helix_cut, helix_path, mill, only,
    plain, share_of_width, side,
};
use super::{Method, MethodId};
use thinwright_mechanics::{engagement, slot};

/// Cutters under half the slot's width have no business in it.
const LEAST_SHARE: f64 = 0.5;

pub(super) const METHOD: Method = Method {
    id: MethodId::Peeling,
    fits: |job, shape, cutter| {
        only(shape, SLOTS)?;
        mill(cutter)?;
        share_of_width(
            shape,
            cutter,
            LEAST_SHARE,
            job.numbers.peel_cutter_share_most,
        )?;
        centre_cutting(cutter)
    },
    stepovers: |job, _, _| {
        (
            job.numbers.peel_ae_over_d_least,
            job.numbers.peel_ae_over_d_most,
        )
    },
    deepest: |job, shape, cutter| {
        shape
            .task
            .depth()
            .min(cutter.flute_length)
            .min(job.numbers.peel_ap_over_d_most * cutter.d)
    },
    pass: |job, shape, cutter, choice, _| {
        let width = shape.slot_width();
        let radius = 0.5 * (width - cutter.d);
        let turned = slot::trochoid_engagement(cutter.d, width, choice.ae);
        let deeper = engagement::ae_for_angle(turned, cutter.d).min(cutter.d);
        let engaged = side(job, deeper, cutter.d, choice.ap);
        let loops = f64::from(choice.levels) * all_runs(shape) / choice.ae;
        let entry = helix_cut(job, width, cutter, choice);
        let path = loops * slot::loop_path(radius, choice.ae);
        let mut pass = plain(engaged, [Some(entry), None, None], path);
        let down = f64::from(count(shape)) * helix_path(job, width, cutter, choice);
        down_helix(job, width, cutter, &mut pass, down);
        pass.lifts = choice.levels * count(shape);
        // Loops run on without a stop from end to end of a slot.
        pass.stretch = loops / f64::from(choice.levels * count(shape)).max(1.0)
            * slot::loop_path(radius, choice.ae);
        pass.loop_radius = Some(radius);
        pass.wall = Some(engaged);
        pass
    },
    entry: |job, shape, cutter, choice| helix(job, shape.slot_width(), cutter, choice),
};
