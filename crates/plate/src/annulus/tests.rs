use super::*;

const SHEET: Sheet = Sheet {
    e_mod: 69e9,
    nu: 0.33,
    rho: 2700.0,
    t: 3e-3,
};

fn ring(inner: f64, inner_edge: InnerEdge) -> Annulus {
    Annulus {
        inner,
        outer: 0.09,
        inner_edge,
    }
}

fn near(value: f64, expected: f64, tolerance: f64) {
    assert!(
        (value / expected - 1.0).abs() < tolerance,
        "{value} against {expected}"
    );
}

/// A vanishing rigid boss or hole leaves the disc (Michell's closed form), away from it.
#[test]
fn a_tiny_boss_leaves_the_disc() {
    for r in [0.03, 0.06, 0.08, 0.0895] {
        let disc = crate::disc::compliance(&SHEET, 0.09, r).unwrap();
        for edge in [InnerEdge::Free, InnerEdge::RigidFloating] {
            near(
                compliance(&SHEET, &ring(0.000_46, edge), r).unwrap(),
                disc,
                2e-3,
            );
        }
    }
}

/// The series at the boss's edge, as the load goes there, is the closed form plus the tilt: never less than it.
#[test]
fn the_series_meets_the_boss() {
    for inner in [0.002, 0.01, 0.03, 0.07, 0.085] {
        let ring = ring(inner, InnerEdge::RigidFloating);
        let boss = boss_compliance(&SHEET, &ring).unwrap();
        let edge = compliance(&SHEET, &ring, inner).unwrap();
        assert!(edge > boss, "{inner}: {edge} {boss}");
        let round = correction(
            SHEET.nu,
            InnerEdge::RigidFloating,
            (inner / 0.09, inner / 0.09),
            0,
        )
        .unwrap();
        // Wave 0 of the free part at its own radius is 2 s^2 (ln s + 1/2): the correction alone is not the deflection.
        let s = inner / 0.09;
        let whole =
            (round + 2.0 * s * s * ln(s) + s * s) * 0.09 * 0.09 / (8.0 * PI * SHEET.rigidity());
        near(whole, boss, 1e-9);
    }
}

/// Source: the narrow ring with a free inner edge is a long cantilever plate, 0.1665 P a^2 / D (own finite elements, nu 0.3).
#[test]
fn a_narrow_ring_is_a_long_cantilever_plate() {
    let sheet = Sheet { nu: 0.3, ..SHEET };
    // The ring is curved: what is left is proportional to width/radius, so two widths give the straight edge.
    let k = |share: f64| {
        let ring = ring((1.0 - share) * 0.09, InnerEdge::Free);
        compliance(&sheet, &ring, ring.inner).unwrap() * sheet.rigidity()
            / (share * 0.09 * share * 0.09)
    };
    near(2.0 * k(0.03) - k(0.06), 0.1665, 0.005);
    let ring = ring(0.97 * 0.09, InnerEdge::Free);
    let f = first_frequency(&sheet, &ring).unwrap();
    let lambda2 = f / sheet.frequency(1.0, 0.0027).unwrap();
    near(lambda2, 3.516, 0.04);
}

/// The other method: a narrow ring with both edges clamped is a long clamped rectangle loaded in its middle line.
#[test]
fn a_narrow_ring_is_a_long_rectangle() {
    let ring = ring(0.97 * 0.09, InnerEdge::Clamped);
    let middle = compliance(&SHEET, &ring, 0.985 * 0.09).unwrap();
    near(
        middle,
        crate::rectangle::compliance_centre(&SHEET, 0.0027, 0.027).unwrap(),
        1e-3,
    );
    let f = first_frequency(&SHEET, &ring).unwrap();
    near(
        f,
        crate::rectangle::first_frequency(&SHEET, 0.0027, 0.027).unwrap(),
        5e-3,
    );
}

/// The tail estimate holds: a sharper stop changes nothing that matters.
#[test]
fn the_series_has_settled() {
    for edge in [
        InnerEdge::Free,
        InnerEdge::RigidFloating,
        InnerEdge::Clamped,
    ] {
        for (b, load) in [
            (0.02, 0.02),
            (0.3, 0.3),
            (0.3, 0.31),
            (0.5, 0.99),
            (0.9, 0.9),
            (0.95, 0.97),
        ] {
            let load = if edge == InnerEdge::Clamped {
                0.5 * (load + 1.0)
            } else {
                load
            };
            let quick = series(0.33, edge, b, load).unwrap();
            let long: f64 = (0..TERMS_MAX)
                .map(|n| correction(0.33, edge, (b, load), n).unwrap())
                .sum();
            assert!(
                (quick / long - 1.0).abs() < 5e-6,
                "{edge:?} {b} {load}: {quick} against {long}"
            );
        }
    }
}

#[test]
fn softest_is_softer_than_its_neighbours() {
    for edge in [
        InnerEdge::Free,
        InnerEdge::RigidFloating,
        InnerEdge::Clamped,
    ] {
        let ring = ring(0.02, edge);
        let (r, c) = softest(&SHEET, &ring).unwrap();
        for i in 0..=100 {
            let here = (0.02 + 0.07 * f64::from(i) / 100.0).min(0.09);
            assert!(
                compliance(&SHEET, &ring, here).unwrap() <= c * (1.0 + 1e-6),
                "{edge:?} {here} {r}"
            );
        }
    }
    // The order of the three edges, everywhere.
    for r in [0.03, 0.05, 0.08] {
        let [free, loose, bolted] = [
            InnerEdge::Free,
            InnerEdge::RigidFloating,
            InnerEdge::Clamped,
        ]
        .map(|edge| compliance(&SHEET, &ring(0.02, edge), r).unwrap());
        assert!(free > loose && loose > bolted);
    }
}

#[test]
fn the_whole_range_answers() {
    for edge in [
        InnerEdge::Free,
        InnerEdge::RigidFloating,
        InnerEdge::Clamped,
    ] {
        for i in 0..=31 {
            let ring = ring((0.02 + 0.03 * f64::from(i)) * 0.09, edge);
            assert!(softest(&SHEET, &ring).unwrap().1 > 0.0);
            assert!(first_frequency(&SHEET, &ring).unwrap() > 0.0);
            assert!(uniform_compliance(&SHEET, &ring).unwrap() >= 0.0);
        }
    }
}

#[test]
fn a_heavy_boss_is_a_mass_on_a_spring() {
    let ring = ring(0.02, InnerEdge::RigidFloating);
    let boss = Boss {
        mass: 3.0,
        inertia: 1e-3,
    };
    let f = frequencies(&SHEET, &ring, &boss, (0, 1)).unwrap()[0];
    let spring = 1.0 / boss_compliance(&SHEET, &ring).unwrap();
    near(f, (spring / 3.0).sqrt() / (2.0 * PI), 0.01);
}

#[test]
fn impossible_rings_are_refused() {
    let good = ring(0.02, InnerEdge::Free);
    for bad in [
        Annulus { inner: 0.0, ..good },
        Annulus {
            inner: 0.09,
            ..good
        },
        Annulus {
            inner: f64::NAN,
            ..good
        },
        Annulus {
            outer: f64::INFINITY,
            ..good
        },
    ] {
        assert!(compliance(&SHEET, &bad, 0.05).is_err());
        assert!(softest(&SHEET, &bad).is_err());
        assert!(first_frequency(&SHEET, &bad).is_err());
    }
    assert_eq!(
        compliance(&SHEET, &good, 0.01),
        Err(PlateError::OffPlate { at: 0.01 })
    );
    assert!(compliance(&SHEET, &good, f64::NAN).is_err());
    assert!(compliance(&Sheet { t: 0.0, ..SHEET }, &good, 0.05).is_err());
    let heavy = Boss {
        mass: f64::NAN,
        inertia: 0.0,
    };
    assert!(frequencies(&SHEET, &good, &heavy, (0, 1)).is_err());
}
