//! Speeds at which a step stays quiet deeper.

use super::percent;
use crate::Speaker;
use crate::language::tr;
use crate::say;
use thinwright_core::stability::{SpeedReport, StabilityReport};
use thinwright_quantity::Length;

/// Why a speed at which the web drums is none for finishing it.
fn why_not_drum() -> &'static str {
    tr(
        "Where a speed drums the web, finish the web at another: the teeth push it in step with its own tone, so it swings \
         and comes out uneven although nothing sings. Keep a little off that peak.",
    )
}

impl Speaker<'_> {
    /// The good speeds, a line each.
    pub(super) fn good_speeds(&self, report: &StabilityReport) -> Vec<String> {
        if report.speeds.is_empty() {
            let none = tr("No other speed of machine and cutter is quiet much deeper.");
            return vec![none.to_owned()];
        }
        let mut out: Vec<String> = report
            .speeds
            .iter()
            .map(|s| self.good_speed(s, report))
            .collect();
        if report.speeds.iter().any(|s| s.drums) {
            out.push(why_not_drum().to_owned());
        }
        out
    }

    fn good_speed(&self, speed: &SpeedReport, report: &StabilityReport) -> String {
        let mut out = vec![say!(
            "Good speed: {speed}, quiet {up_to_depth}",
            speed = self.spindle_speed(speed.n),
            up_to_depth = self.up_to(speed.depth, report.top)
        )];
        let error = percent(report.tone_error);
        out.push(if speed.off < speed.depth.min(report.top) {
            let lost = Length::from_si(speed.depth.min(report.top).si() - speed.off.si());
            say!(
                "the tone {error} off costs {lost} of it",
                error,
                lost = self.depth(lost)
            )
        } else {
            say!("the tone {error} off costs nothing", error)
        });
        if speed.drums {
            out.push(tr("the web drums there").to_owned());
        }
        out.join("; ") + "."
    }
}
