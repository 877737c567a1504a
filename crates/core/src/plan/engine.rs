//! The door to the integer polygon engine: booleans and offsets on a fixed grid, same bits on every machine.

use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay::Overlay;
use i_overlay::core::overlay_rule::OverlayRule;
use i_overlay::i_float::int::point::IntPoint;

use super::raw_offset::{first_collapse, raw_offset};
use super::{Bounds, Point};

/// Grid lines in a millimetre: a power of two (about 15 nm), so that what was computed comes back unchanged.
const GRID_PER_MM: f64 = 65536.0;
/// Coordinates are held inside this (mm); far beyond any part.
const REACH_MM: f64 = 1e6;
/// Up to this (mm) 32-bit integers hold every intermediate result (2^29 of the 2^31 range).
const SHORT_REACH_MM: f64 = 8000.0;

/// Most stops of one offset where an arc shrinks to a corner; what folds after that is resolved in one go.
const STOPS_GREATEST: usize = 4;
/// A stop this near to the one before or to the end is not worth it (mm).
const STOP_LEAST_MM: f64 = 0.01;

/// Polygons with holes: each shape its outer loop (counter-clockwise), then its holes (clockwise).
pub(super) type Shapes = Vec<Vec<Vec<Point>>>;
type Grid = Vec<Vec<Vec<IntPoint<i32>>>>;

/// What to compute of two areas.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Boolean {
    Union,
    Intersect,
    Subtract,
}

fn reach(shapes: &[Vec<Vec<Point>>]) -> f64 {
    shapes
        .iter()
        .flatten()
        .flatten()
        .fold(0.0, |m, p| p.x.abs().max(p.y.abs()).max(m))
}

/// Grid lines in a millimetre for an area: finer than needed up to eight metres, coarser by powers of two beyond.
fn grid(reach: f64) -> f64 {
    let mut grid = GRID_PER_MM;
    let mut far = SHORT_REACH_MM;
    while far < reach.min(REACH_MM) {
        grid /= 2.0;
        far *= 2.0;
    }
    grid
}

fn to_grid(shapes: &[Vec<Vec<Point>>], grid: f64) -> Grid {
    #[allow(clippy::cast_possible_truncation, reason = "held inside the reach")]
    let cell = |v: f64| libm::round(v.clamp(-REACH_MM, REACH_MM) * grid) as i32;
    let ring = |ring: &Vec<Point>| -> Vec<_> {
        ring.iter()
            .filter(|p| p.is_finite())
            .map(|p| IntPoint::new(cell(p.x), cell(p.y)))
            .collect()
    };
    shapes
        .iter()
        .map(|shape| shape.iter().map(ring).collect())
        .collect()
}

fn from_grid(shapes: &Grid, grid: f64) -> Shapes {
    let point = |p: &IntPoint<i32>| Point::new(f64::from(p.x) / grid, f64::from(p.y) / grid);
    shapes
        .iter()
        .map(|shape| {
            shape
                .iter()
                .map(|ring| ring.iter().map(point).collect())
                .collect()
        })
        .collect()
}

/// Both areas combined; loops may overlap on entry (non-zero winding), never on return.
pub(super) fn combine(a: &[Vec<Vec<Point>>], b: &[Vec<Vec<Point>>], rule: Boolean) -> Shapes {
    let rule = match rule {
        Boolean::Union => OverlayRule::Union,
        Boolean::Intersect => OverlayRule::Intersect,
        Boolean::Subtract => OverlayRule::Difference,
    };
    let grid = grid(reach(a).max(reach(b)));
    let (a, b) = (to_grid(a, grid), to_grid(b, grid));
    let done = Overlay::<i32>::from_subj_and_clip(&a, &b).overlay(rule, FillRule::NonZero);
    from_grid(&done, grid)
}

/// Every boundary moved by `distance` (mm) (negative: inwards), joins rounded.
pub(super) fn offset(shapes: &[Vec<Vec<Point>>], distance: f64) -> Shapes {
    let mut left = if distance.is_finite() {
        distance.clamp(-REACH_MM, REACH_MM)
    } else {
        0.0
    };
    let mut current = None;
    for _ in 0..STOPS_GREATEST {
        let from: &[Vec<Vec<Point>>] = current.as_deref().unwrap_or(shapes);
        let lasting = from.iter().flat_map(|shape| without_vanished(shape, left));
        let collapses = lasting.filter_map(|ring| first_collapse(ring, left));
        let stop = collapses.fold(left, |a, b| if b.abs() < a.abs() { b } else { a });
        if (left - stop).abs() < STOP_LEAST_MM || stop.abs() < STOP_LEAST_MM {
            break;
        }
        current = Some(offset_at_once(from, stop));
        left -= stop;
    }
    offset_at_once(current.as_deref().unwrap_or(shapes), left)
}

/// The loops of a shape that can outlast the offset: an outline narrower than twice the distance
/// inwards is gone with all its holes, a hole narrower than twice the distance outwards is filled.
fn without_vanished(shape: &[Vec<Point>], distance: f64) -> Vec<&Vec<Point>> {
    let room = |ring: &[Point]| {
        Bounds::of(ring.iter().copied()).map_or(0.0, |b| b.width().min(b.height()) / 2.0)
    };
    let (outer, holes) = shape.split_at(shape.len().min(1));
    if outer
        .iter()
        .any(|ring| distance < 0.0 && room(ring) <= -distance)
    {
        return Vec::new();
    }
    outer
        .iter()
        .chain(holes.iter().filter(|ring| room(ring) > distance))
        .collect()
}

/// The raw offset of each loop, and of it what is wound positively.
fn offset_at_once(shapes: &[Vec<Vec<Point>>], distance: f64) -> Shapes {
    let shrunk = shapes.iter().map(|shape| without_vanished(shape, distance));
    let raw: Shapes = shrunk
        .map(|loops| {
            loops
                .iter()
                .map(|ring| raw_offset(ring, distance))
                .collect()
        })
        .collect();
    let grid = grid(reach(&raw));
    let raw = to_grid(&raw, grid);
    let done = Overlay::<i32>::from_subj(&raw).overlay(OverlayRule::Subject, FillRule::Positive);
    from_grid(&done, grid)
}
