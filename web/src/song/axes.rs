//! The ground of a chart: where speeds and depths lie on its paper, and its axes with round figures.

use crate::drawing::{Letters, Mark, Path, Stroke, line, text_width};
use thinwright_quantity::{Length, SpindleSpeed, UnitSystem};
use thinwright_words::stability as words;

/// Paper: on the narrowest screen some 3 px a unit.
pub(super) const WIDTH: f64 = 120.0;
pub(super) const HEIGHT: f64 = 78.0;
/// Height of the letters.
pub(super) const LETTER: f64 = 4.0;
/// Room right of the axis and above it, for its arrow and its title.
const RIGHT: f64 = 4.0;
const ABOVE: f64 = 8.5;
/// Room below the axis: figures and title.
const BELOW: f64 = 13.0;
/// Most figures on each axis.
const MOST_TICKS: (f64, f64) = (6.0, 6.0);
/// Length of a tick, of an arrowhead, and half its width.
const TICK: f64 = 1.2;
const ARROW: (f64, f64) = (2.6, 0.7);

/// Where speeds and depths lie.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Ground {
    units: UnitSystem,
    /// Speeds from left to right, 1/s, and the depth at the top, m.
    speeds: (f64, f64),
    top: f64,
    /// Where the axis of depths stands.
    left: f64,
}

/// Round figures between two values, so many at most: 1, 2 or 5 times a power of ten apart.
pub(super) fn round_ticks((least, most): (f64, f64), count: f64) -> Vec<f64> {
    let span = most - least;
    if !(span > 0.0 && span.is_finite() && count >= 1.0) {
        return Vec::new();
    }
    let decade = libm::pow(10.0, libm::floor(libm::log10(span / count)));
    let apart = [1.0, 2.0, 5.0, 10.0].map(|s| s * decade);
    let step = apart.into_iter().find(|s| span / s <= count);
    let step = step.unwrap_or(10.0 * decade);
    let first = libm::ceil(least / step - 1.0e-9);
    let mut ticks = Vec::new();
    let mut k = first;
    while k * step <= most + 1.0e-9 * span {
        ticks.push(k * step);
        k += 1.0;
    }
    ticks
}

impl Ground {
    /// The ground of a range of speeds and a greatest depth.
    pub(super) fn new(
        units: UnitSystem,
        (low, high): (SpindleSpeed, SpindleSpeed),
        top: Length,
    ) -> Ground {
        let mut ground = Ground {
            units,
            speeds: (low.si(), high.si()),
            top: top.si(),
            left: 0.0,
        };
        let widths = ground
            .depth_ticks()
            .into_iter()
            .map(|t| text_width(&words::tick(t), LETTER));
        ground.left = widths.fold(0.0, f64::max) + 2.0 * TICK + 0.5;
        ground
    }

    /// The unit of depths, m.
    fn depth_unit(&self) -> f64 {
        match self.units {
            UnitSystem::Metric => Length::mm(1.0).si(),
            UnitSystem::Inch => Length::inch(1.0).si(),
        }
    }

    fn depth_ticks(&self) -> Vec<f64> {
        round_ticks((0.0, self.top / self.depth_unit()), MOST_TICKS.1)
    }

    /// Corners of the field: upper left and lower right.
    pub(super) fn field(&self) -> ((f64, f64), (f64, f64)) {
        ((self.left, ABOVE), (WIDTH - RIGHT, HEIGHT - BELOW))
    }

    /// Where a speed lies, 1/s.
    pub(super) fn x(&self, n: f64) -> f64 {
        let ((left, _), (right, _)) = self.field();
        let (low, high) = self.speeds;
        let share = if high > low {
            (n - low) / (high - low)
        } else {
            0.5
        };
        left + share * (right - left)
    }

    /// Where a depth lies, m; what is deeper than the top lies there.
    pub(super) fn y(&self, depth: f64) -> f64 {
        let ((_, top), (_, foot)) = self.field();
        foot - (depth / self.top).clamp(0.0, 1.0) * (foot - top)
    }

    /// Whether a depth is on the chart, m.
    pub(super) fn reaches(&self, depth: f64) -> bool {
        depth <= self.top
    }

    /// Both axes with arrows, figures and titles.
    pub(super) fn axes(&self) -> Vec<Mark> {
        let ((left, top), (right, foot)) = self.field();
        let (end, over) = (right + RIGHT - 0.5, top - 3.0);
        let mut axes = Path::default();
        axes.segment((left, foot), (end - ARROW.0, foot));
        axes.segment((left, foot), (left, over + ARROW.0));
        let mut heads = Path::default();
        heads.polygon(&[
            (end, foot),
            (end - ARROW.0, foot - ARROW.1),
            (end - ARROW.0, foot + ARROW.1),
        ]);
        heads.polygon(&[
            (left, over),
            (left - ARROW.1, over + ARROW.0),
            (left + ARROW.1, over + ARROW.0),
        ]);
        let mut out = vec![
            Mark::Line(Stroke::Wide, axes.0),
            Mark::Line(Stroke::Ink, heads.0),
        ];
        out.extend(self.figures());
        out.push(letters(
            (left + 2.0, 3.6),
            words::depth_axis(self.units),
            "start",
        ));
        out.push(letters(
            (right, HEIGHT - 1.6),
            words::speed_axis(self.units),
            "end",
        ));
        out
    }

    fn figures(&self) -> Vec<Mark> {
        let ((left, _), (right, foot)) = self.field();
        let mut out = Vec::new();
        for depth in self.depth_ticks() {
            let y = self.y(depth * self.depth_unit());
            out.push(Mark::Line(
                Stroke::Narrow,
                line((left - TICK, y), (left, y)),
            ));
            let at = (left - 2.0 * TICK, y + 0.35 * LETTER);
            out.push(letters(at, words::tick(depth), "end"));
        }
        let scale = SpindleSpeed::rpm(1.0).si();
        let range = (self.speeds.0 / scale, self.speeds.1 / scale);
        for speed in round_ticks(range, MOST_TICKS.0) {
            let (x, text) = (self.x(speed * scale), words::tick(speed));
            out.push(Mark::Line(
                Stroke::Narrow,
                line((x, foot), (x, foot + TICK)),
            ));
            // A figure under the edge would reach over it.
            let half = 0.5 * text_width(&text, LETTER);
            let at = (x.clamp(half, right + RIGHT - half), foot + TICK + LETTER);
            out.push(letters(at, text, "middle"));
        }
        out
    }
}

/// A text of the chart's height.
pub(super) fn letters(at: (f64, f64), text: String, anchor: &'static str) -> Mark {
    Mark::Text(Letters {
        height: LETTER,
        anchor,
        ..Letters::middle(at, text)
    })
}
