//! Words of the chart of stability: its axes, its signs, its table, and the sentence for those who cannot see it.

use super::percent;
use crate::Speaker;
use thinwright_core::stability::{Lobes, StabilityReport};
use thinwright_quantity::{
    Kind, Length, Rounding, SpindleSpeed, UnitSystem, format as written, unit_name,
};

/// While the chart is on its way.
pub const WORKING_OUT: &str = "working out the chart \u{2026}";
/// The chart as a table, folded away.
pub const TABLE: &str = "The chart as a table";
/// Its columns.
pub const TABLE_COLUMNS: [&str; 3] = ["spindle speed", "sings from", "how"];
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
    format!("spindle speed n, {}", unit_name(Kind::SpindleSpeed, units))
}

/// Title of the chart's axis of depths.
pub fn depth_axis(units: UnitSystem) -> String {
    format!("step-down ap, {}", unit_name(Kind::Length, units))
}

/// A figure on an axis.
pub fn tick(value: f64) -> String {
    written(Kind::Ratio, value, UnitSystem::Metric, Rounding::Nearest)
}

impl Speaker<'_> {
    /// The chart, to those who cannot see it; `lobes` where a frequency is known.
    pub fn chart_said(&self, report: &StabilityReport, lobes: Option<&Lobes>) -> String {
        let point = format!(
            "The step stands at {} and {}.",
            self.spindle_speed(report.cut.n),
            self.length(report.cut.ap)
        );
        let Some(lobes) = lobes else {
            return format!(
                "Chart of depth over spindle speed: quiet at any speed up to {}, at likely values up to {}. {point}",
                self.depth(report.quiet.0),
                self.depth(report.quiet.1)
            );
        };
        let known = lobes
            .limit
            .iter()
            .zip(&lobes.speeds)
            .filter_map(|(d, n)| Some((*d.as_ref()?, *n)));
        let least = known.reduce(|a, b| if b.0 < a.0 { b } else { a });
        let range = format!(
            "from {} to {}",
            self.spindle_speed(report.range.0),
            self.spindle_speed(report.range.1)
        );
        match least {
            Some((depth, n)) => format!(
                "Chart of the depth at which it sings, {range}: least {} at {}. {point}",
                self.depth(depth),
                self.spindle_speed(n)
            ),
            None => format!(
                "Chart of the depth at which it sings, {range}: nothing up to {}. {point}",
                self.depth(report.top)
            ),
        }
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
            (Some(_), true) => "every other tooth",
            (Some(_), false) => "tone of its own",
        };
        let depth = limit.map_or_else(
            || format!("beyond {}", self.depth(top)),
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
            Sign::Limit => "above this line it sings".to_owned(),
            Sign::Margin => format!("{} of it, which is used", percent(report.share)),
            Sign::Flip => "here every other tooth cuts deep".to_owned(),
            Sign::Point => format!("this step: {}", self.stands(report)),
            Sign::Above => format!("this step, far above the chart: {}", self.stands(report)),
            Sign::Here => format!(
                "quiet at its speed, the tone {} off",
                percent(self.catalog.numbers.tap_spread)
            ),
            Sign::Speed => "good speed".to_owned(),
            Sign::Drums => "good speed at which the web drums".to_owned(),
            Sign::BadEnd => "quiet at any speed, at the bad end of what is not known".to_owned(),
            Sign::Likely => "the same at likely values".to_owned(),
        }
    }
}
