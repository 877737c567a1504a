//! Ways that were worked out and set aside, in words.

use crate::Speaker;
use crate::limits::limit_name;
use crate::methods::method_name;
use crate::verdicts::utilisation;
use thinwright_core::strategy::{Considered, Step, Verdict};
use thinwright_quantity::Duration;

impl Speaker<'_> {
    /// Another way, and why it was set aside.
    pub fn considered(&self, considered: &Considered, taken: Option<&Step>) -> String {
        let way = format!(
            "{} with {}",
            method_name(considered.method),
            self.cutter(considered.cutter)
        );
        let why = match &considered.verdict {
            Verdict::Slower(time) => self.slower(*time, taken),
            Verdict::Warned {
                limit,
                utilisation: u,
                time,
            } => {
                format!(
                    "works in {}, but leaves a warning: {} {}",
                    self.time(*time),
                    limit_name(*limit),
                    utilisation(*u)
                )
            }
            Verdict::Unfit(rejection) => self.rejection(rejection),
            Verdict::Breaks { limit, measure } => format!(
                "breaks {} ({}): {}",
                limit_name(*limit),
                utilisation(measure.utilisation()),
                self.measure(*limit, measure)
            ),
        };
        format!("{way}: {why}")
    }

    fn slower(&self, time: Duration, taken: Option<&Step>) -> String {
        match taken {
            Some(step) if step.time <= time => {
                format!(
                    "works, {} instead of {}",
                    self.time(time),
                    self.time(step.time)
                )
            }
            // A quicker way may lose to fewer cutter changes.
            Some(_) | None => format!("works in {}, but not better in the whole", self.time(time)),
        }
    }
}
