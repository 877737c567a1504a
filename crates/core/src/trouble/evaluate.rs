//! Every limit of a step as it would be with other numbers, at likely values and at the bad ends.

use super::stand::Stand;
use crate::case::{Case, Load};
use crate::choice::Choice;
use crate::estimate::Draw;
use crate::job::Cutter;
use crate::limits::{LIMITS, LimitId, at_worst};
use crate::pass::{Detail, Pass};
use crate::strategy::Measure;
use crate::time;

/// A limit with demand and allowed, at the bad ends.
pub(super) type Reached = (LimitId, Measure);

/// What comes of numbers in a step: its time, s, and every limit that applies.
pub(super) struct Came {
    pub(super) time: f64,
    pub(super) limits: Vec<Reached>,
}

impl Came {
    /// Utilisation of a limit; 0 where it does not apply.
    pub(super) fn of(&self, limit: LimitId) -> f64 {
        let found = self.limits.iter().find(|(id, _)| *id == limit);
        found.map_or(0.0, |(_, measure)| measure.utilisation())
    }
}

/// What comes of a cutter and numbers where a step stands.
pub(super) fn evaluate(stand: &Stand, cutter: &Cutter, choice: &Choice) -> Came {
    let (job, shape) = (&stand.job, stand.shape.as_ref());
    let pass: Pass = (stand.method.pass)(job, shape, cutter, choice, Detail::Exact);
    let load = Load::new(job, cutter, choice, &pass);
    let estimates = stand.estimates();
    let case = Case {
        job,
        shape,
        cutter,
        method: stand.method.id,
        choice,
        pass: &pass,
        load: &load,
        known: &stand.known,
        held: stand.held(),
        estimates: &estimates,
        draw: Draw::likely(&estimates),
    };
    let limits = LIMITS
        .iter()
        .filter_map(|l| Some((l.id, at_worst(l, &case)?)));
    Came {
        time: time::step(job, shape, choice, &pass),
        limits: limits.collect(),
    }
}
