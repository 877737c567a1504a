//! Which sizes of a part are given, in which view, and which answer each belongs to.

use super::dimension::{Leader, Side, Size};
use super::pen::{View, circle};
use thinwright_core::part::{Part, Recess, Slot};
use thinwright_core::plan::{Bounds, Contour, Edge, Point};
use thinwright_core::task::Face;
use thinwright_core::{Field, FieldId};
use thinwright_quantity::{Kind, Rounding, UnitSystem};
use thinwright_words::{bare, unit};

/// Sizes closer than this are one, mm.
const SAME: f64 = 1.0e-6;

/// Writes sizes in a unit system.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Writer {
    pub(crate) units: UnitSystem,
}

impl Writer {
    /// A size without its unit, which stands in the title block.
    pub(crate) fn bare(self, mm: f64) -> String {
        bare(Kind::Length, mm * 1.0e-3, self.units, Rounding::Nearest)
    }

    /// A size as written with what answers it and its unit, as said.
    pub(crate) fn name(self, field: FieldId, written: &str) -> String {
        let label = thinwright_words::field(field.field).label;
        let unit = unit(Kind::Length, self.units);
        format!("{label}: {written}\u{A0}{unit}")
    }

    /// A size between two places on paper.
    pub(crate) fn size(
        self,
        side: Side,
        ends: ((f64, f64), (f64, f64)),
        (sign, mm): (&str, f64),
        field: impl Into<FieldId>,
    ) -> Size {
        let field = field.into();
        let text = format!("{sign}{}", self.bare(mm));
        Size {
            side,
            from: ends.0,
            to: ends.1,
            name: self.name(field, &text),
            text,
            field,
        }
    }
}

/// The sign before a diameter.
const ROUND: &str = "\u{D8}";

/// Diameter sign and fields of an outline: round, or along x and along y.
fn fields(
    contour: &Contour,
    round: Field,
    straight: (Field, Field),
) -> (&'static str, Field, Field) {
    if circle(contour).is_some() {
        (ROUND, round, round)
    } else {
        ("", straight.0, straight.1)
    }
}

fn recess_fields(recess: &Recess) -> (&'static str, Field, Field) {
    let outer = &recess.region.outer;
    match recess.face {
        Face::A => fields(
            outer,
            Field::RecessDiameterA,
            (Field::RecessLengthA, Field::RecessWidthA),
        ),
        Face::B => fields(
            outer,
            Field::RecessDiameterB,
            (Field::RecessLengthB, Field::RecessWidthB),
        ),
    }
}

/// Whether the recess of face B differs, seen from above, from that of face A.
pub(crate) fn differs(part: &Part) -> bool {
    match (part.recess(Face::A), part.recess(Face::B)) {
        (Some(a), Some(b)) => {
            let near = |a: f64, b: f64| (a - b).abs() < SAME;
            let bounds = (a.region.outer.bounds(), b.region.outer.bounds());
            let same = matches!(bounds, (Some(a), Some(b))
                if near(a.width(), b.width()) && near(a.height(), b.height()));
            !same || a.region.holes.len() != b.region.holes.len()
        }
        (a, b) => a.is_none() && b.is_some(),
    }
}

/// The heights, beside the section.
pub(crate) fn heights(part: &Part, view: &View, write: Writer) -> Vec<Size> {
    let Some(outline) = part.outline.outer.bounds() else {
        return Vec::new();
    };
    let top = part.face_height(Face::A).mm();
    let edge = |face: Face, right: bool| {
        let bounds = part.recess(face).and_then(|r| r.region.outer.bounds());
        let bounds = bounds.unwrap_or(outline);
        if right { bounds.max.x } else { bounds.min.x }
    };
    let mut out = vec![write.size(
        Side::Right,
        (view.at(outline.max.x, 0.0), view.at(outline.max.x, top)),
        ("", top),
        Field::Thickness,
    )];
    for face in [Face::A, Face::B] {
        let Some(recess) = part.recess(face) else {
            continue;
        };
        let (floor, surface) = (recess.floor.mm(), part.face_height(face).mm());
        let (side, field) = match face {
            Face::A => (Side::Right, Field::DepthA),
            Face::B => (Side::Left, Field::DepthB),
        };
        let right = side == Side::Right;
        let out_x = if right { outline.max.x } else { outline.min.x };
        let ends = (view.at(out_x, surface), view.at(edge(face, right), floor));
        out.push(write.size(side, ends, ("", (surface - floor).abs()), field));
    }
    if part.recesses.len() > 1 || part.recess(Face::A).is_some() {
        let (low, high) = (part.floor(Face::B).mm(), part.floor(Face::A).mm());
        let ends = (
            view.at(edge(Face::B, true), low),
            view.at(edge(Face::A, true), high),
        );
        out.push(write.size(Side::Right, ends, ("", high - low), Field::Web));
    }
    let skin = part.blank_heights.1.mm() - top;
    if skin > SAME {
        let x = outline.min.x;
        let ends = (view.at(x, top), view.at(x, top + skin));
        out.push(write.size(Side::Left, ends, ("", skin), Field::BlankFace));
    }
    out
}

/// Widths of recesses, boss and bore, over and under the section.
pub(crate) fn widths(part: &Part, view: &View, write: Writer) -> Vec<Size> {
    let mut out = Vec::new();
    let mut across = |side, contour: &Contour, z: f64, sign: &str, field: Field| {
        if let Some(b) = contour.bounds() {
            let ends = (view.at(b.min.x, z), view.at(b.max.x, z));
            out.push(write.size(side, ends, (sign, b.width()), field));
        }
    };
    let top = part.face_height(Face::A).mm();
    if let Some(recess) = part.recess(Face::A) {
        let (sign, field, _) = recess_fields(recess);
        across(Side::Above, &recess.region.outer, top, sign, field);
    }
    if let (Some(recess), true) = (part.recess(Face::B), differs(part)) {
        let (sign, field, _) = recess_fields(recess);
        across(Side::Below, &recess.region.outer, 0.0, sign, field);
    }
    if let Some(boss) = part.recesses.iter().flat_map(|r| &r.region.holes).next() {
        across(Side::Above, boss, top, ROUND, Field::Boss);
    }
    if let Some((bore, _)) = &part.bore {
        across(Side::Below, &bore.outer, 0.0, ROUND, Field::Bore);
    }
    out
}

/// Sizes around the plan.
pub(crate) fn around(part: &Part, view: &View, write: Writer) -> Vec<Size> {
    let Some(b) = part.outline.outer.bounds() else {
        return Vec::new();
    };
    let outer = &part.outline.outer;
    let (sign, along, aside) = fields(outer, Field::Diameter, (Field::Length, Field::Width));
    let middle = 0.5 * (b.min.y + b.max.y);
    let level = if sign.is_empty() { b.min.y } else { middle };
    let ends = (view.at(b.min.x, level), view.at(b.max.x, level));
    let mut out = vec![write.size(Side::Below, ends, (sign, b.width()), along)];
    if sign.is_empty() {
        let ends = (view.at(b.max.x, b.min.y), view.at(b.max.x, b.max.y));
        out.push(write.size(Side::Right, ends, (sign, b.height()), aside));
    }
    if let Some(recess) = part.recess(Face::A) {
        let (sign, _, aside) = recess_fields(recess);
        if let (true, Some(b)) = (sign.is_empty(), recess.region.outer.bounds()) {
            let ends = (view.at(b.max.x, b.min.y), view.at(b.max.x, b.max.y));
            out.push(write.size(Side::Right, ends, (sign, b.height()), aside));
        }
    }
    if let Some(blank) = part.blank.outer.bounds() {
        let around = blank.max.x - b.max.x;
        if around > SAME {
            let ends = (view.at(b.max.x, middle), view.at(blank.max.x, blank.min.y));
            out.push(write.size(Side::Below, ends, ("", around), Field::BlankAround));
        }
    }
    out.extend(slot_lengths(part, view, write));
    out
}

/// Direction of a slot, rad.
pub(crate) fn direction(slot: &Slot) -> f64 {
    let (a, b) = slot.ends;
    libm::atan2(b.y - a.y, b.x - a.x)
}

/// Whether a slot lies along x; along y; or neither.
fn lies(slot: &Slot) -> (bool, bool) {
    let (sin, cos) = (libm::sin(direction(slot)), libm::cos(direction(slot)));
    (sin.abs() < 1.0e-3, cos.abs() < 1.0e-3)
}

/// Length of the slots, and where polar ones begin, if they lie along an axis of the paper.
fn slot_lengths(part: &Part, view: &View, write: Writer) -> Vec<Size> {
    let mut out = Vec::new();
    let bounds = |s: &&Slot| s.region.outer.bounds();
    let lowest = |a: &&Slot, b: &&Slot| a.ends.0.y.total_cmp(&b.ends.0.y);
    let right = |s: &&Slot| lies(s).0 && s.ends.0.x > 0.0;
    if let Some(b) = part
        .slots
        .iter()
        .filter(right)
        .min_by(lowest)
        .as_ref()
        .and_then(bounds)
    {
        let y = 0.5 * (b.min.y + b.max.y);
        let ends = (view.at(b.min.x, y), view.at(b.max.x, y));
        out.push(write.size(Side::Below, ends, ("", b.width()), Field::SlotLength));
        let ends = (view.at(0.0, 0.0), view.at(b.min.x, y));
        out.push(write.size(Side::Below, ends, ("", b.min.x), Field::SlotInner));
    } else if let Some(b) = part
        .slots
        .iter()
        .filter(|s| lies(s).1)
        .max_by(|a, b| a.ends.0.x.total_cmp(&b.ends.0.x))
        .as_ref()
        .and_then(bounds)
    {
        let x = 0.5 * (b.min.x + b.max.x);
        let ends = (view.at(x, b.min.y), view.at(x, b.max.y));
        out.push(write.size(Side::Right, ends, ("", b.height()), Field::SlotLength));
    }
    out
}

/// Width and pitch of slots that a section crosses: `crossed` are their places along it, at a height.
pub(crate) fn slot_widths(
    part: &Part,
    view: &View,
    write: Writer,
    (crossed, z): (&[(f64, f64)], f64),
) -> Vec<Size> {
    let mut out = Vec::new();
    let Some(slot) = part.slots.first() else {
        return out;
    };
    let last = crossed.len().saturating_sub(1);
    if let Some(&(a, b)) = crossed.get(last) {
        let ends = (view.at(a, z), view.at(b, z));
        out.push(write.size(
            Side::Above,
            ends,
            ("", slot.width * 1.0e3),
            Field::SlotWidth,
        ));
    }
    if let [first, second, ..] = crossed {
        let middle = |s: &(f64, f64)| 0.5 * (s.0 + s.1);
        let (a, b) = (middle(first), middle(second));
        let ends = (view.at(a, z), view.at(b, z));
        out.push(write.size(Side::Above, ends, ("", (b - a).abs()), Field::SlotPitch));
    }
    out
}

/// Corner radii and the number of slots, on leaders that end over the plan.
pub(crate) fn leaders(part: &Part, view: &View, write: Writer) -> Vec<Leader> {
    let mut out = Vec::new();
    let Some(blank) = part.blank.outer.bounds() else {
        return out;
    };
    let recess = part.recess(Face::A).map(|r| &r.region.outer);
    let corners = [
        (Some(&part.outline.outer), Field::OuterCorner, 1.0),
        (recess, Field::RecessCornerA, -1.0),
    ];
    let above = view.y(blank.max.y) - 5.0;
    for (contour, field, side) in corners {
        let Some((tip, radius)) = contour.and_then(|c| corner(c, side)) else {
            continue;
        };
        let tip = view.at(tip.x, tip.y);
        let elbow = (tip.0 + side * (tip.1 - above), above);
        let text = format!("R{}", write.bare(radius));
        out.push(Leader {
            tip,
            elbow,
            field: field.into(),
            name: write.name(field.into(), &text),
            text,
        });
    }
    out.extend(slot_count(part, view, &blank));
    out
}

fn slot_count(part: &Part, view: &View, blank: &Bounds) -> Option<Leader> {
    let height = |s: &Slot| s.ends.0.y.max(s.ends.1.y);
    // The highest slot on the left, so that no other leader is crossed.
    let left = part.slots.iter().filter(|s| s.ends.0.x + s.ends.1.x < -1.0);
    let slot = left.max_by(|a, b| height(a).total_cmp(&height(b)));
    let slot = slot.or(part.slots.first())?;
    let (low, high) = if slot.ends.0.y > slot.ends.1.y {
        (slot.ends.1, slot.ends.0)
    } else {
        slot.ends
    };
    // On the round end, not on its middle.
    let out = 0.5e3 * slot.width / low.distance(high).max(SAME);
    let tip = view.at(
        high.x + out * (high.x - low.x),
        high.y + out * (high.y - low.y),
    );
    let above = view.y(blank.max.y) - 11.0;
    let count = part.slots.len();
    Some(Leader {
        tip,
        elbow: (tip.0 - 0.35 * (tip.1 - above), above),
        text: thinwright_words::drawing::slots_on_leader(count),
        field: Field::SlotsPerGroup.into(),
        name: thinwright_words::drawing::slots_said(count),
    })
}

/// Middle of a rounded corner at the top right (side 1) or top left (-1), and its radius.
fn corner(contour: &Contour, side: f64) -> Option<(Point, f64)> {
    if circle(contour).is_some() {
        return None;
    }
    let arcs = contour.pieces().filter_map(|(from, edge)| match *edge {
        Edge::Arc { centre, .. } => Some((from, centre)),
        Edge::Line { .. } => None,
    });
    let (from, centre) = arcs.max_by(|a, b| {
        let reach = |c: &(Point, Point)| side * c.1.x + c.1.y;
        reach(a).total_cmp(&reach(b))
    })?;
    let radius = from.distance(centre);
    let part = radius * core::f64::consts::FRAC_1_SQRT_2;
    Some((Point::new(centre.x + side * part, centre.y + part), radius))
}
