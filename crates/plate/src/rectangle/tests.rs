use super::*;

/// D = 1 and rho t = 1, nu 0.3.
const UNIT: Sheet = Sheet {
    e_mod: 12.0 * 0.91,
    nu: 0.3,
    rho: 1.0,
    t: 1.0,
};

fn near(value: f64, expected: f64, tolerance: f64) {
    assert!(
        (value / expected - 1.0).abs() < tolerance,
        "{value} against {expected}"
    );
}

/// Source: `timoshenko1959` table 37 (from memory), with the last digits of independent finite elements (extrapolated).
#[test]
fn centre_loads_of_clamped_rectangles() {
    for (b, k) in [
        (1.0, 0.005_612_0),
        (1.2, 0.006_475_6),
        (1.6, 0.007_121_6),
        (2.0, 0.007_230_6),
    ] {
        near(compliance_centre(&UNIT, 1.0, b).unwrap(), k, 1e-4);
        near(compliance_centre(&UNIT, b, 1.0).unwrap(), k, 1e-4);
    }
}

/// Source: own independent Ritz computation in another language, up to 56 polynomials a side, extrapolated (0.1 %).
#[test]
fn loads_off_the_centre() {
    near(
        compliance(&UNIT, (1.0, 1.0), (0.3, 0.4)).unwrap(),
        3.8652e-3,
        0.002,
    );
    near(
        compliance(&UNIT, (1.0, 3.0), (0.3, 1.2)).unwrap(),
        4.8702e-3,
        0.002,
    );
    near(
        compliance(&UNIT, (4.0, 1.0), (2.8, 0.25)).unwrap(),
        3.7713e-3,
        0.002,
    );
}

/// The other method converges from below; inside a floor it is some percent low, which its head says.
#[test]
fn ritz_stays_below_superposition() {
    for (a, b) in [(1.0, 1.0), (1.4, 0.9), (1.0, 3.0), (4.0, 1.0)] {
        let ritz = Ritz::new(&UNIT, &Panel::floor(a, b)).unwrap();
        for (x, y) in [(0.5, 0.5), (0.3, 0.4), (0.7, 0.25), (0.25, 0.85)] {
            let series = compliance(&UNIT, (a, b), (x * a, y * b)).unwrap();
            let bound = ritz.compliance(x * a, y * b).unwrap();
            assert!(
                bound <= series && bound > 0.85 * series,
                "{a} {b} {x} {y}: {bound} {series}"
            );
        }
    }
}

/// A long plate is a strip: 0.00725 P a^2 / D under a load in its middle line (`timoshenko1959`, from memory: 0.00725).
#[test]
fn a_long_plate_forgets_its_ends() {
    let long = compliance_centre(&UNIT, 1.0, 10.0).unwrap();
    near(long, compliance_centre(&UNIT, 1.0, 6.0).unwrap(), 1e-6);
    near(long, 0.007_25, 0.003);
    // and so it does a fifth from the edge, wherever along the length
    let one = compliance(&UNIT, (1.0, 10.0), (0.2, 5.0)).unwrap();
    near(
        one,
        compliance(&UNIT, (1.0, 10.0), (0.2, 3.3)).unwrap(),
        1e-6,
    );
}

#[test]
fn the_edge_strip_joins_the_series() {
    for (a, b) in [(1.0, 1.0), (1.0, 7.0)] {
        let beside = |gap: f64| compliance(&UNIT, (a, b), (gap, 0.5 * b)).unwrap();
        near(beside(0.009_99), beside(0.010_01), 0.006);
        let quarter = beside(0.002) * 4.0 * PI / (0.002 * 0.002);
        near(quarter, 1.0, 0.01);
        let (near_edge, further) = (beside(0.01), beside(0.02));
        near(further, 4.0 * near_edge, 0.03);
    }
    assert!(compliance(&UNIT, (1.0, 2.0), (0.0, 1.0)).unwrap() <= 0.0);
}

#[test]
fn symmetric_points_agree() {
    let at = |x, y| compliance(&UNIT, (1.3, 1.0), (x, y)).unwrap();
    for other in [at(1.0, 0.2), at(0.3, 0.8), at(1.0, 0.8)] {
        near(at(0.3, 0.2), other, 1e-9);
    }
}

/// Source: `leissa1973` (from memory), converged values of independent finite elements: 35.985.
#[test]
fn the_first_frequency_of_a_square() {
    near(
        first_frequency(&UNIT, 1.0, 1.0).unwrap() * 2.0 * PI,
        35.985,
        3e-5,
    );
}

#[test]
fn impossible_rectangles_are_refused() {
    for (a, b) in [
        (0.0, 1.0),
        (1.0, f64::NAN),
        (1.0, 10.5),
        (-1.0, 1.0),
        (f64::INFINITY, 1.0),
    ] {
        assert!(compliance_centre(&UNIT, a, b).is_err());
        assert!(uniform_compliance(&UNIT, a, b).is_err());
        assert!(first_frequency(&UNIT, a, b).is_err());
    }
    assert!(compliance(&UNIT, (1.0, 1.0), (1.1, 0.5)).is_err());
    assert!(compliance(&UNIT, (1.0, 1.0), (f64::NAN, 0.5)).is_err());
}
