//! Round, straight and slotted shapes as lines of points.

use core::f64::consts::{FRAC_PI_2, PI, TAU};

/// Chord error of the lines, m.
const CHORD: f64 = 5e-6;

/// A closed shape, m.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Shape {
    /// A circle.
    Circle { at: [f64; 2], r: f64 },
    /// A rectangle with corners of radius `r`.
    Rect {
        low: [f64; 2],
        high: [f64; 2],
        r: f64,
    },
    /// A slot with round ends: the middles of the ends, and its width.
    Slot {
        from: [f64; 2],
        to: [f64; 2],
        width: f64,
    },
}

/// Points on an arc, both ends among them.
fn arc(at: [f64; 2], r: f64, (from, to): (f64, f64)) -> Vec<[f64; 2]> {
    if r <= 0.0 {
        return vec![at];
    }
    let step = 2.0 * libm::acos(1.0 - (CHORD / r).min(0.3));
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a small count"
    )]
    let count = ((to - from).abs() / step).ceil().max(6.0) as u32;
    let point = |i| {
        let angle = from + (to - from) * f64::from(i) / f64::from(count);
        [at[0] + r * libm::cos(angle), at[1] + r * libm::sin(angle)]
    };
    (0..=count).map(point).collect()
}

impl Shape {
    pub(crate) fn circle(at: [f64; 2], r: f64) -> Shape {
        Shape::Circle { at, r }
    }

    pub(crate) fn rect(low: [f64; 2], high: [f64; 2], r: f64) -> Shape {
        Shape::Rect { low, high, r }
    }

    /// Its line, counter-clockwise, the first point not repeated.
    pub(crate) fn line(&self) -> Vec<[f64; 2]> {
        match *self {
            Shape::Circle { at, r } => {
                let mut points = arc(at, r, (0.0, TAU));
                points.pop();
                points
            }
            Shape::Rect { low, high, r } => {
                let corners = [
                    [low[0] + r, low[1] + r],
                    [high[0] - r, low[1] + r],
                    [high[0] - r, high[1] - r],
                    [low[0] + r, high[1] - r],
                ];
                let round = |(k, at): (u32, [f64; 2])| {
                    let from = PI + f64::from(k) * FRAC_PI_2;
                    arc(at, r, (from, from + FRAC_PI_2))
                };
                (0..).zip(corners).flat_map(round).collect()
            }
            Shape::Slot { from, to, width } => {
                let along = libm::atan2(to[1] - from[1], to[0] - from[0]);
                let end = |at, start| arc(at, 0.5 * width, (start, start + PI));
                let mut points = end(to, along - FRAC_PI_2);
                points.extend(end(from, along + FRAC_PI_2));
                points
            }
        }
    }

    /// Whether a place is inside.
    pub(crate) fn contains(&self, [x, y]: [f64; 2]) -> bool {
        match *self {
            Shape::Circle { at, r } => libm::hypot(x - at[0], y - at[1]) < r,
            Shape::Rect { low, high, r } => {
                let out = |v: f64, d: usize| (low[d] + r - v).max(v - high[d] + r);
                let (dx, dy) = (out(x, 0), out(y, 1));
                if r > 0.0 {
                    libm::hypot(dx.max(0.0), dy.max(0.0)) < r
                } else {
                    dx < 0.0 && dy < 0.0
                }
            }
            Shape::Slot { from, to, width } => {
                let d = [to[0] - from[0], to[1] - from[1]];
                let share =
                    ((x - from[0]) * d[0] + (y - from[1]) * d[1]) / (d[0] * d[0] + d[1] * d[1]);
                let share = share.clamp(0.0, 1.0);
                libm::hypot(x - from[0] - share * d[0], y - from[1] - share * d[1]) < 0.5 * width
            }
        }
    }

    /// The shape with its line this much further out.
    pub(crate) fn grown(&self, by: f64) -> Shape {
        match *self {
            Shape::Circle { at, r } => Shape::Circle { at, r: r + by },
            Shape::Rect { low, high, r } => Shape::Rect {
                low: low.map(|v| v - by),
                high: high.map(|v| v + by),
                r: if r > 0.0 { (r + by).max(0.0) } else { 0.0 },
            },
            Shape::Slot { from, to, width } => Shape::Slot {
                from,
                to,
                width: width + 2.0 * by,
            },
        }
    }
}
