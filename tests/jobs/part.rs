//! Parts: round and rectangular, one recess or two, with or without boss, bore and slots.
//! All lengths in hundredths of a millimetre.

use super::Lot;
use super::sheet::Sheet;
use thinwright_core::Field;

/// What a rack has to be drawn for.
pub(super) struct Drawn {
    pub(super) round: bool,
    pub(super) two_sided: bool,
    pub(super) boss: i64,
    pub(super) bore: i64,
    pub(super) thickness: i64,
    /// From the face of the deeper recess to the far side of the web.
    pub(super) depth: i64,
    /// The narrowest place of the recesses.
    pub(super) narrowest: i64,
    /// The smaller corner radius of the recesses; none in a round one.
    pub(super) corner: Option<i64>,
    /// Width of the slots; none without slots.
    pub(super) slot: Option<i64>,
}

/// A recess from above.
#[derive(Clone, Copy)]
struct Recess {
    length: i64,
    width: i64,
    corner: i64,
}

/// Half a millimetre, the step of most sizes.
const HALF: i64 = 50;

fn halves(lot: &mut Lot, low: i64, high: i64) -> i64 {
    lot.from_to((low + HALF - 1) / HALF, high / HALF) * HALF
}

pub(super) fn draw(lot: &mut Lot, sheet: &mut Sheet) -> Drawn {
    let round = lot.chance(50);
    let two_sided = lot.chance(60);
    let recesses = outline(lot, sheet, round, two_sided);
    let least = |of: fn(&Recess) -> i64| recesses.iter().map(of).min().unwrap_or(0);
    let (side, corner) = (least(|r| r.length.min(r.width)), least(|r| r.corner));
    let (depth, thickness) = heights(lot, sheet, two_sided);
    let boss = if lot.chance(50) {
        halves(lot, 1200, (side * 45 / 100).max(1200))
    } else {
        0
    };
    sheet.length_if(Field::Boss, boss);
    // A bore in the web itself would meet slots that lie side by side across the middle.
    let bore = if lot.chance(50) && boss > 0 {
        halves(lot, 400, (boss - 600).clamp(400, 2500))
    } else if lot.chance(10) {
        halves(lot, 400, 1500)
    } else {
        0
    };
    sheet.length_if(Field::Bore, bore);
    let around_middle = boss.max(bore);
    let floor = Floor {
        round,
        length: least(|r| r.length),
        width: least(|r| r.width),
        inner: around_middle / 2 + halves(lot, 300, 800),
    };
    let slot = match (lot.from_to(1, 100), around_middle > 0) {
        (..=35, _) => None,
        (36..=68, false) => parallel(lot, sheet, &floor),
        _ => polar(lot, sheet, &floor),
    };
    tolerances(lot, sheet);
    let ring = if boss > 0 { (side - boss) / 2 } else { side };
    Drawn {
        round,
        two_sided,
        boss,
        bore,
        thickness,
        depth,
        narrowest: ring,
        corner: (!round).then_some(corner),
        slot,
    }
}

/// The outline and the recesses seen from above.
fn outline(lot: &mut Lot, sheet: &mut Sheet, round: bool, two_sided: bool) -> Vec<Recess> {
    let rim = halves(lot, 500, 2000);
    let (length, width) = if round {
        let d = halves(lot, 4000, 25_000);
        sheet.text(Field::Shape, "round");
        sheet.length(Field::Diameter, d);
        (d, d)
    } else {
        let width = halves(lot, 4000, 18_000);
        let length = halves(lot, width, 25_000);
        sheet.text(Field::Shape, "rectangular");
        sheet.length(Field::Length, length);
        sheet.length(Field::Width, width);
        if lot.chance(70) {
            let corner = halves(lot, 100, 1000);
            sheet.length(Field::OuterCorner, corner);
        }
        (length, width)
    };
    let mut recesses = Vec::new();
    for second in [false, true] {
        // Face B is most often like face A.
        if second && !(two_sided && lot.chance(40)) {
            continue;
        }
        let rim = if second {
            rim + halves(lot, 0, 400)
        } else {
            rim
        };
        let (length, width) = ((length - 2 * rim).max(0), (width - 2 * rim).max(0));
        let corner = if round {
            0
        } else {
            halves(lot, 150, (width / 4).min(1200))
        };
        let recess = Recess {
            length,
            width,
            corner,
        };
        write(sheet, round, second, &recess);
        recesses.push(recess);
    }
    recesses
}

fn write(sheet: &mut Sheet, round: bool, second: bool, recess: &Recess) {
    let of = |a: Field, b: Field| if second { b } else { a };
    if round {
        let field = of(Field::RecessDiameterA, Field::RecessDiameterB);
        sheet.length(field, recess.length);
        return;
    }
    let length = of(Field::RecessLengthA, Field::RecessLengthB);
    sheet.length(length, recess.length);
    sheet.length(of(Field::RecessWidthA, Field::RecessWidthB), recess.width);
    let corner = of(Field::RecessCornerA, Field::RecessCornerB);
    sheet.length(corner, recess.corner);
}

/// Depths, web and thickness; the way through the deeper recess and the web, and the thickness.
fn heights(lot: &mut Lot, sheet: &mut Sheet, two_sided: bool) -> (i64, i64) {
    let web = lot.from_to(15, 80) * 10;
    let a = halves(lot, 200, 1200);
    let b = if two_sided { halves(lot, 150, 1000) } else { 0 };
    let thickness = a + web + b;
    sheet.length(Field::Thickness, thickness);
    // One of the three is left to be worked out.
    match lot.from_to(1, 3) {
        1 if two_sided => {
            sheet.length(Field::DepthB, b);
            sheet.length(Field::Web, web);
        }
        2 => {
            sheet.length(Field::DepthA, a);
            sheet.length_if(Field::DepthB, b);
        }
        _ => {
            sheet.length(Field::DepthA, a);
            sheet.length(Field::Web, web);
        }
    }
    (a.max(b) + web, thickness)
}

/// Where slots may lie.
struct Floor {
    round: bool,
    length: i64,
    width: i64,
    /// Where polar slots begin, from the middle.
    inner: i64,
}

/// Width and pitch of slots.
fn slot(lot: &mut Lot) -> (i64, i64) {
    let width = halves(lot, 200, 800);
    (width, width + halves(lot, 200, 800))
}

/// Slots side by side; their width, or none where none fit.
fn parallel(lot: &mut Lot, sheet: &mut Sheet, floor: &Floor) -> Option<i64> {
    let (width, pitch) = slot(lot);
    let margin = 400;
    // In a round recess the row keeps within the square that lies in it.
    let share = if floor.round { 70 } else { 100 };
    let long = floor.width * share / 100 - 2 * margin;
    let wide = floor.length * share / 100 - 2 * margin;
    let most = (wide - width) / pitch + 1;
    if most < 1 || long < 3 * width {
        return None;
    }
    let length = halves(lot, 2 * width, long);
    let count = lot.from_to(1, most.min(16));
    sheet.text(Field::SlotPattern, "parallel");
    row(sheet, [width, pitch, length, count]);
    Some(width)
}

/// Slots in groups around the middle; their width, or none where none fit.
fn polar(lot: &mut Lot, sheet: &mut Sheet, floor: &Floor) -> Option<i64> {
    let (width, pitch) = slot(lot);
    let outer = floor.width.min(floor.length) / 2 - 400;
    let room = outer - floor.inner;
    let groups = lot.from_to(2, 8);
    // A little over six radii go around the middle.
    let most = (6 * floor.inner / groups - 200) / pitch;
    if room < 2 * width || most < 1 {
        return None;
    }
    let length = halves(lot, 2 * width, room);
    let count = lot.from_to(1, most.min(4));
    sheet.text(Field::SlotPattern, "polar");
    sheet.text(Field::SlotGroups, groups.to_string());
    sheet.length(Field::SlotInner, floor.inner);
    row(sheet, [width, pitch, length, count]);
    Some(width)
}

fn row(sheet: &mut Sheet, [width, pitch, length, count]: [i64; 4]) {
    sheet.text(Field::SlotsPerGroup, count.to_string());
    sheet.length(Field::SlotWidth, width);
    sheet.length(Field::SlotLength, length);
    if count > 1 {
        sheet.length(Field::SlotPitch, pitch);
    }
}

fn tolerances(lot: &mut Lot, sheet: &mut Sheet) {
    if lot.chance(40) {
        let web = *lot.of(&[5, 10, 15, 20, 30]);
        sheet.length(Field::WebTolerance, web);
    }
    if lot.chance(40) {
        let slot = *lot.of(&[5, 10, 15, 20, 30]);
        sheet.length(Field::SlotTolerance, slot);
    }
    if lot.chance(30) {
        let flatness = *lot.of(&[10, 20, 30, 50]);
        sheet.length(Field::Flatness, flatness);
    }
    if lot.chance(20) {
        let finish = *lot.of(&["6.3 um", "10 um", "16 um", "25 um", "40 um"]);
        sheet.text(Field::Finish, finish);
    }
    if lot.chance(20) {
        let fillet = *lot.of(&[50, 100, 200]);
        sheet.length(Field::FloorFillet, fillet);
    }
}
