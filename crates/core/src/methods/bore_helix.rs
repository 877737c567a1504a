//! Opening a bore: down a helix of the bore's own diameter, then once around.

use super::common::{centre_cutting, down_helix, full, helix, helix_path, mill, only, plain};
use super::{Method, MethodId, Rejection};
use crate::strategy::Measure;
use crate::task::TaskKind;

pub(super) const METHOD: Method = Method {
    id: MethodId::BoreHelix,
    fits: |job, shape, cutter| {
        only(shape, &[TaskKind::Bore])?;
        mill(cutter)?;
        let most = shape.widest / job.numbers.helix_over_d_least;
        if cutter.d > most {
            return Err(Rejection::TooWide(Measure {
                demand: cutter.d,
                allowed: most,
            }));
        }
        // Under half the bore a core is left standing.
        let least = shape.widest / job.numbers.helix_over_d_most;
        if cutter.d < least {
            return Err(Rejection::TooNarrow(Measure {
                demand: least,
                allowed: cutter.d,
            }));
        }
        centre_cutting(cutter)
    },
    stepovers: |_, _, _| (1.0, 1.0),
    deepest: |_, shape, cutter| shape.task.depth().min(cutter.flute_length).min(cutter.d),
    pass: |job, shape, cutter, choice, _| {
        let engaged = full(choice.ap, job.numbers.ramp_feed);
        let mut pass = plain(engaged, [None; 3], 0.0);
        let down = helix_path(job, shape.widest, cutter, choice)
            + core::f64::consts::PI * (shape.widest - cutter.d);
        down_helix(job, shape.widest, cutter, &mut pass, down);
        pass.stretch = shape.widest - cutter.d;
        pass
    },
    entry: |job, shape, cutter, choice| helix(job, shape.widest, cutter, choice),
};
