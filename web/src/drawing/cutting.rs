//! A step in the section: stock before and after, what is left on, the cutter at its depth, how the web bows.

use super::cut::{self, Block, Strip};
use super::dimension::{Side, dimensions};
use super::mark::{Letters, Mark, Stroke};
use super::moment::Moment;
use super::pen::{Path, View, line, rectangle};
use super::place::LETTER;
use super::scale::exaggeration;
use super::section;
use super::sizes::Writer;
use thinwright_core::job::{Cutter, Job};
use thinwright_core::task::{Face, TaskKind};
use thinwright_core::{Field, FieldId};
use thinwright_quantity::Length;

/// How much of the collet nut is shown, mm.
const NUT: f64 = 8.0;
/// How large the bow of the web is wished on paper, mm.
const BOW: f64 = 4.0;
/// Lines closer than this on paper run together, mm.
const CLOSE: f64 = 0.7;

/// All that a step shows in a section.
pub(crate) fn marks(job: &Job, moment: &Moment, strips: &[Strip], view: &View, write: Writer) -> Vec<Mark> {
    let part = &job.part;
    let states = (&moment.before, &moment.after);
    let mut taken = cut::removed(part, states, strips);
    if taken.is_empty() {
        taken = beside(moment, strips);
    }
    let after = cut::stock(part, &moment.after, strips);
    let mut out = vec![Mark::Line(Stroke::Hatch, section::hatching(&after, view, true))];
    out.push(Mark::Line(Stroke::Removed, section::hatching(&taken, view, false)));
    out.push(Mark::Line(Stroke::Removed, section::outline(&taken, view)));
    let wished = cut::finished(part, strips);
    out.push(Mark::Line(Stroke::Blank, section::outline(&wished, view)));
    out.push(Mark::Line(Stroke::Wide, section::outline(&after, view)));
    out.extend(left_on(moment, &taken, view));
    out.extend(levels(moment, &taken, view));
    out.extend(bow(job, moment, strips, view, write));
    if let Some(cutter) = moment.cutter {
        out.extend(tool(moment, cutter, &taken, view, write));
    }
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
    let z = (moment.from.mm().min(moment.to.mm()), moment.from.mm().max(moment.to.mm()));
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

/// The cutter at the end of its cut, in the widest place that it works in.
fn tool(moment: &Moment, cutter: &Cutter, taken: &[Block], view: &View, write: Writer) -> Vec<Mark> {
    let d = cutter.d * 1.0e3;
    let wide = |b: &Block| b.x.1 - b.x.0;
    let widest = taken.iter().max_by(|a, b| wide(a).total_cmp(&wide(b)));
    let wall = moment.step.leave.0.to_mm();
    let axis = widest.map_or(0.0, |b| {
        if wide(b) > d + 2.0 * wall && moment.step.task != TaskKind::WallSkim {
            b.x.0 + wall + 0.5 * d
        } else if moment.step.task == TaskKind::WallSkim {
            b.x.1 - wide(b) + 0.5 * d
        } else {
            0.5 * (b.x.0 + b.x.1)
        }
    });
    let up = match moment.setup.face_up {
        Face::A => 1.0,
        Face::B => -1.0,
    };
    let tip = moment.to.mm();
    let at = |x: f64, z: f64| view.at(axis + x, tip + up * z);
    let (flutes, out) = (cutter.flute_length * 1.0e3, cutter.stick_out * 1.0e3);
    let reach = (cutter.reach * 1.0e3).max(flutes).min(out.max(flutes));
    let (shank, nut) = (0.5e3 * cutter.shank, NUT);
    let half_nut = (2.2 * shank).max(0.5 * d);
    let mut body = Path::default();
    body.polygon(&fluted(cutter, &at));
    body.polygon(&[at(-0.46 * d, flutes), at(0.46 * d, flutes), at(0.46 * d, reach), at(-0.46 * d, reach)]);
    body.polygon(&[at(-shank, reach), at(shank, reach), at(shank, out), at(-shank, out)]);
    body.polygon(&[at(-half_nut, out), at(half_nut, out), at(half_nut, out + nut), at(-half_nut, out + nut)]);
    let mut twist = Path::default();
    let turn = (d / libm::tan(cutter.helix.clamp(0.35, 1.2))).max(0.2 * d);
    let mut z = 0.0;
    while z < flutes && turn > 0.0 {
        let top = (z + turn).min(flutes);
        twist.segment(at(-0.5 * d, z), at(-0.5 * d + d * (top - z) / turn, top));
        z += turn;
    }
    let mut marks = vec![
        Mark::Line(Stroke::Cutter, body.0),
        Mark::Line(Stroke::Narrow, twist.0),
        Mark::Line(Stroke::Centre, line(at(0.0, -4.0 / view.scale), at(0.0, out + nut + 2.0 / view.scale))),
    ];
    let id = FieldId::in_row(Field::CutterStickOut, cutter.row);
    let right = (0.5 * d).max(shank);
    let size = write.size(Side::Right, (at(0.5 * d, 0.0), at(half_nut, out)), ("", out), id);
    let corners = (at(-right, out), at(right.max(half_nut), 0.0));
    marks.extend(dimensions(&[size], (corners.0, corners.1)));
    marks
}

/// The fluted part with its corner radius.
fn fluted(cutter: &Cutter, at: &impl Fn(f64, f64) -> (f64, f64)) -> Vec<(f64, f64)> {
    let (half, top) = (0.5e3 * cutter.d, cutter.flute_length * 1.0e3);
    if cutter.drill {
        // Point angle of a common drill: 118 degrees.
        let point = half / libm::tan(59.0_f64.to_radians());
        return vec![at(0.0, 0.0), at(half, point), at(half, top), at(-half, top), at(-half, point)];
    }
    let r = (cutter.corner * 1.0e3).min(half);
    let round = |sign: f64, k: i32| {
        let angle = core::f64::consts::FRAC_PI_2 * f64::from(k) / 6.0;
        at(sign * (half - r + r * libm::sin(angle)), r - r * libm::cos(angle))
    };
    let right = (0..=6).map(|k| round(1.0, k));
    let left = (0..=6).rev().map(|k| round(-1.0, k));
    right.chain([at(half, top), at(-half, top)]).chain(left).collect()
}

/// The web as it bows under the mean thrust, exaggerated by a factor that is said.
fn bow(job: &Job, moment: &Moment, strips: &[Strip], view: &View, write: Writer) -> Vec<Mark> {
    let Some(web) = &moment.step.web else {
        return Vec::new();
    };
    let thrust = moment.step.loads.mean_axial.si();
    let give = thrust / web.stiffness.si() * 1.0e3;
    let both = |s: &&Strip| s.cell.recess.0 || s.cell.recess.1;
    let (Some(first), Some(last)) = (strips.iter().find(both), strips.iter().rev().find(both)) else {
        return Vec::new();
    };
    if !give.is_finite() || give.abs() < 1.0e-9 {
        return Vec::new();
    }
    let factor = exaggeration(BOW / (give.abs() * view.scale));
    let (down, under) = match moment.setup.face_up {
        Face::A => (-1.0, moment.to.mm().min(job.part.floor(Face::A).mm()) - web.thickness.to_mm()),
        Face::B => (1.0, moment.to.mm().max(job.part.floor(Face::B).mm()) + web.thickness.to_mm()),
    };
    let (a, b) = (first.x.0, last.x.1);
    let mut path = Path::default();
    for k in 0..=48 {
        let share = f64::from(k) / 48.0;
        let shape = libm::sin(core::f64::consts::PI * share);
        let z = under + down * give * factor * shape * shape;
        let p = view.at(a + (b - a) * share, z);
        if k == 0 { path.to(p) } else { path.line(p) }
    }
    let label = thinwright_words::sheet::bow(write.units, Length::mm(give), factor);
    let at = (view.x(a), view.y(under) - down * (BOW + LETTER + 1.5));
    vec![
        Mark::Line(Stroke::Bent, path.0),
        Mark::Text(Letters::start(at, label, 3.0)),
    ]
}
