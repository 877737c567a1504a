//! The plan under a map: where it lies on its paper, its edges, and the paths of lines on it.

use super::contour::{Around, Line};
use crate::drawing::{Letters, Mark, Moment, Path, Stroke, View};
use thinwright_core::Job;
use thinwright_core::plan::{Point, Region};
use thinwright_core::task::Face;

/// The paper of a map.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Paper {
    /// Its width, in the unit of everything on it.
    pub(crate) width: f64,
    /// Its greatest height.
    pub(crate) height: f64,
    /// Height of the letters.
    pub(crate) letter: f64,
}

/// Around the plan, in letter heights: left and right; above and below, where the softest place is named.
const EDGE: f64 = 0.8;
const ABOVE: f64 = 1.9;

/// Where the plan lies.
pub(super) struct Ground {
    pub(super) paper: Paper,
    pub(super) view: View,
    pub(super) height: f64,
}

impl Ground {
    /// The plan as large as the paper lets it be, seen from a face.
    pub(super) fn new(job: &Job, seen_from: Face, paper: Paper) -> Option<Ground> {
        let part = job.part.outline.outer.bounds()?;
        let (edge, above) = (EDGE * paper.letter, ABOVE * paper.letter);
        let room = (paper.width - 2.0 * edge, paper.height - 2.0 * above);
        let scale = (room.0 / part.width()).min(room.1 / part.height());
        let mirrored = seen_from == Face::B;
        let middle = 0.5 * (part.min.x + part.max.x) * if mirrored { -1.0 } else { 1.0 };
        Some(Ground {
            paper,
            view: View {
                origin: (
                    0.5 * paper.width - scale * middle,
                    above + scale * part.max.y,
                ),
                scale,
                mirrored,
            },
            height: 2.0 * above + scale * part.height(),
        })
    }

    /// Edges of the part; slots from when they are begun.
    pub(super) fn edges(&self, job: &Job, moment: &Moment) -> Vec<Mark> {
        let (part, view) = (&job.part, &self.view);
        let up = moment.setup.face_up;
        let mut out = vec![Mark::Line(Stroke::Wide, view.region(&part.outline))];
        // Hidden first: visible lines go over them.
        for (face, stroke) in [(up.other(), Stroke::Hidden), (up, Stroke::Wide)] {
            let recess = part.recess(face).map(|r| view.region(&r.region));
            out.extend(recess.map(|path| Mark::Line(stroke, path)));
        }
        // The mesh runs along chords: what stands up or is open is cut out of the grey on its true outline.
        let bosses = part.recess(up).map(|r| r.region.holes.clone());
        let bosses = bosses.into_iter().flatten().map(Region::solid);
        let slots = part.slots.iter().map(|s| s.region.clone());
        let slots = slots.filter(|_| part.slots_begun(&moment.after));
        let bore = part.bore.iter().map(|b| b.0.clone());
        let open = bosses.chain(slots).chain(bore);
        out.extend(open.map(|r| Mark::Line(Stroke::Open, view.region(&r))));
        out
    }

    /// Words across the middle.
    pub(super) fn words(&self, text: &str) -> Mark {
        let letter = self.paper.letter;
        let at = (0.5 * self.paper.width, 0.5 * self.height + 0.35 * letter);
        Mark::Text(Letters {
            height: 1.2 * letter,
            ..Letters::middle(at, text)
        })
    }

    pub(super) fn at(&self, p: Point) -> (f64, f64) {
        self.view.at(p.x, p.y)
    }

    /// What is enclosed, as one path: its lines rounded, the edges of the field as they are.
    pub(super) fn enclosed(&self, all: &[Around]) -> String {
        let mut path = Path::default();
        for around in all {
            let count = around.points.len();
            // Begins at a corner that stays one, if there is any.
            let smooth = |i: usize| around.level[i] && around.level[(i + count - 1) % count];
            let start = (0..count).find(|i| !smooth(*i)).unwrap_or(0);
            let points: Vec<(f64, f64)> = (0..count)
                .map(|k| self.at(around.points[(start + k) % count]))
                .collect();
            rounded(&mut path, &points, true, |k| smooth((start + k) % count));
        }
        path.0
    }

    /// Lines as one path.
    pub(super) fn lines<'l>(&self, lines: impl Iterator<Item = &'l Line>) -> String {
        let mut path = Path::default();
        for line in lines {
            let points: Vec<(f64, f64)> = line.points.iter().map(|p| self.at(*p)).collect();
            let last = points.len() - 1;
            rounded(&mut path, &points, line.closed, |k| {
                line.closed || (k > 0 && k < last)
            });
        }
        path.0
    }
}

fn half(a: (f64, f64), b: (f64, f64)) -> (f64, f64) {
    (0.5 * (a.0 + b.0), 0.5 * (a.1 + b.1))
}

/// A way along points that rounds those that are to be smooth, between the middles of the pieces before and after them.
fn rounded(path: &mut Path, points: &[(f64, f64)], closed: bool, smooth: impl Fn(usize) -> bool) {
    let count = points.len();
    let around = |k: usize| points[k % count];
    let first = if smooth(0) {
        half(around(count - 1), points[0])
    } else {
        points[0]
    };
    path.to(first);
    let from = usize::from(!smooth(0));
    for (k, point) in points.iter().enumerate().skip(from) {
        if smooth(k) {
            path.line(half(around(k + count - 1), *point));
            path.curve(*point, half(*point, around(k + 1)));
        } else {
            path.line(*point);
        }
    }
    if closed {
        path.close();
    }
}
