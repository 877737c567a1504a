//! Words that take something in: counts, names, values already in words.

use super::MARK;
use thinwright_catalog::{CutterKind, CutterMaterial, CutterRow, Iso513};
use thinwright_core::field::Group;
use thinwright_quantity::{Kind, Rounding, UnitSystem, unit_name};
use thinwright_words::language::tr;
use thinwright_words::{marked, say, unit, written};

pub(crate) fn now_and_before(now: &str, before: &str) -> String {
    say!("{now}; before: {before}", now, before)
}

pub(crate) fn stepover_of(value: &str) -> String {
    say!("stepover {value}", value)
}

pub(crate) fn step_down_of(value: &str) -> String {
    say!("step-down {value}", value)
}

pub(crate) fn setup(number: usize) -> String {
    say!("Setup {number}", number)
}

/// The anchor of a group in the page: the same in every language.
pub(crate) fn anchor(group: Group) -> &'static str {
    match group {
        Group::Part => "group-part",
        Group::Material => "group-material",
        Group::Machine => "group-machine",
        Group::Cutters => "group-cutters",
        Group::Holding => "group-holding",
        Group::Pins | Group::StepPins => "group-kept",
        Group::Learned => "taught",
    }
}

pub(crate) fn table_gives(value: &str) -> String {
    say!("table: {value}", value)
}

/// A value as the tables give it, with decimal mark and unit of the language.
pub(crate) fn as_read(kind: Kind, value: &str, units: UnitSystem) -> String {
    match value.strip_suffix(unit_name(kind, units)) {
        Some(number) => marked(number) + unit(kind, units),
        None => marked(value),
    }
}

pub(crate) fn how_known(label: &str) -> String {
    say!("How it is known: {label}", label)
}

pub(crate) fn more(count: usize, answered: usize) -> String {
    say!("More: {count}, {answered} answered", count, answered)
}

/// The name of a fold, with how much in it is answered; the name alone where nothing is.
pub(crate) fn with_answered(name: &str, count: usize) -> String {
    if count == 0 {
        name.to_owned()
    } else {
        say!("{name} ({count} answered)", name, count)
    }
}

pub(crate) fn so_many_to_mend(count: usize) -> String {
    say!("{mark} {count} to mend", mark = MARK, count)
}

pub(crate) fn problems(count: usize) -> String {
    if count == 1 {
        tr("1 answer to mend").to_owned()
    } else {
        say!("{count} answers to mend", count)
    }
}

pub(crate) fn copy_cutter_named(name: &str) -> String {
    say!("Copy: {name}", name)
}

pub(crate) fn remove_cutter_named(name: &str) -> String {
    say!("Take out: {name}", name)
}

pub(crate) fn kept_aside(error: &str, key: &str) -> String {
    say!(
        "What was kept on this machine cannot be read ({error}). It is put aside as \u{201C}{key}\u{201D}; a sample is open instead.",
        error,
        key
    )
}

pub(crate) fn not_kept_aside(error: &str) -> String {
    say!(
        "What was kept on this machine cannot be read ({error}), and there is no room to put it aside. It is left as it is: save this job as a file.",
        error
    )
}

pub(crate) fn opened(name: &str) -> String {
    say!("Opened: {name}.", name)
}

pub(crate) fn opened_edited(name: &str) -> String {
    say!(
        "Opened: {name}. Its answers were changed by hand after it was saved.",
        name
    )
}

pub(crate) fn not_opened(file: &str, error: &str) -> String {
    say!(
        "{file} was not opened: {error}. Nothing here was touched.",
        file,
        error
    )
}

/// Where the dictionary of a language, told by its own name, cannot be had.
pub(crate) fn no_dictionary(language: &str) -> String {
    say!(
        "The texts in {language} could not be fetched: the page keeps the language that it has. Choose again once there is a network.",
        language
    )
}

pub(crate) fn copied(done: bool) -> String {
    let said = if done {
        tr("Copied.")
    } else {
        tr("This browser copies nothing by itself: mark the text and copy it.")
    };
    said.to_owned()
}

pub(crate) fn block_name(units: UnitSystem, own: UnitSystem) -> &'static str {
    match (units, units == own) {
        (UnitSystem::Metric, true) => tr("To type, in millimetres"),
        (UnitSystem::Metric, false) => tr("The same in millimetres"),
        (UnitSystem::Inch, true) => tr("To type, in inches"),
        (UnitSystem::Inch, false) => tr("The same in inches"),
    }
}

pub(crate) fn copy_block(units: UnitSystem, step: u32) -> String {
    match units {
        UnitSystem::Metric => say!("Copy the values of step {step} in mm", step),
        UnitSystem::Inch => say!("Copy the values of step {step} in inch", step),
    }
}

pub(crate) fn likely(value: &str) -> String {
    say!("At likely values {value}.", value)
}

pub(crate) fn set_by(unknown: &str) -> String {
    say!("Most of the difference: {unknown}.", unknown)
}

pub(crate) fn severity(meaning: &str) -> String {
    say!("If broken: {meaning}.", meaning)
}

pub(crate) fn source(author: &str, title: &str, year: &str) -> String {
    let parts: Vec<&str> = [author, title, year]
        .into_iter()
        .filter(|p| !p.is_empty())
        .collect();
    say!("Source: {work}.", work = parts.join(", "))
}

pub(crate) fn because(why: &str) -> String {
    say!("Taken because {why}.", why)
}

pub(crate) fn other_orders(count: usize) -> String {
    say!("Set aside: {count}", count)
}

pub(crate) fn assumed(count: usize) -> String {
    say!("Left to tables: {count}", count)
}

pub(crate) fn apply_change(change: &str) -> String {
    say!("Apply: {change}", change)
}

pub(crate) fn series(series: &str) -> &'static str {
    if series == "inch" {
        tr("inch sizes")
    } else {
        tr("metric sizes")
    }
}

/// The groups of ISO 513.
pub(crate) fn iso_513(group: Iso513) -> &'static str {
    tr(match group {
        Iso513::P => "P  steel",
        Iso513::M => "M  stainless steel",
        Iso513::K => "K  cast iron",
        Iso513::N => "N  non-ferrous metals",
        Iso513::S => "S  heat-resistant alloys, titanium",
        Iso513::H => "H  hardened steel",
        Iso513::O => "plastics and wood",
    })
}

/// A cutter of the starter rack.
pub(crate) fn starter_cutter(row: &CutterRow, units: UnitSystem) -> String {
    let length = |si: f64| written(Kind::Length, si, units, Rounding::Nearest);
    let d = length(row.d.si());
    let reach = length(row.reach.si());
    let of = match row.material {
        CutterMaterial::Carbide => tr("carbide"),
        CutterMaterial::Hss => tr("HSS"),
    };
    let corner = row.corner_radius.si();
    match row.kind {
        CutterKind::Drill => say!("{d} drill, {of}, reach {reach}", d, of, reach),
        CutterKind::EndMill if corner > 0.0 => say!(
            "{d} end mill, {flutes}, {of}, reach {reach}, RE {corner}",
            d,
            flutes = flutes(row.flutes),
            of,
            reach,
            corner = length(corner)
        ),
        CutterKind::EndMill => say!(
            "{d} end mill, {flutes}, {of}, reach {reach}",
            d,
            flutes = flutes(row.flutes),
            of,
            reach
        ),
    }
}

fn flutes(count: u32) -> String {
    if count == 1 {
        tr("1 flute").to_owned()
    } else {
        say!("{count} flutes", count)
    }
}
