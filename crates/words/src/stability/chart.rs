//! Words of the chart of stability: its axes, its signs, its table, and the sentence for those who cannot see it.

use super::percent;
use crate::Speaker;
use crate::figures::{unit, written};
use crate::language::{tr, tr_all};
use crate::say;
use thinwright_core::stability::{Lobes, StabilityReport};
use thinwright_quantity::{Kind, Length, Rounding, SpindleSpeed, UnitSystem};

/// While the chart is on its way.
pub fn working_out() -> &'static str {
    tr("working out the chart \u{2026}")
}
/// The chart as a table, folded away.
pub fn table() -> &'static str {
    tr("The chart as a table")
}
/// Its columns.
pub fn table_columns() -> [&'static str; 3] {
    tr_all(["spindle speed", "sings from", "how"])
}
/// What the signs of the chart mean.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sign {
    /// The line above which it sings.
    Limit,
    /// The share of it that is used.
    Margin,
    /// Where every other tooth cuts deep.
    Flip,
    /// The step.
    Point,
    /// The step, where it stands above the chart.
    Above,
    /// What is quiet at the step's speed.
    Here,
    /// A good speed.
    Speed,
    /// A good speed at which the web drums.
    Drums,
    /// Quiet at any speed, at the bad end.
    BadEnd,
    /// The same at likely values.
    Likely,
}

/// Title of the chart's axis of speeds.
pub fn speed_axis(units: UnitSystem) -> String {
    say!(
        "spindle speed n, {unit}",
        unit = unit(Kind::SpindleSpeed, units)
    )
}

/// Title of the chart's axis of depths.
pub fn depth_axis(units: UnitSystem) -> String {
    say!("step-down ap, {unit}", unit = unit(Kind::Length, units))
}

/// A figure on an axis.
pub fn tick(value: f64) -> String {
    written(Kind::Ratio, value, UnitSystem::Metric, Rounding::Nearest)
}

impl Speaker<'_> {
    /// The chart, to those who cannot see it; `lobes` where a frequency is known.
    pub fn chart_said(&self, report: &StabilityReport, lobes: Option<&Lobes>) -> String {
        let point = say!(
            "The step stands at {speed} and {depth}.",
            speed = self.spindle_speed(report.cut.n),
            depth = self.length(report.cut.ap)
        );
        let Some(lobes) = lobes else {
            let chart = say!(
                "Chart of depth over spindle speed: quiet at any speed up to {depth}, at likely values up to {likely}.",
                depth = self.depth(report.quiet.0),
                likely = self.depth(report.quiet.1)
            );
            return format!("{chart} {point}");
        };
        let known = lobes
            .limit
            .iter()
            .zip(&lobes.speeds)
            .filter_map(|(d, n)| Some((*d.as_ref()?, *n)));
        let least = known.reduce(|a, b| if b.0 < a.0 { b } else { a });
        let (from, to) = (
            self.spindle_speed(report.range.0),
            self.spindle_speed(report.range.1),
        );
        let chart = match least {
            Some((depth, n)) => say!(
                "Chart of the depth at which it sings, from {from} to {to}: least {depth} at {speed}.",
                from,
                to,
                depth = self.depth(depth),
                speed = self.spindle_speed(n)
            ),
            None => say!(
                "Chart of the depth at which it sings, from {from} to {to}: nothing up to {depth}.",
                from,
                to,
                depth = self.depth(report.top)
            ),
        };
        format!("{chart} {point}")
    }

    /// A row of the chart's table: speed, depth, how.
    pub fn chart_row(
        &self,
        n: SpindleSpeed,
        limit: Option<Length>,
        flip: bool,
        top: Length,
    ) -> [String; 3] {
        let how = match (limit, flip) {
            (None, _) => "-",
            (Some(_), true) => tr("every other tooth"),
            (Some(_), false) => tr("tone of its own"),
        };
        let depth = limit.map_or_else(
            || say!("beyond {depth}", depth = self.depth(top)),
            |depth| self.depth(depth),
        );
        [self.spindle_speed(n), depth, how.to_owned()]
    }

    fn stands(&self, report: &StabilityReport) -> String {
        format!(
            "ap {}, n {}",
            self.length(report.cut.ap),
            self.spindle_speed(report.cut.n)
        )
    }

    /// What a sign of the chart means.
    pub fn sign(&self, sign: Sign, report: &StabilityReport) -> String {
        match sign {
            Sign::Limit => tr("above this line it sings").to_owned(),
            Sign::Margin => say!(
                "{share} of it, which is used",
                share = percent(report.share)
            ),
            Sign::Flip => tr("here every other tooth cuts deep").to_owned(),
            Sign::Point => say!("this step: {values}", values = self.stands(report)),
            Sign::Above => say!(
                "this step, far above the chart: {values}",
                values = self.stands(report)
            ),
            Sign::Here => say!(
                "quiet at its speed, the tone {spread} off",
                spread = percent(self.catalog.numbers.tap_spread)
            ),
            Sign::Speed => tr("good speed").to_owned(),
            Sign::Drums => tr("good speed at which the web drums").to_owned(),
            Sign::BadEnd => {
                tr("quiet at any speed, at the bad end of what is not known").to_owned()
            }
            Sign::Likely => tr("the same at likely values").to_owned(),
        }
    }
}
