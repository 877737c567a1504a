//! Ways that were worked out and set aside, in words.

use crate::Speaker;
use crate::limits::limit_name;
use crate::methods::method_name;
use crate::say;
use crate::verdicts::utilisation;
use thinwright_core::strategy::{Considered, Step, Verdict};
use thinwright_quantity::Duration;

impl Speaker<'_> {
    /// Another way, and why it was set aside.
    pub fn considered(&self, considered: &Considered, taken: Option<&Step>) -> String {
        let way = say!(
            "{method} with {cutter}",
            method = method_name(considered.method),
            cutter = self.cutter(considered.cutter)
        );
        let why = match &considered.verdict {
            Verdict::Slower(time) => self.slower(*time, taken),
            Verdict::Warned {
                limit,
                utilisation: u,
                time,
            } => {
                say!(
                    "works in {time}, but leaves a warning: {limit} {utilisation}",
                    time = self.time(*time),
                    limit = limit_name(*limit),
                    utilisation = utilisation(*u)
                )
            }
            Verdict::Unfit(rejection) => self.rejection(rejection),
            Verdict::Breaks { limit, measure } => say!(
                "breaks {limit} ({utilisation}): {measure}",
                limit = limit_name(*limit),
                utilisation = utilisation(measure.utilisation()),
                measure = self.measure(*limit, measure)
            ),
        };
        format!("{way}: {why}")
    }

    fn slower(&self, time: Duration, taken: Option<&Step>) -> String {
        match taken {
            Some(step) if step.time <= time => {
                say!(
                    "works, {time} instead of {taken}",
                    time = self.time(time),
                    taken = self.time(step.time)
                )
            }
            // A quicker way may lose to fewer cutter changes.
            Some(_) | None => say!(
                "works in {time}, but not better in the whole",
                time = self.time(time)
            ),
        }
    }
}
