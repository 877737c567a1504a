//! The problems that the elements are compared on, and what each gives on meshes finer and finer.

use crate::band;
use crate::plates::{self, ALUMINIUM, Fine, PLACES_C, PLACES_D, Place, Plan, Shape};
use crate::quadratic::Quadratic;
use thinwright_plate::fem::{Grid, Held, Layout, Theory};

/// A problem: a plate, what is asked of it, and the meshes it is asked on.
pub(crate) struct Problem {
    pub(crate) name: &'static str,
    pub(crate) title: &'static str,
    pub(crate) plan: Plan,
    clamped: fn(Place) -> bool,
    /// What each value is; the last is the first tone.
    pub(crate) values: Vec<&'static str>,
    patches: Vec<(Place, f64)>,
    /// Which value is a rib's, or what comes nearest.
    pub(crate) rib: usize,
    /// Which values are drawn.
    pub(crate) drawn: &'static [usize],
    /// Meshes of the crate's element; the last two give the limit.
    linear: Vec<Fine>,
    /// Meshes of the quadratic element.
    quadratic: Vec<Fine>,
}

/// Whose element.
#[derive(Clone, Copy)]
enum Element {
    /// The crate's: three nodes.
    Linear,
    /// The other: six nodes.
    Quadratic,
}

/// What an element gives on a mesh.
pub(crate) struct OnMesh {
    pub(crate) fine: Fine,
    pub(crate) nodes: usize,
    pub(crate) unknowns: usize,
    /// Multiplications of factoring in an envelope, the same way for both elements.
    pub(crate) work: f64,
    pub(crate) values: Vec<f64>,
    /// Value over limit, less 1.
    pub(crate) errors: Vec<f64>,
}

pub(crate) struct Curve {
    pub(crate) meshes: Vec<OnMesh>,
}

/// What two meshes say of the error of the coarser, beside what it is: shares to be added to its values.
pub(crate) struct Estimate {
    pub(crate) from: Fine,
    pub(crate) to: Fine,
    pub(crate) truth: Vec<f64>,
    pub(crate) estimate: Vec<f64>,
}

pub(crate) struct Result {
    pub(crate) limits: Vec<f64>,
    pub(crate) linear: Curve,
    pub(crate) quadratic: Curve,
    pub(crate) estimates: Vec<Estimate>,
}

fn disc_with_slots() -> Problem {
    let mut patches = vec![([0.0, 0.0], 0.012)];
    patches.extend(PLACES_C.map(|at| (at, 0.003)));
    Problem {
        name: "c",
        title: "model problem (c), 4 mm: disc with boss and slots",
        plan: plates::problem_c(0.004),
        clamped: |p| libm::hypot(p[0], p[1]) > 0.0895,
        values: vec![
            "boss",
            "rib",
            "other rib",
            "open web",
            "near the boss",
            "first tone",
        ],
        patches,
        rib: 1,
        drawn: &[0, 1, 3, 5],
        linear: vec![
            (0.02, 1.0),
            (0.013, 1.5),
            (0.01, 2.0),
            (0.008, 3.0),
            (0.006, 4.0),
            (0.004, 6.0),
            (0.003, 4.0),
            (0.0015, 8.0),
        ],
        quadratic: vec![(0.02, 1.0), (0.008, 1.0), (0.008, 2.0)],
    }
}

fn floor_with_slots() -> Problem {
    Problem {
        name: "d",
        title: "model problem (d), 4 mm: rectangle with slots",
        plan: plates::floor_d(0.004).slotted(plates::slots_d(true)),
        clamped: |[x, y]| x.min(y).min(0.14 - x).min(0.09 - y) < 1e-9,
        values: vec![
            "rib",
            "other rib",
            "near the edge",
            "open web",
            "first tone",
        ],
        patches: PLACES_D.map(|at| (at, 0.003)).to_vec(),
        rib: 0,
        drawn: &[0, 2, 3, 4],
        linear: vec![
            (0.0156, 1.0),
            (0.011, 1.5),
            (0.0078, 2.0),
            (0.006, 3.0),
            (0.0045, 4.0),
            (0.003, 6.0),
            (0.002, 5.0),
            (0.001, 10.0),
        ],
        quadratic: vec![(0.0156, 1.0), (0.0078, 1.0), (0.006, 2.0)],
    }
}

fn disc() -> Problem {
    Problem {
        name: "disc",
        title: "a clamped disc, 5 mm",
        plan: Plan::even(Shape::circle([0.0, 0.0], 0.09), 0.005, Held::Free),
        clamped: |p| libm::hypot(p[0], p[1]) > 0.0895,
        values: vec!["middle", "half-way out", "first tone"],
        patches: vec![([0.0, 0.0], 0.005), ([0.045, 0.0], 0.005)],
        rib: 0,
        drawn: &[],
        linear: [0.03, 0.02, 0.014, 0.01, 0.007, 0.005, 0.004, 0.002]
            .map(|most| (most, 1.0))
            .to_vec(),
        quadratic: [0.045, 0.03, 0.02, 0.014, 0.01]
            .map(|most| (most, 1.0))
            .to_vec(),
    }
}

/// One rib by itself, loaded off its middle line.
fn rib() -> Problem {
    Problem {
        name: "rib",
        title: "a single rib, 45 x 8 x 4 mm",
        plan: Plan::even(
            Shape::rect([0.0, 0.0], [0.045, 0.008], 0.0),
            0.004,
            Held::Free,
        ),
        clamped: |[x, _]| x.min(0.045 - x) < 1e-9,
        values: vec!["off the middle line", "a quarter along", "first tone"],
        patches: vec![([0.0225, 0.006], 0.002), ([0.01125, 0.004], 0.002)],
        rib: 0,
        drawn: &[],
        linear: [0.008, 0.005, 0.004, 0.003, 0.002, 0.0014, 0.001, 0.0005]
            .map(|most| (most, 1.0))
            .to_vec(),
        quadratic: [0.015, 0.008, 0.005, 0.003, 0.002]
            .map(|most| (most, 1.0))
            .to_vec(),
    }
}

pub(crate) fn all() -> [Problem; 4] {
    [disc_with_slots(), floor_with_slots(), disc(), rib()]
}

/// Unknowns and work of the crate's element: three to each solid node.
fn cost(grid: &Grid, layout: &Layout) -> (usize, f64) {
    let mesh = grid.mesh();
    let mut name = vec![None; mesh.nodes.len()];
    let mut count = 0;
    let mut solid = Vec::new();
    for (nodes, t) in mesh.triangles.iter().zip(&layout.thickness) {
        if *t > 0.0 {
            solid.push(nodes.map(|n| {
                *name[n as usize].get_or_insert_with(|| {
                    count += 1;
                    count - 1
                })
            }));
        }
    }
    let neighbours = band::graph(count, &solid);
    let first = band::firsts(&neighbours, &band::ordering(&neighbours));
    let named = name.iter().zip(&layout.held);
    let free = named.filter(|(name, held)| name.is_some() && **held == Held::Free);
    (3 * free.count(), band::multiplications(&first))
}

impl Problem {
    fn on(&self, element: Element, fine: Fine) -> OnMesh {
        let grid = self.plan.grid(fine);
        let mut layout = self.plan.layout(&grid);
        for (held, p) in layout.held.iter_mut().zip(&grid.mesh().nodes) {
            *held = if (self.clamped)(*p) {
                Held::Clamped
            } else {
                Held::Free
            };
        }
        let nodes = grid.mesh().nodes.len();
        let (unknowns, work, values) = match element {
            Element::Linear => {
                let (unknowns, work) = cost(&grid, &layout);
                let what = (&ALUMINIUM, Theory::ShearFlexible);
                let stands = (layout, self.plan.mass(&grid));
                let found = plates::ask(&grid, stands, what, &self.patches, 1);
                let mut values = found.compliance;
                values.extend(found.frequency);
                (unknowns, work, values)
            }
            Element::Quadratic => {
                let plate = Quadratic::new((&grid, layout), &ALUMINIUM, self.clamped);
                let asked = self.patches.iter().map(|patch| plate.compliance(*patch));
                let values = asked.chain([plate.first_tone()]).collect();
                (plate.unknowns, plate.work, values)
            }
        };
        OnMesh {
            fine,
            nodes,
            unknowns,
            work,
            values,
            errors: Vec::new(),
        }
    }

    fn curve(&self, element: Element) -> Curve {
        let meshes = match element {
            Element::Linear => &self.linear,
            Element::Quadratic => &self.quadratic,
        };
        let meshes = meshes.iter().map(|fine| self.on(element, *fine)).collect();
        Curve { meshes }
    }
}

/// By what share the coarser of two meshes errs, told from both: the error falls with one over the number of nodes.
#[allow(clippy::cast_precision_loss, reason = "counts of nodes")]
fn told(coarse: &OnMesh, fine: &OnMesh) -> Vec<f64> {
    let share = 1.0 / (1.0 - coarse.nodes as f64 / fine.nodes as f64);
    let both = coarse.values.iter().zip(&fine.values);
    both.map(|(c, f)| share * (f / c - 1.0)).collect()
}

impl Result {
    /// Solves a problem on all its meshes.
    pub(crate) fn new(problem: &Problem) -> Result {
        let mut linear = problem.curve(Element::Linear);
        let mut quadratic = problem.curve(Element::Quadratic);
        let [.., near, nearest] = linear.meshes.as_slice() else {
            panic!("too few meshes")
        };
        let limits: Vec<f64> = told(near, nearest)
            .iter()
            .zip(&near.values)
            .map(|(share, value)| value * (1.0 + share))
            .collect();
        for mesh in linear.meshes.iter_mut().chain(&mut quadratic.meshes) {
            let both = mesh.values.iter().zip(&limits);
            mesh.errors = both.map(|(value, limit)| value / limit - 1.0).collect();
        }
        // What the limit was made from says nothing of itself.
        let seen = linear.meshes.len() - 2;
        let estimate = |(from, to): (&OnMesh, &OnMesh)| Estimate {
            from: from.fine,
            to: to.fine,
            truth: from.errors.iter().map(|e| 1.0 / (1.0 + e) - 1.0).collect(),
            estimate: told(from, to),
        };
        let meshes = &linear.meshes[..seen];
        let estimates = meshes
            .iter()
            .zip(meshes.iter().skip(2))
            .map(estimate)
            .collect();
        linear.meshes.truncate(seen);
        Result {
            limits,
            linear,
            quadratic,
            estimates,
        }
    }
}
