//! What a search may use again: webs, shapes, path lengths. It changes the speed of a search, never its result.

use crate::job::Job;
use crate::lengths::Lengths;
use crate::part::{Height, Part, State};
use crate::shape::{self, TaskShape};
use crate::task::{Face, Task, TaskKind};
use crate::web::WebBook;
use std::collections::BTreeMap;
use std::rc::Rc;

/// Answers that may be used again.
#[derive(Clone, Debug, Default)]
pub struct Cache {
    pub(crate) webs: WebBook,
    /// What the shapes are of.
    of: Option<Part>,
    /// Shapes by task, height of the surface, and what is left on walls and floors.
    shapes: BTreeMap<(Task, Height, [u64; 2]), Rc<TaskShape>>,
    /// Lengths by region and what is left on its walls.
    lengths: BTreeMap<(Region, Face, u64), Rc<Lengths>>,
    /// Lengths worked out in regions that are no longer kept.
    gone: u64,
}

/// Regions in which paths run.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Region {
    /// A recess within its allowance.
    Rough,
    /// A recess to its walls.
    Finished,
    /// The bore.
    Bore,
    /// Around the outline.
    Outline,
    /// Without paths of its own.
    None,
}

impl Region {
    fn of(kind: TaskKind) -> Region {
        match kind {
            TaskKind::Clearing | TaskKind::FloorSkim => Region::Rough,
            TaskKind::WallSkim => Region::Finished,
            TaskKind::Bore => Region::Bore,
            TaskKind::OutlineGroove | TaskKind::OutlineFinish => Region::Outline,
            TaskKind::Facing | TaskKind::SlotsThrough | TaskKind::SlotsBlind => Region::None,
        }
    }
}

impl Cache {
    /// Lets go of shapes that are not this job's.
    pub(crate) fn keep_for(&mut self, job: &Job) {
        if self.of.as_ref() != Some(&job.part) {
            self.gone = self.lengths_worked_out();
            self.shapes.clear();
            self.lengths.clear();
            self.of = Some(job.part.clone());
        }
    }

    /// The shape of a task; of the state before it only the height of the surface matters.
    pub(crate) fn shape(&mut self, job: &Job, task: &Task, before: &State) -> Rc<TaskShape> {
        let numbers = &job.numbers;
        let leave = [numbers.rough_allowance_mm, numbers.floor_allowance_mm].map(f64::to_bits);
        let key = (*task, shape::surface(before, task.face), leave);
        if let Some(shape) = self.shapes.get(&key) {
            return shape.clone();
        }
        let mut shape = TaskShape::new(job, *task, before);
        let region = (Region::of(task.kind), task.face, leave[0]);
        shape.lengths = self.lengths.entry(region).or_default().clone();
        let shape = Rc::new(shape);
        self.shapes.insert(key, shape.clone());
        shape
    }

    /// How many web answers were worked out since it was new.
    pub(crate) fn webs_worked_out(&self) -> u64 {
        self.webs.worked_out()
    }

    /// How many path lengths were worked out since it was new.
    pub(crate) fn lengths_worked_out(&self) -> u64 {
        self.gone + self.lengths.values().map(|l| l.worked_out()).sum::<u64>()
    }
}
