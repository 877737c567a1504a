//! Words that take something in: counts, names, values already in words.

use super::{APPLY, COPY, COPY_CUTTER, INCHES, MARK, MILLIMETRES, REMOVE_CUTTER};
use thinwright_catalog::{CutterKind, CutterMaterial, CutterRow, Iso513};
use thinwright_core::field::Group;
use thinwright_quantity::{Kind, Rounding, UnitSystem, format as written};

pub(crate) fn now_and_before(now: &str, before: &str) -> String {
    format!("{now}; before: {before}")
}

pub(crate) fn stepover(value: &str) -> String {
    format!("stepover {value}")
}

pub(crate) fn step_down(value: &str) -> String {
    format!("step-down {value}")
}

pub(crate) fn setup(number: usize) -> String {
    format!("Setup {number}")
}

/// The anchor of a group in the page.
pub(crate) fn anchor(group: Group) -> String {
    format!("group-{}", thinwright_words::group(group).to_lowercase())
}

pub(crate) fn table_gives(value: &str) -> String {
    format!("table: {value}")
}

pub(crate) fn how_known(label: &str) -> String {
    format!("How it is known: {label}")
}

pub(crate) fn more(count: usize, answered: usize) -> String {
    format!("More: {count}, {answered} answered")
}

/// Behind the name of a fold; nothing where nothing is answered.
pub(crate) fn answered(count: usize) -> String {
    if count == 0 {
        String::new()
    } else {
        format!(" ({count} answered)")
    }
}

pub(crate) fn to_mend(count: usize) -> String {
    format!("{MARK} {count} to mend")
}

pub(crate) fn problems(count: usize) -> String {
    if count == 1 {
        "1 answer to mend".to_owned()
    } else {
        format!("{count} answers to mend")
    }
}

pub(crate) fn copy_cutter(name: &str) -> String {
    format!("{COPY_CUTTER}: {name}")
}

pub(crate) fn remove_cutter(name: &str) -> String {
    format!("{REMOVE_CUTTER}: {name}")
}

pub(crate) fn own_machines(count: usize) -> String {
    format!("Machines of your own: {count}")
}

pub(crate) fn machine_saved(name: &str) -> String {
    format!("The machine is kept as \u{201C}{name}\u{201D}.")
}

pub(crate) fn kept_aside(error: &str, key: &str) -> String {
    format!(
        "What was kept on this machine cannot be read ({error}). It is put aside as \u{201C}{key}\u{201D}; a sample is open instead."
    )
}

pub(crate) fn not_kept_aside(error: &str) -> String {
    format!(
        "What was kept on this machine cannot be read ({error}), and there is no room to put it aside. It is left as it is: save this job as a file."
    )
}

pub(crate) fn opened(name: &str) -> String {
    format!("Opened: {name}.")
}

pub(crate) fn opened_edited(name: &str) -> String {
    format!("Opened: {name}. Its answers were changed by hand after it was saved.")
}

pub(crate) fn not_opened(file: &str, error: &str) -> String {
    format!("{file} was not opened: {error}. Nothing here was touched.")
}

pub(crate) fn copied(done: bool) -> String {
    if done {
        "Copied.".to_owned()
    } else {
        "This browser copies nothing by itself: mark the text and copy it.".to_owned()
    }
}

pub(crate) fn block_name(units: UnitSystem, own: UnitSystem) -> String {
    let name = match units {
        UnitSystem::Metric => "millimetres",
        UnitSystem::Inch => "inches",
    };
    if units == own {
        format!("To type, in {name}")
    } else {
        format!("The same in {name}")
    }
}

pub(crate) fn copy_block(units: UnitSystem, step: u32) -> String {
    let name = match units {
        UnitSystem::Metric => MILLIMETRES,
        UnitSystem::Inch => INCHES,
    };
    format!("{COPY} the values of step {step} in {name}")
}

pub(crate) fn likely(value: &str) -> String {
    format!("At likely values {value}. ")
}

pub(crate) fn set_by(unknown: &str) -> String {
    format!("Most of the difference: {unknown}. ")
}

pub(crate) fn severity(meaning: &str) -> String {
    format!("If broken: {meaning}. ")
}

pub(crate) fn source(author: &str, title: &str, year: &str) -> String {
    let parts: Vec<&str> = [author, title, year]
        .into_iter()
        .filter(|p| !p.is_empty())
        .collect();
    format!("Source: {}.", parts.join(", "))
}

pub(crate) fn because(why: &str) -> String {
    format!("Taken because {why}.")
}

pub(crate) fn other_orders(count: usize) -> String {
    format!("Set aside: {count}")
}

pub(crate) fn assumed(count: usize) -> String {
    format!("Left to tables: {count}")
}

pub(crate) fn apply(change: &str) -> String {
    format!("{APPLY}: {change}")
}

pub(crate) fn series(series: &str) -> &'static str {
    if series == "inch" {
        "inch sizes"
    } else {
        "metric sizes"
    }
}

/// The groups of ISO 513.
pub(crate) fn iso_513(group: Iso513) -> &'static str {
    match group {
        Iso513::P => "P  steel",
        Iso513::M => "M  stainless steel",
        Iso513::K => "K  cast iron",
        Iso513::N => "N  non-ferrous metals",
        Iso513::S => "S  heat-resistant alloys, titanium",
        Iso513::H => "H  hardened steel",
        Iso513::O => "plastics and wood",
    }
}

/// A cutter of the starter rack.
pub(crate) fn starter_cutter(row: &CutterRow, units: UnitSystem) -> String {
    let length = |si: f64| written(Kind::Length, si, units, Rounding::Nearest);
    let d = length(row.d.si());
    let reach = length(row.reach.si());
    let of = match row.material {
        CutterMaterial::Carbide => "carbide",
        CutterMaterial::Hss => "HSS",
    };
    match row.kind {
        CutterKind::Drill => format!("{d} drill, {of}, reach {reach}"),
        CutterKind::EndMill => {
            let corner = if row.corner_radius.si() > 0.0 {
                format!(", RE {}", length(row.corner_radius.si()))
            } else {
                String::new()
            };
            format!(
                "{d} end mill, {}, {of}, reach {reach}{corner}",
                flutes(row.flutes)
            )
        }
    }
}

fn flutes(count: u32) -> String {
    if count == 1 {
        "1 flute".to_owned()
    } else {
        format!("{count} flutes")
    }
}
