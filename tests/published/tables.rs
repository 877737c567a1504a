//! Rows of printed tables that have a counterpart in `shared/data`: the data must cover what is printed.

use crate::agreement::Row;
use core::ops::RangeInclusive;
use std::sync::LazyLock;
use thinwright_catalog::{Catalog, CutterMaterial, CutterMaterialRow, MaterialRow};
use thinwright_mechanics::kienzle::{Cutting, specific_cutting_force};
use thinwright_quantity::Speed;

static CATALOG: LazyLock<Catalog> = LazyLock::new(Catalog::builtin);

/// Specific forces in the data are rounded to 10 N/mm2.
const ROUNDING: f64 = 0.01;
/// Chip at which sources of specific force are compared, m.
const COMMON_CHIP: f64 = 1e-4;

type Span = RangeInclusive<f64>;

fn material(id: &str) -> &'static MaterialRow {
    CATALOG
        .material(id)
        .unwrap_or_else(|| panic!("{id} is no material"))
}

fn cutter_material(which: CutterMaterial) -> &'static CutterMaterialRow {
    CATALOG.cutter_material(which).unwrap()
}

fn widened(least: f64, most: f64, share: f64) -> Span {
    least * (1.0 - share)..=most * (1.0 + share)
}

/// A complaint unless both spans have something in common.
fn meets(row: &Row, what: &str, printed: &Span, ours: &Span) -> Option<String> {
    let apart = printed.start() > ours.end() || ours.start() > printed.end();
    apart.then(|| {
        format!(
            "{}: {what} {:e} to {:e} printed, {:e} to {:e} in the data",
            row.id,
            printed.start(),
            printed.end(),
            ours.start(),
            ours.end()
        )
    })
}

/// The printed span of a value: alone, or by its least and greatest, or rough and finish; wider by the tolerance.
fn printed(row: &Row, name: &str) -> Span {
    let pick = |ends: [&str; 2]| {
        let all = ends.map(|end| format!("{name}{end}"));
        let all = all.iter().filter(|one| row.prints(one));
        let found: Vec<f64> = all
            .flat_map(|one| row.printed(one).iter().copied())
            .collect();
        (!found.is_empty()).then_some(found)
    };
    let found = pick(["_min", "_max"])
        .or_else(|| pick(["_rough", "_finish"]))
        .unwrap_or_else(|| row.printed(name).to_vec());
    let least = found.iter().copied().fold(f64::INFINITY, f64::min);
    let most = found.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    widened(least, most, row.tolerance)
}

/// Specific cutting force of a material at a chip, from its least to its greatest.
fn force_of(material: &MaterialRow, chip: f64) -> [f64; 3] {
    let kc1_1 = material.kc1_1;
    [kc1_1.low, kc1_1.likely, kc1_1.high].map(|at| force_at(at.si(), material.mc, chip))
}

fn force_at(kc1_1: f64, mc: f64, chip: f64) -> f64 {
    let law = Cutting {
        kc1_1,
        mc,
        h_ref: 1e-3,
        radial_ratio: 0.0,
        axial_ratio: 0.0,
        wear: 1.0,
    };
    specific_cutting_force(&law, chip)
}

/// A printed specific force at a chip lies in the material's range.
fn force_within(row: &Row, id: &str, chip: f64, value: f64) -> Vec<String> {
    let [low, _, high] = force_of(material(id), chip);
    let ours = widened(low, high, ROUNDING);
    meets(row, "specific force", &(value..=value), &ours)
        .into_iter()
        .collect()
}

/// The material that a printed table of forces means.
fn material_of_force(id: &str) -> Option<&'static str> {
    Some(match id {
        "kienzle-vdi01" | "kienzle-tun-ss400" => "steel_s235",
        "kienzle-mem-st50" => "steel_s355",
        "kienzle-vdi03"
        | "kienzle-tun-s55c"
        | "kienzle-mem-c45"
        | "kienzle-range-medium-carbon"
        | "power-groover-u-02" => "steel_c45",
        "kienzle-vdi06" | "kienzle-mem-16mncr5" => "steel_16mncr5",
        "kienzle-vdi07"
        | "kienzle-vdi09"
        | "kienzle-mem-42crmo4"
        | "kienzle-range-crmo-qt"
        | "power-groover-u-05" => "steel_42crmo4",
        "kienzle-vdi10" | "kienzle-tun-skt4" => "steel_1_2379",
        "kienzle-vdi15" | "kienzle-mem-gg25" | "power-groover-u-09" => "iron_gjl250",
        "kienzle-vdi18" => "iron_gjs400",
        "kienzle-vdi19" => "iron_malleable",
        "kienzle-vdi21" | "power-groover-u-11" => "al_5083",
        "kienzle-vdi22" | "power-groover-u-12" => "al_6082_t6",
        "kienzle-vdi24" | "kienzle-tun-al-si" | "kienzle-range-al-cast" => "al_cast_si",
        "kienzle-vdi27" | "kienzle-tun-brass" | "kienzle-mem-cuzn" | "kienzle-range-brass" => {
            "brass_cuzn39pb3"
        }
        "kienzle-vdi28" => "copper_etp",
        "kienzle-vdi33" => "inconel_718",
        "kienzle-vdi36" | "kienzle-vdi36-2022" => "ti_grade2",
        "kienzle-vdi38" => "steel_55hrc",
        "power-groover-u-14" => "bronze_cusn8",
        "power-groover-u-15" => "magnesium_az91",
        _ => return None,
    })
}

/// Forces: the constants of two sources differ in their exponent too, so they are compared at one chip.
fn force(row: &Row) -> Option<Vec<String>> {
    let id = material_of_force(&row.id)?;
    let within = |chip: f64, value: f64| Some(force_within(row, id, chip, value));
    if row.id.starts_with("kienzle-range-") {
        let [_, likely, _] = force_of(material(id), row.input("h"));
        let found = meets(
            row,
            "specific force",
            &printed(row, "kc"),
            &(likely..=likely),
        );
        return Some(found.into_iter().collect());
    }
    if row.id.starts_with("kienzle-tun-") {
        return within(row.list("feed_per_tooth")[0], row.printed("kc")[0]);
    }
    if row.id.starts_with("power-groover-u-") {
        return within(row.input("t0"), row.input("unit_energy"));
    }
    let constant = |name: &str| {
        if row.prints(name) {
            row.printed(name)[0]
        } else {
            row.input_or(name, 0.0)
        }
    };
    within(
        COMMON_CHIP,
        force_at(constant("kc1_1"), constant("mc"), COMMON_CHIP),
    )
}

/// The material that a printed table of speeds means, and whether its cutters are of carbide.
fn material_of_speed(id: &str) -> Option<(&'static str, bool)> {
    let hss = |material| Some((material, false));
    let carbide = |material| Some((material, true));
    match id {
        "speeds-az-alloy" => hss("steel_42crmo4"),
        "speeds-az-cold"
        | "speeds-az-mild"
        | "speeds-bingham-mild"
        | "speeds-tutorial-mild"
        | "speeds-benchmill-mild-steel"
        | "speeds-chart-steel-low-carbon" => hss("steel_s235"),
        "speeds-az-aluminium"
        | "speeds-bingham-aluminium"
        | "speeds-tutorial-aluminium"
        | "speeds-benchmill-aluminium" => hss("al_6082_t6"),
        "speeds-bingham-stainless"
        | "speeds-tutorial-stainless"
        | "speeds-benchmill-stainless-steel"
        | "speeds-chart-stainless-304" => hss("stainless_304"),
        "speeds-tutorial-brass" => hss("brass_cuzn39pb3"),
        "speeds-benchmill-copper" => hss("copper_etp"),
        "speeds-benchmill-cast-iron-soft" | "speeds-chart-cast-iron-hard" => hss("iron_gjl250"),
        "speeds-benchmill-titanium" => hss("ti_grade2"),
        "speeds-chart-bronze-hard" => hss("bronze_cusn8"),
        "speeds-chart-titanium-6Al-4V" => hss("ti_6al4v"),
        "speeds-carbide-g01" | "speeds-ata-steel500" | "slot-m525-lowC" => carbide("steel_s235"),
        "speeds-carbide-g08" | "speeds-tungaloy-alloy" | "slot-m525-medC" => {
            carbide("steel_42crmo4")
        }
        "speeds-carbide-g11" => carbide("steel_1_2379"),
        "speeds-carbide-g15" | "speeds-ata-iron200" | "slot-m525-grey" => carbide("iron_gjl250"),
        "speeds-carbide-g17" => carbide("iron_gjs400"),
        "speeds-carbide-g37" | "speeds-ata-ti" => carbide("ti_6al4v"),
        "speeds-ata-hard52" | "speeds-tungaloy-hardened" => carbide("steel_55hrc"),
        "speeds-ata-al" | "speeds-tungaloy-aluminium" => carbide("al_6082_t6"),
        "speeds-tungaloy-austenitic" => carbide("stainless_304"),
        "speeds-tungaloy-inconel" => carbide("inconel_718"),
        _ => None,
    }
}

/// Least and greatest feed per tooth of a material, straight between the diameters of its row; nothing beyond them.
fn chip_load(material: &MaterialRow, d: f64) -> Option<Span> {
    let all = &material.chip_load;
    let next = all.iter().position(|one| one.d.si() >= d)?;
    let (a, b) = (all.get(next.checked_sub(1).unwrap_or(next))?, &all[next]);
    let span = b.d.si() - a.d.si();
    let share = if span > 0.0 {
        (d - a.d.si()) / span
    } else {
        0.0
    };
    let between = |from: f64, to: f64| from + share * (to - from);
    Some(between(a.low.si(), b.low.si())..=between(a.high.si(), b.high.si()))
}

fn speed(row: &Row) -> Option<Vec<String>> {
    let (id, carbide) = material_of_speed(&row.id)?;
    let material = material(id);
    let span = |(low, high): (Speed, Speed)| low.si()..=high.si();
    let ours = span(if carbide {
        material.vc_carbide
    } else {
        material.vc_hss
    });
    let mut found = Vec::from_iter(meets(row, "speed", &printed(row, "vc"), &ours));
    // Both columns of a table in two systems say the same.
    for end in ["", "_min", "_max"] {
        let metric = format!("vc_metric{end}");
        if row.prints(&metric) {
            let [a, b] = [&format!("vc{end}"), &metric].map(|name| row.printed(name)[0]);
            if (a / b - 1.0).abs() > ROUNDING {
                found.push(format!("{}: {metric} is not the same speed", row.id));
            }
        }
    }
    if row.prints("fz_over_D_start") {
        // At 10 mm, as a share of the diameter.
        let d = 0.01;
        let share = printed(row, "fz_over_D");
        let feeds = share.start() * d..=share.end() * d;
        let ours = chip_load(material, d).unwrap();
        found.extend(meets(row, "feed", &feeds, &ours));
    } else if row.has("diameters") && row.prints("fz") {
        for (d, fz) in row.list("diameters").iter().zip(row.printed("fz")) {
            let feeds = widened(*fz, *fz, row.tolerance);
            let what = format!("feed at {d} m");
            if let Some(ours) = chip_load(material, *d) {
                found.extend(meets(row, &what, &feeds, &ours));
            }
        }
    }
    Some(found)
}

/// Energy per volume by material, one list.
fn energies(row: &Row) -> Vec<String> {
    // The source gives no hardness for its tool steel: 7 J/mm3 is that of a hardened one.
    let ids = [
        "al_6082_t6",
        "brass_cuzn39pb3",
        "iron_gjl250",
        "steel_s235",
        "steel_55hrc",
    ];
    let check = |(id, value): (&str, &f64)| {
        let (low, high) = material(id).energy;
        let ours = low.si()..=high.si();
        meets(row, id, &widened(*value, *value, row.tolerance), &ours)
    };
    ids.into_iter()
        .zip(row.printed("kM"))
        .filter_map(check)
        .collect()
}

fn ramp(row: &Row) -> Option<Vec<String>> {
    let id = match row.id.as_str() {
        "ramp-angle-al" => "al_6082_t6",
        "ramp-angle-steel" => "steel_s235",
        "ramp-angle-ti" => "ti_6al4v",
        "ramp-angle-hard" => "steel_55hrc",
        _ => return None,
    };
    let (low, high) = material(id).ramp;
    let found = meets(row, "ramp", &printed(row, "ramp"), &(low.si()..=high.si()));
    Some(found.into_iter().collect())
}

/// What cutters are made of, how stiff machines are, and the least chip.
fn other(row: &Row) -> Option<Vec<String>> {
    let (carbide, hss) = (
        cutter_material(CutterMaterial::Carbide),
        cutter_material(CutterMaterial::Hss),
    );
    let modulus = |of: &CutterMaterialRow| of.e_mod_range.low.si()..=of.e_mod_range.high.si();
    let rupture = carbide.rupture_strength;
    let machine = |id: &str| {
        let stiffness = CATALOG.machine(id).unwrap().stiffness;
        stiffness.low.si()..=stiffness.high.si()
    };
    let least = material("al_6082_t6").least_chip_ratio;
    let one = |what, name, ours: Span| Some(vec![meets(row, what, &printed(row, name), &ours)]);
    let found = match row.id.as_str() {
        "deflection-equiv-diameter" => one(
            "diameter",
            "De_over_D",
            carbide.effective_diameter_ratio..=hss.effective_diameter_ratio,
        ),
        "deflection-E-hss" => one("modulus", "E", modulus(hss)),
        "deflection-strength-wc6co" | "deflection-strength-wc10co" => Some(vec![
            meets(row, "modulus", &printed(row, "E"), &modulus(carbide)),
            meets(
                row,
                "strength",
                &printed(row, "TRS"),
                &(rupture.low.si()..=rupture.high.si()),
            ),
        ]),
        "deflection-machine-k-benchmill" => one("stiffness", "k", machine("benchtop_mill")),
        "deflection-machine-k-vmc" => one("stiffness", "k", machine("machining_centre")),
        "minchip-cheng-range" | "minchip-vogler-pearlite" | "minchip-weule" => {
            one("least chip", "hmin_over_re", least.low..=least.high)
        }
        "spindle-eff-kyocera" => {
            let efficiency = CATALOG.machine("benchtop_mill").unwrap().efficiency;
            one("efficiency", "efficiency", efficiency.low..=efficiency.high)
        }
        "slot-pocket-depth" => {
            // Plain up to between what is advised and what is hard; avoided not before that.
            let (advised, hard) = (
                row.printed("recommended_max")[0],
                row.printed("difficult_above")[0],
            );
            let numbers = &CATALOG.numbers;
            let (plain, avoid) = (numbers.reach_over_d_plain, numbers.reach_over_d_avoid);
            Some(vec![
                meets(row, "plain reach", &(advised..=hard), &(plain..=plain)),
                meets(row, "reach to avoid", &(hard..=f64::MAX), &(avoid..=avoid)),
            ])
        }
        _ => None,
    };
    found.map(|all| all.into_iter().flatten().collect())
}

/// What the data say against a printed row; nothing where they have no counterpart.
pub(crate) fn complaints(row: &Row) -> Option<Vec<String>> {
    if row.id == "power-carvill-kM" {
        return Some(energies(row));
    }
    force(row)
        .or_else(|| speed(row))
        .or_else(|| ramp(row))
        .or_else(|| other(row))
}
