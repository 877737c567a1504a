//! The plane cut into cells by all regions at once.

use super::Area;

/// Cells below this size are dropped (mm2).
const CELL_LEAST_MM2: f64 = 0.01;
/// Cells narrower than twice this are dropped: two flattenings of one curve, not material (mm).
const CELL_HALF_WIDTH_MM: f64 = 0.006;

/// A part of the plane that lies in the same regions throughout.
#[derive(Debug, Clone, PartialEq)]
pub struct Cell {
    /// Where it is; may be in several pieces.
    pub area: Area,
    /// For each region, in order: the cell is inside it.
    pub inside: Vec<bool>,
}

/// All cells that lie in at least one region; they do not overlap.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Arrangement {
    /// The cells; no two have the same `inside`.
    pub cells: Vec<Cell>,
}

impl Arrangement {
    /// The cells inside a region.
    pub fn within(&self, region: usize) -> impl Iterator<Item = (usize, &Cell)> {
        let inside = move |cell: &Cell| cell.inside.get(region).copied().unwrap_or(false);
        self.cells
            .iter()
            .enumerate()
            .filter(move |(_, cell)| inside(cell))
    }
}

/// The area without the pieces that are too small or too thin to be material.
fn solid(area: &Area) -> Area {
    area.without_slivers(CELL_LEAST_MM2, CELL_HALF_WIDTH_MM)
}

/// Cuts the plane by all regions: one cell for each combination of inside and outside that occurs, slivers dropped.
pub fn arrange(regions: &[Area]) -> Arrangement {
    let mut cells: Vec<Cell> = Vec::new();
    for (index, region) in regions.iter().enumerate() {
        let mut next = Vec::with_capacity(cells.len() + 2);
        let mut fresh = region.clone();
        for cell in cells {
            let mut keep = |area: Area, inside: bool| {
                let area = solid(&area);
                if !area.is_empty(0.0) {
                    let mut list = cell.inside.clone();
                    list.push(inside);
                    next.push(Cell { area, inside: list });
                }
            };
            if cell.area.may_meet(region) {
                fresh = fresh.subtract(&cell.area);
                keep(cell.area.intersect(region), true);
                keep(cell.area.subtract(region), false);
            } else {
                let mut list = cell.inside.clone();
                list.push(false);
                next.push(Cell {
                    area: cell.area,
                    inside: list,
                });
            }
        }
        let fresh = solid(&fresh);
        if !fresh.is_empty(0.0) {
            let mut inside = vec![false; index];
            inside.push(true);
            next.push(Cell {
                area: fresh,
                inside,
            });
        }
        cells = next;
    }
    Arrangement { cells }
}
