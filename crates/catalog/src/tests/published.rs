//! Rows against values printed elsewhere.

use crate::Catalog;

/// Kc of a published table at 0.1 mm chip lies in the range of the row.
///
/// Source: iscar2017 p. 558 and tungaloy2020 p. 1650 (read): kc in N/mm2, worked out at 0.1 mm from kc1.1 and mc, or
/// printed at fz 0.1 mm.
#[test]
fn published_specific_forces_lie_in_the_ranges() {
    let published = [
        ("steel_s235", 1350.0 * tenth(0.21)),
        ("steel_s235", 2150.0),
        ("steel_c45", 1500.0 * tenth(0.22)),
        ("steel_c45", 1970.0),
        ("steel_42crmo4", 1675.0 * tenth(0.24)),
        ("steel_42crmo4", 2450.0),
        ("steel_1_2379", 2450.0 * tenth(0.23)),
        ("steel_1_2379", 2030.0),
        ("stainless_304", 2150.0 * tenth(0.20)),
        ("iron_gjl250", 1150.0 * tenth(0.20)),
        ("iron_gjl250", 1660.0),
        ("iron_gjs400", 1225.0 * tenth(0.25)),
        ("al_6082_t6", 800.0 * tenth(0.25)),
        ("al_5083", 700.0 * tenth(0.25)),
        ("al_cast_si", 700.0 * tenth(0.25)),
        ("al_cast_si", 660.0),
        ("brass_cuzn39pb3", 700.0 * tenth(0.27)),
        ("brass_cuzn39pb3", 1090.0),
        ("ti_6al4v", 2110.0 * tenth(0.22)),
        ("ti_6al4v", 1245.0 * tenth(0.24)),
        ("inconel_718", 3300.0 * tenth(0.24)),
        ("steel_55hrc", 4600.0),
    ];
    let catalog = Catalog::builtin();
    for (id, kc) in published {
        let row = catalog.material(id).expect(id);
        let (low, high) = (
            row.kc1_1.low.to_n_per_mm2() * tenth(row.mc),
            row.kc1_1.high.to_n_per_mm2() * tenth(row.mc),
        );
        // The ends of a range are rounded to 10 N/mm2 at 1 mm: at most 1 % of the smallest.
        assert!(
            low * 0.985 <= kc && kc <= high * 1.015,
            "{id}: {kc:.0} outside {low:.0} to {high:.0}"
        );
    }
}

/// 0.1^-m, by bisection on the square root: 0.1^(1/2^k) summed over the binary digits of m.
fn tenth(m: f64) -> f64 {
    let (mut power, mut rest, mut step) = (1.0, m, 10.0_f64);
    for _ in 0..50 {
        step = step.sqrt();
        rest *= 2.0;
        if rest >= 1.0 {
            rest -= 1.0;
            power *= step;
        }
    }
    power
}

/// Printed starting data for feed per tooth lie in the ranges of the rows.
///
/// Source: atacat2022 p. 1301 (read), steel and aluminium, and stainless, diameters 3 to 20 mm; iscar2022 p. 92 (read),
/// fractions of the diameter.
#[test]
fn published_chip_loads_lie_in_the_ranges() {
    const D: [f64; 9] = [3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 16.0, 20.0];
    const PLAIN: [f64; 9] = [0.01, 0.02, 0.03, 0.04, 0.06, 0.08, 0.10, 0.10, 0.12];
    const TOUGH: [f64; 9] = [0.015, 0.02, 0.02, 0.025, 0.025, 0.05, 0.06, 0.06, 0.08];
    let catalog = Catalog::builtin();
    let check = |id: &str, d: f64, fz: f64| {
        let row = catalog.material(id).expect(id);
        let step = row
            .chip_load
            .iter()
            .find(|step| (step.d.to_mm() - d).abs() < 1.0e-9)
            .expect("a step");
        let inside = step.low.to_mm() <= fz + 1.0e-9 && fz <= step.high.to_mm() + 1.0e-9;
        assert!(inside, "{id}: {fz} mm at {d} mm");
    };
    for (i, d) in D.into_iter().enumerate() {
        check("steel_s235", d, PLAIN[i]);
        check("al_6082_t6", d, PLAIN[i]);
        check("stainless_304", d, TOUGH[i]);
        check("ti_6al4v", d, TOUGH[i]);
        check("steel_s235", d, 0.006 * d);
        check("iron_gjl250", d, 0.006 * d);
        check("steel_42crmo4", d, 0.004 * d);
        check("steel_1_2379", d, 0.003 * d);
        check("inconel_718", d, 0.003 * d);
    }
}

/// Feeds per tooth that users of routers report for aluminium lie in the row's range.
///
/// Source: shopreports (read): 3 mm 0.030 and 0.033, 4 mm 0.051, 6 mm 0.027, 0.040 and 0.120 mm per tooth.
#[test]
fn feeds_reported_from_routers_lie_in_the_range() {
    let catalog = Catalog::builtin();
    let row = catalog.material("al_6082_t6").expect("there");
    for (d, fz) in [
        (3.0, 0.030),
        (3.0, 0.033),
        (4.0, 0.051),
        (6.0, 0.027),
        (6.0, 0.040),
        (6.0, 0.120),
    ] {
        let step = row
            .chip_load
            .iter()
            .find(|step| (step.d.to_mm() - d).abs() < 1.0e-9)
            .expect("a step");
        assert!(
            step.low.to_mm() <= fz && fz <= step.high.to_mm() + 1.0e-9,
            "{fz} mm at {d} mm"
        );
    }
}
