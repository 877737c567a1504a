//! The questionnaire's sizes to planar regions: the only place that knows round and rectangular.

use crate::part::{Height, Part, Recess, Slot};
use crate::plan::{
    Area, Contour, PlanError, Point, Region, distance, validate_region, widest_circle,
};
use crate::task::Face;
use thinwright_catalog::Numbers;

/// Chord error of flattened arcs, mm.
pub(crate) const CHORD_MM: f64 = 0.005;
/// Overlaps below this size are chord error, mm2.
pub(crate) const SLIVER_MM2: f64 = 0.05;

/// The outline, m.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Outline {
    pub(crate) length: f64,
    pub(crate) width: f64,
    pub(crate) corner: f64,
    pub(crate) round: bool,
}

/// A recess from above, m.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct RecessPlan {
    pub(crate) length: f64,
    pub(crate) width: f64,
    pub(crate) corner: f64,
}

/// How slots lie.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Pattern {
    /// Side by side along x, each along y.
    Parallel,
    /// In groups around the middle; in a group side by side, along the group's ray.
    Polar { groups: u32, inner: f64 },
}

/// Slots, m.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct SlotPlan {
    pub(crate) pattern: Pattern,
    pub(crate) count: u32,
    pub(crate) width: f64,
    pub(crate) length: f64,
    pub(crate) pitch: f64,
}

/// All sizes, m.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Sizes {
    pub(crate) outline: Outline,
    pub(crate) thickness: f64,
    pub(crate) recesses: [(Face, f64, RecessPlan); 2],
    pub(crate) boss: f64,
    pub(crate) bore: f64,
    pub(crate) slots: Option<SlotPlan>,
    pub(crate) around: f64,
    pub(crate) face: f64,
}

const MIDDLE: Point = Point { x: 0.0, y: 0.0 };

fn mm(value: f64) -> f64 {
    value * 1.0e3
}

fn rounded(length: f64, width: f64, corner: f64, round: bool) -> Contour {
    if round {
        Contour::circle(MIDDLE, mm(length) / 2.0)
    } else {
        Contour::rectangle(MIDDLE, mm(length), mm(width), mm(corner))
    }
}

fn whole(region: &Region) -> Result<Area, PlanError> {
    match validate_region(region).into_iter().next() {
        Some(error) => Err(error),
        None => Ok(Area::from_region(region, CHORD_MM)),
    }
}

/// Makes the part.
///
/// # Errors
/// The first outline that is none.
pub(crate) fn part(sizes: &Sizes, _numbers: &Numbers) -> Result<Part, PlanError> {
    let out = &sizes.outline;
    let outline = Region::solid(rounded(out.length, out.width, out.corner, out.round));
    let (length, width) = (
        out.length + 2.0 * sizes.around,
        out.width + 2.0 * sizes.around,
    );
    // Blanks are sawn square.
    let blank = Region::solid(Contour::rectangle(MIDDLE, mm(length), mm(width), 0.0));
    let bore = if sizes.bore > 0.0 {
        let region = Region::solid(Contour::circle(MIDDLE, mm(sizes.bore) / 2.0));
        let area = whole(&region)?;
        Some((region, area))
    } else {
        None
    };
    let mut recesses = Vec::new();
    for (face, depth, plan) in &sizes.recesses {
        if *depth > 0.0 {
            recesses.push(recess(sizes, *face, *depth, plan)?);
        }
    }
    let slots = match &sizes.slots {
        Some(plan) => slots(plan)?,
        None => Vec::new(),
    };
    let mut part = Part {
        blank_area: whole(&blank)?,
        blank,
        blank_heights: (
            Height::from_m(-sizes.face),
            Height::from_m(sizes.thickness + sizes.face),
        ),
        outline_area: whole(&outline)?,
        outline,
        thickness: sizes.thickness,
        recesses,
        rib: rib(&slots),
        slots,
        bore,
        cells: Vec::new(),
    };
    part.cells = Part::cells_of(&part);
    Ok(part)
}

fn recess(sizes: &Sizes, face: Face, depth: f64, plan: &RecessPlan) -> Result<Recess, PlanError> {
    let mut region = Region::solid(rounded(
        plan.length,
        plan.width,
        plan.corner,
        sizes.outline.round,
    ));
    if sizes.boss > 0.0 {
        region
            .holes
            .push(Contour::circle(MIDDLE, mm(sizes.boss) / 2.0));
    }
    let area = whole(&region)?;
    let floor = match face {
        Face::A => sizes.thickness - depth,
        Face::B => depth,
    };
    let (narrowest, widest) = widths(sizes, plan, &area);
    Ok(Recess {
        face,
        narrowest,
        widest,
        corner: if sizes.outline.round {
            f64::INFINITY
        } else {
            plan.corner
        },
        floor: Height::from_m(floor),
        region,
        area,
    })
}

/// Width of the narrowest place of a recess and diameter of the largest circle in it, m: known where the sizes say it;
/// the circle is measured where a boss stands in a rectangle. The boss stands in the middle, and no point of the wall is
/// nearer to the middle than the middle of the long sides.
fn widths(sizes: &Sizes, plan: &RecessPlan, area: &Area) -> (f64, f64) {
    if sizes.outline.round {
        let ring = if sizes.boss > 0.0 {
            0.5 * (plan.length - sizes.boss)
        } else {
            plan.length
        };
        return (ring, ring);
    }
    if sizes.boss <= 0.0 {
        let side = plan.length.min(plan.width);
        return (side, side);
    }
    let widest = widest_circle(area).map_or(0.0, |(_, radius)| 2.0e-3 * radius);
    (0.5 * (plan.length.min(plan.width) - sizes.boss), widest)
}

fn slots(plan: &SlotPlan) -> Result<Vec<Slot>, PlanError> {
    let mut slots = Vec::new();
    let first = -0.5 * plan.pitch * f64::from(plan.count - 1);
    let (groups, inner) = match plan.pattern {
        Pattern::Parallel => (1, -plan.length / 2.0),
        Pattern::Polar { groups, inner } => (groups, inner),
    };
    for group in 0..groups {
        // Parallel slots run along y, side by side along x; polar groups turn with their ray.
        let turn = match plan.pattern {
            Pattern::Parallel => core::f64::consts::FRAC_PI_2,
            Pattern::Polar { .. } => core::f64::consts::TAU * f64::from(group) / f64::from(groups),
        };
        let (sin, cos) = (libm::sin(turn), libm::cos(turn));
        let place = |along: f64, aside: f64| Point {
            x: mm(along * cos - aside * sin),
            y: mm(along * sin + aside * cos),
        };
        for k in 0..plan.count {
            let aside = first + plan.pitch * f64::from(k);
            let centre = place(inner + plan.length / 2.0, aside);
            let region =
                Region::solid(Contour::slot(centre, mm(plan.length), mm(plan.width), turn));
            let half = plan.width / 2.0;
            slots.push(Slot {
                ends: (
                    place(inner + half, aside),
                    place(inner + plan.length - half, aside),
                ),
                width: plan.width,
                length: plan.length,
                area: whole(&region)?,
                region,
            });
        }
    }
    Ok(slots)
}

/// Least width of what stands between two slots, m; 0 where they cross.
fn rib(slots: &[Slot]) -> Option<f64> {
    let mut least = f64::INFINITY;
    for (i, a) in slots.iter().enumerate() {
        for b in &slots[i + 1..] {
            // Middles further apart than both lengths together cannot be the nearest pair of any row.
            if a.ends.0.distance(b.ends.0) - mm(a.length + b.length) < least {
                let crossed = !a.area.intersect(&b.area).is_empty(SLIVER_MM2);
                least = least.min(if crossed {
                    0.0
                } else {
                    distance(&a.area, &b.area)
                });
            }
        }
    }
    least.is_finite().then_some(least * 1.0e-3)
}
