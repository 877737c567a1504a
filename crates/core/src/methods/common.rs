//! What several methods share: engagements, entries, and whether a cutter fits where.

use super::Rejection;
use crate::choice::Choice;
use crate::job::{Cutter, Job};
use crate::part::Slot;
use crate::pass::{Engagement, Pass};
use crate::shape::{Target, TaskShape};
use crate::strategy::{Entry, Measure};
use crate::task::TaskKind;
use thinwright_mechanics::engagement::Immersion;
use thinwright_mechanics::{corner, engagement, entry};
use thinwright_quantity::{Angle, Length, Speed};

/// Below this share of the slot's width a cutter counts as smaller than the slot, not as its size.
pub(crate) const SAME_WIDTH: f64 = 0.97;

/// Only for these tasks.
pub(super) fn only(shape: &TaskShape, kinds: &[TaskKind]) -> Result<(), Rejection> {
    if kinds.contains(&shape.task.kind) {
        Ok(())
    } else {
        Err(Rejection::NotForThis)
    }
}

/// No drills.
pub(super) fn mill(cutter: &Cutter) -> Result<(), Rejection> {
    if cutter.drill {
        Err(Rejection::NotADrill)
    } else {
        Ok(())
    }
}

/// A cutter that passes everywhere in a region and reaches into its corners.
pub(super) fn passes(shape: &TaskShape, cutter: &Cutter) -> Result<(), Rejection> {
    let Target::Region { corner, .. } = &shape.target else {
        return Err(Rejection::NotForThis);
    };
    if cutter.d >= shape.narrowest {
        return Err(Rejection::TooWide(Measure {
            demand: cutter.d,
            allowed: shape.narrowest,
        }));
    }
    if cutter.d / 2.0 > *corner {
        return Err(Rejection::CornerTooTight(Measure {
            demand: cutter.d / 2.0,
            allowed: *corner,
        }));
    }
    Ok(())
}

/// Room for a helix: its hole must be wider than the cutter and fit into the region.
pub(super) fn room_for_helix(
    job: &Job,
    shape: &TaskShape,
    cutter: &Cutter,
) -> Result<(), Rejection> {
    let needed = job.numbers.helix_over_d_least * cutter.d;
    if needed > shape.widest {
        return Err(Rejection::NoRoomToEnter(Measure {
            demand: needed,
            allowed: shape.widest,
        }));
    }
    Ok(())
}

/// A side cut: climb milling, but conventional on a machine with backlash.
pub(super) fn side(job: &Job, ae: f64, d: f64, ap: f64) -> Engagement {
    let immersion = match (ae >= d * 0.999, job.loose()) {
        (true, _) => Immersion::slot(),
        (false, true) => Immersion::up(ae, d),
        (false, false) => Immersion::down(ae, d),
    };
    Engagement {
        immersion,
        ap,
        feed_share: 1.0,
    }
}

/// A cut at full width.
pub(super) fn full(ap: f64, feed_share: f64) -> Engagement {
    Engagement {
        immersion: Immersion::slot(),
        ap,
        feed_share,
    }
}

/// A turn on the spot in a passage with corners: the feed is brought down to keep the chip, no further than the table says.
pub(super) fn turn(
    job: &Job,
    shape: &TaskShape,
    cutter: &Cutter,
    choice: &Choice,
) -> Option<Engagement> {
    let Target::Region { corner, .. } = &shape.target else {
        return None;
    };
    if !corner.is_finite() || choice.ae >= cutter.d * 0.999 {
        return None;
    }
    let angle = corner_angle(cutter.d, choice.ae);
    let ae = engagement::ae_for_angle(angle, cutter.d).min(cutter.d);
    Some(Engagement {
        feed_share: corner_share(job, cutter.d, choice.ae),
        ..side(job, ae, cutter.d, choice.ap)
    })
}

/// Engagement where a pass turns on the spot: passes further inside have no radius left, whatever the wall's corner.
fn corner_angle(d: f64, ae: f64) -> f64 {
    corner::engagement_in_arc(d, d / 2.0, ae)
}

/// Feed in a corner as a share of the step's.
pub(crate) fn corner_share(job: &Job, d: f64, ae: f64) -> f64 {
    let factor = corner::feed_factor(d, ae, corner_angle(d, ae));
    factor.max(job.numbers.corner_feed).min(1.0)
}

/// The cut of an entry helix: all around, as deep as a turn goes down, at its own feed.
pub(super) fn helix_cut(job: &Job, hole: f64, cutter: &Cutter, choice: &Choice) -> Engagement {
    let pitch = helix_pitch(job, hole, cutter.d, choice.ap);
    full(pitch.min(choice.ap), job.numbers.ramp_feed)
}

/// Goes down a helix of this length to begin with.
pub(super) fn down_helix(job: &Job, hole: f64, cutter: &Cutter, pass: &mut Pass, length: f64) {
    pass.helix_path = length;
    pass.helix_share = job.numbers.ramp_feed * entry::centre_feed_factor(hole, cutter.d);
}

/// A pass that only knows how it is engaged: lengths are to be filled in.
pub(super) fn plain(usual: Engagement, hard: [Option<Engagement>; 3], path: f64) -> Pass {
    Pass {
        usual,
        hard,
        wall: None,
        path,
        slow_path: 0.0,
        slow_share: 1.0,
        helix_path: 0.0,
        helix_share: 1.0,
        lifts: 0,
        stretch: f64::INFINITY,
        loop_radius: None,
        drilled: None,
    }
}

/// Diameter of the hole that an entry helix opens, m.
pub(super) fn helix_hole(job: &Job, shape: &TaskShape, cutter: &Cutter) -> f64 {
    let numbers = &job.numbers;
    (numbers.helix_over_d * cutter.d).min(shape.widest).clamp(
        numbers.helix_over_d_least * cutter.d,
        numbers.helix_over_d_most * cutter.d,
    )
}

/// Depth per turn of a helix, m: the step-down, or less where the slope would be steeper than the material takes.
pub(super) fn helix_pitch(job: &Job, hole: f64, d: f64, ap: f64) -> f64 {
    let steepest = job.steepest * core::f64::consts::PI * (hole - d);
    let turns = libm::ceil(ap / steepest.max(1.0e-9)).max(1.0);
    ap / turns
}

/// The entry helix of a step.
pub(super) fn helix(job: &Job, hole: f64, cutter: &Cutter, choice: &Choice) -> Entry {
    let pitch = helix_pitch(job, hole, cutter.d, choice.ap);
    Entry::Helix {
        hole: Length::from_si(hole),
        centre_circle: Length::from_si(hole - cutter.d),
        pitch: Length::from_si(pitch),
        angle: Angle::from_si(entry::helix_angle(pitch, hole, cutter.d)),
        centre_feed: Speed::from_si(
            choice.vf * job.numbers.ramp_feed * entry::centre_feed_factor(hole, cutter.d),
        ),
    }
}

/// Length of the path down a helix to the depth of all levels, m.
pub(super) fn helix_path(job: &Job, hole: f64, cutter: &Cutter, choice: &Choice) -> f64 {
    let pitch = helix_pitch(job, hole, cutter.d, choice.ap);
    let depth = choice.ap * f64::from(choice.levels);
    depth / pitch * entry::path_per_turn(pitch, hole, cutter.d)
}

/// To and fro along the shortest slot, one level a stroke.
pub(super) fn zigzag(job: &Job, shape: &TaskShape, choice: &Choice) -> Entry {
    let angle = libm::atan2(choice.ap, run(shape));
    Entry::Zigzag {
        angle: Angle::from_si(angle),
        feed: Speed::from_si(choice.vf * job.numbers.ramp_feed),
    }
}

/// Length of the middle line of the shortest slot, m.
pub(super) fn run(shape: &TaskShape) -> f64 {
    shape
        .slots()
        .iter()
        .map(straight)
        .fold(f64::INFINITY, f64::min)
}

/// Length of a slot's middle line, m.
pub(super) fn straight(slot: &Slot) -> f64 {
    slot.length - slot.width
}

/// Middle lines of all slots together, m.
pub(super) fn all_runs(shape: &TaskShape) -> f64 {
    shape.slots().iter().map(straight).sum()
}

/// Number of slots.
pub(super) fn count(shape: &TaskShape) -> u32 {
    u32::try_from(shape.slots().len()).unwrap_or(u32::MAX)
}

/// Passes along both sides of every slot with a smaller cutter: (engagement, path), level by level.
pub(super) fn sides(
    job: &Job,
    shape: &TaskShape,
    cutter: &Cutter,
    choice: &Choice,
) -> (Engagement, f64) {
    let rounds = f64::from(choice.levels);
    let rest = shape.slot_width() - cutter.d;
    let around: f64 = shape
        .slots()
        .iter()
        .map(|s| 2.0 * straight(s) + core::f64::consts::PI * rest)
        .sum();
    (side(job, 0.5 * rest, cutter.d, choice.ap), rounds * around)
}

/// A cutter of the slot's own width.
pub(super) fn same_width(shape: &TaskShape, cutter: &Cutter) -> Result<(), Rejection> {
    let width = shape.slot_width();
    if cutter.d > width * 1.000_001 {
        return Err(Rejection::TooWide(Measure {
            demand: cutter.d,
            allowed: width,
        }));
    }
    if cutter.d < SAME_WIDTH * width {
        return Err(Rejection::TooNarrow(Measure {
            demand: width,
            allowed: cutter.d,
        }));
    }
    Ok(())
}

/// A cutter within shares of the slot's width.
pub(super) fn share_of_width(
    shape: &TaskShape,
    cutter: &Cutter,
    least: f64,
    most: f64,
) -> Result<(), Rejection> {
    let width = shape.slot_width();
    if cutter.d > most * width {
        return Err(Rejection::TooWide(Measure {
            demand: cutter.d,
            allowed: most * width,
        }));
    }
    if cutter.d < least * width {
        return Err(Rejection::TooNarrow(Measure {
            demand: least * width,
            allowed: cutter.d,
        }));
    }
    Ok(())
}

/// A cutter that cuts to its centre.
pub(super) fn centre_cutting(cutter: &Cutter) -> Result<(), Rejection> {
    if cutter.centre_cutting {
        Ok(())
    } else {
        Err(Rejection::NotCentreCutting)
    }
}

/// The tasks on slots.
pub(super) const SLOTS: &[TaskKind] = &[TaskKind::SlotsThrough, TaskKind::SlotsBlind];
