//! Drilled ends: holes at both ends of each slot first, then level by level from hole to hole, then the sides.

use super::common::{
    SAME_WIDTH, SLOTS, all_runs, count, full, mill, only, plain, run, share_of_width, sides,
};
use super::{Method, MethodId, Rejection};
use crate::choice::down;
use crate::job::{Cutter, Job};
use crate::shape::TaskShape;
use crate::strategy::Entry;
use crate::time::drill_numbers;
use thinwright_quantity::{Length, Speed, SpindleSpeed};

/// The widest drill of the rack that leaves the slot's ends to the end mill and lets the mill in.
fn drill<'a>(job: &'a Job, shape: &TaskShape, cutter: &Cutter) -> Option<&'a Cutter> {
    let most = shape.slot_width() - job.numbers.end_drill_under_mm * 1.0e-3;
    let fits = |c: &&Cutter| c.drill && c.d <= most + 1.0e-9 && c.d >= SAME_WIDTH * cutter.d;
    let long = |c: &&Cutter| c.stick_out >= shape.total_depth();
    job.rack
        .iter()
        .filter(fits)
        .filter(long)
        .max_by(|a, b| a.d.total_cmp(&b.d))
}

pub(super) const METHOD: Method = Method {
    id: MethodId::DrilledEnds,
    fits: |job, shape, cutter| {
        only(shape, SLOTS)?;
        mill(cutter)?;
        share_of_width(shape, cutter, job.numbers.slot_cutter_share_least, 1.0)?;
        drill(job, shape, cutter)
            .map(|_| ())
            .ok_or(Rejection::NoDrill)
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
        let mut path = f64::from(choice.levels) * all_runs(shape);
        let (mut wall, mut hard) = (engaged, None);
        if cutter.d < SAME_WIDTH * shape.slot_width() {
            let (side, around) = sides(job, shape, cutter, choice);
            (wall, hard) = (side, Some(side));
            path += around;
        }
        let mut pass = plain(engaged, [hard, None, None], path);
        pass.lifts = choice.levels * count(shape);
        pass.stretch = run(shape);
        pass.wall = Some(wall);
        pass.drilled = drill(job, shape, cutter).map(|d| (2 * count(shape), d.row));
        pass
    },
    entry: |job, shape, cutter, _| drilled(job, drill(job, shape, cutter)),
};

/// What is typed for the holes.
fn drilled(job: &Job, drill: Option<&Cutter>) -> Entry {
    let Some(drill) = drill else {
        return Entry::Side;
    };
    let (n, per_turn) = drill_numbers(job, drill);
    let n = down(n, job.grid.n);
    Entry::Drilled {
        hole: Length::from_si(drill.d),
        drill: drill.row,
        n: SpindleSpeed::from_si(n),
        feed: Speed::from_si(down(per_turn * n, job.grid.vf)),
        peck: Length::from_si(job.numbers.peck_over_d * drill.d),
    }
}
