//! Some places of the web with what it gives there: the equivalent of the map in a table.

use super::contour::Field;
use super::sample::at;
use thinwright_core::job::Job;
use thinwright_core::part::Slot;
use thinwright_core::plan::Point;
use thinwright_core::task::Face;
use thinwright_core::{Sight, WebPicture};
use thinwright_words::map::Place;

/// In patch radii: how far from a wall counts as beside it.
const BESIDE: (f64, f64) = (1.0, 2.0);
/// Slots up to so many times the narrowest rib apart have a rib between them.
const NEAR: f64 = 1.6;

/// Places with their compliance, the softest of all first.
pub(super) fn places(
    job: &Job,
    face: Face,
    sight: &Sight,
    picture: &WebPicture,
) -> Vec<(Place, Point, f64)> {
    let mut out = vec![(Place::Softest, picture.softest, picture.most)];
    let part = &job.part;
    if part.slots_open(&sight.state) {
        let ribs = ribs(&part.slots, part.rib.unwrap_or(0.0) * 1.0e3);
        let values = ribs.filter_map(|p| Some((p, at(picture, &picture.compliance, p)?)));
        out.extend(softest(values).map(|(p, c)| (Place::Rib, p, c)));
    }
    let Some(recess) = part.recess(face) else {
        return out;
    };
    let floor = picture.triangles.iter().zip(&picture.floor);
    let floor = floor.filter(|(_, floor)| **floor).map(|(t, _)| *t);
    let field = Field::new(&picture.nodes, floor, picture.compliance.clone());
    let outer = std::iter::once((Place::Wall, &recess.region.outer));
    let bosses = recess.region.holes.iter().map(|h| (Place::Boss, h));
    let patch = sight.patch.to_mm();
    for (place, contour) in outer.chain(bosses) {
        let edge = contour.flatten(0.05);
        let beside = field.places().filter(|(p, _)| {
            let off = off(&edge, *p);
            BESIDE.0 * patch <= off && off <= BESIDE.1 * patch
        });
        out.extend(softest(beside).map(|(p, c)| (place, p, c)));
    }
    out
}

fn softest(values: impl Iterator<Item = (Point, f64)>) -> Option<(Point, f64)> {
    values.max_by(|a, b| a.1.total_cmp(&b.1))
}

/// Middles of the ribs between neighbouring slots that run beside each other.
fn ribs(slots: &[Slot], rib: f64) -> impl Iterator<Item = Point> {
    let middle = |s: &Slot| {
        Point::new(
            0.5 * (s.ends.0.x + s.ends.1.x),
            0.5 * (s.ends.0.y + s.ends.1.y),
        )
    };
    slots.iter().enumerate().flat_map(move |(i, a)| {
        let near = slots[i + 1..].iter().filter(move |b| {
            let apart = middle(a).distance(middle(b)) - 0.5e3 * (a.width + b.width);
            rib > 0.0 && apart < NEAR * rib
        });
        near.map(move |b| {
            let (p, q) = (middle(a), middle(b));
            Point::new(0.5 * (p.x + q.x), 0.5 * (p.y + q.y))
        })
    })
}

/// Distance to a closed line of points, mm.
fn off(edge: &[Point], p: Point) -> f64 {
    let next = edge.iter().cycle().skip(1);
    let pieces = edge.iter().zip(next).map(|(a, b)| {
        let (dx, dy) = (b.x - a.x, b.y - a.y);
        let length2 = (dx * dx + dy * dy).max(1.0e-12);
        let share = (((p.x - a.x) * dx + (p.y - a.y) * dy) / length2).clamp(0.0, 1.0);
        p.distance(Point::new(a.x + share * dx, a.y + share * dy))
    });
    pieces.fold(f64::INFINITY, f64::min)
}
