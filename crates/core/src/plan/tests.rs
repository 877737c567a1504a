//! Checks of the planar geometry against exact formulas, and its laws on shapes drawn by a fixed generator.

use core::f64::consts::{PI, TAU};

use super::*;

mod trade;

const CHORD: f64 = 0.002;
const ORIGIN: Point = Point::new(0.0, 0.0);

/// A linear congruential generator (Knuth's MMIX constants): the same shapes on every machine.
struct Draw(u64);

impl Draw {
    fn next(&mut self, from: f64, to: f64) -> f64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        let share = f64::from(u32::try_from(self.0 >> 33).unwrap()) / f64::from(1_u32 << 31);
        from + share * (to - from)
    }

    fn contour(&mut self, reach: f64) -> Contour {
        let centre = Point::new(self.next(-reach, reach), self.next(-reach, reach));
        // Whole millimetres and eighths of a turn at times: edges that coincide are the hard case.
        let grid = self.next(0.0, 1.0) < 0.5;
        let snap = |v: f64| if grid { v.round() } else { v };
        let centre = Point::new(snap(centre.x), snap(centre.y));
        let (a, b) = (snap(self.next(2.0, reach)), snap(self.next(2.0, reach)));
        let angle = if grid {
            (self.next(0.0, 8.0)).floor() * PI / 8.0
        } else {
            self.next(0.0, TAU)
        };
        match self.next(0.0, 3.0) {
            kind if kind < 1.0 => Contour::circle(centre, a),
            kind if kind < 2.0 => Contour::slot(centre, a.max(b), a.min(b), angle),
            _ => Contour::rectangle(ORIGIN, a, b, a.min(b) / 5.0).transform(angle, centre),
        }
    }

    fn area(&mut self, reach: f64) -> Area {
        let mut area = Area::from_contour(&self.contour(reach), CHORD);
        for _ in 0..3 {
            let other = Area::from_contour(&self.contour(reach), CHORD);
            area = if self.next(0.0, 1.0) < 0.5 {
                area.union(&other)
            } else {
                area.subtract(&other)
            };
        }
        area
    }
}

fn near(value: f64, expected: f64, tolerance: f64) {
    assert!(
        (value - expected).abs() <= tolerance,
        "{value} is not {expected} within {tolerance}"
    );
}

/// Source: lengths and areas of circle, stadium and rounded rectangle, elementary.
#[test]
fn contours_are_exact() {
    let circle = Contour::circle(Point::new(3.0, -2.0), 70.0);
    near(circle.area(), PI * 4900.0, 1e-9);
    near(circle.length(), TAU * 70.0, 1e-9);
    near(circle.reversed().area(), -PI * 4900.0, 1e-9);
    let slot = Contour::slot(ORIGIN, 20.0, 4.0, 0.7);
    near(slot.area(), 16.0 * 4.0 + PI * 4.0, 1e-9);
    near(slot.length(), 32.0 + TAU * 2.0, 1e-9);
    let plate = Contour::rectangle(ORIGIN, 184.0, 104.0, 6.0);
    near(plate.area(), 184.0 * 104.0 - (4.0 - PI) * 36.0, 1e-9);
    near(
        plate.transform(1.1, Point::new(500.0, -70.0)).length(),
        2.0 * 288.0 - (8.0 - TAU) * 6.0,
        1e-9,
    );
    let bounds = plate
        .transform(PI / 2.0, Point::new(10.0, 0.0))
        .bounds()
        .unwrap();
    near(bounds.width(), 104.0, 1e-9);
    near(bounds.max.x, 62.0, 1e-9);
    let full = Contour {
        start: Point::new(5.0, 0.0),
        edges: vec![Edge::Arc {
            to: Point::new(5.0, 0.0),
            centre: ORIGIN,
            ccw: false,
        }],
    };
    near(full.area(), -PI * 25.0, 1e-9);
}

/// Flattening never leaves the arc by more than it was told.
#[test]
fn chords_follow_the_arc() {
    for (radius, error) in [(1.0, 0.01), (70.0, 0.005), (2000.0, 0.01)] {
        let points = Contour::circle(ORIGIN, radius).flatten(error);
        for (a, b) in points.iter().zip(points.iter().cycle().skip(1)) {
            let middle = a.plus(*b).times(0.5).norm();
            assert!(radius - middle <= error * 1.000_001, "{radius} {middle}");
        }
    }
}

/// Source: a circle moved by d is the circle of radius r + d.
#[test]
fn offset_of_a_circle() {
    for d in [-69.0, -30.0, -2.4, 0.5, 12.0, 900.0] {
        let moved = Area::from_contour(&Contour::circle(ORIGIN, 70.0), CHORD).offset(d);
        let furthest = moved
            .loops()
            .flatten()
            .map(|p| (p.norm() - 70.0 - d).abs())
            .fold(0.0, f64::max);
        assert!(furthest < 0.01, "{d}: {furthest}");
        near(moved.perimeter_mm() / TAU, 70.0 + d, 0.01);
    }
    assert!(
        Area::from_contour(&Contour::circle(ORIGIN, 70.0), CHORD)
            .offset(-70.01)
            .is_empty(0.0)
    );
}

/// Source: Steiner's formula for a convex polygon, A + P r + pi r2 (schneider2014).
#[test]
fn offset_of_convex_polygons() {
    let mut draw = Draw(11);
    for case in 0..60 {
        let count = 3 + case % 9;
        let mut angles: Vec<f64> = (0..count).map(|_| draw.next(0.0, TAU)).collect();
        angles.sort_by(f64::total_cmp);
        let points: Vec<Point> = angles
            .iter()
            .map(|a| Point::new(60.0, 0.0).turned(*a))
            .collect();
        let area = Area::from_contour(&Contour::polygon(&points), CHORD);
        let r = draw.next(0.5, 40.0);
        let expected = area.area_mm2() + area.perimeter_mm() * r + PI * r * r;
        near(area.offset(r).area_mm2(), expected, 0.005 * TAU * r + 0.01);
    }
}

/// area(A) + area(B) = area(A or B) + area(A and B); A less B and B less A complete the union.
#[test]
fn booleans_keep_the_sum() {
    let mut draw = Draw(3);
    for case in 0..300 {
        let (a, b) = (draw.area(60.0), draw.area(60.0));
        let (either, both) = (a.union(&b).area_mm2(), a.intersect(&b).area_mm2());
        let sum = a.area_mm2() + b.area_mm2();
        assert!(
            (sum - either - both).abs() <= 1e-2 + 1e-7 * sum,
            "case {case}: {sum} {either} {both}"
        );
        let parts = a.subtract(&b).area_mm2() + b.subtract(&a).area_mm2() + both;
        assert!(
            (parts - either).abs() <= 1e-2 + 1e-7 * sum,
            "case {case}: {parts} {either}"
        );
    }
}

/// Every point of an offset boundary is at its distance from the old boundary: nothing folded over is left.
#[test]
fn offset_boundaries_keep_their_distance() {
    let mut draw = Draw(5);
    let mut seen = 0;
    for case in 0..120 {
        let area = draw.area(50.0);
        for d in [-9.0, -3.3, -0.7, 0.7, 5.0, 20.0] {
            for (a, b) in area.offset(d).segments() {
                let got = distance_point(&area, a.plus(b).times(0.5));
                assert!(
                    (got - f64::abs(d)).abs() < 0.01,
                    "case {case}, d {d}: {got}"
                );
                seen += 1;
            }
        }
    }
    assert!(seen > 10_000);
}

/// Nothing is lost by an offset: points deeper than the distance stay, points nearer go.
#[test]
fn offsets_hold_the_right_points() {
    let mut draw = Draw(17);
    for case in 0..60 {
        let area = draw.area(50.0);
        for d in [-6.0, -1.5, 1.5, 8.0] {
            let moved = area.offset(d);
            for _ in 0..60 {
                let p = Point::new(draw.next(-110.0, 110.0), draw.next(-110.0, 110.0));
                let depth = distance_point(&area, p) * if area.contains(p) { 1.0 } else { -1.0 };
                if (depth + d).abs() > 0.02 && depth.is_finite() {
                    assert_eq!(
                        moved.contains(p),
                        depth + d > 0.0,
                        "case {case}, d {d}, depth {depth}"
                    );
                }
            }
        }
    }
}

/// Hostile input gives an answer, not a panic.
#[test]
fn odd_input_is_survived() {
    let odd = [
        f64::NAN,
        f64::INFINITY,
        -1e300,
        0.0,
        1e-9,
        1e4,
        -1e4,
        5e-324,
    ];
    let fine = Area::from_contour(&Contour::circle(ORIGIN, 10.0), CHORD);
    for a in odd {
        for b in odd {
            let shapes = [
                Contour::circle(Point::new(a, b), b),
                Contour::slot(Point::new(b, a), a, b, a),
                Contour::rectangle(ORIGIN, a, b, b).transform(a, Point::new(a, b)),
                Contour::polygon(&[Point::new(a, b), Point::new(b, a), Point::new(a, a)]),
            ];
            for shape in shapes {
                let area = Area::from_contour(&shape, b);
                let _ = (
                    validate_contour(&shape),
                    shape.bounds(),
                    shape.area(),
                    widest_circle(&area),
                );
                let _ = (
                    fine.union(&area),
                    fine.subtract(&area).offset(a),
                    area.offset(a),
                    distance(&fine, &area),
                );
                let _ = (
                    clearing(&fine, a, b),
                    opened(&area, 1.0),
                    arrange(&[fine.clone(), area]),
                );
            }
        }
    }
    assert_eq!(Area::empty().offset(5.0), Area::empty());
    assert!(
        narrowest_width(&Area::empty()).abs() < 1e-12 && widest_circle(&Area::empty()).is_none()
    );
}
