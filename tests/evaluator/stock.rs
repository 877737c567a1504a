//! Columns of stock: what is solid from where to where, at one place of each kind that the part has.

use super::drawing::Drawing;
use thinwright_core::task::{Face, TaskKind};

/// Points of the sampling grid along each side.
const GRID: u32 = 160;

/// What a place of the blank belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Kind {
    pub(crate) part: bool,
    /// In the recess of face A, of face B.
    pub(crate) hollow: [bool; 2],
    pub(crate) bore: bool,
    pub(crate) slit: bool,
}

/// A column: solid between two heights above face B of the finished part, m.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Column {
    pub(crate) kind: Kind,
    pub(crate) bottom: f64,
    pub(crate) top: f64,
}

impl Column {
    pub(crate) fn height(&self) -> f64 {
        self.top - self.bottom
    }

    pub(crate) fn solid(&self) -> bool {
        self.height() > HAIR
    }
}

/// Heights nearer than this are one, m.
pub(crate) const HAIR: f64 = 1.0e-7;

/// Place of a face in pairs.
pub(crate) fn side(face: Face) -> usize {
    match face {
        Face::A => 0,
        Face::B => 1,
    }
}

/// The columns of the raw blank, one of each kind.
pub(crate) fn raw(drawing: &Drawing) -> Vec<Column> {
    let (bottom, top) = (-drawing.face, drawing.thickness + drawing.face);
    let mut kinds: Vec<Kind> = Vec::new();
    let mut note = |p: (f64, f64)| {
        if drawing.blank.inside(p) <= 0.0 {
            return;
        }
        let hollow = drawing
            .hollows
            .map(|h| h.is_some_and(|h| h.plan.inside(p) > 0.0) && !drawing.on_boss(p));
        let kind = Kind {
            part: drawing.outline.inside(p) > 0.0,
            hollow,
            bore: p.0 * p.0 + p.1 * p.1 < 0.25 * drawing.bore * drawing.bore,
            slit: drawing.slits.iter().any(|s| s.holds(p)),
        };
        if !kinds.contains(&kind) {
            kinds.push(kind);
        }
    };
    let (length, width) = match drawing.blank {
        super::drawing::Outline::Box { length, width, .. } => (length, width),
        super::drawing::Outline::Round { radius } => (2.0 * radius, 2.0 * radius),
    };
    for i in 0..GRID {
        for k in 0..GRID {
            let share = |j: u32| (f64::from(j) + 0.5) / f64::from(GRID) - 0.5;
            note((share(i) * length, share(k) * width));
        }
    }
    note((0.0, 0.0));
    // What rounded corners leave of the blank may be smaller than the grid.
    note((0.5 * length - HAIR, 0.5 * width - HAIR));
    for slit in &drawing.slits {
        for share in [-1.0, 0.0, 1.0] {
            note(slit.at(share));
        }
    }
    kinds
        .into_iter()
        .map(|kind| Column { kind, bottom, top })
        .collect()
}

/// Whether a task takes stock from a kind of place.
pub(crate) fn cuts(task: TaskKind, face: Face, kind: &Kind) -> bool {
    match task {
        TaskKind::Facing => true,
        TaskKind::Bore => kind.bore,
        TaskKind::Clearing | TaskKind::FloorSkim => kind.hollow[side(face)],
        TaskKind::SlotsThrough | TaskKind::SlotsBlind => kind.slit,
        TaskKind::OutlineGroove | TaskKind::OutlineFinish => !kind.part,
        // A strip along the wall: followed apart.
        TaskKind::WallSkim => false,
    }
}

/// Lowest bottom and highest top of what is solid.
pub(crate) fn extent(columns: &[Column]) -> (f64, f64) {
    let solid = || columns.iter().filter(|c| c.solid());
    let bottom = solid().map(|c| c.bottom).fold(f64::INFINITY, f64::min);
    let top = solid().map(|c| c.top).fold(f64::NEG_INFINITY, f64::max);
    (bottom, top)
}

/// Least thickness of the web, m; 0 without one.
pub(crate) fn web(columns: &[Column]) -> f64 {
    let web = columns
        .iter()
        .filter(|c| (c.kind.hollow[0] || c.kind.hollow[1]) && !c.kind.slit && !c.kind.bore);
    let least = web.map(Column::height).fold(f64::INFINITY, f64::min);
    if least.is_finite() { least } else { 0.0 }
}
