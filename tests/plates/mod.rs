//! Plates by finite elements for the tests: outlines as they are written down, their meshes and what they answer.
#![allow(dead_code, reason = "not every test asks for all of it")]

mod shape;

pub(crate) use shape::Shape;
use std::collections::BTreeMap;
use thinwright_plate::fem::{Grid, Held, Layout, Plate, Stuff, Theory};
use thinwright_plate::mesh::{Fineness, Loop, LoopKind, MeshError, mesh};

/// Share of the thin part's thickness by which its stiffness runs on into the thick part: measured on solids
/// (`tests/peers/README.md`), since a plate's line between thin and thick does not give as the root of a web does.
const RUNS_ON: f64 = 0.25;
/// Edges are never shorter than this, m.
const LEAST_EDGE: f64 = 1e-4;
/// Side of the triangle that makes a place a node, m.
const MARK: f64 = 1e-3;
const MOST_NODES: usize = 60_000;

pub(crate) const ALUMINIUM: Stuff = Stuff {
    e_mod: 69e9,
    nu: 0.33,
    rho: 2700.0,
};

/// A place in the plan, m.
pub(crate) type Place = [f64; 2];

/// A part of the plan of one thickness; later ones are painted over earlier ones.
#[derive(Clone, Debug)]
pub(crate) struct Region {
    pub(crate) shape: Shape,
    pub(crate) thickness: f64,
    /// Bed under it, Pa/m.
    pub(crate) bed: f64,
}

/// A plate: the first region is its outline, slots are cut through last.
#[derive(Clone, Debug)]
pub(crate) struct Plan {
    pub(crate) regions: Vec<Region>,
    pub(crate) slots: Vec<Shape>,
    /// Places that shall be nodes of the mesh: where a point bears.
    pub(crate) marks: Vec<Place>,
    /// Lines that shall be edges of the mesh: where a patch ends.
    pub(crate) drawn: Vec<Shape>,
    /// Regions whose thickness tells the mass, where that is not the thickness that bends.
    pub(crate) heavy: Vec<Region>,
    /// How its outer edge is held.
    pub(crate) edge: Held,
}

/// How fine a mesh is: greatest edge, m, and elements across a rib.
pub(crate) type Fine = (f64, f64);

/// Compliances, m/N, and frequencies, Hz.
pub(crate) struct Found {
    pub(crate) compliance: Vec<f64>,
    pub(crate) frequency: Vec<f64>,
}

impl Plan {
    /// One region of one thickness, held at its outer edge.
    pub(crate) fn even(shape: Shape, thickness: f64, edge: Held) -> Plan {
        let bed = 0.0;
        Plan {
            regions: vec![Region {
                shape,
                thickness,
                bed,
            }],
            slots: Vec::new(),
            marks: Vec::new(),
            drawn: Vec::new(),
            heavy: Vec::new(),
            edge,
        }
    }

    /// The same with one more region, painted over what is there.
    pub(crate) fn with(mut self, shape: Shape, thickness: f64) -> Plan {
        let bed = 0.0;
        self.regions.push(Region {
            shape,
            thickness,
            bed,
        });
        self
    }

    /// The same with these slots.
    pub(crate) fn slotted(mut self, slots: Vec<Shape>) -> Plan {
        self.slots = slots;
        self
    }

    /// The same with nodes at these places.
    pub(crate) fn marked(mut self, marks: &[Place]) -> Plan {
        self.marks = marks.to_vec();
        self
    }

    /// The same with every line between thin and thick moved into the thick part, where the mass stays as it is.
    pub(crate) fn with_moved_steps(&self) -> Plan {
        let mut moved = self.clone();
        moved.heavy = self.regions.clone();
        moved
            .drawn
            .extend(self.regions[1..].iter().map(|r| r.shape));
        for (index, region) in self.regions.iter().enumerate().skip(1) {
            let on = region.shape.line()[0];
            let around = self.regions[..index]
                .iter()
                .rfind(|r| r.shape.contains(on))
                .unwrap_or(&self.regions[0])
                .thickness;
            let by = if region.thickness > around {
                -RUNS_ON * around
            } else {
                RUNS_ON * region.thickness
            };
            moved.regions[index].shape = region.shape.grown(by);
        }
        moved
    }

    fn loops(&self) -> Vec<Loop> {
        let of = |shape: &Shape, kind| Loop {
            points: shape.line(),
            kind,
        };
        let mut loops = vec![of(&self.regions[0].shape, LoopKind::Outer)];
        let lines = self.regions[1..].iter().map(|r| &r.shape);
        loops.extend(
            lines
                .chain(&self.slots)
                .chain(&self.drawn)
                .map(|s| of(s, LoopKind::Line)),
        );
        loops.extend(self.marks.iter().map(|at| mark(*at)));
        loops
    }

    /// The mesh, or why there is none.
    pub(crate) fn meshed(&self, (most, across): Fine) -> Result<Grid, MeshError> {
        let fineness = Fineness {
            most,
            across,
            least: LEAST_EDGE,
            most_nodes: MOST_NODES,
        };
        Ok(Grid::new(mesh(&self.loops(), &fineness)?).unwrap())
    }

    /// The mesh.
    pub(crate) fn grid(&self, fine: Fine) -> Grid {
        self.meshed(fine).unwrap()
    }

    /// What stands where on a mesh.
    pub(crate) fn layout(&self, grid: &Grid) -> Layout {
        let count = grid.mesh().triangles.len();
        let mut layout = Layout {
            thickness: vec![0.0; count],
            bed: vec![0.0; count],
            held: vec![Held::Free; grid.mesh().nodes.len()],
        };
        for index in 0..count {
            if let Some(region) = self.region(&self.regions, grid.middle(index)) {
                layout.thickness[index] = region.thickness;
                layout.bed[index] = region.bed;
            }
        }
        for node in edge_nodes(grid) {
            layout.held[node] = self.edge;
        }
        layout
    }

    /// The thickness of each triangle that tells its mass.
    pub(crate) fn mass(&self, grid: &Grid) -> Vec<f64> {
        let regions = if self.heavy.is_empty() {
            &self.regions
        } else {
            &self.heavy
        };
        let of = |t| self.region(regions, grid.middle(t));
        let all = (0..grid.mesh().triangles.len()).map(of);
        all.map(|region| region.map_or(0.0, |r| r.thickness))
            .collect()
    }

    /// Thickness at a place, 0 in a slot.
    pub(crate) fn thickness(&self, at: Place) -> f64 {
        self.region(&self.regions, at).map_or(0.0, |r| r.thickness)
    }

    /// The region of a place; none in a slot.
    fn region<'a>(&self, regions: &'a [Region], at: Place) -> Option<&'a Region> {
        if self.slots.iter().any(|s| s.contains(at)) {
            return None;
        }
        regions
            .iter()
            .rfind(|r| r.shape.contains(at))
            .or(regions.first())
    }

    /// Compliance of each patch (place, radius) and the lowest tones.
    pub(crate) fn ask(
        &self,
        fine: Fine,
        (stuff, theory): (&Stuff, Theory),
        patches: &[(Place, f64)],
        tones: usize,
    ) -> Found {
        let grid = self.grid(fine);
        let stands = (self.layout(&grid), self.mass(&grid));
        ask(&grid, stands, (stuff, theory), patches, tones)
    }
}

/// A small triangle with a corner at a place: the mesher keeps corners.
fn mark([x, y]: Place) -> Loop {
    let points = vec![
        [x, y],
        [x + 0.5 * MARK, y - MARK],
        [x - 0.5 * MARK, y - MARK],
    ];
    let kind = LoopKind::Line;
    Loop { points, kind }
}

/// Asks a plate that stands and weighs so.
pub(crate) fn ask(
    grid: &Grid,
    (layout, mass): (Layout, Vec<f64>),
    (stuff, theory): (&Stuff, Theory),
    patches: &[(Place, f64)],
    tones: usize,
) -> Found {
    let mut plate = Plate::new(grid, stuff, layout, theory).unwrap();
    let mut of = |(at, radius): &(Place, f64)| {
        let patch = plate.patch(*at, *radius).unwrap();
        plate.compliance(&patch)
    };
    let compliance = patches.iter().map(&mut of).collect();
    let found = if tones > 0 {
        plate.weighed(&mass).tones::<10>(tones)
    } else {
        Vec::new()
    };
    assert_eq!(found.len(), tones, "the tones did not settle");
    Found {
        compliance,
        frequency: found.iter().map(|t| t.frequency).collect(),
    }
}

/// Nodes where the mesh ends.
pub(crate) fn edge_nodes(grid: &Grid) -> Vec<usize> {
    let mut sides: BTreeMap<(u32, u32), u32> = BTreeMap::new();
    for [a, b, c] in &grid.mesh().triangles {
        for (p, q) in [(a, b), (b, c), (c, a)] {
            *sides.entry((*p.min(q), *p.max(q))).or_default() += 1;
        }
    }
    let ends = sides.iter().filter(|(_, count)| **count == 1);
    let mut nodes: Vec<usize> = ends
        .flat_map(|((p, q), _)| [*p as usize, *q as usize])
        .collect();
    nodes.sort_unstable();
    nodes.dedup();
    nodes
}

/// Model problem (c) of `plates.json`: disc R 90, boss r 12 20 mm thick, five groups of four slots 4 mm wide.
pub(crate) fn problem_c(t: f64) -> Plan {
    let mut slots = Vec::new();
    for k in 0..5 {
        let angle = f64::from(k) / 5.0 * core::f64::consts::TAU;
        let (sin, cos) = (libm::sin(angle), libm::cos(angle));
        let turned = |x: f64, y: f64| [1e-3 * (x * cos - y * sin), 1e-3 * (x * sin + y * cos)];
        for y in [-18.0_f64, -6.0, 6.0, 18.0] {
            let end = (83.0_f64 * 83.0 - y * y).sqrt();
            slots.push(Shape::Slot {
                from: turned(end - 41.0, y),
                to: turned(end, y),
                width: 0.004,
            });
        }
    }
    Plan::even(Shape::circle([0.0, 0.0], 0.09), t, Held::Clamped)
        .with(Shape::circle([0.0, 0.0], 0.012), 0.02)
        .slotted(slots)
}

/// Places P1 to P4 of problem (c), m: two ribs, open web, near the boss.
pub(crate) const PLACES_C: [Place; 4] = [
    [0.062, 0.0],
    [0.060, 0.012],
    [0.050159, 0.036443],
    [0.025, 0.0],
];

/// The floor of model problem (d): 140 x 90, clamped.
pub(crate) fn floor_d(t: f64) -> Plan {
    Plan::even(Shape::rect([0.0, 0.0], [0.14, 0.09], 0.0), t, Held::Clamped)
}

/// Its six slots, 5 x 60; round ends or square ones.
pub(crate) fn slots_d(round: bool) -> Vec<Shape> {
    let slot = |k: u32| {
        let x = 0.0325 + 0.015 * f64::from(k);
        if round {
            Shape::Slot {
                from: [x, 0.0175],
                to: [x, 0.0725],
                width: 0.005,
            }
        } else {
            Shape::rect([x - 0.0025, 0.015], [x + 0.0025, 0.075], 0.0)
        }
    };
    (0..6).map(slot).collect()
}

/// Places of problem (d), m: two ribs, near the edge, open floor.
pub(crate) const PLACES_D: [Place; 4] = [[0.07, 0.045], [0.04, 0.045], [0.07, 0.08], [0.02, 0.045]];
