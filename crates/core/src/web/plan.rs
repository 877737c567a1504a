//! The plan of a part as a mesh of plates: made once for a part, whatever state it is in.

use super::WebError;
use crate::part::{Cell, Part};
use crate::picture::Detail;
use crate::plan::{Area, Contour, Point, distance_point};
use crate::task::Face;
use thinwright_plate::fem::Grid;
use thinwright_plate::mesh::{Fineness, Loop, LoopKind, Mesh, MeshError, mesh};
use thinwright_quantity::Length;

/// Chord error of the lines handed to the mesher, mm.
const CHORD_MM: f64 = 0.02;
/// Greatest edge as a share of the part's longer side, coarse and fine.
const EDGE_SHARE: (f64, f64) = (1.0 / 9.0, 1.0 / 18.0);
/// Triangles across a rib, coarse and fine. With one, ribs come out 7 % too stiff, with two 3.5 %, with three 2.5 % (model
/// problem (c) of `shared/reference/plates.json` against the solid).
const ACROSS: (f64, f64) = (1.0, 2.0);
/// Edges are never shorter than this, m.
const LEAST_EDGE: f64 = 1.0e-4;
/// Most nodes, coarse and fine.
const MOST_NODES: (usize, usize) = (10_000, 40_000);

/// A mesh of the part's plan, and what each triangle belongs to.
#[derive(Debug)]
pub(crate) struct WebPlan {
    pub(crate) grid: Grid,
    /// For each triangle its cell of the part, and whether it belongs to a boss.
    pub(crate) of: Vec<(u16, bool)>,
    /// For each triangle how far its middle is from the wall of the recess in face A, in face B, m; negative outside it.
    depth: [Vec<f64>; 2],
}

/// The lines of a part's plan, as the mesher takes them, m.
pub(crate) fn lines(part: &Part) -> Vec<Loop> {
    let of = |contour: &Contour, kind| Loop {
        points: contour
            .flatten(CHORD_MM)
            .iter()
            .map(|p| [p.x * 1.0e-3, p.y * 1.0e-3])
            .collect(),
        kind,
    };
    let mut lines = vec![of(&part.outline.outer, LoopKind::Outer)];
    if let Some((bore, _)) = &part.bore {
        lines.push(of(&bore.outer, LoopKind::Hole));
    }
    lines.extend(
        part.slots
            .iter()
            .map(|s| of(&s.region.outer, LoopKind::Line)),
    );
    for recess in &part.recesses {
        let holes = recess.region.holes.iter();
        let all = std::iter::once(&recess.region.outer).chain(holes);
        lines.extend(all.map(|c| of(c, LoopKind::Line)));
    }
    lines
}

fn fineness(lines: &[Loop], detail: Detail) -> Fineness {
    let points = || lines.iter().flat_map(|l| &l.points);
    let side = |d: usize| {
        let most = points().map(|p| p[d]).fold(f64::NEG_INFINITY, f64::max);
        most - points().map(|p| p[d]).fold(f64::INFINITY, f64::min)
    };
    let longer = side(0).max(side(1));
    match detail {
        Detail::Coarse => Fineness {
            most: EDGE_SHARE.0 * longer,
            across: ACROSS.0,
            least: LEAST_EDGE,
            most_nodes: MOST_NODES.0,
        },
        Detail::Fine => Fineness {
            most: EDGE_SHARE.1 * longer,
            across: ACROSS.1,
            least: LEAST_EDGE,
            most_nodes: MOST_NODES.1,
        },
    }
}

impl WebPlan {
    /// Makes the mesh of a part whose lines these are.
    ///
    /// # Errors
    /// Lines that the mesher cannot take.
    pub(crate) fn new(part: &Part, lines: &[Loop], detail: Detail) -> Result<WebPlan, WebError> {
        let made: Mesh = mesh(lines, &fineness(lines, detail)).map_err(WebError::from)?;
        let grid = Grid::new(made).map_err(|_| WebError::SelfCrossing)?;
        let count = grid.mesh().triangles.len();
        let middles: Vec<Point> = (0..count).map(|t| place(grid.middle(t))).collect();
        let bosses = bosses(part);
        let mut last = 0;
        let of = middles.iter().map(|middle| {
            // Neighbours are mostly of one cell; what falls into a crack between cells goes with the one before.
            last = cell_at(&part.cells, *middle, last).unwrap_or(last);
            let boss = bosses.iter().any(|boss| boss.contains(*middle));
            (u16::try_from(last).unwrap_or(u16::MAX), boss)
        });
        let of = of.collect();
        let depth = [Face::A, Face::B].map(|face| depths(part, face, &middles));
        Ok(WebPlan { grid, of, depth })
    }

    /// How far the middle of a triangle is from the wall of a face's recess, m; negative outside it.
    pub(crate) fn depth(&self, face: Face, triangle: usize) -> f64 {
        let of = &self.depth[usize::from(face == Face::B)];
        of.get(triangle).copied().unwrap_or(-1.0)
    }
}

/// A place of the mesh in the part's plan, mm.
pub(crate) fn place(at: [f64; 2]) -> Point {
    Point::new(at[0] * 1.0e3, at[1] * 1.0e3)
}

fn bosses(part: &Part) -> Vec<Area> {
    let holes = part.recesses.iter().flat_map(|r| &r.region.holes);
    holes
        .map(|hole| Area::from_contour(hole, CHORD_MM))
        .collect()
}

/// The cell that a place is in, the one that was met last first.
fn cell_at(cells: &[Cell], place: Point, last: usize) -> Option<usize> {
    let in_last = cells.get(last).is_some_and(|c| c.area.contains(place));
    if in_last {
        return Some(last);
    }
    cells.iter().position(|c| c.area.contains(place))
}

fn depths(part: &Part, face: Face, middles: &[Point]) -> Vec<f64> {
    let Some(recess) = part.recess(face) else {
        return Vec::new();
    };
    let of = |middle: &Point| {
        let distance = distance_point(&recess.area, *middle) * 1.0e-3;
        if recess.area.contains(*middle) {
            distance
        } else {
            -distance
        }
    };
    middles.iter().map(of).collect()
}

impl From<MeshError> for WebError {
    fn from(error: MeshError) -> WebError {
        match error {
            MeshError::Unresolved { width, .. } => WebError::TooNarrow {
                width: Length::from_si(width),
            },
            MeshError::TooLarge { .. } => WebError::TooLarge,
            _ => WebError::SelfCrossing,
        }
    }
}
