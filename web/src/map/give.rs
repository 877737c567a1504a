//! The map of what the web gives: lines of equal give over steps of grey, values on them, the softest place.

use super::contour::{Field, lines};
use super::ground::Ground;
use super::label::{Course, labels};
use super::levels::{heavy, round_levels};
use crate::drawing::{Letters, Mark, Path, Stroke, line};
use thinwright_core::WebPicture;
use thinwright_words::map::{self as words, Gauge};

/// A line of the map.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Level {
    /// Compliance, m/N.
    pub(super) compliance: f64,
    pub(super) heavy: bool,
}

/// The floor's compliance in units of a gauge.
pub(super) fn field<'a>(picture: &'a WebPicture, gauge: &Gauge) -> Field<'a> {
    let floor = picture.triangles.iter().zip(&picture.floor);
    let floor = floor.filter(|(_, floor)| **floor).map(|(t, _)| *t);
    let values = picture.compliance.iter().map(|c| c / gauge.size).collect();
    Field::new(&picture.nodes, floor, values)
}

/// The lines of the map, the stiffest first.
pub(super) fn levels(picture: &WebPicture, gauge: &Gauge) -> Vec<Level> {
    let Some(range) = field(picture, gauge).range() else {
        return Vec::new();
    };
    let (step, levels) = round_levels(range);
    let level = |v: &f64| Level {
        compliance: v * gauge.size,
        heavy: heavy(*v, step),
    };
    levels.iter().map(level).collect()
}

/// Everything that lies on the plan: first what lies under its edges, then what lies over them.
pub(super) fn marks(
    picture: &WebPicture,
    gauge: &Gauge,
    ground: &Ground,
) -> (Vec<Mark>, Vec<Mark>) {
    let field = field(picture, gauge);
    let (mut under, mut courses) = (Vec::new(), Vec::new());
    let mut strokes = Vec::new();
    for (index, level) in levels(picture, gauge).into_iter().enumerate() {
        let value = level.compliance / gauge.size;
        let around = field.around(value);
        under.push(Mark::Line(Stroke::Tint, ground.enclosed(&around)));
        let found = lines(&around);
        let stroke = if level.heavy {
            Stroke::Index
        } else {
            Stroke::Contour
        };
        strokes.push(Mark::Line(stroke, ground.lines(found.iter())));
        courses.extend(found.into_iter().map(|l| Course {
            points: l.points.iter().map(|p| ground.at(*p)).collect(),
            closed: l.closed,
            level: index,
            text: level.heavy.then(|| words::give(value)),
        }));
    }
    under.extend(strokes);
    let walls = field.around(f64::NEG_INFINITY);
    let walls = walls.iter().flat_map(|w| &w.points);
    let mut off: Vec<(f64, f64)> = walls.map(|p| ground.at(*p)).collect();
    let softest = ground.at(picture.softest);
    off.push(softest);
    let letter = ground.paper.letter;
    let mut over: Vec<Mark> = labels(&courses, &off, letter)
        .into_iter()
        .map(|l| written(l.at, l.turn, l.text, letter))
        .collect();
    over.extend(softest_mark(
        softest,
        words::softest_mark(picture.most),
        ground,
    ));
    (under, over)
}

/// A text about its middle, turned.
fn written(at: (f64, f64), turn: f64, text: String, height: f64) -> Mark {
    // From the middle of the letters to their base line.
    let (sin, cos) = (libm::sin(turn.to_radians()), libm::cos(turn.to_radians()));
    let down = 0.35 * height;
    Mark::Text(Letters {
        height,
        turn,
        ..Letters::middle((at.0 - down * sin, at.1 + down * cos), text)
    })
}

/// A cross in a circle, with its value over the plan.
fn softest_mark(at: (f64, f64), text: String, ground: &Ground) -> Vec<Mark> {
    let letter = ground.paper.letter;
    let (r, reach) = (0.45 * letter, 0.8 * letter);
    let mut ring = Path::default();
    ring.to((at.0 - r, at.1));
    ring.arc(r, true, (at.0 + r, at.1));
    ring.arc(r, true, (at.0 - r, at.1));
    let mut cross = Path::default();
    cross.segment((at.0 - reach, at.1), (at.0 + reach, at.1));
    cross.segment((at.0, at.1 - reach), (at.0, at.1 + reach));
    let right = at.0 > 0.5 * ground.paper.width;
    let x = if right {
        ground.paper.width - 0.3 * letter
    } else {
        0.3 * letter
    };
    // Named over or under the plan, whichever is nearer.
    let (base, foot, from) = if at.1 > 0.5 * ground.height {
        let base = ground.height - 0.4 * letter;
        (base, base - 1.1 * letter, at.1 + reach)
    } else {
        (1.1 * letter, 1.6 * letter, at.1 - reach)
    };
    let foot = (x + if right { -letter } else { letter }, foot);
    vec![
        Mark::Line(Stroke::Narrow, line((at.0, from), foot)),
        Mark::Line(Stroke::Cutter, ring.0),
        Mark::Line(Stroke::Narrow, cross.0),
        Mark::Text(Letters {
            anchor: if right { "end" } else { "start" },
            ..Letters::start((x, base), text, letter)
        }),
    ]
}
