//! The plan of a part as a mesh of plates: made once for a part, whatever state it is in.

use super::{WebError, place_back};
use crate::part::{Cell, Part, Recess};
use crate::picture::Detail;
use crate::plan::{Area, Bounds, Contour, Point, distance, distance_point};
use crate::task::Face;
use core::f64::consts::PI;
use thinwright_plate::fem::Grid;
use thinwright_plate::mesh::{Fineness, Loop, LoopKind, Mesh, MeshError, mesh};
use thinwright_quantity::Length;

/// Chord error of the lines handed to the mesher, mm.
const CHORD_MM: f64 = 0.02;
/// Chord error of walls that distances are taken from, mm.
const WALL_CHORD_MM: f64 = 0.2;
/// Chord error of floors whose steps are moved, mm.
const FLOOR_CHORD_MM: f64 = 0.05;
/// Greatest edge as a share of the part's longer side, coarse and fine.
const EDGE_SHARE: (f64, f64) = (1.0 / 16.0, 1.0 / 32.0);
/// Triangles across a rib, coarse and fine. With one, ribs come out 8 % too stiff, with two 3.5 %, with three 2.5 % (model
/// problem (c) of `shared/reference/plates.json` against the solid). One and two together tell only half of the error of
/// one, one and three tell it whole (`shared/reference/CONVERGENCE.md`).
const ACROSS: (f64, f64) = (1.0, 3.0);
/// Edges are never shorter than this, m.
const LEAST_EDGE: f64 = 4.0e-5;
/// Most nodes, coarse and fine.
const MOST_NODES: (usize, usize) = (10_000, 40_000);

/// A mesh of the part's plan, and what each triangle belongs to.
#[derive(Debug)]
pub(crate) struct WebPlan {
    pub(crate) grid: Grid,
    /// For each triangle its cell of the part, and whether it belongs to a boss.
    pub(crate) of: Vec<(u16, bool)>,
    /// For each triangle by how much more it weighs than it seems: steps are moved for stiffness, masses are not.
    pub(crate) weight: Vec<f64>,
    /// For each triangle how far its middle is from the wall of the recess in face A, in face B, m; negative outside it. The
    /// fine mesh only tells inside from outside.
    depth: [Vec<f64>; 2],
}

/// Where thin meets thick, the thin stiffness reaches so many of its thicknesses into the thick part: a plate's foot is
/// stiffer than a solid's. Fitted to three stepped outlines computed as solids (`shared/reference/outlines.json`), and
/// held against two others (model problem (c), boss: from -4 and -5 % to 0 and +2 %).
const REACH: f64 = 0.25;

/// The most of a rim or boss that is taken for it.
const MOST_REACH: f64 = 0.4;

/// The floor of a face's recess as far as its thin stiffness reaches.
fn reached(part: &Part, recess: &Recess) -> Area {
    let floor = Area::from_region(&recess.region, FLOOR_CHORD_MM);
    // A rim or boss that is thin itself keeps most of its width.
    let wall = Area::from_region(&recess.region, WALL_CHORD_MM);
    let rim = distance(&wall, &Area::from_region(&part.outline, WALL_CHORD_MM));
    let bosses = recess
        .region
        .holes
        .iter()
        .map(|h| 0.5 * (h.area().abs() / PI).sqrt());
    let room = bosses.fold(rim, f64::min);
    floor.offset((REACH * part.web() * 1.0e3).min(MOST_REACH * room))
}

/// The lines of a part's plan, as the mesher takes them, m.
pub(crate) fn lines(part: &Part) -> Vec<Loop> {
    let flat = |points: &[Point], kind| Loop {
        points: points.iter().map(|p| place_back(*p)).collect(),
        kind,
    };
    let of = |contour: &Contour, kind| flat(&contour.flatten(CHORD_MM), kind);
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
        let reached = reached(part, recess);
        lines.extend(reached.loops().map(|l| flat(l, LoopKind::Line)));
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
        let cells = Cells::new(part);
        let of: Vec<(u16, bool)> = middles.iter().map(|middle| cells.at(*middle)).collect();
        let weight = weights(part, &grid, &of);
        let near = detail == Detail::Coarse;
        let depth = [Face::A, Face::B].map(|face| depths((part, face), &of, &middles, near));
        Ok(WebPlan {
            grid,
            of,
            weight,
            depth,
        })
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

/// Tells the cell of a place, steps moved as the plate wants them.
struct Cells<'a> {
    part: &'a Part,
    floors: [Area; 2],
    slots: Vec<(Bounds, &'a Area)>,
    bosses: Vec<Area>,
}

impl<'a> Cells<'a> {
    fn new(part: &'a Part) -> Cells<'a> {
        let floor = |face| {
            part.recess(face)
                .map_or(Area::default(), |r| reached(part, r))
        };
        let holes = part.recesses.iter().flat_map(|r| &r.region.holes);
        let slots = part
            .slots
            .iter()
            .filter_map(|s| Some((s.area.bounds()?, &s.area)));
        Cells {
            part,
            floors: [floor(Face::A), floor(Face::B)],
            slots: slots.collect(),
            bosses: holes
                .map(|hole| Area::from_contour(hole, CHORD_MM))
                .collect(),
        }
    }

    /// The cell of a place, and whether it belongs to a boss.
    fn at(&self, place: Point) -> (u16, bool) {
        let in_box = |b: &Bounds| {
            let (x, y) = (b.min.x..=b.max.x, b.min.y..=b.max.y);
            x.contains(&place.x) && y.contains(&place.y)
        };
        let recess = (
            self.floors[0].contains(place),
            self.floors[1].contains(place),
        );
        let slot = self
            .slots
            .iter()
            .any(|(b, area)| in_box(b) && area.contains(place));
        let alike = |c: &Cell| c.outline && !c.bore && c.recess == recess && c.slot == slot;
        let cells = &self.part.cells;
        let found = cells.iter().position(alike);
        // A mixture that no cell has lies in a crack between two moved lines: what was there before decides.
        let found = found.or_else(|| cells.iter().position(|c| c.area.contains(place)));
        let boss = !recess.0 && !recess.1 && self.bosses.iter().any(|b| b.contains(place));
        (
            found
                .and_then(|at| u16::try_from(at).ok())
                .unwrap_or(u16::MAX),
            boss,
        )
    }
}

/// How much more thick triangles weigh than they seem: rim and bosses keep the areas that they have.
fn weights(part: &Part, grid: &Grid, of: &[(u16, bool)]) -> Vec<f64> {
    let thick =
        |cell: &&Cell| cell.outline && !(cell.recess.0 || cell.recess.1 || cell.bore || cell.slot);
    let all: f64 = part
        .cells
        .iter()
        .filter(thick)
        .map(|c| c.area.area_mm2())
        .sum();
    let bore = part.bore.as_ref().map(|b| b.1.clone()).unwrap_or_default();
    let most = part.recesses.iter().flat_map(|r| &r.region.holes);
    let boss = most.map(|h| Area::from_contour(h, CHORD_MM).subtract(&bore).area_mm2());
    let boss = boss.fold(0.0, f64::max);
    let is_thick = |cell: u16| part.cells.get(usize::from(cell)).is_some_and(|c| thick(&c));
    let mut meshed = [0.0; 2];
    for (index, &(cell, boss)) in of.iter().enumerate() {
        if is_thick(cell) {
            meshed[usize::from(boss)] += grid.area(index) * 1.0e6;
        }
    }
    let ratio = [(all - boss) / meshed[0], boss / meshed[1]];
    // The strip between the true line and the moved one weighs a little already: as much as the web.
    let share = 1.0 - part.web() / part.thickness;
    let ratio = ratio.map(|r| {
        let more = (r - 1.0) * share;
        if more.is_finite() && more > 0.0 {
            1.0 + more
        } else {
            1.0
        }
    });
    let weigh = |&(cell, boss): &(u16, bool)| match is_thick(cell) {
        true => ratio[usize::from(boss)],
        false => 1.0,
    };
    of.iter().map(weigh).collect()
}

/// How far each triangle is from the wall of a face's recess; only whether it is inside where `near` is not asked.
fn depths(
    (part, face): (&Part, Face),
    of: &[(u16, bool)],
    middles: &[Point],
    near: bool,
) -> Vec<f64> {
    let Some(recess) = part.recess(face) else {
        return Vec::new();
    };
    let wall = Area::from_region(&recess.region, WALL_CHORD_MM);
    let inside = |cell: u16| {
        let cell = part.cells.get(usize::from(cell));
        cell.is_some_and(|c| {
            if face == Face::A {
                c.recess.0
            } else {
                c.recess.1
            }
        })
    };
    let depth = |(middle, &(cell, _)): (&Point, &(u16, bool))| match inside(cell) {
        true if near => distance_point(&wall, *middle) * 1.0e-3,
        true => 0.0,
        false => -1.0,
    };
    middles.iter().zip(of).map(depth).collect()
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
