//! A step in the section: stock before and after, what is left on, the cutter at its depth, how the web bows.

use super::bow::bow;
use super::cut::{self, Block, Strip};
use super::mark::{Mark, Stroke};
use super::moment::Moment;
use super::pen::{Path, View, rectangle};
use super::scale::Scale;
use super::section;
use super::sizes::Writer;
use super::tool::{NUT, axis, stick_out, tool};
use thinwright_core::job::Job;
use thinwright_core::task::{Face, TaskKind};

/// Room for the enlarged place of the cutter, mm on paper.
const DETAIL: (f64, f64) = (150.0, 66.0);
/// Lines closer than this on paper run together, mm.
const CLOSE: f64 = 0.7;

/// What a step takes away in a section.
fn taken(job: &Job, moment: &Moment, strips: &[Strip]) -> Vec<Block> {
    let taken = cut::removed(&job.part, (&moment.before, &moment.after), strips);
    if taken.is_empty() {
        beside(moment, strips)
    } else {
        taken
    }
}

/// All that a step shows in a section.
pub(crate) fn marks(
    job: &Job,
    moment: &Moment,
    strips: &[Strip],
    view: &View,
    write: Writer,
) -> Vec<Mark> {
    let taken = taken(job, moment, strips);
    let mut out = stock(job, moment, (strips, &taken), view);
    out.extend(bow(job, moment, strips, view));
    if let Some(cutter) = moment.cutter {
        out.extend(tool(moment, cutter, &taken, view));
        out.push(stick_out(moment, cutter, &taken, view, write));
    }
    out
}

/// The stock after the step, what it takes away and leaves on, its levels.
fn stock(
    job: &Job,
    moment: &Moment,
    (strips, taken): (&[Strip], &[Block]),
    view: &View,
) -> Vec<Mark> {
    let part = &job.part;
    let after = cut::stock(part, &moment.after, strips);
    let mut out = vec![Mark::Line(
        Stroke::Hatch,
        section::hatching(&after, view, true),
    )];
    out.push(Mark::Line(
        Stroke::Removed,
        section::hatching(taken, view, false),
    ));
    out.push(Mark::Line(Stroke::Removed, section::outline(taken, view)));
    let wished = cut::finished(part, strips);
    out.push(Mark::Line(Stroke::Blank, section::outline(&wished, view)));
    out.push(Mark::Line(Stroke::Wide, section::outline(&after, view)));
    out.extend(left_on(moment, taken, view));
    out.extend(levels(moment, taken, view));
    out
}

/// The cutter's place, enlarged.
pub(crate) struct Detail {
    /// Its middle in the section, mm.
    pub(crate) middle: (f64, f64),
    /// Half its width and height, mm.
    pub(crate) half: (f64, f64),
    pub(crate) scale: Scale,
}

/// Where the cutter works, to a scale larger than `than`; nothing if that gains nothing.
pub(crate) fn detail(job: &Job, moment: &Moment, strips: &[Strip], than: Scale) -> Option<Detail> {
    let cutter = moment.cutter?;
    let d = cutter.d * 1.0e3;
    let axis = axis(moment, cutter, &taken(job, moment, strips));
    let (low, high) = super::moment::extent(&moment.before)?;
    let half = (2.2 * d, 0.5 * (high.mm() - low.mm()) + 0.4 * d);
    let scale = Scale::fitting((2.0 * half.0, 2.0 * half.1), DETAIL);
    (scale.factor() > than.factor()).then_some(Detail {
        middle: (axis, 0.5 * (low.mm() + high.mm())),
        half,
        scale,
    })
}

/// Draws the detail; what reaches over its edge is cut off.
pub(crate) fn detailed(job: &Job, moment: &Moment, strips: &[Strip], view: &View) -> Vec<Mark> {
    let taken = taken(job, moment, strips);
    let mut out = stock(job, moment, (strips, &taken), view);
    out.extend(
        moment
            .cutter
            .iter()
            .flat_map(|c| tool(moment, c, &taken, view)),
    );
    out
}

/// Room that the cutter takes over the stock, mm on paper.
pub(crate) fn room(moment: &Moment, scale: f64) -> f64 {
    let stick_out = moment.cutter.map_or(0.0, |c| c.stick_out * 1.0e3);
    let (low, high) = super::moment::extent(&moment.before).unwrap_or_default();
    let sunk = match moment.setup.face_up {
        Face::A => high.mm() - moment.to.mm(),
        Face::B => moment.to.mm() - low.mm(),
    };
    (stick_out + NUT - sunk).max(0.0) * scale + 4.0
}

/// Where a task cuts that changes no heights: along the walls, or around the outline.
fn beside(moment: &Moment, strips: &[Strip]) -> Vec<Block> {
    let z = (
        moment.from.mm().min(moment.to.mm()),
        moment.from.mm().max(moment.to.mm()),
    );
    let width = moment.cutter.map_or(0.0, |c| c.d * 1.0e3);
    let face = moment.setup.face_up;
    let in_recess = |s: &&Strip| match face {
        Face::A => s.cell.recess.0,
        Face::B => s.cell.recess.1,
    };
    let places: Vec<(f64, f64)> = match moment.step.task {
        TaskKind::WallSkim => {
            let first = strips.iter().find(in_recess).map(|s| s.x.0);
            let last = strips.iter().rev().find(in_recess).map(|s| s.x.1);
            let skin = moment.step.ae.to_mm();
            let walls = first.map(|x| (x, x + skin)).into_iter();
            walls.chain(last.map(|x| (x - skin, x))).collect()
        }
        _ => {
            let first = strips.iter().find(|s| s.cell.outline).map(|s| s.x.0);
            let last = strips.iter().rev().find(|s| s.cell.outline).map(|s| s.x.1);
            let left = first.map(|x| (x - width, x)).into_iter();
            left.chain(last.map(|x| (x, x + width))).collect()
        }
    };
    places.into_iter().map(|x| Block { x, z }).collect()
}

/// The allowance on walls and floor, filled.
fn left_on(moment: &Moment, taken: &[Block], view: &View) -> Vec<Mark> {
    let (wall, floor) = (moment.step.leave.0.to_mm(), moment.step.leave.1.to_mm());
    let down = match moment.setup.face_up {
        Face::A => -1.0,
        Face::B => 1.0,
    };
    let mut bands = Path::default();
    for block in taken {
        if floor > 0.0 {
            let z = moment.to.mm();
            bands.0 += &rectangle(view.at(block.x.0, z), view.at(block.x.1, z + down * floor));
        }
        if wall > 0.0 {
            for x in [(block.x.0, block.x.0 + wall), (block.x.1 - wall, block.x.1)] {
                bands.0 += &rectangle(view.at(x.0, block.z.0), view.at(x.1, block.z.1));
            }
        }
    }
    if bands.0.is_empty() {
        Vec::new()
    } else {
        vec![Mark::Line(Stroke::Left, bands.0)]
    }
}

/// The levels, where they can be told apart.
fn levels(moment: &Moment, taken: &[Block], view: &View) -> Vec<Mark> {
    let depth = moment.to.mm() - moment.from.mm();
    let count = moment.step.levels;
    let each = depth / f64::from(count.max(1));
    let mut path = Path::default();
    if each.abs() * view.scale >= CLOSE {
        for k in 1..count {
            let z = moment.from.mm() + each * f64::from(k);
            for block in taken.iter().filter(|b| b.z.0 < z && z < b.z.1) {
                path.segment(view.at(block.x.0, z), view.at(block.x.1, z));
            }
        }
    }
    vec![Mark::Line(Stroke::Narrow, path.0)]
}
