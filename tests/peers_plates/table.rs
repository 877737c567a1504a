//! How far plates and ribs are from independent programs: the complaints, and the section of the table of agreement.

use crate::agreement::table::keep;
use std::fmt::Write;

/// What a value is compared with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Against {
    Plate,
    PlateOnBed,
    PlateTone,
    Stress,
    Solid,
    SolidBeside,
    SolidTone,
    Rib,
    Side,
}

/// All of them, with their words.
const ALL: [(Against, &str, &str); 9] = [
    (Against::Plate, "plates, quadratic elements", "deflection"),
    (
        Against::PlateOnBed,
        "plates, quadratic elements",
        "deflection on a bed",
    ),
    (Against::PlateTone, "plates, quadratic elements", "tones"),
    (
        Against::Stress,
        "plates, quadratic elements",
        "mean stress under the load",
    ),
    (Against::Solid, "solids", "deflection"),
    (
        Against::SolidBeside,
        "solids",
        "deflection within 5 t of a step",
    ),
    (Against::SolidTone, "solids", "tones"),
    (Against::Rib, "plane stress", "rib beside an open slot"),
    (Against::Side, "plane stress", "side of a slot in the solid"),
];

/// How far one value is from the peer's.
#[derive(Clone, Debug)]
pub(crate) struct Deviation {
    pub(crate) id: String,
    pub(crate) against: Against,
    /// Computed over expected, less 1.
    pub(crate) share: f64,
    pub(crate) allowed: (f64, f64),
}

fn percent(share: f64) -> String {
    format!("{:+.1}", 100.0 * share)
}

/// Median and worst of each class.
fn classes(all: &[Deviation]) -> String {
    let mut text = String::from(
        "| against | value | values | median error | worst error |\n|---|---|---|---|---|\n",
    );
    for (against, peer, value) in ALL {
        let of = all.iter().filter(|d| d.against == against);
        let mut errors: Vec<f64> = of.map(|d| d.share.abs()).collect();
        errors.sort_by(f64::total_cmp);
        let count = errors.len();
        let shown = [errors[count / 2], errors[count - 1]].map(|e| format!("{:.1} %", 100.0 * e));
        let [median, worst] = shown;
        writeln!(text, "| {peer} | {value} | {count} | {median} | {worst} |").unwrap();
    }
    text
}

/// Every value of every row.
fn outlines(all: &[Deviation]) -> String {
    let mut text = String::from("| row | deviation, % |\n|---|---|\n");
    let mut rest = all;
    while let Some(first) = rest.first() {
        let end = rest.iter().position(|d| d.id != first.id);
        let (row, others) = rest.split_at(end.unwrap_or(rest.len()));
        let mut shown = String::new();
        for (at, one) in row.iter().enumerate() {
            let tones = [Against::PlateTone, Against::SolidTone];
            let begins = tones.contains(&one.against) && row[at - 1].against != one.against;
            shown += if begins { "; tones " } else { " " };
            shown += &percent(one.share);
        }
        writeln!(text, "| {} |{shown} |", first.id).unwrap();
        rest = others;
    }
    text
}

fn section(rows: usize, all: &[Deviation]) -> String {
    format!(
        "## outlines.json\n\n{rows} rows of outlines and ribs of our own, all compared; the peers stand in `tests/peers`. Plates are \
         extrapolated from two meshes. Against solids the line between thin and thick is moved by a quarter of the thin \
         part's thickness. Positive: softer, or a higher tone, than the peer says; points in the order of the row.\n\n{}\n{}",
        classes(all),
        outlines(all)
    )
}

/// Complains of what is too far off, and of a table that tells something else.
#[allow(clippy::print_stdout, reason = "the table is for people")]
pub(crate) fn check(rows: usize, all: &[Deviation]) {
    let section = section(rows, all);
    println!("{section}");
    let far = all
        .iter()
        .filter(|d| !(d.share >= d.allowed.0 && d.share <= d.allowed.1));
    let mut complaints: Vec<String> = far.map(|d| format!("{d:?}")).collect();
    if complaints.is_empty() {
        complaints.extend(keep("outlines.json", &section));
    }
    assert!(complaints.is_empty(), "{}", complaints.join("\n"));
}
