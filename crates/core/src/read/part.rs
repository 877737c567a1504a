//! The part's answers: sizes that agree with each other, then regions made of them.

use super::reader::Reader;
use super::{depths, fits};
use crate::field::Field;
use crate::generate::{self, Outline, Pattern, RecessPlan, Sizes, SlotPlan};
use crate::job::Wanted;
use crate::part::Part;
use crate::problem::ProblemKind;
use crate::task::Face;

/// Least and greatest length that makes sense for a part, m.
pub(super) const LENGTH: (f64, f64) = (1.0e-5, 5.0);
/// From nothing to the greatest length, m.
pub(super) const FROM_ZERO: (f64, f64) = (0.0, 5.0);
/// Most slots of a group, and groups.
const MOST_SLOTS: u32 = 200;
/// Most slots in all: the planar work grows with the square of their number.
const MOST_IN_ALL: u32 = 400;

/// Reads the part; `None` after a problem.
pub(super) fn read(reader: &mut Reader) -> Option<Part> {
    let round = reader.choice(Field::Shape, 0) == 0;
    let outline = outline(reader, round);
    let thickness = reader.needed(Field::Thickness, LENGTH);
    let depths = depths::read(reader, thickness);
    let a = recess(reader, Face::A, round, None);
    let b = recess(reader, Face::B, round, a);
    let boss = reader.or_silent(Field::Boss, FROM_ZERO, 0.0);
    let bore = reader.or_silent(Field::Bore, FROM_ZERO, 0.0);
    let slots = slots(reader);
    let numbers = reader.catalog.numbers;
    let around = reader.or(
        Field::BlankAround,
        FROM_ZERO,
        numbers.blank_around_mm * 1.0e-3,
    );
    let face = reader.or(Field::BlankFace, FROM_ZERO, numbers.blank_face_mm * 1.0e-3);
    let (depth_a, depth_b) = depths?;
    let sizes = Sizes {
        outline: outline?,
        thickness: thickness?,
        recesses: [(Face::A, depth_a, a?), (Face::B, depth_b, b?)],
        boss: boss?,
        bore: bore?,
        slots: slots?,
        around: around?,
        face: face?,
    };
    fits::sizes(reader, &sizes)?;
    match generate::part(&sizes, &numbers) {
        Ok(part) => fits::slots(reader, &part).then_some(part),
        Err(error) => {
            reader.problem(Field::Shape, ProblemKind::Outline(error));
            None
        }
    }
}

/// Tolerances, each with its default.
pub(super) fn tolerances(reader: &mut Reader) -> Wanted {
    let numbers = reader.catalog.numbers;
    let least = (1.0e-6, 0.1);
    Wanted {
        web: reader.or(
            Field::WebTolerance,
            least,
            numbers.web_tolerance_mm * 1.0e-3,
        ),
        slot: reader.or(
            Field::SlotTolerance,
            least,
            numbers.slot_tolerance_mm * 1.0e-3,
        ),
        flatness: reader.or(Field::Flatness, least, numbers.flatness_mm * 1.0e-3),
        finish: reader.typed(Field::Finish, (1.0e-8, 1.0e-3)),
        fillet: reader.typed(Field::FloorFillet, FROM_ZERO),
    }
}

fn outline(reader: &mut Reader, round: bool) -> Option<Outline> {
    if round {
        let diameter = reader.needed(Field::Diameter, LENGTH)?;
        return Some(Outline {
            length: diameter,
            width: diameter,
            corner: diameter / 2.0,
            round,
        });
    }
    let (length, width) = (
        reader.needed(Field::Length, LENGTH),
        reader.needed(Field::Width, LENGTH),
    );
    let corner = reader.or_silent(Field::OuterCorner, FROM_ZERO, 0.0);
    Some(Outline {
        length: length?,
        width: width?,
        corner: corner?,
        round,
    })
}

fn recess(
    reader: &mut Reader,
    face: Face,
    round: bool,
    like: Option<RecessPlan>,
) -> Option<RecessPlan> {
    let (d, l, w, c) = match face {
        Face::A => (
            Field::RecessDiameterA,
            Field::RecessLengthA,
            Field::RecessWidthA,
            Field::RecessCornerA,
        ),
        Face::B => (
            Field::RecessDiameterB,
            Field::RecessLengthB,
            Field::RecessWidthB,
            Field::RecessCornerB,
        ),
    };
    let mut size = |field: Field, like: Option<f64>, bounds| match (like, face) {
        (Some(like), _) => reader.or_silent(field, bounds, like),
        (None, Face::A) => reader.needed(field, bounds),
        // Face A has its own problem; one message is enough.
        (None, Face::B) => reader.typed(field, bounds),
    };
    if round {
        let d = size(d, like.map(|p| p.length), LENGTH)?;
        return Some(RecessPlan {
            length: d,
            width: d,
            corner: d / 2.0,
        });
    }
    let (length, width) = (
        size(l, like.map(|p| p.length), LENGTH),
        size(w, like.map(|p| p.width), LENGTH),
    );
    let corner = size(c, like.map(|p| p.corner), FROM_ZERO);
    Some(RecessPlan {
        length: length?,
        width: width?,
        corner: corner?,
    })
}

fn slots(reader: &mut Reader) -> Option<Option<SlotPlan>> {
    let pattern = match reader.choice(Field::SlotPattern, 0) {
        1 => Pattern::Parallel,
        2 => Pattern::Polar {
            groups: reader.count(Field::SlotGroups, (1, MOST_SLOTS), 1),
            inner: reader.needed(Field::SlotInner, FROM_ZERO).unwrap_or(0.0),
        },
        _ => return Some(None),
    };
    let count = reader.count(Field::SlotsPerGroup, (1, MOST_SLOTS), 1);
    let width = reader.needed(Field::SlotWidth, LENGTH);
    let length = reader.needed(Field::SlotLength, LENGTH);
    let pitch = if count > 1 {
        reader.needed(Field::SlotPitch, LENGTH)
    } else {
        Some(0.0)
    };
    let groups = match pattern {
        Pattern::Parallel => 1,
        Pattern::Polar { groups, .. } => groups,
    };
    if groups * count > MOST_IN_ALL {
        let kind = ProblemKind::TooLarge {
            value: f64::from(count),
            greatest: f64::from(MOST_IN_ALL / groups),
        };
        reader.problem(Field::SlotsPerGroup, kind);
        return None;
    }
    Some(Some(SlotPlan {
        pattern,
        count,
        width: width?,
        length: length?,
        pitch: pitch?,
    }))
}
