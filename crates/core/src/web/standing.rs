//! How a part stands in a state: how thick it is where, and what holds it up.

use super::plan::WebPlan;
use crate::part::{Height, Part, State};
use crate::task::Face;
use thinwright_plate::fem::{Held, Layout};

/// A state of the part in a setup.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Standing<'a> {
    /// The stock.
    pub(crate) state: &'a State,
    /// The face that looks at the spindle.
    pub(crate) up: Face,
    /// Held from its sides, on parallels: only the rim rests.
    pub(crate) squeezed: bool,
    /// The boss is bolted down.
    pub(crate) bolted: bool,
    /// Modulus of what the part lies on, N/m3.
    pub(crate) seat: f64,
}

/// What a cell of the part rests on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Rest {
    /// Nothing.
    Air,
    /// The table; a boss only where it is bolted down: one that merely touches may not.
    Table,
    /// The backing, where there is one.
    Backing,
}

impl Standing<'_> {
    /// Height that the part lies on.
    fn base(&self) -> Option<Height> {
        let solid = self.state.stock.iter().filter(|(bottom, top)| bottom < top);
        match self.up {
            Face::A => solid.map(|s| s.0).min(),
            Face::B => solid.map(|s| s.1).max(),
        }
    }

    /// Thickness of each cell in nanometres and what it rests on: all that a web depends on.
    pub(crate) fn cells(&self, part: &Part) -> Vec<(i64, Rest)> {
        let base = self.base();
        let cells = part.cells.iter().zip(&self.state.stock);
        cells
            .map(|(cell, (bottom, top))| {
                let under = match self.up {
                    Face::A => *bottom,
                    Face::B => *top,
                };
                let recessed = cell.recess.0 || cell.recess.1;
                let below = match self.up {
                    Face::A => cell.recess.1,
                    Face::B => cell.recess.0,
                };
                let rest = if bottom >= top {
                    Rest::Air
                } else if Some(under) == base {
                    if self.squeezed && recessed {
                        Rest::Air
                    } else {
                        Rest::Table
                    }
                } else if below && !cell.slot {
                    Rest::Backing
                } else {
                    Rest::Air
                };
                (top.0 - bottom.0, rest)
            })
            .collect()
    }
}

/// The layout of a plan whose cells stand so, on a backing of Winkler modulus `bed` (N/m3, 0 = none).
pub(crate) fn layout(
    plan: &WebPlan,
    standing: &Standing,
    cells: &[(i64, Rest)],
    bed: f64,
) -> Layout {
    let cell = |index: u16| {
        cells
            .get(usize::from(index))
            .copied()
            .unwrap_or((0, Rest::Air))
    };
    let thickness = plan.of.iter().map(|of| Height(cell(of.0).0).m());
    let under = plan.of.iter().map(|&(index, boss)| match cell(index).1 {
        Rest::Air => 0.0,
        Rest::Table if boss && !standing.bolted => 0.0,
        Rest::Table => standing.seat,
        Rest::Backing => bed,
    });
    Layout {
        thickness: thickness.collect(),
        bed: under.collect(),
        held: vec![Held::Free; plan.grid.mesh().nodes.len()],
    }
}
