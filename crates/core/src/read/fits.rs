//! Whether everything lies inside what it should.

use super::reader::Reader;
use crate::field::Field;
use crate::generate::{self, Sizes};
use crate::part::Part;
use crate::plan::Area;
use crate::problem::{Into, ProblemKind};
use crate::task::Face;
use thinwright_quantity::Length;

/// A size, the room for it, and what it goes into.
type Fit = (Field, f64, f64, Into);

/// Whether all sizes fit into each other.
pub(super) fn sizes(reader: &mut Reader, sizes: &Sizes) -> Option<()> {
    let mut misfits: Vec<Fit> = all(sizes)
        .into_iter()
        .filter(|f| f.1 > f.2 + 1.0e-9)
        .collect();
    // A size of face B that was left empty is that of face A, which has its own problem.
    misfits.retain(|f| !reader.empty(f.0));
    for (field, size, room, into) in &misfits {
        let kind = ProblemKind::DoesNotFit {
            size: Length::from_si(*size),
            room: Length::from_si(*room),
            into: *into,
        };
        reader.problem(*field, kind);
    }
    misfits.is_empty().then_some(())
}

fn all(sizes: &Sizes) -> Vec<Fit> {
    let out = &sizes.outline;
    let mut fits: Vec<Fit> = Vec::new();
    let mut least_side = f64::INFINITY;
    for (face, _, recess) in sizes.recesses.iter().filter(|r| r.1 > 0.0) {
        let of = |a: Field, b: Field| if *face == Face::B { b } else { a };
        let side = recess.length.min(recess.width);
        if out.round {
            let field = of(Field::RecessDiameterA, Field::RecessDiameterB);
            fits.push((field, recess.length, out.length, Into::Outline));
        } else {
            let length = of(Field::RecessLengthA, Field::RecessLengthB);
            let width = of(Field::RecessWidthA, Field::RecessWidthB);
            let corner = of(Field::RecessCornerA, Field::RecessCornerB);
            fits.push((length, recess.length, out.length, Into::Outline));
            fits.push((width, recess.width, out.width, Into::Outline));
            fits.push((corner, recess.corner, 0.5 * side, Into::RecessSide));
        }
        least_side = least_side.min(side);
    }
    fits.push((Field::Boss, sizes.boss, least_side, Into::Recess));
    let (solid, into) = if sizes.boss > 0.0 {
        (sizes.boss, Into::Boss)
    } else {
        (sizes.recesses[0].2.width, Into::Recess)
    };
    fits.push((Field::Bore, sizes.bore, solid, into));
    let slots = sizes.slots.iter();
    fits.extend(slots.map(|s| (Field::SlotWidth, s.width, s.length, Into::OwnLength)));
    fits
}

/// Whether slots keep apart, on the floor, and off the boss.
pub(super) fn slots(reader: &mut Reader, part: &Part) -> bool {
    if part.slots.is_empty() {
        return true;
    }
    if let Some(rib) = part.rib.filter(|r| *r <= 0.0) {
        reader.problem(
            Field::SlotPitch,
            ProblemKind::SlotsMeet {
                rib: Length::from_si(rib),
            },
        );
        return false;
    }
    for recess in &part.recesses {
        for slot in &part.slots {
            let outside = slot.area.subtract(&recess.area).area_mm2();
            // Flattening moves edges by micrometres: slivers are no overlap.
            if outside > generate::SLIVER_MM2 {
                let solid = recess
                    .region
                    .holes
                    .first()
                    .map(|h| Area::from_contour(h, generate::CHORD_MM));
                let on_boss = solid.map_or(0.0, |s| slot.area.intersect(&s).area_mm2());
                let by = Length::from_si(outside / (slot.width * 1.0e3) * 1.0e-3);
                let kind = if on_boss > generate::SLIVER_MM2 {
                    ProblemKind::SlotMeetsBoss { by }
                } else {
                    ProblemKind::SlotLeavesFloor { by }
                };
                reader.problem(Field::SlotLength, kind);
                return false;
            }
        }
    }
    true
}
