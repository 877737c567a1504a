//! Linear dimensions and leaders after ISO 129-1: extension lines, arrowheads, text above its line, read from below and right.

use super::mark::{Letters, Mark, Stroke};
use super::pen::{Path, line};
use super::place::{ARROW, LETTER, Placed, Span, row_count, rows, text_width};
use thinwright_core::FieldId;

/// Gap between an edge and its extension line, and what stands out over the dimension line, mm.
const GAP: f64 = 0.8;
const OVER: f64 = 1.5;
/// Distance of the first dimension line from the view, and of one row from the next, mm.
const FIRST: f64 = 8.0;
const NEXT: f64 = 7.0;
/// Half the width of an arrowhead, mm.
const HALF_ARROW: f64 = 0.5;
/// Text above its line, mm.
const ABOVE: f64 = 1.0;
/// Around a text, what the finger meets, mm.
const FINGER: f64 = 3.4;

/// A side of a view.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Side {
    Above,
    Below,
    Left,
    Right,
}

/// A size to be given: where it is measured, beside which side, and what answers it.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Size {
    pub(crate) side: Side,
    /// The two places measured, on paper.
    pub(crate) from: (f64, f64),
    pub(crate) to: (f64, f64),
    /// As written.
    pub(crate) text: String,
    pub(crate) field: FieldId,
    /// As said.
    pub(crate) name: String,
}

/// Room that rows of dimensions take beside a view, mm.
pub(crate) fn room(rows: usize) -> f64 {
    if rows == 0 {
        return 0.0;
    }
    #[allow(clippy::cast_precision_loss, reason = "few rows")]
    let more = (rows - 1) as f64;
    FIRST + NEXT * more + LETTER
}

/// How many rows the sizes of one side take.
pub(crate) fn rows_of(sizes: &[Size], side: Side) -> usize {
    row_count(&placed(sizes, side).1)
}

fn placed(sizes: &[Size], side: Side) -> (Vec<&Size>, Vec<Placed>) {
    let of_side: Vec<&Size> = sizes.iter().filter(|s| s.side == side).collect();
    let upright = matches!(side, Side::Left | Side::Right);
    let spans: Vec<Span> = of_side
        .iter()
        .map(|s| {
            let (a, b) = if upright {
                (s.from.1, s.to.1)
            } else {
                (s.from.0, s.to.0)
            };
            Span::new(a, b, &s.text)
        })
        .collect();
    // Text without room stands to the right of its line, or above it.
    let placed = rows(&spans, if upright { -1.0 } else { 1.0 });
    (of_side, placed)
}

/// Draws the sizes of a view whose outside lies between two corners.
pub(crate) fn dimensions(sizes: &[Size], (least, most): ((f64, f64), (f64, f64))) -> Vec<Mark> {
    let mut out = Vec::new();
    for side in [Side::Above, Side::Below, Side::Left, Side::Right] {
        let (of_side, placed) = placed(sizes, side);
        let mut both: Vec<(&Size, Placed)> = of_side.into_iter().zip(placed).collect();
        // The outer ones first: the figures of the inner ones break their extension lines.
        both.sort_by_key(|(_, place)| std::cmp::Reverse(place.row));
        for (size, place) in both {
            #[allow(clippy::cast_precision_loss, reason = "few rows")]
            let away = FIRST + NEXT * place.row as f64;
            let level = match side {
                Side::Above => least.1 - away,
                Side::Below => most.1 + away,
                Side::Left => least.0 - away,
                Side::Right => most.0 + away,
            };
            out.push(linear(size, place, level));
        }
    }
    out
}

/// One dimension with its line at a level of the paper.
fn linear(size: &Size, place: Placed, level: f64) -> Mark {
    let upright = matches!(size.side, Side::Left | Side::Right);
    // Along the dimension line, and across it.
    let split = |p: (f64, f64)| if upright { (p.1, p.0) } else { p };
    let join = |along: f64, across: f64| {
        if upright {
            (across, along)
        } else {
            (along, across)
        }
    };
    let (mut a, mut b) = (split(size.from), split(size.to));
    if a.0 > b.0 {
        std::mem::swap(&mut a, &mut b);
    }
    let mut lines = Path::default();
    for end in [a, b] {
        let way = (level - end.1).signum();
        lines.segment(
            join(end.0, end.1 + way * GAP),
            join(end.0, level + way * OVER),
        );
    }
    let half_text = 0.5 * text_width(&size.text, LETTER);
    let (from, to) = if place.outside {
        let text = (place.text_at - half_text, place.text_at + half_text);
        (
            (a.0 - 2.0 * ARROW).min(text.0),
            (b.0 + 2.0 * ARROW).max(text.1),
        )
    } else {
        (a.0, b.0)
    };
    lines.segment(join(from, level), join(to, level));
    let heads = heads((a.0, b.0), level, place.outside, &join);
    let at = join(place.text_at, level - ABOVE);
    let corner = |sign: f64| {
        join(
            place.text_at + sign * (half_text + 1.0),
            level - ABOVE - 0.5 * LETTER + sign * FINGER,
        )
    };
    let (p, q) = (corner(-1.0), corner(1.0));
    Mark::Dimension {
        field: size.field,
        name: size.name.clone(),
        marks: vec![
            Mark::Line(Stroke::Narrow, lines.0),
            Mark::Line(Stroke::Ink, heads.0),
            Mark::Text(Letters {
                turn: if upright { -90.0 } else { 0.0 },
                ..Letters::middle(at, size.text.clone())
            }),
        ],
        touch: ((p.0.min(q.0), p.1.min(q.1)), (p.0.max(q.0), p.1.max(q.1))),
    }
}

/// Arrowheads at both ends, pointing outwards or, where there is no room, inwards.
fn heads(
    ends: (f64, f64),
    level: f64,
    outside: bool,
    join: &impl Fn(f64, f64) -> (f64, f64),
) -> Path {
    let mut heads = Path::default();
    let inward = if outside { -1.0 } else { 1.0 };
    for (end, way) in [(ends.0, inward), (ends.1, -inward)] {
        let back = end + way * ARROW;
        heads.polygon(&[
            join(end, level),
            join(back, level - HALF_ARROW),
            join(back, level + HALF_ARROW),
        ]);
    }
    heads
}

/// A leader: an arrow on a place, a bent line, a text on its shelf.
pub(crate) struct Leader {
    /// Where the arrow points.
    pub(crate) tip: (f64, f64),
    /// Where the line bends into the shelf.
    pub(crate) elbow: (f64, f64),
    pub(crate) text: String,
    pub(crate) field: FieldId,
    pub(crate) name: String,
}

impl Leader {
    /// Draws it; the shelf runs away from the tip.
    pub(crate) fn mark(self) -> Mark {
        let (dx, dy) = (self.elbow.0 - self.tip.0, self.elbow.1 - self.tip.1);
        let length = (dx * dx + dy * dy).sqrt().max(1.0e-9);
        let (ux, uy) = (dx / length, dy / length);
        let back = (self.tip.0 + ARROW * ux, self.tip.1 + ARROW * uy);
        let mut head = Path::default();
        head.polygon(&[
            self.tip,
            (back.0 - HALF_ARROW * uy, back.1 + HALF_ARROW * ux),
            (back.0 + HALF_ARROW * uy, back.1 - HALF_ARROW * ux),
        ]);
        let width = text_width(&self.text, LETTER);
        let way = if dx < 0.0 { -1.0 } else { 1.0 };
        let end = (self.elbow.0 + way * (width + 1.0), self.elbow.1);
        let left = self.elbow.0.min(end.0);
        let mut lines = Path(line(self.tip, self.elbow));
        lines.line(end);
        Mark::Dimension {
            field: self.field,
            name: self.name,
            marks: vec![
                Mark::Line(Stroke::Narrow, lines.0),
                Mark::Line(Stroke::Ink, head.0),
                Mark::Text(Letters::start(
                    (left + 0.5, self.elbow.1 - ABOVE),
                    self.text,
                    LETTER,
                )),
            ],
            touch: (
                (left, self.elbow.1 - LETTER - FINGER),
                (left + width + 1.0, self.elbow.1 + FINGER),
            ),
        }
    }
}
