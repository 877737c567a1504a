//! The part as planar regions between heights, and the states it passes through.

use crate::plan::{Area, Point, Region, arrange};
use crate::task::{Face, Task, TaskKind};

/// A height in whole nanometres above face B of the finished part: exact, and fit to be compared.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Height(pub i64);

const NM_PER_M: f64 = 1.0e9;

impl Height {
    /// The height nearest to a value in metres.
    pub fn from_m(value: f64) -> Height {
        #[allow(
            clippy::cast_possible_truncation,
            reason = "a saturating cast: no height of a part comes near the end of i64"
        )]
        Height(libm::round(value * NM_PER_M) as i64)
    }

    /// The height in metres.
    pub fn m(self) -> f64 {
        #[allow(clippy::cast_precision_loss, reason = "exact below 9 000 km")]
        let nm = self.0 as f64;
        nm / NM_PER_M
    }

    /// The height in millimetres.
    pub fn mm(self) -> f64 {
        self.m() * 1.0e3
    }
}

/// A recess: a region cleared from a face down to its floor. A boss is a hole in the region.
#[derive(Clone, Debug, PartialEq)]
pub struct Recess {
    /// The face it is open to.
    pub face: Face,
    /// What is cleared.
    pub region: Region,
    /// The same, flattened for computing.
    pub area: Area,
    /// Height of its floor.
    pub floor: Height,
    /// Least radius of its inside corners seen from above, m; infinite if it has none.
    pub corner: f64,
    /// Width of its narrowest place: the largest cutter that passes everywhere, m.
    pub narrowest: f64,
    /// Diameter of the largest circle that fits in, m.
    pub widest: f64,
}

/// A narrow slot through the web: a middle line and a width, the ends round.
#[derive(Clone, Debug, PartialEq)]
pub struct Slot {
    /// Middles of the two round ends, mm.
    pub ends: (Point, Point),
    /// Width, m.
    pub width: f64,
    /// Length over the round ends, m.
    pub length: f64,
    /// Its opening.
    pub region: Region,
    /// The same, flattened.
    pub area: Area,
}

/// The finished part and its blank, general in outline.
#[derive(Clone, Debug, PartialEq)]
pub struct Part {
    /// The blank from above.
    pub blank: Region,
    /// The same, flattened.
    pub blank_area: Area,
    /// Bottom and top of the blank.
    pub blank_heights: (Height, Height),
    /// The outline of the finished part.
    pub outline: Region,
    /// The same, flattened.
    pub outline_area: Area,
    /// Thickness of the finished part, m.
    pub thickness: f64,
    /// The recesses, face A first.
    pub recesses: Vec<Recess>,
    /// The slots.
    pub slots: Vec<Slot>,
    /// Least width of the ribs between neighbouring slots, m.
    pub rib: Option<f64>,
    /// The bore through the middle.
    pub bore: Option<(Region, Area)>,
    /// The cells of the arrangement of all the regions above.
    pub cells: Vec<Cell>,
}

/// A piece of the plane that every cut treats alike.
#[derive(Clone, Debug, PartialEq)]
pub struct Cell {
    /// Where it is.
    pub area: Area,
    /// Inside the outline.
    pub outline: bool,
    /// Inside the recess of face A, of face B.
    pub recess: (bool, bool),
    /// Inside the bore.
    pub bore: bool,
    /// Inside a slot.
    pub slot: bool,
}

/// Bottom and top of the stock in every cell; equal where it is open.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct State {
    /// One pair per cell.
    pub stock: Vec<(Height, Height)>,
}

impl Part {
    /// Divides the plane into cells: call once when the regions stand.
    pub fn cells_of(part: &Part) -> Vec<Cell> {
        let recess = |face| {
            part.recess(face)
                .map(|r| r.area.clone())
                .unwrap_or_default()
        };
        let bore = part.bore.as_ref().map(|b| b.1.clone()).unwrap_or_default();
        // One region for all slots: cuts treat them alike, and it keeps the arrangement small.
        let slots = part
            .slots
            .iter()
            .fold(Area::default(), |sum, slot| sum.union(&slot.area));
        let regions = [
            part.blank_area.clone(),
            part.outline_area.clone(),
            recess(Face::A),
            recess(Face::B),
            bore,
            slots,
        ];
        let cells = arrange(&regions).cells.into_iter();
        cells
            .map(|cell| Cell {
                area: cell.area,
                outline: cell.inside[1],
                recess: (cell.inside[2], cell.inside[3]),
                bore: cell.inside[4],
                slot: cell.inside[5],
            })
            .collect()
    }

    /// The recess of a face.
    pub fn recess(&self, face: Face) -> Option<&Recess> {
        self.recesses.iter().find(|r| r.face == face)
    }

    /// Height of a face of the finished part.
    pub fn face_height(&self, face: Face) -> Height {
        match face {
            Face::A => Height::from_m(self.thickness),
            Face::B => Height(0),
        }
    }

    /// Floor height of a face's recess, or the face itself where it has none.
    pub fn floor(&self, face: Face) -> Height {
        self.recess(face)
            .map_or(self.face_height(face), |r| r.floor)
    }

    /// Thickness of the finished web, m.
    pub fn web(&self) -> f64 {
        self.floor(Face::A).m() - self.floor(Face::B).m()
    }

    /// The blank before the first cut.
    pub fn raw(&self) -> State {
        State {
            stock: vec![self.blank_heights; self.cells.len()],
        }
    }

    /// Whether a task cuts in a cell.
    fn cuts(task: &Task, cell: &Cell) -> bool {
        let in_recess = match task.face {
            Face::A => cell.recess.0,
            Face::B => cell.recess.1,
        };
        match task.kind {
            TaskKind::Facing => true,
            TaskKind::Bore => cell.bore,
            TaskKind::Clearing | TaskKind::FloorSkim => in_recess,
            TaskKind::SlotsThrough | TaskKind::SlotsBlind => cell.slot,
            TaskKind::OutlineFinish => !cell.outline,
            // Both leave every cell's heights to the task that goes to depth there.
            TaskKind::WallSkim | TaskKind::OutlineGroove => false,
        }
    }

    /// The state after a task: heights change in the cells it cuts, nothing else.
    pub fn after(&self, state: &State, task: &Task) -> State {
        let stock = self.cells.iter().zip(&state.stock);
        let stock = stock.map(|(cell, &(bottom, top))| {
            if !Part::cuts(task, cell) {
                return (bottom, top);
            }
            match task.face {
                Face::A => (bottom, top.min(task.to).max(bottom)),
                Face::B => (bottom.max(task.to).min(top), top),
            }
        });
        State {
            stock: stock.collect(),
        }
    }

    /// Least thickness in a state, m, over the cells of the web that are not slots; 0 if there are none.
    pub fn web_now(&self, state: &State) -> f64 {
        let web = self.cells.iter().zip(&state.stock);
        let web = web.filter(|(c, _)| (c.recess.0 || c.recess.1) && !c.slot && !c.bore);
        let least = web.map(|(_, (bottom, top))| top.0 - bottom.0).min();
        Height(least.unwrap_or(0)).m()
    }

    /// Whether the slots are open, all through, in a state.
    pub fn slots_open(&self, state: &State) -> bool {
        let mut slots = self.cells.iter().zip(&state.stock).filter(|(c, _)| c.slot);
        let open = slots.all(|(_, (bottom, top))| bottom == top);
        open && !self.slots.is_empty()
    }

    /// Whether the slots have been cut at all, from either side, deeper than the web around them.
    pub fn slots_begun(&self, state: &State) -> bool {
        let web = Height::from_m(self.web_now(state));
        let mut slots = self.cells.iter().zip(&state.stock).filter(|(c, _)| c.slot);
        slots.any(|(_, (bottom, top))| top.0 - bottom.0 < web.0)
    }
}
