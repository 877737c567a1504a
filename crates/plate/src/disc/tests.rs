use super::*;

const SHEET: Sheet = Sheet {
    e_mod: 69e9,
    nu: 0.33,
    rho: 2700.0,
    t: 5e-3,
};

fn near(value: f64, expected: f64, tolerance: f64) {
    assert!(
        (value / expected - 1.0).abs() < tolerance,
        "{value} against {expected}"
    );
}

/// The patch tends to the point, and with a patch as wide as the disc to the mean under a uniform load, a third of the centre's.
#[test]
fn the_patch_lies_between_point_and_uniform_load() {
    near(
        patch_compliance(&SHEET, 0.09, 1e-6).unwrap(),
        compliance(&SHEET, 0.09, 0.0).unwrap(),
        1e-8,
    );
    let whole = uniform_compliance(&SHEET, 0.09).unwrap() / (PI * 0.09 * 0.09) / 3.0;
    near(patch_compliance(&SHEET, 0.09, 0.09).unwrap(), whole, 1e-12);
    let mut last = f64::INFINITY;
    for i in 1..=90 {
        let now = patch_compliance(&SHEET, 0.09, 1e-3 * f64::from(i)).unwrap();
        assert!(now < last);
        last = now;
    }
}

/// Source: `leissa1969` table 2.1 (from memory, our roots to more digits).
#[test]
fn roots_of_the_clamped_disc() {
    let unit = Sheet {
        e_mod: 12.0 * 0.91,
        nu: 0.3,
        rho: 1.0,
        t: 1.0,
    };
    let found = frequencies(&unit, 1.0, 24).unwrap();
    for (at, expected) in [
        (0, 10.2158),
        (1, 21.2604),
        (2, 21.2604),
        (3, 34.8770),
        (5, 39.7711),
        (6, 51.0300),
        (8, 60.8287),
    ] {
        near(found[at] * 2.0 * PI, expected, 1e-5);
    }
    assert!(found.is_sorted());
    // However many are asked for, the lowest stay the same.
    for count in 1..24 {
        for (few, many) in frequencies(&unit, 1.0, count).unwrap().iter().zip(&found) {
            near(*few, *many, 1e-10);
        }
    }
}

#[test]
fn supported_is_softer_than_clamped() {
    assert!(
        compliance_supported(&SHEET, 0.09).unwrap() > 2.0 * compliance(&SHEET, 0.09, 0.0).unwrap()
    );
    near(
        compliance_supported(&SHEET, 0.09).unwrap() / compliance(&SHEET, 0.09, 0.0).unwrap(),
        3.33 / 1.33,
        1e-12,
    );
}

#[test]
fn impossible_discs_are_refused() {
    for radius in [0.0, -0.1, f64::NAN, f64::INFINITY] {
        assert!(compliance(&SHEET, radius, 0.0).is_err());
        assert!(first_frequency(&SHEET, radius).is_err());
    }
    for bad in [
        Sheet {
            t: f64::NAN,
            ..SHEET
        },
        Sheet {
            e_mod: 0.0,
            ..SHEET
        },
        Sheet { nu: 0.6, ..SHEET },
        Sheet { rho: -1.0, ..SHEET },
        Sheet { t: 1e200, ..SHEET },
    ] {
        assert!(compliance(&bad, 0.09, 0.0).is_err());
        assert!(patch_shear_compliance(&bad, 0.09, 0.01).is_err());
    }
    assert_eq!(
        compliance(&SHEET, 0.09, 0.1),
        Err(PlateError::OffPlate { at: 0.1 })
    );
    assert!(patch_compliance(&SHEET, 0.09, 0.1).is_err());
    assert!(frequencies(&SHEET, 0.09, 0).is_err());
}
