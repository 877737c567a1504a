//! Light clearing: thin passes at the full depth, from the inside outwards; a ring is opened by peeling loops.

use super::common::{
    down_helix, helix, helix_cut, helix_hole, helix_path, mill, only, passes, plain,
    room_for_helix, side, turn,
};
use super::rings::level;
use super::{Method, MethodId};
use crate::task::TaskKind;
use thinwright_mechanics::slot;

pub(super) const METHOD: Method = Method {
    id: MethodId::LightClearing,
    fits: |job, shape, cutter| {
        only(shape, &[TaskKind::Clearing])?;
        mill(cutter)?;
        passes(shape, cutter)?;
        room_for_helix(job, shape, cutter)
    },
    stepovers: |job, _, _| {
        (
            job.numbers.peel_ae_over_d_least,
            job.numbers.peel_ae_over_d_most,
        )
    },
    deepest: |_, shape, cutter| shape.task.depth().min(cutter.flute_length),
    pass: |job, shape, cutter, choice, detail| {
        let ring = level(shape, cutter, choice.ae, detail);
        let levels = f64::from(choice.levels);
        let hole = helix_hole(job, shape, cutter);
        let radius = 0.5 * (hole - cutter.d);
        // The opening ring is as wide as the entry hole and cut in loops one stepover apart.
        let loops = ring.opening / choice.ae * slot::loop_path(radius, choice.ae);
        // In loops, and where a pass turns inwards, the cutter is engaged further than along a straight wall.
        let turned = slot::trochoid_engagement(cutter.d, hole, choice.ae);
        let deeper = thinwright_mechanics::engagement::ae_for_angle(turned, cutter.d).min(cutter.d);
        let mut pass = plain(
            side(job, choice.ae, cutter.d, choice.ap),
            [
                Some(side(job, deeper, cutter.d, choice.ap)),
                turn(job, shape, cutter, choice),
                Some(helix_cut(job, hole, cutter, choice)),
            ],
            levels * ((ring.path - ring.opening).max(0.0) + loops),
        );
        let down = helix_path(job, hole, cutter, choice);
        down_helix(job, hole, cutter, &mut pass, down);
        pass.lifts = choice.levels;
        pass.stretch = 0.25 * shape.area.sqrt();
        pass.loop_radius = (ring.opening > 0.0).then_some(radius);
        pass
    },
    entry: |job, shape, cutter, choice| helix(job, helix_hole(job, shape, cutter), cutter, choice),
};
