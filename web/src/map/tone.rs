//! The lowest tone as a still: how the web is bent where it swings farthest, what stays still, what swings against what.

use super::contour::{Around, Field, Line, lines};
use super::ground::Ground;
use crate::drawing::{Letters, Mark, Stroke};
use thinwright_core::WebPicture;
use thinwright_core::plan::Point;

/// Lines at these shares of the greatest swing.
const SHARES: [f64; 4] = [0.2, 0.4, 0.6, 0.8];
/// What swings less than this share is not told from what stays still.
const STILL: f64 = 0.03;
/// Signs stand where the swing is more than this share.
const SIGNED: f64 = 0.4;

/// So many nodes are near a place.
const NEAR: usize = 8;

/// The floor's swing, the greatest 1 and upwards.
fn field(picture: &WebPicture) -> Option<Field<'_>> {
    let shape = &picture.tones.first()?.shape;
    let floor = picture.triangles.iter().zip(&picture.floor);
    let floor = floor.filter(|(_, floor)| **floor).map(|(t, _)| *t);
    let field = Field::new(&picture.nodes, floor.clone(), shape.clone());
    let (least, most) = field.range()?;
    let unit = if -least > most { least } else { most };
    let values = shape.iter().map(|v| v / unit).collect();
    (unit != 0.0).then(|| Field::new(&picture.nodes, floor, values))
}

/// Everything that lies on the plan: under its edges and over them; nothing where there is no tone.
pub(super) fn marks(picture: &WebPicture, ground: &Ground) -> Option<(Vec<Mark>, Vec<Mark>)> {
    let field = field(picture)?;
    let (mut under, mut strokes, mut over) = (Vec::new(), Vec::new(), Vec::new());
    let sides = [
        (field.negative(), Stroke::Minus, "\u{2212}"),
        (field, Stroke::Contour, "+"),
    ];
    for (side, stroke, sign) in &sides {
        for share in SHARES {
            let around = side.around(share);
            if *stroke == Stroke::Contour {
                under.push(Mark::Line(Stroke::Tint, ground.enclosed(&around)));
            }
            strokes.push(Mark::Line(*stroke, ground.lines(lines(&around).iter())));
        }
        let signed = side.around(SIGNED);
        over.extend(signed.iter().filter_map(|a| highest(side, a)).map(|p| {
            let (x, y) = ground.at(p);
            let height = 2.0 * ground.paper.letter;
            Mark::Text(Letters {
                height,
                ..Letters::middle((x, y + 0.35 * height), *sign)
            })
        }));
    }
    let still = lines(&sides[1].0.around(0.0));
    let still = still.iter().filter(|l| swings_beside(&sides[1].0, l));
    strokes.push(Mark::Line(Stroke::Still, ground.lines(still)));
    under.extend(strokes);
    Some((under, over))
}

/// The place inside a closed line where a field is greatest; nothing for a hole.
fn highest(field: &Field, around: &Around) -> Option<Point> {
    let points = &around.points;
    let next = points.iter().cycle().skip(1);
    let area: f64 = points
        .iter()
        .zip(next)
        .map(|(a, b)| a.x * b.y - a.y * b.x)
        .sum();
    let inside = |p: Point| {
        let next = points.iter().cycle().skip(1);
        let crossed = points.iter().zip(next).filter(|(a, b)| {
            (a.y > p.y) != (b.y > p.y) && p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x)
        });
        crossed.count() % 2 == 1
    };
    let high = field.places().filter(|(_, v)| *v > SIGNED);
    let high = high.filter(|(p, _)| area > 0.0 && inside(*p));
    high.max_by(|a, b| a.1.total_cmp(&b.1)).map(|(p, _)| p)
}

/// Whether something swings near a line of stillness: along a clamped edge all is still, and that is no line.
fn swings_beside(field: &Field, line: &Line) -> bool {
    let Some(middle) = line.points.get(line.points.len() / 2) else {
        return false;
    };
    let mut near: Vec<(f64, f64)> = field
        .places()
        .map(|(p, v)| (p.distance(*middle), v.abs()))
        .collect();
    near.sort_by(|a, b| a.0.total_cmp(&b.0));
    near.iter().take(NEAR).any(|(_, v)| *v > STILL)
}
