//! The door to the integer polygon engine: booleans and offsets on a fixed grid, same bits on every machine.

use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::integer::OverlayInt;
use i_overlay::core::overlay::Overlay;
use i_overlay::core::overlay_rule::OverlayRule;
use i_overlay::i_float::int::angle::Angle;
use i_overlay::i_float::int::point::IntPoint;
use i_overlay::mesh::int::arc::ArcOptions;
use i_overlay::mesh::int::outline::offset::IntOutlineOffset;
use i_overlay::mesh::int::style::{IntLineJoin, IntOutlineStyle};

use super::Point;

/// Grid lines in a millimetre: a power of two (about 15 nm), so that what was computed comes back unchanged.
const GRID_PER_MM: f64 = 65536.0;
/// Coordinates are held inside this [mm]; far beyond any part.
const REACH_MM: f64 = 1e6;
/// Up to this [mm] 32-bit integers hold every intermediate result (2^29 of the 2^31 range).
const SHORT_REACH_MM: f64 = 8000.0;
/// Chord error of a rounded join [mm].
pub(super) const JOIN_ERROR_MM: f64 = 0.004;
/// Greatest angle of one chord of a join [rad].
const JOIN_ANGLE_GREATEST: f64 = 0.7;

/// Polygons with holes: each shape its outer loop (counter-clockwise), then its holes (clockwise).
pub(super) type Shapes = Vec<Vec<Vec<Point>>>;
type Grid<I> = Vec<Vec<Vec<IntPoint<I>>>>;

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

fn to_grid<I: OverlayInt>(shapes: &[Vec<Vec<Point>>]) -> Grid<I> {
    let cell = |v: f64| I::from_rounded_float(v.clamp(-REACH_MM, REACH_MM) * GRID_PER_MM);
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

fn from_grid<I: OverlayInt>(grid: &Grid<I>) -> Shapes {
    let point =
        |p: &IntPoint<I>| Point::new(p.x.to_f64() / GRID_PER_MM, p.y.to_f64() / GRID_PER_MM);
    grid.iter()
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
    fn run<I: OverlayInt>(a: &[Vec<Vec<Point>>], b: &[Vec<Vec<Point>>], rule: Boolean) -> Shapes {
        let rule = match rule {
            Boolean::Union => OverlayRule::Union,
            Boolean::Intersect => OverlayRule::Intersect,
            Boolean::Subtract => OverlayRule::Difference,
        };
        let (a, b) = (to_grid::<I>(a), to_grid::<I>(b));
        from_grid(&Overlay::<I>::from_subj_and_clip(&a, &b).overlay(rule, FillRule::NonZero))
    }
    if reach(a).max(reach(b)) <= SHORT_REACH_MM {
        run::<i32>(a, b, rule)
    } else {
        run::<i64>(a, b, rule)
    }
}

/// Every boundary moved by `distance` [mm] (negative: inwards), joins rounded.
pub(super) fn offset(shapes: &[Vec<Vec<Point>>], distance: f64) -> Shapes {
    fn run<I: OverlayInt>(shapes: &[Vec<Vec<Point>>], distance: f64) -> Shapes {
        let error = JOIN_ERROR_MM / distance.abs().max(JOIN_ERROR_MM);
        let step = (2.0 * libm::acos(1.0 - error)).min(JOIN_ANGLE_GREATEST);
        let options = ArcOptions {
            max_step: Angle::from_radians(step).unwrap_or(Angle::ZERO),
            ..ArcOptions::default()
        };
        let style = IntOutlineStyle::new(I::from_rounded_float(distance * GRID_PER_MM))
            .line_join(IntLineJoin::Round(options));
        to_grid::<I>(shapes)
            .outline(&style)
            .map(|grid| from_grid(&grid))
            .unwrap_or_default()
    }
    let distance = if distance.is_finite() {
        distance.clamp(-REACH_MM, REACH_MM)
    } else {
        0.0
    };
    if reach(shapes) + 1.5 * distance.abs() <= SHORT_REACH_MM {
        run::<i32>(shapes, distance)
    } else {
        run::<i64>(shapes, distance)
    }
}
