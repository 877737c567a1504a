//! The part's answers: sizes that agree with each other, then regions made of them.

use super::reader::Reader;
use crate::field::Field;
use crate::generate::{self, Outline, Pattern, RecessPlan, Sizes, SlotPlan};
use crate::job::Wanted;
use crate::part::Part;
use crate::problem::{Into, ProblemKind};
use crate::task::Face;
use thinwright_quantity::Length;

/// Least and greatest length that makes sense for a part, m.
const LENGTH: (f64, f64) = (1.0e-5, 5.0);
/// From nothing to the greatest length, m.
const FROM_ZERO: (f64, f64) = (0.0, 5.0);
/// Most slots of a group, and groups.
const MOST_SLOTS: u32 = 200;

/// Reads the part; `None` after a problem.
pub(super) fn read(reader: &mut Reader) -> Option<Part> {
    let round = reader.choice(Field::Shape, 0) == 0;
    let outline = outline(reader, round);
    let thickness = reader.needed(Field::Thickness, LENGTH);
    let depths = thickness.and_then(|t| depths(reader, t));
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
    fits(reader, &sizes)?;
    match generate::part(&sizes, &numbers) {
        Ok(part) => slots_fit(reader, &part).then_some(part),
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

/// The depths of both recesses: of depth A, depth B and web, one may be left to be worked out.
fn depths(reader: &mut Reader, thickness: f64) -> Option<(f64, f64)> {
    let (no_a, no_b, no_web) = (
        reader.empty(Field::DepthA),
        reader.empty(Field::DepthB),
        reader.empty(Field::Web),
    );
    let a = reader.typed(Field::DepthA, FROM_ZERO);
    let b = reader.typed(Field::DepthB, FROM_ZERO);
    let web = reader.typed(Field::Web, LENGTH);
    if (a.is_none() && !no_a) || (b.is_none() && !no_b) || (web.is_none() && !no_web) {
        return None;
    }
    let too_thick = |reader: &mut Reader, depth: f64, web: f64| {
        let m = Length::from_si;
        reader.problem(
            Field::Web,
            ProblemKind::WebTooThick {
                thickness: m(thickness),
                depth: m(depth),
                web: m(web),
            },
        );
        None
    };
    let hair = 1.0e-9;
    let (a, b) = match (a, b, web) {
        (Some(a), Some(b), None) => (a, b),
        (Some(a), None, None) => (a, 0.0),
        (Some(a), None, Some(web)) if thickness - a - web < -hair => {
            return too_thick(reader, a, web);
        }
        (Some(a), None, Some(web)) => (a, (thickness - a - web).max(0.0)),
        (None, b, Some(web)) if thickness - b.unwrap_or(0.0) - web <= hair => {
            return too_thick(reader, b.unwrap_or(0.0), web);
        }
        (None, b, Some(web)) => (thickness - b.unwrap_or(0.0) - web, b.unwrap_or(0.0)),
        (Some(a), Some(b), Some(web)) => {
            if (thickness - a - b - web).abs() > 1.0e-6 {
                let m = Length::from_si;
                let kind = ProblemKind::WebDisagrees {
                    thickness: m(thickness),
                    depth_a: m(a),
                    depth_b: m(b),
                    web: m(web),
                };
                reader.problem(Field::Web, kind);
                return None;
            }
            (a, b)
        }
        (None, _, None) => {
            reader.problem(Field::DepthA, ProblemKind::Missing);
            return None;
        }
    };
    // A depth under a micrometre is rounding of inches, not a recess.
    let b = if b < 1.0e-6 { 0.0 } else { b };
    if thickness - a - b <= hair {
        let m = Length::from_si;
        let kind = ProblemKind::NoWeb {
            thickness: m(thickness),
            depth_a: m(a),
            depth_b: m(b),
        };
        reader.problem(Field::DepthA, kind.clone());
        reader.problem(if no_b { Field::Web } else { Field::DepthB }, kind);
        return None;
    }
    if a <= hair {
        reader.problem(
            Field::DepthA,
            ProblemKind::TooSmall {
                value: a,
                least: LENGTH.0,
            },
        );
        return None;
    }
    Some((a, b))
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
    Some(Some(SlotPlan {
        pattern,
        count,
        width: width?,
        length: length?,
        pitch: pitch?,
    }))
}

/// Whether everything lies inside what it should.
fn fits(reader: &mut Reader, sizes: &Sizes) -> Option<()> {
    let mut good = true;
    let mut check = |field: Field, size: f64, room: f64, into: Into| {
        if size > room + 1.0e-9 {
            let kind = ProblemKind::DoesNotFit {
                size: Length::from_si(size),
                room: Length::from_si(room),
                into,
            };
            reader.problem(field, kind);
            good = false;
        }
    };
    let out = &sizes.outline;
    for (face, depth, recess) in &sizes.recesses {
        if *depth <= 0.0 {
            continue;
        }
        let b = *face == Face::B;
        if out.round {
            let field = if b {
                Field::RecessDiameterB
            } else {
                Field::RecessDiameterA
            };
            check(field, recess.length, out.length, Into::Outline);
        } else {
            let of = |a: Field, other: Field| if b { other } else { a };
            check(
                of(Field::RecessLengthA, Field::RecessLengthB),
                recess.length,
                out.length,
                Into::Outline,
            );
            check(
                of(Field::RecessWidthA, Field::RecessWidthB),
                recess.width,
                out.width,
                Into::Outline,
            );
            let half = 0.5 * recess.length.min(recess.width);
            check(
                of(Field::RecessCornerA, Field::RecessCornerB),
                recess.corner,
                half,
                Into::RecessSide,
            );
        }
        check(
            Field::Boss,
            sizes.boss,
            recess.length.min(recess.width),
            Into::Recess,
        );
    }
    let solid = if sizes.boss > 0.0 {
        sizes.boss
    } else {
        sizes.recesses[0].2.width
    };
    check(
        Field::Bore,
        sizes.bore,
        solid,
        if sizes.boss > 0.0 {
            Into::Boss
        } else {
            Into::Recess
        },
    );
    if let Some(slots) = &sizes.slots {
        check(Field::SlotWidth, slots.width, slots.length, Into::OwnLength);
    }
    good.then_some(())
}

/// Whether slots keep apart, on the floor, and off the boss.
fn slots_fit(reader: &mut Reader, part: &Part) -> bool {
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
                    .map(|h| crate::plan::Area::from_contour(h, generate::CHORD_MM));
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
