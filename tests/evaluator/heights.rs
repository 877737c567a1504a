//! The strategy played through on the stock: every step starts on what is there, ends where it says, and what is left is
//! the part.

use super::Complaints;
use super::drawing::Drawing;
use super::stock::{self, Column, HAIR, side};
use thinwright_core::Job;
use thinwright_core::strategy::{Setup, Step, Strategy};
use thinwright_core::task::{Face, TaskKind};

/// A step where it stands in the work.
pub(crate) struct Stand<'a> {
    pub(crate) step: &'a Step,
    pub(crate) setup: &'a Setup,
    /// The part has been turned over for this setup.
    pub(crate) second: bool,
    pub(crate) face: Face,
    /// Heights in the part where the cut starts and ends, m.
    pub(crate) from: f64,
    pub(crate) to: f64,
    /// The highest stock on this face's side, m.
    pub(crate) surface: f64,
    pub(crate) before: Vec<Column>,
    pub(crate) after: Vec<Column>,
    /// The allowance that stands on the wall, m.
    pub(crate) skin: f64,
}

impl Stand<'_> {
    pub(crate) fn depth(&self) -> f64 {
        (self.from - self.to).abs()
    }

    /// Whether it goes down at all.
    pub(crate) fn goes_down(&self) -> bool {
        deep(self.face, self.to) > deep(self.face, self.from)
    }

    /// From the highest stock around to the end of the cut, m.
    pub(crate) fn total(&self) -> f64 {
        (self.surface - self.to).abs()
    }
}

/// What is followed from step to step beside the columns.
#[derive(Default)]
struct Done {
    /// Allowance standing on the walls of each recess: nothing until it is cleared.
    walls: [Option<f64>; 2],
    outline: bool,
    groove: Option<f64>,
}

/// Plays a strategy through.
pub(crate) fn follow<'a>(
    job: &Job,
    drawing: &Drawing,
    told: &'a Strategy,
    out: &mut Complaints,
) -> Vec<Stand<'a>> {
    let mut columns = stock::raw(drawing);
    let mut done = Done::default();
    let mut stands = Vec::new();
    let mut number = 0;
    let mut before: Option<Face> = None;
    for setup in &told.setups {
        if before == Some(setup.face_up) {
            out.add(
                "setup without turning over",
                0,
                0.0,
                format!("{:?}", setup.face_up),
            );
        }
        let second = before.is_some();
        before = Some(setup.face_up);
        held(job, setup, second, out);
        let (bottom, top) = stock::extent(&columns);
        out.same(
            "thickness of the stock",
            0,
            (top - bottom, setup.stock.si()),
            1.0e-6,
        );
        for step in &setup.steps {
            number += 1;
            if step.number != number {
                out.add("numbers of steps", number, 0.0, format!("{}", step.number));
            }
            let height = |z: f64| match setup.face_up {
                Face::A => bottom + z,
                Face::B => top - z,
            };
            let (from, to) = (height(step.z.0.si()), height(step.z.1.si()));
            if step.z.1.si() < -job.numbers.overtravel_mm * 1.0e-3 - HAIR {
                let figures = format!("{} m", step.z.1.si());
                out.add("cut into what the part lies on", number, 0.0, figures);
            }
            let mut stand = Stand {
                step,
                setup,
                second,
                face: setup.face_up,
                from,
                to,
                surface: match setup.face_up {
                    Face::A => stock::extent(&columns).1,
                    Face::B => stock::extent(&columns).0,
                },
                before: columns.clone(),
                after: Vec::new(),
                skin: 0.0,
            };
            play(job, drawing, &mut stand, (&mut columns, &mut done), out);
            stand.after.clone_from(&columns);
            stands.push(stand);
        }
    }
    finished(drawing, &columns, &done, out);
    stands
}

/// Hold, backing and bolt are those of the answers.
fn held(job: &Job, setup: &Setup, second: bool, out: &mut Complaints) {
    let hold = if second {
        &job.holding.second
    } else {
        &job.holding.first
    };
    if setup.hold != hold.id {
        out.add("hold that was not answered", 0, 0.0, setup.hold.clone());
    }
    if !job.holding.backings.iter().any(|b| b.id == setup.backing) {
        out.add("backing that is not at hand", 0, 0.0, setup.backing.clone());
    }
    if setup.boss_bolted && !job.holding.boss_bolted {
        out.add("boss bolted without a bolt", 0, 0.0, String::new());
    }
}

/// Heights seen from a face: deeper is greater.
fn deep(face: Face, height: f64) -> f64 {
    match face {
        Face::A => -height,
        Face::B => height,
    }
}

/// One step on the stock.
fn play(
    job: &Job,
    drawing: &Drawing,
    stand: &mut Stand,
    (columns, done): (&mut Vec<Column>, &mut Done),
    out: &mut Complaints,
) {
    let (step, face, number) = (stand.step, stand.face, stand.step.number);
    let (from, to) = (deep(face, stand.from), deep(face, stand.to));
    if to <= from {
        out.add("step that goes up", number, 0.0, format!("{from} to {to}"));
    }
    if done.outline {
        out.add(
            "cut after the outline is free",
            number,
            0.0,
            format!("{:?}", step.task),
        );
    }
    if step.task == TaskKind::WallSkim {
        return skim_wall(drawing, stand, done, out);
    }
    take(stand, columns, out);
    done_by(job, drawing, stand, done, out);
}

/// Takes the stock of a step away: nothing may stand above its start, and something just under it.
fn take(stand: &Stand, columns: &mut [Column], out: &mut Complaints) {
    let (step, face) = (stand.step, stand.face);
    let from = deep(face, stand.from);
    let mut highest = f64::INFINITY;
    for column in columns.iter_mut() {
        if !column.solid() || !stock::cuts(step.task, face, &column.kind) {
            continue;
        }
        let surface = match face {
            Face::A => deep(face, column.top),
            Face::B => deep(face, column.bottom),
        };
        highest = highest.min(surface);
        match face {
            Face::A => column.top = column.top.min(stand.to).max(column.bottom),
            Face::B => column.bottom = column.bottom.max(stand.to).min(column.top),
        }
    }
    if (highest - from).abs() > HAIR {
        let rule = if highest < from {
            "start below the stock"
        } else {
            "start in the air above the stock"
        };
        out.add(
            rule,
            step.number,
            0.0,
            format!("starts {from}, stock {highest} (down from face B of the part)"),
        );
    }
}

/// Notes what a step has done beside the heights, and how it ends.
fn done_by(job: &Job, drawing: &Drawing, stand: &Stand, done: &mut Done, out: &mut Complaints) {
    let (step, face, number) = (stand.step, stand.face, stand.step.number);
    let at = side(face);
    match step.task {
        TaskKind::Clearing => {
            done.walls[at] = Some(step.leave.0.si());
            end(drawing, stand, step.leave.1.si(), out);
        }
        TaskKind::FloorSkim => {
            match done.walls[at] {
                None => out.add("floor skim before clearing", number, 0.0, String::new()),
                Some(left) => out.same(
                    "allowance on the wall in the floor skim",
                    number,
                    (left, step.leave.0.si()),
                    1.0e-9,
                ),
            }
            end(drawing, stand, 0.0, out);
        }
        TaskKind::OutlineGroove => done.groove = Some(stand.to),
        TaskKind::OutlineFinish => {
            done.outline = true;
            met(job, stand, done.groove, out);
        }
        TaskKind::SlotsBlind => blind(job, drawing, stand, out),
        TaskKind::Facing | TaskKind::Bore | TaskKind::WallSkim | TaskKind::SlotsThrough => {}
    }
}

/// A recess ends on its floor, less an allowance.
fn end(drawing: &Drawing, stand: &Stand, left: f64, out: &mut Complaints) {
    let Some(hollow) = drawing.hollows[side(stand.face)] else {
        return out.add(
            "recess that is not drawn",
            stand.step.number,
            0.0,
            String::new(),
        );
    };
    let (end, floor) = (deep(stand.face, stand.to), deep(stand.face, hollow.floor));
    if (end + left - floor).abs() > HAIR {
        let figures = format!("ends {end}, floor {floor}, left {left}");
        out.add("recess off its floor", stand.step.number, 0.0, figures);
    }
}

/// The wall skim takes what clearing left, from the face to the floor.
fn skim_wall(drawing: &Drawing, stand: &mut Stand, done: &mut Done, out: &mut Complaints) {
    let number = stand.step.number;
    match done.walls[side(stand.face)].replace(0.0) {
        Some(left) if left > 0.0 => stand.skin = left,
        Some(_) => out.add("wall skim with nothing left", number, 0.0, String::new()),
        None => out.add("wall skim before clearing", number, 0.0, String::new()),
    }
    if (stand.from - stand.surface).abs() > HAIR {
        let figures = format!("{} at {}", stand.from, stand.surface);
        out.add("wall skim that starts off the face", number, 0.0, figures);
    }
    end(drawing, stand, 0.0, out);
}

/// Slots that the recess of the other side shall open are deep enough for that, whatever the errors of the turn-over.
fn blind(job: &Job, drawing: &Drawing, stand: &Stand, out: &mut Complaints) {
    let other = match stand.face {
        Face::A => Face::B,
        Face::B => Face::A,
    };
    let Some(hollow) = drawing.hollows[side(other)] else {
        return out.add(
            "blind slots that nothing opens",
            stand.step.number,
            0.0,
            String::new(),
        );
    };
    let numbers = &job.numbers;
    // Roughing of the other recess ends short of its floor by the allowance, of a shallow one by half its depth; the floor
    // may lie off by the seat and the touch.
    let errors = (numbers.seat_error_um + numbers.touch_error_um) * 1.0e-6;
    let floor = deep(other, hollow.floor)
        - deep(
            other,
            if other == Face::A {
                drawing.thickness
            } else {
                0.0
            },
        );
    let needed = (numbers.floor_allowance_mm * 1.0e-3).min(0.5 * floor) + errors;
    let past = deep(stand.face, stand.to) - deep(stand.face, hollow.floor);
    if past < needed - HAIR {
        let figures = format!("{past} m past the web, {needed} needed");
        out.add(
            "blind slots that stay shut",
            stand.step.number,
            needed / past,
            figures,
        );
    }
}

/// An outline that is cut from both sides is cut through whatever the turn-over errs by, as far as no tab stands.
fn met(job: &Job, stand: &Stand, groove: Option<f64>, out: &mut Complaints) {
    let Some(groove) = groove else { return };
    let past = deep(stand.face, stand.to) - deep(stand.face, groove);
    let errors = (job.numbers.seat_error_um + job.numbers.touch_error_um) * 1.0e-6;
    if past < errors - HAIR {
        let figures = format!("{past} m past the groove, the turn-over errs by {errors}");
        out.add(
            "outline that may not meet its groove",
            stand.step.number,
            0.0,
            figures,
        );
    }
}

/// What is left is the part.
fn finished(drawing: &Drawing, columns: &[Column], done: &Done, out: &mut Complaints) {
    for column in columns {
        let kind = &column.kind;
        let open = kind.bore || kind.slit;
        if !kind.part || open {
            if column.solid() {
                let figures = format!("{column:?}");
                let what = if open { "bore or slot" } else { "outline" };
                out.add(format!("{what} not open at the end"), 0, 0.0, figures);
            }
            continue;
        }
        let floor = |at: usize, flat: f64| {
            let hollow = drawing.hollows[at].filter(|_| kind.hollow[at]);
            hollow.map_or(flat, |h| h.floor)
        };
        let (bottom, top) = (floor(1, 0.0), floor(0, drawing.thickness));
        if (column.bottom - bottom).abs() > HAIR || (column.top - top).abs() > HAIR {
            let figures = format!("{column:?}, drawn from {bottom} to {top}");
            out.add("height that is not the drawing's", 0, 0.0, figures);
        }
    }
    for (at, hollow) in drawing.hollows.iter().enumerate() {
        let left = done.walls[at].unwrap_or(f64::INFINITY);
        if hollow.is_some() && left > 0.0 {
            out.add("wall that is not skimmed", 0, 0.0, format!("{left} left"));
        }
    }
}
