//! Some places of the web with what it gives there: the equivalent of the map in a table.

use super::sample::at;
use thinwright_core::job::Job;
use thinwright_core::part::Slot;
use thinwright_core::plan::{Contour, Point};
use thinwright_core::task::Face;
use thinwright_core::{Sight, WebPicture};
use thinwright_words::map::Place;

/// Chord error of an edge, and distance of places along it, mm.
const CHORD: f64 = 0.1;
const STEP: f64 = 4.0;
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
        let values = ribs.filter_map(|p| Some((p, at_floor(picture, p)?)));
        out.extend(softest(values).map(|(p, c)| (Place::Rib, p, c)));
    }
    let Some(recess) = part.recess(face) else {
        return out;
    };
    let outer = std::iter::once((Place::Wall, &recess.region.outer));
    let bosses = recess.region.holes.iter().map(|h| (Place::Boss, h));
    for (place, contour) in outer.chain(bosses) {
        let beside = beside(contour, sight.patch.to_mm());
        let values = beside.filter_map(|p| Some((p, at_floor(picture, p)?)));
        out.extend(softest(values).map(|(p, c)| (place, p, c)));
    }
    out
}

/// The value at a place of the floor.
fn at_floor(picture: &WebPicture, p: Point) -> Option<f64> {
    at(picture, &picture.compliance, p, |t| picture.floor[t])
}

/// Where the cutter's axis runs along an edge: places at its radius from it, on either side.
fn beside(contour: &Contour, radius: f64) -> impl Iterator<Item = Point> {
    let points = contour.flatten(CHORD);
    let next: Vec<Point> = points
        .iter()
        .cycle()
        .skip(1)
        .take(points.len())
        .copied()
        .collect();
    points.into_iter().zip(next).flat_map(move |(a, b)| {
        let length = a.distance(b).max(f64::MIN_POSITIVE);
        let (dx, dy) = ((b.x - a.x) / length, (b.y - a.y) / length);
        let steps = (length / STEP).ceil().max(1.0);
        let mut out = Vec::new();
        let mut k = 0.5;
        while k < steps {
            let along = length * k / steps;
            for side in [radius, -radius] {
                out.push(Point::new(
                    a.x + along * dx - side * dy,
                    a.y + along * dy + side * dx,
                ));
            }
            k += 1.0;
        }
        out
    })
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
