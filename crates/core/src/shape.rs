//! The geometry of a task: what is cleared, how deep it lies, and what stands around it.

use crate::job::Job;
use crate::lengths::Lengths;
use crate::part::{Height, Part, Slot, State};
use crate::plan::{Area, Point, distance_point};
use crate::task::{Face, Task, TaskKind};
use std::rc::Rc;

/// What a task cuts, seen from above.
#[derive(Clone, Debug)]
pub enum Target {
    /// A region that is cleared or skimmed; the cutter stays inside its edge.
    Region {
        /// The region, its final walls moved in by the allowance.
        area: Area,
        /// Least radius of its inside corners, m.
        corner: f64,
    },
    /// Slots.
    Slots(Vec<Slot>),
    /// Around the outside of a region.
    Around(Area),
    /// Over the whole of a region; the cutter may leave it.
    Over(Area),
}

/// The geometry of a task.
#[derive(Clone, Debug)]
pub struct TaskShape {
    /// The task.
    pub task: Task,
    /// What it cuts.
    pub target: Target,
    /// How far its start lies below the highest stock around, m.
    pub drop: f64,
    /// Where a thicker shank may go below that surface; `None` if the start is at the surface.
    pub room: Option<Area>,
    /// Allowance left on walls and floor, m.
    pub leave: (f64, f64),
    /// Least distance from a slot's middle line to the wall around it, m.
    pub wall_distance: f64,
    /// Area of what is cut, m2.
    pub area: f64,
    /// Width of the narrowest place, m.
    pub narrowest: f64,
    /// Diameter of the largest circle that fits in, m.
    pub widest: f64,
    /// Path lengths that were worked out before.
    pub lengths: Rc<Lengths>,
}

impl TaskShape {
    /// The shape of a task in the state before it.
    pub fn new(job: &Job, task: Task, state: &State) -> TaskShape {
        let part = &job.part;
        let rough = job.numbers.rough_allowance_mm * 1.0e-3;
        let floor = job.numbers.floor_allowance_mm * 1.0e-3;
        let leave = match task.kind {
            TaskKind::Clearing => (rough, floor),
            TaskKind::FloorSkim => (rough, 0.0),
            _ => (0.0, 0.0),
        };
        let region = |allowance: f64| {
            let recess = part.recess(task.face);
            let area = recess.map(|r| r.area.offset(-allowance * 1.0e3));
            Target::Region {
                area: area.unwrap_or_default(),
                corner: recess.map_or(f64::INFINITY, |r| r.corner - allowance),
            }
        };
        let target = match task.kind {
            TaskKind::Facing => Target::Over(part.blank_area.clone()),
            TaskKind::Bore => Target::Region {
                area: part.bore.as_ref().map(|b| b.1.clone()).unwrap_or_default(),
                corner: f64::INFINITY,
            },
            TaskKind::Clearing | TaskKind::FloorSkim => region(leave.0),
            TaskKind::WallSkim => region(0.0),
            TaskKind::SlotsThrough | TaskKind::SlotsBlind => Target::Slots(part.slots.clone()),
            TaskKind::OutlineGroove | TaskKind::OutlineFinish => {
                Target::Around(part.outline_area.clone())
            }
        };
        let top = surface(state, task.face);
        let drop = (top.m() - task.from.m()).abs();
        let room = matches!(target, Target::Slots(_))
            .then(|| part.recess(task.face).map(|r| r.area.clone()))
            .flatten();
        let wall_distance = match (&target, &room) {
            (Target::Slots(slots), Some(room)) => nearest_wall(slots, room),
            _ => f64::INFINITY,
        };
        let (narrowest, widest) = widths(part, &task, leave.0);
        TaskShape {
            area: size(&target),
            lengths: Rc::default(),
            task,
            target,
            drop,
            room,
            leave,
            wall_distance,
            narrowest,
            widest,
        }
    }

    /// The slots, if slots are what is cut.
    pub fn slots(&self) -> &[Slot] {
        match &self.target {
            Target::Slots(slots) => slots,
            Target::Region { .. } | Target::Around(_) | Target::Over(_) => &[],
        }
    }

    /// Width of the narrowest slot, m; infinite without slots.
    pub fn slot_width(&self) -> f64 {
        self.slots()
            .iter()
            .map(|s| s.width)
            .fold(f64::INFINITY, f64::min)
    }

    /// Whether what is cut here keeps its shape in the finished part.
    pub fn finishes(&self) -> bool {
        !matches!(
            self.task.kind,
            TaskKind::Clearing | TaskKind::Facing | TaskKind::OutlineGroove
        )
    }

    /// Depth from the highest stock around to the end of the cut, m.
    pub fn total_depth(&self) -> f64 {
        self.drop + self.task.depth()
    }
}

/// Width of the narrowest place and diameter of the largest circle in what a task clears, m.
fn widths(part: &Part, task: &Task, allowance: f64) -> (f64, f64) {
    match (task.kind, part.recess(task.face), &part.bore) {
        (TaskKind::Clearing | TaskKind::FloorSkim | TaskKind::WallSkim, Some(recess), _) => (
            recess.narrowest - 2.0 * allowance,
            recess.widest - 2.0 * allowance,
        ),
        (TaskKind::Bore, _, Some((region, _))) => {
            let d = 2.0e-3 * (region.outer.area().abs() / core::f64::consts::PI).sqrt();
            (d, d)
        }
        _ => (f64::INFINITY, f64::INFINITY),
    }
}

/// Area of a target, m2.
fn size(target: &Target) -> f64 {
    let mm2 = match target {
        Target::Region { area, .. } | Target::Over(area) | Target::Around(area) => area.area_mm2(),
        Target::Slots(slots) => slots.iter().map(|s| s.area.area_mm2()).sum(),
    };
    mm2 * 1.0e-6
}

/// Height of the stock's highest surface on a face's side.
pub(crate) fn surface(state: &State, face: Face) -> Height {
    let mut open = state
        .stock
        .iter()
        .filter(|(bottom, top)| bottom < top)
        .peekable();
    if open.peek().is_none() {
        return Height::default();
    }
    match face {
        Face::A => open.map(|s| s.1).max().unwrap_or_default(),
        Face::B => open.map(|s| s.0).min().unwrap_or_default(),
    }
}

/// Least distance from the middle lines of slots to the edge of the room they lie in, m.
fn nearest_wall(slots: &[Slot], room: &Area) -> f64 {
    let ends = slots
        .iter()
        .flat_map(|s| [s.ends.0, s.ends.1, middle(s.ends)]);
    let least = ends
        .map(|p| distance_point(room, p))
        .fold(f64::INFINITY, f64::min);
    least * 1.0e-3
}

fn middle((a, b): (Point, Point)) -> Point {
    Point {
        x: 0.5 * (a.x + b.x),
        y: 0.5 * (a.y + b.y),
    }
}
