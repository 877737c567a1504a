//! How narrow the places between lines are, and how fine edges must be there.

use super::buckets::{Buckets, short};
use super::outline::{Outline, extent};
use super::planar::{along, bounds, cross, dot, length, minus};
use super::size::Sizes;
use super::{Fineness, LoopKind, MeshError, Point};

/// Edges along a narrow place over the element's size across it.
const ALONG: f64 = 1.5;
/// Edges on a half circle for each element across a rib.
const EDGES_PER_HALF_TURN: f64 = 2.5;
/// Cosine and sine of the turn in one point from which on it is a corner (25 degrees).
pub(crate) const CORNER: f64 = 0.906_307_787_036_65;
/// Cosine of the angle between two lines up to which they face each other (35 degrees): beyond, they make a corner.
const FACING: f64 = 0.819_152_044_288_99;
/// The same for lines that run beside each other (15 degrees).
const BESIDE: f64 = 0.965_925_826_289_07;
/// Lines of two loops that are closer than this are one: chords of one curve, differently divided. m
const ONE_LINE: f64 = 2e-5;
/// Least edges over which two lines run beside each other before their being too close counts.
const RUN: f64 = 4.0;
/// Lines that only change the thickness are one if they are closer than this share of the edge length.
pub(crate) const SNAP: f64 = 0.15;
/// The edge length of a step between two such lines, over its width; and over the edge length around, at least.
const STEP_ALONG: f64 = 1.2;
const STEP_LEAST: f64 = 0.4;

/// What lies across a place on a line.
#[derive(Clone, Copy)]
enum Across {
    /// A rib, a slot: so many elements across, at least.
    Strip(f64),
    /// A step between two lines.
    Step,
    Nothing,
}

/// A place on a line, and the height of the first row of elements on each side.
pub(crate) struct Sample {
    /// Way along the loop, m.
    pub(crate) way: f64,
    /// First row's height inside and outside, m; infinite where nothing is near.
    pub(crate) rows: [f64; 2],
}

struct Side {
    ends: [Point; 2],
    outline: usize,
    kind: LoopKind,
}

/// What a look across a gap found.
struct Look {
    strip: Option<(f64, f64, f64)>,
    step: Option<f64>,
}

/// The edge lengths over the whole plan, and for each loop what is near along it.
pub(crate) fn sizes(
    outlines: &[Outline],
    fineness: &Fineness,
) -> Result<(Sizes, Vec<Vec<Sample>>), MeshError> {
    let mut sizes = Sizes::new(extent(outlines), fineness);
    let gaps = Gaps::new(outlines, fineness);
    let mut steps = Vec::new();
    let mut samples = Vec::new();
    for (number, outline) in outlines.iter().enumerate() {
        samples.push(gaps.walk(outline, number, &mut sizes, &mut steps)?);
        curvature(outline, fineness, &mut sizes);
    }
    sizes.grade();
    let asked: Vec<(Point, f64)> = steps
        .iter()
        .filter_map(|&(p, gap)| {
            let around = sizes.at(p);
            (gap >= SNAP * around).then(|| (p, (STEP_ALONG * gap).max(STEP_LEAST * around)))
        })
        .collect();
    for (p, edge) in asked {
        sizes.ask(p, edge);
    }
    sizes.grade();
    Ok((sizes, samples))
}

/// The unit vector along a side, and its length.
fn direction([a, b]: [Point; 2]) -> (Point, f64) {
    let d = minus(b, a);
    let l = length(d);
    ([d[0] / l, d[1] / l], l)
}

/// Asks for enough edges on what is round.
fn curvature(outline: &Outline, fineness: &Fineness, sizes: &mut Sizes) {
    let n = outline.points.len();
    let share = std::f64::consts::PI / (EDGES_PER_HALF_TURN * fineness.across);
    for i in 0..n {
        let (d, before) = direction(outline.side(i));
        let (e, after) = direction(outline.side((i + 1) % n));
        let cosine = dot(d, e);
        if cosine > CORNER {
            let radius = before.min(after) / cross(d, e).abs();
            sizes.ask(outline.points[(i + 1) % n], share * radius);
        }
    }
}

struct Gaps<'a> {
    sides: Vec<Side>,
    near: Buckets,
    reach: f64,
    fineness: &'a Fineness,
}

impl Gaps<'_> {
    fn new<'a>(outlines: &[Outline], fineness: &'a Fineness) -> Gaps<'a> {
        let [low, high] = extent(outlines);
        let reach = fineness.most * fineness.across.max(ALONG) / ALONG;
        let mut near = Buckets::new(low, high, 0.25 * reach);
        let mut sides = Vec::new();
        for (outline, of) in outlines.iter().enumerate() {
            for i in 0..of.points.len() {
                let ends = of.side(i);
                let [from, to] = bounds(ends);
                near.put(short(sides.len()), from, to);
                sides.push(Side {
                    ends,
                    outline,
                    kind: of.kind,
                });
            }
        }
        Gaps {
            sides,
            near,
            reach,
            fineness,
        }
    }

    /// Looks to both sides all along a loop.
    fn walk(
        &self,
        outline: &Outline,
        number: usize,
        sizes: &mut Sizes,
        steps: &mut Vec<(Point, f64)>,
    ) -> Result<Vec<Sample>, MeshError> {
        let spacing = sizes.cell;
        let (mut way, mut next) = (0.0, 0.5 * spacing);
        let mut samples = Vec::new();
        let mut narrow = [0.0; 2];
        for i in 0..outline.points.len() {
            let side = outline.side(i);
            let (d, l) = direction(side);
            while next < way + l {
                let p = along(side[0], d, next - way);
                let mut rows = [f64::INFINITY; 2];
                for (out, sign) in [(false, -1.0), (true, 1.0)] {
                    let normal = [sign * d[1], -sign * d[0]];
                    let look = self.look(p, normal, (number, outline.kind, out));
                    let Look { strip, step } = look;
                    if let Some((gap, elements, beside)) = strip {
                        let height = gap / elements;
                        sizes.ask(p, ALONG * height);
                        rows[usize::from(out)] = height;
                        let run = &mut narrow[usize::from(out)];
                        let least = self.fineness.least;
                        let counts = height < least && beside > BESIDE;
                        *run = if counts { *run + spacing } else { 0.0 };
                        if *run > RUN * least {
                            return Err(MeshError::Unresolved {
                                width: gap,
                                edge: height,
                            });
                        }
                    } else {
                        narrow[usize::from(out)] = 0.0;
                    }
                    steps.extend(step.map(|gap| (p, gap)));
                }
                samples.push(Sample { way: next, rows });
                next += spacing;
            }
            way += l;
        }
        Ok(samples)
    }

    /// The nearest strip and step from a point along a normal.
    fn look(&self, p: Point, normal: Point, from: (usize, LoopKind, bool)) -> Look {
        let mut found = Look {
            strip: None,
            step: None,
        };
        if matches!(
            from,
            (_, LoopKind::Outer, true) | (_, LoopKind::Hole, false)
        ) {
            return found;
        }
        let quarter = 0.25 * self.reach;
        for part in 0..4 {
            let start = along(p, normal, f64::from(part) * quarter);
            let [low, high] = bounds([start, along(start, normal, quarter)]);
            self.near.visit(low, high, |i| {
                let side = &self.sides[i as usize];
                if let Some((gap, facing)) = self.meets(p, normal, side) {
                    self.note(&mut found, from, side, (gap, facing));
                }
            });
            let reached = f64::from(part + 1) * quarter;
            if found.strip.is_some_and(|(gap, ..)| gap <= reached) {
                break;
            }
        }
        found
    }

    /// How far away a ray meets a side, and the cosine between the ray and the side's outward normal.
    fn meets(&self, p: Point, ray: Point, side: &Side) -> Option<(f64, f64)> {
        let (d, l) = direction(side.ends);
        let facing = dot(ray, [d[1], -d[0]]);
        if facing.abs() < FACING {
            return None;
        }
        let to = minus(side.ends[0], p);
        let across = cross(ray, d);
        let (gap, place) = (cross(to, d) / across, cross(to, ray) / across);
        let slack = 1e-9 * l;
        (gap > 1e-9 * self.reach && gap <= self.reach && place >= -slack && place <= l + slack)
            .then_some((gap, facing))
    }

    fn note(
        &self,
        found: &mut Look,
        from: (usize, LoopKind, bool),
        side: &Side,
        (gap, facing): (f64, f64),
    ) {
        let (number, kind, out) = from;
        let same = number == side.outline;
        if !same && gap < ONE_LINE {
            return;
        }
        match self.across((kind, out), (side.kind, facing < 0.0), same) {
            Across::Strip(elements) => {
                if found.strip.is_none_or(|(nearest, ..)| gap < nearest) {
                    found.strip = Some((gap, elements, facing.abs()));
                }
            }
            Across::Step => {
                if found.step.is_none_or(|nearest| gap < nearest) {
                    found.step = Some(gap);
                }
            }
            Across::Nothing => {}
        }
    }

    /// What lies between a line that is left (outwards or not) and one that is met (from outside or not).
    fn across(&self, left: (LoopKind, bool), met: (LoopKind, bool), same: bool) -> Across {
        use LoopKind::{Hole, Line, Outer};
        let rib = Across::Strip(self.fineness.across);
        let few = Across::Strip((0.5 * self.fineness.across).max(1.0));
        match (left, met) {
            ((Outer, true) | (Hole, false), _) | (_, (Outer, true) | (Hole, false)) => {
                Across::Nothing
            }
            ((Outer, false), (Outer, false)) => rib,
            ((Outer, false), (Hole, true)) | ((Hole, true), (Outer, false)) => rib,
            ((_, true), (_, true)) => rib,
            ((Line, false), (Line, false)) if same => few,
            ((Line, _), (Line, _)) => Across::Step,
            ((Outer, _), (Line, true)) | ((Line, true), (Outer, _)) => few,
            ((Hole, _), (Line, false)) | ((Line, false), (Hole, _)) => few,
            _ => Across::Step,
        }
    }
}
