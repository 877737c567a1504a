//! The jobs whose advice is compared: the samples, and one plain part in every material on machines that cut it.

use crate::core_cases::{answers, only};
use std::sync::LazyLock;
use thinwright_catalog::{Catalog, Iso513, MaterialRow};
use thinwright_core::answers::Answers;
use thinwright_jobfile::samples;

static CATALOG: LazyLock<Catalog> = LazyLock::new(Catalog::builtin);

/// A job with its name, and the place in the table that its values are gathered under.
pub(crate) struct Case {
    pub(crate) name: String,
    pub(crate) place: String,
    pub(crate) answers: Answers,
}

/// A cutter of a rack: diameter in mm and flutes.
type Mill = (f64, u32);

/// What stands on a machine: its cutters for a kind of material, the slot they cut, and what carries chips off.
struct Shop {
    class: &'static str,
    rack: Vec<Mill>,
    slot: &'static str,
    hold: &'static str,
    chips: &'static str,
    cutter: &'static str,
}

/// Flutes of cutters for a material, wide and narrow: few where chips are bulky, four in steel.
fn flutes(material: &MaterialRow) -> (u32, u32) {
    match material.iso513 {
        Iso513::O => (2, 1),
        Iso513::N => (3, 2),
        _ => (4, 4),
    }
}

fn shop(class: &'static str, material: &MaterialRow) -> Shop {
    let (wide, narrow) = flutes(material);
    let router = class.ends_with("router");
    let (rack, slot) = match class {
        _ if router => (vec![(6.0, 1), (3.0, 1)], "4"),
        "benchtop_mill" => (vec![(8.0, wide), (4.0, narrow)], "5"),
        "knee_mill" => (vec![(10.0, wide), (5.0, narrow)], "5"),
        _ => (vec![(10.0, wide), (5.0, narrow), (4.0, narrow)], "5"),
    };
    let dry = material.iso513 == Iso513::O || material.id.starts_with("magnesium");
    let chips = match class {
        _ if router => "air",
        _ if dry => "air",
        "machining_centre" => "flood",
        _ => "mist",
    };
    Shop {
        class,
        rack,
        slot,
        hold: if router { "frame_screws" } else { "vise" },
        chips,
        cutter: "carbide",
    }
}

/// A plate of 120 x 80 x 10 with a recess of 6 and slots through the web of 4.
fn plate(material: &str, shop: &Shop, changes: &[(&str, &str)]) -> Answers {
    let mut all: Vec<(String, String)> = [
        ("part.shape", "rectangular"),
        ("part.length", "120"),
        ("part.width", "80"),
        ("part.outer-corner", "6"),
        ("part.thickness", "10"),
        ("recess-a.depth", "6"),
        ("part.web", "4"),
        ("recess-a.length", "90"),
        ("recess-a.width", "56"),
        ("recess-a.corner", "8"),
        ("slots.pattern", "parallel"),
        ("slots.per-group", "4"),
        ("slots.width", shop.slot),
        ("slots.length", "30"),
        ("slots.pitch", "14"),
        ("material.row", material),
        ("machine.class", shop.class),
        ("holding.first", shop.hold),
        ("holding.chips", shop.chips),
    ]
    .map(|(key, text)| (key.to_owned(), text.to_owned()))
    .to_vec();
    for (row, (d, z)) in shop.rack.iter().enumerate() {
        let mut set = |key: &str, text: String| {
            all.push((format!("cutter.{}.{key}", row + 1), text));
        };
        set("kind", "end-mill".to_owned());
        set("diameter", format!("{d}"));
        set("flutes", format!("{z}"));
        set("flute-length", format!("{}", 3.0 * d));
        set("shank", format!("{d}"));
        // Three diameters, but past the rim and the web.
        set("stick-out", format!("{}", (3.5 * d).max(16.0)));
        set("material", shop.cutter.to_owned());
    }
    let all: Vec<(&str, &str)> = all.iter().map(|(k, t)| (k.as_str(), t.as_str())).collect();
    only(&[&all, changes].concat())
}

/// The machines on which a material is cut here.
fn classes(material: &MaterialRow) -> &'static [&'static str] {
    let plastic = material.yield_strength.si() < 200.0e6;
    match material.iso513 {
        _ if material.id == "al_6082_t6" => &[
            "belt_router",
            "screw_router",
            "benchtop_mill",
            "knee_mill",
            "machining_centre",
        ],
        Iso513::O if material.cautions.iter().any(|c| c == "wood_dust") => {
            &["belt_router", "screw_router"]
        }
        Iso513::O if plastic => &["screw_router", "benchtop_mill"],
        Iso513::O | Iso513::N => &["screw_router", "machining_centre"],
        Iso513::P | Iso513::M | Iso513::K => &["benchtop_mill", "machining_centre"],
        Iso513::S | Iso513::H => &["knee_mill", "machining_centre"],
    }
}

/// Materials for which shops print speeds of high-speed steel.
const HSS: [&str; 10] = [
    "al_6082_t6",
    "brass_cuzn39pb3",
    "bronze_cusn8",
    "copper_etp",
    "steel_s235",
    "steel_42crmo4",
    "stainless_304",
    "iron_gjl250",
    "ti_grade2",
    "ti_6al4v",
];

/// Every job: samples first.
pub(crate) fn all() -> Vec<Case> {
    let mut cases: Vec<Case> = samples()
        .iter()
        .filter(|sample| sample.id != "impossible")
        .map(|sample| Case {
            name: sample.id.to_owned(),
            place: sample.id.to_owned(),
            answers: answers(sample.id, &[]),
        })
        .collect();
    let mut add = |material: &str, place: String, shop: &Shop, changes: &[(&str, &str)]| {
        cases.push(Case {
            name: format!("{material} {place}"),
            answers: plate(material, shop, changes),
            place,
        });
    };
    for material in &CATALOG.materials {
        for class in classes(material) {
            add(
                &material.id,
                (*class).to_owned(),
                &shop(class, material),
                &[],
            );
        }
        if HSS.contains(&material.id.as_str()) {
            let mut shop = shop("knee_mill", material);
            shop.cutter = "hss";
            add(&material.id, "knee_mill hss".to_owned(), &shop, &[]);
        }
    }
    for (material, class) in [
        ("al_6082_t6", "machining_centre"),
        ("steel_s235", "machining_centre"),
        ("al_6082_t6", "knee_mill"),
    ] {
        let mut shop = shop(class, CATALOG.material(material).unwrap());
        shop.rack = vec![shop.rack[0], (5.0, 2), (4.0, 2)];
        let place = format!("{class} close slots");
        add(material, place, &shop, &[("tolerance.slot", "0.04")]);
    }
    cases
}
