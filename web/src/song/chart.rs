//! The chart drawn: where it sings over speeds and depths, what of that is used, and where the step stands.

use super::axes::{Ground, letters};
use super::hatch;
use crate::drawing::{Mark, Path, Stroke, line};
use thinwright_core::stability::{Lobes, StabilityReport};
use thinwright_quantity::{Length, UnitSystem};

/// What a chart shows.
pub(super) enum Shows<'a> {
    /// The limit at each speed.
    Lobes(&'a Lobes),
    /// What holds at any speed: no frequency is known.
    AnySpeed,
    /// Nothing yet: words in its place.
    Words(&'static str),
}

/// Distance of hatching lines, of dots along the limit.
const PITCH: f64 = 3.2;
const DOTS: f64 = 2.4;
/// Radii: a dot, the ring of the step; reach of its cross; half the bar at what is quiet at its speed.
const DOT: f64 = 0.75;
const RING: f64 = 1.7;
const CROSS: f64 = 3.0;
const BAR: f64 = 3.0;
/// Height and half the width of the mark of a good speed.
const MARK: (f64, f64) = (2.6, 1.4);
/// How much the chart reaches over what it has to show; how many times further apart two depths may be and both be seen.
const HEADROOM: f64 = 1.25;
const FAR: f64 = 5.0;
/// Half the width and the height of the arrow over a step that stands above the chart.
const ARROW: (f64, f64) = (0.9, 2.2);

/// All marks of a chart.
pub(super) fn chart(units: UnitSystem, report: &StabilityReport, shows: &Shows) -> Vec<Mark> {
    let top = top(report, shows);
    let ground = Ground::new(units, report.range, top);
    let mut marks = match shows {
        Shows::Lobes(lobes) => limit(&ground, report, lobes),
        Shows::AnySpeed => any_speed(&ground, report),
        Shows::Words(_) => Vec::new(),
    };
    marks.extend(ground.axes());
    if let Shows::Lobes(_) = shows {
        marks.extend(speeds(&ground, report));
        marks.extend(here(&ground, report));
    }
    if let Shows::Words(text) = shows {
        let (a, b) = ground.field();
        let at = (0.5 * (a.0 + b.0), 0.5 * (a.1 + b.1));
        marks.push(letters(at, (*text).to_owned(), "middle"));
    }
    let cut = &report.cut;
    let at = (ground.x(cut.n.si()), ground.y(cut.ap.si()));
    marks.extend(point(at));
    if !ground.reaches(cut.ap.si()) {
        marks.push(arrow(at));
    }
    marks
}

/// Whether the step stands so far above everything else that the chart leaves it out.
pub(super) fn step_above(report: &StabilityReport, lobes: Option<&Lobes>) -> bool {
    report.cut.ap.si() > FAR * highest(report, lobes)
}

/// The greatest depth that a chart has to show but for the step, m.
fn highest(report: &StabilityReport, lobes: Option<&Lobes>) -> f64 {
    let (top, quiet) = (report.top.si(), report.quiet);
    match lobes {
        Some(lobes) => {
            let limits = lobes.limit.iter().map(|l| l.map_or(top, Length::si));
            limits.fold(0.0, f64::max)
        }
        None => quiet.0.si().max(quiet.1.si()),
    }
}

/// Far enough for the step and for what is known, as long as both can be seen.
pub(super) fn top(report: &StabilityReport, shows: &Shows) -> Length {
    let lobes = match shows {
        Shows::Words(_) => return report.top,
        Shows::AnySpeed => None,
        Shows::Lobes(lobes) => Some(*lobes),
    };
    let (ap, quiet) = (report.cut.ap.si(), report.quiet);
    let reach = if step_above(report, lobes) && highest(report, lobes) > 0.0 {
        highest(report, lobes)
    } else if lobes.is_some() {
        highest(report, lobes).max(ap)
    } else {
        // What is quiet far beyond the step is of no use to it.
        let shown = [quiet.0.si(), quiet.1.si()].into_iter();
        shown.filter(|q| *q <= FAR * ap).fold(ap, f64::max)
    };
    let reach = HEADROOM * reach;
    // Where lobes are known they are only known up to the top.
    Length::from_si(lobes.map_or(reach, |_| reach.min(report.top.si())))
}

/// The region that sings, the limit, its share, and where every other tooth cuts deep.
fn limit(ground: &Ground, report: &StabilityReport, lobes: &Lobes) -> Vec<Mark> {
    let top = report.top.si();
    // What is not known is as high as the chart.
    let at = |share: f64| -> Vec<(f64, f64)> {
        let each = lobes.speeds.iter().zip(&lobes.limit);
        let depth = |limit: &Option<Length>| limit.map_or(top, Length::si);
        each.map(|(n, limit)| (ground.x(n.si()), ground.y(share * depth(limit))))
            .collect()
    };
    let known: Vec<bool> = lobes.limit.iter().map(Option::is_some).collect();
    let full = at(1.0);
    let mut hatching = Path::default();
    for (a, b) in hatch::above(&full, ground.field().0.1, PITCH) {
        hatching.segment(a, b);
    }
    vec![
        Mark::Line(Stroke::Hatch, hatching.0),
        Mark::Line(Stroke::Hidden, runs(&at(report.share), &known)),
        Mark::Line(Stroke::Index, runs(&full, &known)),
        Mark::Line(Stroke::Ink, dots(&full, &known, &lobes.flip)),
    ]
}

/// A line wherever it is known at one of its ends at least.
fn runs(points: &[(f64, f64)], known: &[bool]) -> String {
    let mut path = Path::default();
    let mut open = false;
    for k in 1..points.len() {
        let wanted = known[k - 1] || known[k];
        if wanted && !open {
            path.to(points[k - 1]);
        }
        if wanted {
            path.line(points[k]);
        }
        open = wanted;
    }
    path.0
}

/// Dots along the limit where every other tooth cuts deep.
fn dots(points: &[(f64, f64)], known: &[bool], flip: &[bool]) -> String {
    let mut path = Path::default();
    let mut last: Option<(f64, f64)> = None;
    for (k, p) in points.iter().enumerate() {
        let away = |q: (f64, f64)| (p.0 - q.0).abs() + (p.1 - q.1).abs() >= DOTS;
        if known[k] && flip[k] && last.is_none_or(away) {
            circle(&mut path, *p, DOT);
            last = Some(*p);
        }
    }
    path.0
}

pub(super) fn circle(path: &mut Path, (x, y): (f64, f64), radius: f64) {
    path.to((x + radius, y));
    path.arc(radius, true, (x - radius, y));
    path.arc(radius, true, (x + radius, y));
}

/// What holds at any speed: at the bad end, and at likely values.
fn any_speed(ground: &Ground, report: &StabilityReport) -> Vec<Mark> {
    let ((left, _), (right, _)) = ground.field();
    let lines = [
        (report.quiet.0.si(), Stroke::Index),
        (report.quiet.1.si(), Stroke::Hidden),
    ];
    let shown = lines.into_iter().filter(|l| ground.reaches(l.0));
    let drawn = shown.map(|(depth, stroke)| {
        let y = ground.y(depth);
        Mark::Line(stroke, line((left, y), (right, y)))
    });
    drawn.collect()
}

/// Good speeds, on the axis; open where the web drums.
fn speeds(ground: &Ground, report: &StabilityReport) -> Vec<Mark> {
    let foot = ground.field().1.1;
    report
        .speeds
        .iter()
        .map(|s| speed((ground.x(s.n.si()), foot), s.drums))
        .collect()
}

/// The mark of a good speed, its tip on the axis.
pub(super) fn speed((x, y): (f64, f64), drums: bool) -> Mark {
    let mut path = Path::default();
    path.polygon(&[(x, y), (x - MARK.1, y - MARK.0), (x + MARK.1, y - MARK.0)]);
    let stroke = if drums { Stroke::Cutter } else { Stroke::Ink };
    Mark::Line(stroke, path.0)
}

/// What is quiet at the step's speed, if it is on the chart.
fn here(ground: &Ground, report: &StabilityReport) -> Option<Mark> {
    let depth = report.here.filter(|d| ground.reaches(d.si()))?;
    Some(bar((ground.x(report.cut.n.si()), ground.y(depth.si()))))
}

pub(super) fn bar((x, y): (f64, f64)) -> Mark {
    Mark::Line(Stroke::Frame, line((x - BAR, y), (x + BAR, y)))
}

/// Over a step that stands above the chart.
fn arrow((x, y): (f64, f64)) -> Mark {
    let foot = y - RING - 0.3;
    let mut path = Path::default();
    path.polygon(&[
        (x, foot - ARROW.1),
        (x - ARROW.0, foot),
        (x + ARROW.0, foot),
    ]);
    Mark::Line(Stroke::Ink, path.0)
}

/// Where the step stands: a cross in a ring.
pub(super) fn point((x, y): (f64, f64)) -> [Mark; 2] {
    let mut ring = Path::default();
    circle(&mut ring, (x, y), RING);
    let mut cross = Path::default();
    cross.segment((x - CROSS, y), (x + CROSS, y));
    cross.segment((x, y - CROSS), (x, y + CROSS));
    [
        Mark::Line(Stroke::Cutter, ring.0),
        Mark::Line(Stroke::Narrow, cross.0),
    ]
}
