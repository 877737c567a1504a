//! Where values are written on lines: on straight stretches, clear of other lines, walls and each other.

use crate::drawing::text_width;

/// In letter heights: how far a line may bow away under its label.
const SAG: f64 = 0.4;
/// In letter heights: what a label keeps clear of other things at least, and at best.
const CLEAR: (f64, f64) = (0.7, 1.6);
/// In letter heights: how far two labels of one value stand apart.
const APART: f64 = 10.0;
/// Most labels of one value.
const MOST_LABELS: usize = 2;

type Place = (f64, f64);

/// A line on paper.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Course {
    pub(super) points: Vec<Place>,
    pub(super) closed: bool,
    /// Which value it has, and what is written on it, if anything.
    pub(super) level: usize,
    pub(super) text: Option<String>,
}

/// A text on a line.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Label {
    /// Its middle.
    pub(super) at: Place,
    /// How far it is turned, degrees clockwise on paper; never upside down.
    pub(super) turn: f64,
    pub(super) text: String,
}

fn distance(a: Place, b: Place) -> f64 {
    libm::hypot(a.0 - b.0, a.1 - b.1)
}

/// Points along a line, about so far apart.
fn spaced(course: &Course, by: f64) -> Vec<Place> {
    let ends = course.closed.then(|| course.points[0]);
    let all: Vec<Place> = course.points.iter().copied().chain(ends).collect();
    let mut out = Vec::new();
    let mut left = 0.0;
    for pair in all.windows(2) {
        let length = distance(pair[0], pair[1]);
        while left < length {
            let share = left / length;
            out.push((
                pair[0].0 + share * (pair[1].0 - pair[0].0),
                pair[0].1 + share * (pair[1].1 - pair[0].1),
            ));
            left += by;
        }
        left -= length;
    }
    out
}

/// Writes the values on the lines; `off` is what labels keep clear of beside the lines.
pub(super) fn labels(courses: &[Course], off: &[Place], letter: f64) -> Vec<Label> {
    let spacing = 0.5 * letter;
    let spaced: Vec<Vec<Place>> = courses.iter().map(|c| spaced(c, spacing)).collect();
    let mut placed: Vec<(usize, Label, f64)> = Vec::new();
    for (index, course) in courses.iter().enumerate() {
        let Some(text) = &course.text else { continue };
        let count = |p: &[(usize, Label, f64)]| p.iter().filter(|l| l.0 == course.level).count();
        while count(&placed) < MOST_LABELS {
            let taken = Taken {
                others: &spaced,
                index,
                off,
                placed: &placed,
            };
            let Some(label) = best(course, text, letter, &taken) else {
                break;
            };
            placed.push((course.level, label, 0.5 * text_width(text, letter)));
        }
    }
    placed.into_iter().map(|l| l.1).collect()
}

/// What a label has to keep clear of.
struct Taken<'a> {
    others: &'a [Vec<Place>],
    index: usize,
    off: &'a [Place],
    placed: &'a [(usize, Label, f64)],
}

impl Taken<'_> {
    /// Distance of a stretch of the line, from its point `a` to its point `b`, to whatever is nearest, up to `most`.
    fn clearance(&self, stretch: &[Place; 3], (a, b): (usize, usize), most: f64) -> f64 {
        let own = self.others[self.index].len();
        let mut least = most;
        let mut look = |p: Place| {
            for s in stretch {
                // The cheap test first: most points are far away.
                if (p.0 - s.0).abs() < least && (p.1 - s.1).abs() < least {
                    least = least.min(distance(p, *s));
                }
            }
        };
        self.off.iter().for_each(|p| look(*p));
        for (index, points) in self.others.iter().enumerate() {
            if index != self.index {
                points.iter().for_each(|p| look(*p));
                continue;
            }
            // Of its own line what comes near again from elsewhere.
            let width = b - a;
            for (i, p) in points.iter().enumerate() {
                let behind = (i + own - a) % own;
                if behind > 2 * width && behind < own - width {
                    look(*p);
                }
            }
        }
        for (_, label, half) in self.placed {
            let turn = label.turn.to_radians();
            for k in [-1.0, 0.0, 1.0] {
                look((
                    label.at.0 + k * half * libm::cos(turn),
                    label.at.1 + k * half * libm::sin(turn),
                ));
            }
        }
        least
    }

    fn apart(&self, level: usize, at: Place) -> f64 {
        let same = self.placed.iter().filter(|l| l.0 == level);
        same.map(|l| distance(l.1.at, at))
            .fold(f64::INFINITY, f64::min)
    }
}

/// The best place on a line, if there is a good one.
fn best(course: &Course, text: &str, letter: f64, taken: &Taken) -> Option<Label> {
    let points = &taken.others[taken.index];
    let own = points.len();
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a few steps"
    )]
    let width =
        (libm::ceil((text_width(text, letter) + 0.6 * letter) / (0.5 * letter)) as usize).max(2);
    let last = if course.closed {
        own
    } else {
        own.saturating_sub(width)
    };
    if own < 2 * width {
        return None;
    }
    let mut found: Option<(f64, Label)> = None;
    for a in 0..last {
        let at = |i: usize| points[(a + i) % own];
        let (from, middle, to) = (at(0), at(width / 2), at(width));
        if taken.apart(course.level, middle) < APART * letter {
            continue;
        }
        let chord = distance(from, to).max(1.0e-9);
        let normal = ((from.1 - to.1) / chord, (to.0 - from.0) / chord);
        let away = |p: Place| ((p.0 - from.0) * normal.0 + (p.1 - from.1) * normal.1).abs();
        if (1..width).any(|i| away(at(i)) > SAG * letter) {
            continue;
        }
        let stretch = [at(width / 6), middle, at(width - width / 6)];
        let clear = taken.clearance(&stretch, (a, a + width), CLEAR.1 * letter) / letter;
        let slope = (to.1 - from.1).abs() / chord;
        let score = clear - 0.5 * slope;
        if clear >= CLEAR.0 && found.as_ref().is_none_or(|f| score > f.0) {
            let centre = (
                0.25 * (from.0 + to.0) + 0.5 * middle.0,
                0.25 * (from.1 + to.1) + 0.5 * middle.1,
            );
            let label = Label {
                at: centre,
                turn: upright(libm::atan2(to.1 - from.1, to.0 - from.0).to_degrees()),
                text: text.to_owned(),
            };
            found = Some((score, label));
        }
    }
    found.map(|f| f.1)
}

/// The same direction, to be read without turning one's head over.
fn upright(degrees: f64) -> f64 {
    if degrees > 90.0 {
        degrees - 180.0
    } else if degrees <= -90.0 {
        degrees + 180.0
    } else {
        degrees
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn circle(radius: f64, level: usize, text: &str) -> Course {
        let point = |k: i32| {
            let angle = core::f64::consts::TAU * f64::from(k) / 200.0;
            (
                60.0 + radius * libm::cos(angle),
                60.0 + radius * libm::sin(angle),
            )
        };
        Course {
            points: (0..200).map(point).collect(),
            closed: true,
            level,
            text: Some(text.to_owned()),
        }
    }

    fn radius(label: &Label) -> f64 {
        distance(label.at, (60.0, 60.0))
    }

    #[test]
    fn labels_lie_on_their_lines_upright_and_apart() {
        let courses: Vec<Course> = (1..5).map(|k| circle(11.0 * k as f64, k, "40")).collect();
        let found = labels(&courses, &[], 4.0);
        // The smallest circle is too tight for two.
        assert!(found.len() >= 7, "{found:?}");
        for (i, label) in found.iter().enumerate() {
            let off = radius(label) / 11.0;
            assert!((off - off.round()).abs() < 0.15, "{label:?}");
            assert!((-90.0..=90.0).contains(&label.turn));
            for other in &found[..i] {
                assert!(distance(label.at, other.at) > 4.0, "{label:?} {other:?}");
            }
        }
    }

    #[test]
    fn no_label_where_lines_crowd_or_bend() {
        let crowd: Vec<Course> = (0..6)
            .map(|k| circle(50.0 + 1.5 * k as f64, k, "40"))
            .collect();
        let found = labels(&crowd, &[], 4.0);
        assert!(
            found
                .iter()
                .all(|l| (radius(l) - 50.0).abs() < 0.5 || (radius(l) - 57.5).abs() < 0.5)
                || found.is_empty()
        );
        assert!(labels(&[circle(3.0, 0, "40")], &[], 4.0).is_empty());
    }

    #[test]
    fn labels_keep_off_what_they_are_told_to() {
        let wall: Vec<(f64, f64)> = (0..240).map(|k| (0.5 * f64::from(k), 30.0)).collect();
        for label in labels(&[circle(31.0, 0, "40")], &wall, 4.0) {
            assert!((label.at.1 - 30.0).abs() > 2.0, "{label:?}");
        }
    }
}
