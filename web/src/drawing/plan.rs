//! The part seen from face A (or turned over, from face B): edges, hidden edges, centre lines, cutting planes.

use super::cut::Plane;
use super::mark::{Letters, Mark, Stroke};
use super::pen::{Path, View, line};
use super::place::{ARROW, LETTER};
use thinwright_core::part::Part;
use thinwright_core::plan::{Bounds, Point};
use thinwright_core::task::Face;

/// How far a centre line stands out, mm on paper.
const STAND_OUT: f64 = 3.0;

/// Edges and centre lines, seen from a face, with the slots or before they are cut.
pub(crate) fn edges(part: &Part, view: &View, (seen, slots): (Face, bool)) -> Vec<Mark> {
    let mut out = vec![
        Mark::Line(Stroke::Blank, view.region(&part.blank)),
        Mark::Line(Stroke::Wide, view.region(&part.outline)),
    ];
    // Hidden first: visible lines go over them.
    if let (Some(recess), true) = (part.recess(seen.other()), super::sizes::differs(part)) {
        out.insert(1, Mark::Line(Stroke::Hidden, view.region(&recess.region)));
    }
    if let Some(recess) = part.recess(seen) {
        out.push(Mark::Line(Stroke::Wide, view.region(&recess.region)));
    }
    for slot in part.slots.iter().filter(|_| slots) {
        out.push(Mark::Line(Stroke::Wide, view.region(&slot.region)));
    }
    if let Some((bore, _)) = &part.bore {
        out.push(Mark::Line(Stroke::Wide, view.region(bore)));
    }
    out.extend(part.outline.outer.bounds().map(|b| centre_lines(&b, view)));
    out
}

fn centre_lines(b: &Bounds, view: &View) -> Mark {
    let over = STAND_OUT / view.scale;
    let (x, y) = (0.5 * (b.min.x + b.max.x), 0.5 * (b.min.y + b.max.y));
    let mut path = Path::default();
    path.segment(view.at(b.min.x - over, y), view.at(b.max.x + over, y));
    path.segment(view.at(x, b.min.y - over), view.at(x, b.max.y + over));
    Mark::Line(Stroke::Centre, path.0)
}

/// A cutting plane between two places along it: narrow between, wide at its ends, arrows the way it is looked.
pub(crate) fn cutting_plane(
    plane: Plane,
    ends: (f64, f64),
    view: &View,
    letter: &str,
) -> Vec<Mark> {
    let (sin, cos) = (libm::sin(plane.direction), libm::cos(plane.direction));
    let at = |x: f64| {
        let p = Point::new(plane.through.x + x * cos, plane.through.y + x * sin);
        view.at(p.x, p.y)
    };
    // Looked at along the left hand of its direction; on paper up is -y.
    let (look, along) = ((-sin, -cos), (cos, -sin));
    let mut out = vec![Mark::Line(Stroke::Centre, line(at(ends.0), at(ends.1)))];
    for (end, way) in [(at(ends.0), -1.0), (at(ends.1), 1.0)] {
        let step = |p: (f64, f64), by: (f64, f64), k: f64| (p.0 + k * by.0, p.1 + k * by.1);
        out.push(Mark::Line(
            Stroke::Plane,
            line(end, step(end, along, way * 5.0)),
        ));
        let foot = step(end, along, way * 3.5);
        let tip = step(foot, look, 8.0);
        let back = step(tip, look, -ARROW);
        let mut head = Path::default();
        head.polygon(&[tip, step(back, along, 0.9), step(back, along, -0.9)]);
        out.push(Mark::Line(Stroke::Narrow, line(foot, back)));
        out.push(Mark::Line(Stroke::Ink, head.0));
        let side = step(step(foot, look, 4.5), along, way * 4.0);
        let at = (side.0, side.1 + 0.35 * LETTER);
        out.push(Mark::Text(Letters {
            height: 5.0,
            ..Letters::middle(at, letter)
        }));
    }
    out
}
