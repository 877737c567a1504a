//! Racks: two to six cutters, from the tables' series and from sizes that lie about in shops.
//! All lengths in hundredths of a millimetre.

use super::Lot;
use super::part::Drawn;
use super::sheet::Sheet;
use super::shop::Shop;
use thinwright_catalog::{Catalog, CutterKind, CutterMaterial, CutterRow};
use thinwright_core::{Field, FieldId, Known};

/// A cutter to be written.
struct Cutter {
    drill: bool,
    d: i64,
    flutes: i64,
    flute_length: i64,
    reach: i64,
    shank: i64,
    stick_out: i64,
    corner: i64,
    helix: i64,
    hss: bool,
    centre: bool,
}

/// Diameters of cutters that are not in the tables.
const LOOSE: &[i64] = &[
    100, 150, 200, 250, 300, 318, 350, 400, 476, 500, 600, 635, 700, 800, 953, 1000, 1200, 1270,
    1600,
];

/// What the next cutter is for.
#[derive(Clone, Copy)]
struct Need {
    /// The thinnest worth taking.
    least: i64,
    /// The widest that fits.
    most: i64,
    /// How far it has to reach.
    reach: i64,
}

/// Whatever lies there.
const ANY: Need = Need {
    least: 0,
    most: 2000,
    reach: 0,
};

/// What the part's tasks need: clearing and outline, slots, the bore.
fn needs(part: &Drawn) -> Vec<Need> {
    // Outline and bore are cut through the whole thickness, and a little further.
    let deep = part.thickness + 200;
    let most = (part.narrowest * 60 / 100).min(part.corner.map_or(1600, |c| 2 * c));
    let mut needs = vec![Need {
        least: most.min(800) / 2,
        most,
        reach: deep,
    }];
    // Slots are cut wider than the cutter, side by side.
    let most = part.slot.map_or(most, |width| most.min(width * 80 / 100));
    needs.push(Need {
        least: most / 2,
        most,
        reach: part.depth + 200,
    });
    // A bore is opened down a helix: under half its width a core would be left standing.
    if part.bore > 0 {
        needs.push(Need {
            least: part.bore * 100 / 175,
            most: part.bore * 100 / 130,
            reach: deep,
        });
    }
    needs
}

pub(super) fn draw(
    lot: &mut Lot,
    sheet: &mut Sheet,
    catalog: &'static Catalog,
    part: &Drawn,
    shop: &Shop,
) {
    let needs = needs(part);
    let count = lot.from_to(2, 6);
    for row in 0..count {
        // One after the other what the part needs; then anything that a rack may hold.
        let next = usize::try_from(row).unwrap_or(usize::MAX);
        let need = match needs.get(next) {
            Some(need) => *need,
            None => *lot.of(&[needs[0], needs[1], ANY]),
        };
        let drill = row > 1 && lot.chance(25);
        let cutter = if lot.chance(65) {
            from_tables(lot, catalog, (sheet.inch(), drill, shop.router), need)
        } else {
            loose(lot, drill, shop.router, need)
        };
        let row = u8::try_from(row).unwrap_or(u8::MAX);
        write(lot, sheet, row, &cutter);
    }
}

/// Hundredths of a millimetre of a length in metres, to the nearest.
#[allow(clippy::cast_possible_truncation, reason = "lengths of cutters")]
fn hundredths(metres: f64) -> i64 {
    (metres * 1.0e5 + 0.5) as i64
}

/// A cutter of the tables; of those that fit, if any does.
fn from_tables(
    lot: &mut Lot,
    catalog: &'static Catalog,
    (inch, drill, router): (bool, bool, bool),
    need: Need,
) -> Cutter {
    let kind = if drill {
        CutterKind::Drill
    } else {
        CutterKind::EndMill
    };
    let series = if inch { "inch" } else { "metric" };
    // Fast spindles take carbide.
    let suits = |row: &&CutterRow| {
        row.kind == kind
            && row.series == series
            && (drill || !router || row.material == CutterMaterial::Carbide)
    };
    let of_series: Vec<&CutterRow> = catalog.cutters.iter().filter(suits).collect();
    let fits = |row: &&CutterRow| {
        let d = hundredths(row.d.si());
        let usable = hundredths(row.overall.si()) * 70 / 100;
        let reach = if hundredths(row.shank_d.si()) > d {
            hundredths(row.reach.si())
        } else {
            usable
        };
        (need.least..=need.most).contains(&d) && reach >= need.reach
    };
    let fitting: Vec<&CutterRow> = of_series.iter().copied().filter(fits).collect();
    let row = if fitting.is_empty() {
        *lot.of(&of_series)
    } else {
        *lot.of(&fitting)
    };
    cutter_of(row, need)
}

fn cutter_of(row: &CutterRow, need: Need) -> Cutter {
    let flute_length = hundredths(row.flute_length.si());
    let overall = hundredths(row.overall.si());
    let (d, shank) = (hundredths(row.d.si()), hundredths(row.shank_d.si()));
    let necked = row.neck_d.is_some() || shank > d;
    let reach = if necked {
        hundredths(row.reach.si())
    } else {
        flute_length
    };
    // As short as the job allows, a third of its length in the grip.
    let wanted = need.reach.max(reach) + 300;
    Cutter {
        drill: row.kind == CutterKind::Drill,
        d,
        flutes: i64::from(row.flutes),
        flute_length,
        reach,
        shank,
        stick_out: wanted.min(overall * 70 / 100).max(reach),
        corner: hundredths(row.corner_radius.si()),
        helix: hundredths(row.helix.si().to_degrees() / 1.0e5),
        hss: row.material == CutterMaterial::Hss,
        centre: row.centre_cutting,
    }
}

/// A cutter that no table has.
fn loose(lot: &mut Lot, drill: bool, router: bool, need: Need) -> Cutter {
    let fitting: Vec<i64> = LOOSE
        .iter()
        .copied()
        .filter(|d| (need.least..=need.most).contains(d))
        .collect();
    let d = *lot.of(if fitting.is_empty() { LOOSE } else { &fitting });
    let flute_length = d * lot.from_to(20, if drill { 80 } else { 40 }) / 10;
    let reach = if lot.chance(30) {
        flute_length + lot.from_to(0, d)
    } else {
        flute_length
    };
    let shank = if d < 600 && lot.chance(50) { 600 } else { d };
    Cutter {
        drill,
        d,
        flutes: if drill {
            2
        } else if router {
            lot.from_to(1, 3)
        } else {
            lot.from_to(2, 4)
        },
        flute_length,
        reach,
        shank,
        stick_out: reach.max(if shank > d { 0 } else { need.reach }) + lot.from_to(100, 800),
        corner: if !drill && lot.chance(25) { d / 10 } else { 0 },
        helix: if drill { 30 } else { lot.from_to(4, 9) * 5 },
        hss: !router && lot.chance(25),
        centre: lot.chance(90),
    }
}

fn write(lot: &mut Lot, sheet: &mut Sheet, row: u8, cutter: &Cutter) {
    let at = |field| FieldId::in_row(field, row);
    sheet.known(*lot.of(&[Known::DataSheet, Known::DataSheet, Known::Measured]));
    let kind = if cutter.drill { "drill" } else { "end-mill" };
    sheet.text(at(Field::CutterKind), kind);
    // Metric cutters are told in millimetres on an inch sheet too.
    if cutter.d % 50 == 0 {
        sheet.in_mm(at(Field::CutterDiameter), cutter.d);
    } else {
        sheet.length(at(Field::CutterDiameter), cutter.d);
    }
    sheet.text(at(Field::CutterFlutes), cutter.flutes.to_string());
    sheet.length(at(Field::CutterFluteLength), cutter.flute_length);
    if cutter.reach > cutter.flute_length {
        sheet.length(at(Field::CutterReach), cutter.reach);
    }
    sheet.length(at(Field::CutterShank), cutter.shank);
    sheet.length(at(Field::CutterStickOut), cutter.stick_out);
    if !cutter.drill {
        if cutter.corner > 0 {
            sheet.length(at(Field::CutterCorner), cutter.corner);
        }
        sheet.text(at(Field::CutterHelix), cutter.helix.to_string());
        let centre = if cutter.centre { "yes" } else { "no" };
        sheet.text(at(Field::CutterCentre), centre);
    }
    let material = if cutter.hss { "hss" } else { "carbide" };
    sheet.text(at(Field::CutterMaterial), material);
}
