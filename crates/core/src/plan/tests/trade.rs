//! Checks of what the trade asks of the geometry: reach, widths, passes, cells, faults.

use core::f64::consts::{PI, TAU};

use super::super::*;

const CHORD: f64 = 0.002;
const ORIGIN: Point = Point::new(0.0, 0.0);

fn near(value: f64, expected: f64, tolerance: f64) {
    assert!(
        (value - expected).abs() <= tolerance,
        "{value} is not {expected} within {tolerance}"
    );
}

fn plate(length: f64, width: f64, radius: f64) -> Area {
    Area::from_contour(&Contour::rectangle(ORIGIN, length, width, radius), CHORD)
}

fn recess() -> Area {
    let region = Region {
        outer: Contour::circle(ORIGIN, 70.0),
        holes: vec![Contour::circle(ORIGIN, 18.0)],
    };
    Area::from_region(&region, CHORD)
}

/// Source: a cutter of radius r leaves (4 - pi) (r2 - R2) in the four corners of radius R, elementary.
#[test]
fn corners_left_over() {
    near(
        leftover(&plate(100.0, 60.0, 0.0), 5.0).area_mm2(),
        (4.0 - PI) * 25.0,
        0.1,
    );
    near(
        leftover(&plate(100.0, 60.0, 3.0), 5.0).area_mm2(),
        (4.0 - PI) * 16.0,
        0.1,
    );
    assert!(leftover(&plate(100.0, 60.0, 6.0), 5.0).is_empty(0.0));
    assert!(leftover(&recess(), 10.0).is_empty(0.0));
    near(
        leftover(&recess(), 26.5).area_mm2(),
        PI * (4900.0 - 324.0),
        5.0,
    );
}

#[test]
fn narrow_and_wide_places() {
    near(narrowest_width(&recess()), 52.0, 0.02);
    near(narrowest_width(&plate(100.0, 60.0, 0.0)), 60.0, 0.02);
    // Two discs and the neck between them; then a dead end off a disc.
    let disc = |x: f64| Area::from_contour(&Contour::circle(Point::new(x, 0.0), 30.0), CHORD);
    let neck = Area::from_contour(&Contour::rectangle(ORIGIN, 100.0, 6.0, 0.0), CHORD);
    near(
        narrowest_width(&disc(-50.0).union(&disc(50.0)).union(&neck)),
        6.0,
        0.02,
    );
    let end = |width: f64| {
        disc(0.0).union(&Area::from_contour(
            &Contour::slot(Point::new(30.0, 0.0), 60.0, width, 0.0),
            CHORD,
        ))
    };
    near(narrowest_width(&end(9.0)), 9.0, 0.02);
    near(narrowest_width(&end(0.5)), 0.5, 0.02);
    let (centre, radius) = widest_circle(&disc(-50.0).union(&neck)).unwrap();
    near(radius, 30.0, 0.01);
    near(centre.distance(Point::new(-50.0, 0.0)), 0.0, 0.1);
    near(widest_circle(&recess()).unwrap().1, 26.0, 0.01);
    near(distance(&disc(-50.0), &disc(50.0)), 40.0, 1e-3);
    near(distance_point(&disc(0.0), Point::new(3.0, 4.0)), 25.0, 1e-2);
}

/// Source: concentric circles; each pass of a ring-shaped recess measures 2 pi (R + r).
#[test]
fn passes_of_a_ring() {
    let found = clearing(&recess(), 5.0, 2.0);
    assert_eq!(
        (found.rings.len(), found.links, found.corner_count()),
        (11, 21, 0)
    );
    for ring in &found.rings {
        near(ring.length_mm, TAU * 88.0, 0.05);
        assert_eq!(ring.loops, 2);
        let radius = 70.0 - ring.offset_mm;
        near(ring.least_radius_mm, radius, 0.01 * radius);
    }
    near(wall_pass_length(&recess(), 5.0), TAU * 88.0, 0.05);
    near(
        found.share_tighter(1e3),
        (70.0 * 11.0 - (5.0 * 11.0 + 110.0)) / (88.0 * 11.0),
        0.02,
    );
}

/// Corners appear when the offset has eaten their radius; passes wider apart than the radius leave tips.
#[test]
fn passes_of_a_plate() {
    let found = clearing(&plate(100.0, 60.0, 6.0), 4.0, 3.0);
    assert_eq!(found.rings[0].corner_count, 0);
    near(found.rings[0].least_radius_mm, 2.0, 0.02);
    near(
        found.rings[0].length_mm,
        2.0 * (92.0 + 52.0) - (8.0 - TAU) * 2.0,
        0.02,
    );
    assert_eq!(found.rings[1].corner_count, 4);
    near(found.rings[1].length_mm, 2.0 * (86.0 + 46.0), 0.02);
    assert_eq!(found.rings.len(), 9);
    let wide = clearing(&plate(100.0, 60.0, 0.0), 4.0, 7.6);
    let tips: Vec<&Ring> = wide
        .rings
        .iter()
        .filter(|r| ((r.offset_mm - 8.0) / 7.6).fract().abs() < 1e-6)
        .collect();
    assert!(!tips.is_empty() && tips[0].loops == 4, "{tips:?}");
    assert!(
        clearing(&recess(), 0.0, 1.0).rings.is_empty()
            && clearing(&recess(), 1.0, f64::NAN).rings.is_empty()
    );
}

/// Cells do not overlap, fill the union, and each point is in the regions that its cell names.
#[test]
fn cells_of_a_part() {
    let mut regions = vec![
        Area::from_contour(&Contour::circle(ORIGIN, 80.0), CHORD),
        recess(),
    ];
    regions.push(Area::from_contour(&Contour::circle(ORIGIN, 60.0), CHORD));
    for i in 0..6 {
        let at = Point::new(40.0, 0.0).turned(f64::from(i) * TAU / 6.0);
        regions.push(Area::from_contour(
            &Contour::slot(at, 30.0, 6.0, f64::from(i) * TAU / 6.0),
            CHORD,
        ));
    }
    let found = arrange(&regions);
    // Rim, ring between 60 and 70, floor of both, boss, and six slots.
    assert_eq!(found.cells.len(), 4 + 6);
    let total: f64 = found.cells.iter().map(|c| c.area.area_mm2()).sum();
    near(total, Area::union_all(&regions).area_mm2(), 0.01);
    for (index, region) in regions.iter().enumerate() {
        let sum: f64 = found.within(index).map(|(_, c)| c.area.area_mm2()).sum();
        near(sum, region.area_mm2(), 0.05);
    }
    let twice = arrange(&[recess(), recess(), recess().offset(0.005)]);
    assert_eq!(twice.cells.len(), 1);
    assert_eq!(twice.cells[0].inside, [true, true, true]);
}

#[test]
fn faults_are_named() {
    let at = Point::new;
    let sound = Contour::slot(at(5.0, 5.0), 30.0, 8.0, 1.0);
    assert_eq!(validate_contour(&sound), []);
    let bow = Contour::polygon(&[at(0.0, 0.0), at(10.0, 10.0), at(10.0, 0.0), at(0.0, 12.0)]);
    assert!(matches!(
        validate_contour(&bow)[..],
        [PlanError::Crossing { .. }]
    ));
    let mut open = sound.clone();
    open.edges.pop();
    assert!(
        matches!(validate_contour(&open)[..], [PlanError::Open { gap_mm }] if (gap_mm - 8.0).abs() < 1e-9)
    );
    let nan = Contour::polygon(&[at(0.0, f64::NAN), at(1.0, 0.0), at(0.0, 1.0)]);
    assert!(validate_contour(&nan).contains(&PlanError::NotFinite { edge: 0 }));
    let far = Contour::circle(at(9990.0, 0.0), 20.0);
    assert!(matches!(
        validate_contour(&far)[..],
        [PlanError::TooFar { .. }, ..]
    ));
    let line = Contour::polygon(&[at(0.0, 0.0), at(5.0, 0.0), at(9.0, 0.0)]);
    assert!(matches!(
        validate_contour(&line)[..],
        [PlanError::NoArea { .. }]
    ));
    let arc = Edge::Arc {
        to: at(0.0, 0.0),
        centre: at(3.0, 0.0),
        ccw: true,
    };
    let bent = Contour {
        start: at(0.0, 0.0),
        edges: vec![Edge::Line { to: at(10.0, 0.0) }, arc],
    };
    assert!(matches!(
        validate_contour(&bent)[..],
        [PlanError::CrookedArc { edge: 1, .. }]
    ));
    let holes = vec![
        Contour::circle(at(0.0, 0.0), 5.0),
        Contour::circle(at(4.0, 0.0), 5.0),
        Contour::circle(at(20.0, 0.0), 3.0),
    ];
    let region = Region {
        outer: Contour::circle(ORIGIN, 20.0),
        holes,
    };
    let found = validate_region(&region);
    assert!(matches!(
        found[..],
        [
            PlanError::HolesOverlap {
                first: 0,
                second: 1,
                ..
            },
            PlanError::HoleOutside { hole: 2, .. }
        ]
    ));
}
