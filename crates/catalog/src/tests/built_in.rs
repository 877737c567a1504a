//! Checks over every row that is built in.

use crate::*;
use std::collections::BTreeSet;

fn sources_of(catalog: &Catalog) -> Vec<(String, &[String])> {
    let mut out: Vec<(String, &[String])> = Vec::new();
    macro_rules! add {
        ($($table:ident),*) => { $(out.extend(catalog.$table.iter().map(|r| (format!("{} {}", stringify!($table), r.id), r.sources.as_slice())));)* };
    }
    add!(
        materials,
        machines,
        cutters,
        cutter_materials,
        holds,
        backings,
        clearings,
        number_rows,
        cautions,
        troubles
    );
    out
}

#[test]
fn the_tables_built_in_are_sound() {
    let read = Catalog::read(builtin::FILES, builtin::LITERATURE);
    assert_eq!(read.as_ref().err(), None);
}

#[test]
fn every_source_is_in_the_literature_list_once() {
    let catalog = Catalog::builtin();
    let keys: Vec<&str> = catalog.literature.iter().map(|e| e.key.as_str()).collect();
    let unique: BTreeSet<&str> = keys.iter().copied().collect();
    assert_eq!(keys.len(), unique.len(), "a key stands twice");
    for entry in &catalog.literature {
        assert!(
            !entry.title.is_empty() && !entry.note.is_empty(),
            "{} lacks title or note",
            entry.key
        );
    }
    for (row, sources) in sources_of(&catalog) {
        for key in sources {
            assert!(unique.contains(key.as_str()), "{row}: no entry {key}");
        }
    }
}

#[test]
fn every_caution_named_exists_and_every_caution_can_come_up() {
    let catalog = Catalog::builtin();
    let mut named: BTreeSet<&str> = BTreeSet::new();
    named.extend(
        catalog
            .materials
            .iter()
            .flat_map(|r| r.cautions.iter().map(String::as_str)),
    );
    for id in &named {
        assert_eq!(
            catalog.caution(id).map(|c| c.scope),
            Some(CautionScope::Material),
            "{id}"
        );
    }
    let mut setup: BTreeSet<&str> = BTreeSet::new();
    setup.extend(
        catalog
            .holds
            .iter()
            .flat_map(|r| r.cautions.iter().map(String::as_str)),
    );
    setup.extend(
        catalog
            .backings
            .iter()
            .flat_map(|r| r.cautions.iter().map(String::as_str)),
    );
    setup.extend(
        catalog
            .clearings
            .iter()
            .flat_map(|r| r.cautions.iter().map(String::as_str)),
    );
    for id in &setup {
        assert!(catalog.caution(id).is_some(), "{id}");
    }
    for caution in &catalog.cautions {
        let reached = match caution.scope {
            CautionScope::Material => named.contains(caution.id.as_str()),
            CautionScope::Setup => setup.contains(caution.id.as_str()),
            CautionScope::Always
            | CautionScope::BreakThrough
            | CautionScope::FastCutter
            | CautionScope::OverSpeed
            | CautionScope::Handling => true,
        };
        assert!(reached, "{} is named nowhere", caution.id);
    }
}

#[test]
fn what_fails_on_a_material_names_one_that_exists() {
    let catalog = Catalog::builtin();
    let lists = (catalog.holds.iter().map(|r| &r.fails_on))
        .chain(catalog.backings.iter().map(|r| &r.fails_on))
        .chain(catalog.clearings.iter().map(|r| &r.fails_on));
    for id in lists.flatten() {
        assert!(catalog.material(id).is_some(), "{id}");
    }
}

#[test]
fn numbers_and_their_rows_match_one_to_one() {
    let catalog = Catalog::builtin();
    let rows: BTreeSet<&str> = catalog.number_rows.iter().map(|r| r.id.as_str()).collect();
    let fields: BTreeSet<&str> = NUMBER_IDS.iter().copied().collect();
    assert_eq!(rows, fields);
    assert_eq!(NUMBER_IDS.len(), fields.len());
}

#[test]
fn all_groups_and_enough_materials_are_there() {
    let catalog = Catalog::builtin();
    assert!(catalog.materials.len() >= 28);
    for group in [
        Iso513::P,
        Iso513::M,
        Iso513::K,
        Iso513::N,
        Iso513::S,
        Iso513::H,
        Iso513::O,
    ] {
        assert!(
            catalog.materials.iter().any(|r| r.iso513 == group),
            "{group:?}"
        );
    }
    for row in &catalog.materials {
        assert_eq!(row.kc_published, row.iso513 != Iso513::O, "{}", row.id);
        assert!(
            row.kc_published || row.note.contains("No published kc"),
            "{}",
            row.id
        );
    }
}

/// Physical bounds that no engineering material leaves: densities from foamed board to nickel alloy, moduli up to
/// steel's, yield strain below 5 %, expansion below 2e-4 per kelvin. From general tables of material properties, from memory.
#[test]
fn materials_are_physically_sane() {
    for row in &Catalog::builtin().materials {
        let id = &row.id;
        assert!((600.0..9000.0).contains(&row.density.si()), "{id}: density");
        assert!((0.9e9..215.0e9).contains(&row.e_mod.si()), "{id}: modulus");
        let strain = row.yield_strength.si() / row.e_mod.si();
        assert!(
            (0.0005..0.05).contains(&strain),
            "{id}: yield strain {strain}"
        );
        assert!(
            (5.0e-6..2.0e-4).contains(&row.expansion_per_k),
            "{id}: expansion"
        );
        assert!(
            row.kc1_1.low.si() > 0.0 && row.kc1_1.high.si() <= 6.0e9,
            "{id}: kc"
        );
        assert!(
            row.radial_ratio.high <= 1.0 && row.axial_ratio.high <= 0.6,
            "{id}: force ratios"
        );
        assert!(
            row.vc_hss.1.si() < row.vc_carbide.1.si(),
            "{id}: HSS faster than carbide"
        );
        assert!(
            row.ramp.1.to_deg() <= 15.0 && row.ramp.0.to_deg() > 0.0,
            "{id}: ramp"
        );
        let (first, last) = (row.chip_load[0], row.chip_load[row.chip_load.len() - 1]);
        assert!(
            first.d.to_mm() <= 1.0 && last.d.to_mm() >= 20.0,
            "{id}: chip loads from 1 to 20 mm"
        );
        for pair in row.chip_load.windows(2) {
            assert!(
                pair[0].low.si() <= pair[1].low.si() && pair[0].high.si() <= pair[1].high.si(),
                "{id}: chip load falls"
            );
        }
        let heat = row.heat.map_or(0.0, |h| h.si());
        for step in &row.chip_load {
            assert!(
                step.high.si() > heat,
                "{id}: no feed carries the heat at {} mm",
                step.d.to_mm()
            );
            assert!(
                step.high.si() <= 0.06 * step.d.si(),
                "{id}: chip load beyond 6 % of {} mm",
                step.d.to_mm()
            );
        }
    }
}

#[test]
fn machines_are_physically_sane() {
    for row in &Catalog::builtin().machines {
        let id = &row.id;
        let (first, last) = (row.curve[0], row.curve[row.curve.len() - 1]);
        assert!(
            first.0.si() <= row.n_min.si() && last.0.si() >= row.n_max.si(),
            "{id}: curve shorter than speeds"
        );
        for pair in row.curve.windows(2) {
            let torque = |(n, p): (
                thinwright_quantity::SpindleSpeed,
                thinwright_quantity::Power,
            )| p.si() / n.si();
            assert!(
                torque(pair[1]) <= torque(pair[0]) * 1.001,
                "{id}: torque grows with speed"
            );
        }
        assert!(
            row.runout.high.to_mm() < 0.5 && row.nut_diameter.to_mm() < 80.0,
            "{id}"
        );
        assert!(
            row.practice.0 > 0.0 && row.practice.1 <= 1.0,
            "{id}: practice"
        );
    }
    let softest_first: Vec<f64> = Catalog::builtin()
        .machines
        .iter()
        .map(|r| r.stiffness.likely.si())
        .collect();
    assert!(
        softest_first.windows(2).all(|w| w[0] < w[1]),
        "{softest_first:?}"
    );
}

/// Preferred diameters of ISO 1641 (from memory) are all in the metric rack, in carbide, with two flutes.
#[test]
fn racks_hold_the_preferred_diameters() {
    let catalog = Catalog::builtin();
    for d in [
        1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 16.0,
    ] {
        let found = catalog.cutters.iter().any(|c| {
            (c.d.to_mm() - d).abs() < 1.0e-9
                && c.flutes == 2
                && c.material == CutterMaterial::Carbide
                && c.kind == CutterKind::EndMill
        });
        assert!(found, "{d} mm");
    }
    for sixteenths in [1.0, 2.0, 3.0, 4.0, 6.0, 8.0] {
        let d = sixteenths * 25.4 / 16.0;
        let found = catalog
            .cutters
            .iter()
            .any(|c| c.series == "inch" && (c.d.to_mm() - d).abs() < 1.0e-3);
        assert!(found, "{sixteenths}/16 in");
    }
    for row in &catalog.cutters {
        assert!(
            row.flute_length.si() <= 20.0 * row.d.si(),
            "{}: flute length",
            row.id
        );
        assert!(
            row.series == "metric" || row.series == "inch",
            "{}: series",
            row.id
        );
    }
}
