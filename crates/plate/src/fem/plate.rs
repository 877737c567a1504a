//! One state of a part as a plate: its stiffness, factored, and what it answers.

use super::element::{Element, Stiffness};
use super::factor::{Block, Factor, Matrix, Path};
use super::grid::Grid;
use super::patch::Patch;
use super::{FemError, Held, Layout, Stuff, Theory};

/// A plate, ready to be asked.
pub struct Plate<'a> {
    pub(super) grid: &'a Grid,
    layout: Layout,
    stuff: Stuff,
    theory: Theory,
    pub(super) factor: Factor,
    path: Path,
    /// Mass that goes with deflection \[kg\] and with each slope \[kg m2\], by row; 0 where it is held.
    pub(super) mass: Vec<[f64; 3]>,
}

/// What is put together from the elements.
struct Sum {
    matrix: Matrix,
    mass: Vec<[f64; 3]>,
}

impl<'a> Plate<'a> {
    /// Puts the plate together and factors it.
    ///
    /// # Errors
    /// Values that are none, a layout of another grid, nothing solid, a part in pieces, or one that nothing holds.
    #[inline(never)]
    pub fn new(
        grid: &'a Grid,
        stuff: &Stuff,
        layout: Layout,
        theory: Theory,
    ) -> Result<Plate<'a>, FemError> {
        check(grid, stuff, &layout)?;
        let solid = solid_nodes(grid, &layout)?;
        let free = free(grid, &layout, &solid);
        let Sum { matrix, mass } = sum(grid, stuff, &layout, (&free, theory));
        let factor = Factor::new(&grid.pattern, &matrix).ok_or(FemError::Unheld)?;
        Ok(Plate {
            path: Path::new(&grid.pattern),
            grid,
            layout,
            stuff: *stuff,
            theory,
            factor,
            mass,
        })
    }

    /// The patch around a place \[m\] of this radius \[m\]; `None` where there is no material.
    pub fn patch(&self, centre: [f64; 2], radius: f64) -> Option<Patch> {
        Patch::new(self.grid, centre, radius, |t| {
            self.layout.thickness[t] > 0.0
        })
    }

    /// Mean deflection of the patch under an even load of 1 N on it \[m/N\].
    pub fn compliance(&mut self, patch: &Patch) -> f64 {
        let (rows, mass) = (&self.grid.pattern.row_of, &self.mass);
        let load = patch
            .loads
            .iter()
            .map(|&(node, share)| (rows[node as usize], share));
        // What stands on a held node goes into what holds it.
        let load = load.filter(|(row, _)| mass[*row as usize][0] > 0.0);
        self.path.energy((&self.grid.pattern, &self.factor), load)
    }

    /// Unknowns (w, slope x, slope y) of every node under an even load of 1 N on a patch.
    pub fn deflection(&self, patch: &Patch) -> Vec<[f64; 3]> {
        let pattern = &self.grid.pattern;
        let mut x = vec![[[0.0; 1]; 3]; pattern.len()];
        for &(node, share) in &patch.loads {
            let row = pattern.row_of[node as usize] as usize;
            if self.mass[row][0] > 0.0 {
                x[row][0][0] += share;
            }
        }
        self.factor.forward(pattern, &mut x);
        self.factor.backward(pattern, &mut x);
        let of = |&row: &u32| x[row as usize].map(|v| v[0]);
        pattern.row_of.iter().map(of).collect()
    }

    /// Mean deflection of another patch under 1 N on this one \[m/N\].
    pub fn between(&self, load: &Patch, other: &Patch) -> f64 {
        let w = self.deflection(load);
        other
            .loads
            .iter()
            .map(|&(node, share)| share * w[node as usize][0])
            .sum()
    }

    /// Bending moments (x, y, xy) \[N m/m\] in the middle of a triangle, from the unknowns of the nodes.
    pub fn moment(&self, unknowns: &[[f64; 3]], triangle: usize) -> [f64; 3] {
        let t = self.layout.thickness[triangle];
        if t <= 0.0 {
            return [0.0; 3];
        }
        let element = Element::new(self.grid.corners(triangle), t, self.stuff.nu, self.theory);
        let mut of = [0.0; 9];
        for (k, node) in self.grid.mesh().triangles[triangle].iter().enumerate() {
            of[3 * k..3 * k + 3].copy_from_slice(&unknowns[*node as usize]);
        }
        element.moment(&of, rigidity(&self.stuff, t), self.stuff.nu)
    }

    /// Moments averaged over the triangles that a patch touches \[N m/m\], and the radius \[m\] of the disc of their area.
    pub fn mean_moment(&self, unknowns: &[[f64; 3]], patch: &Patch) -> ([f64; 3], f64) {
        let (mut sum, mut area) = ([0.0; 3], 0.0);
        for &triangle in &patch.triangles {
            let of = self.grid.area(triangle as usize);
            area += of;
            for (sum, m) in sum.iter_mut().zip(self.moment(unknowns, triangle as usize)) {
                *sum += of * m;
            }
        }
        (sum.map(|m| m / area), (area / core::f64::consts::PI).sqrt())
    }

    /// The same plate with so many times the mass, one factor for each triangle.
    #[must_use]
    pub fn heavier(self, factors: &[f64]) -> Plate<'a> {
        let own = self.layout.thickness.clone();
        self.with_mass(&own, |index| factors.get(index).copied().unwrap_or(1.0))
    }

    /// The same plate with the mass that goes with other thicknesses \[m\], one for each triangle: where the stiffness of a thin
    /// part runs on into a thick one, its mass does not.
    #[must_use]
    pub fn weighed(self, thickness: &[f64]) -> Plate<'a> {
        self.with_mass(thickness, |_| 1.0)
    }

    fn with_mass(mut self, thickness: &[f64], factor: impl Fn(usize) -> f64) -> Plate<'a> {
        // What has no mass is held.
        let held: Vec<_> = self.mass.iter().map(|m| m.map(|m| m <= 0.0)).collect();
        self.mass.fill([0.0; 3]);
        let triangles = self.grid.mesh().triangles.iter().zip(thickness);
        for (index, (nodes, t)) in triangles.enumerate() {
            let of = weight(&self.stuff, *t, self.grid.area(index), self.theory);
            let of = of.map(|m| m * factor(index));
            for node in nodes {
                let row = self.grid.pattern.row_of[*node as usize] as usize;
                for (d, of) in of.into_iter().enumerate() {
                    if !held[row][d] {
                        self.mass[row][d] += of;
                    }
                }
            }
        }
        self
    }

    /// Poisson's ratio.
    pub fn nu(&self) -> f64 {
        self.stuff.nu
    }

    /// The layout.
    pub fn layout(&self) -> &Layout {
        &self.layout
    }
}

/// Bending rigidity \[N m\].
fn rigidity(stuff: &Stuff, t: f64) -> f64 {
    stuff.e_mod * t * t * t / (12.0 * (1.0 - stuff.nu * stuff.nu))
}

fn check(grid: &Grid, stuff: &Stuff, layout: &Layout) -> Result<(), FemError> {
    let mesh = grid.mesh();
    let fits = layout.thickness.len() == mesh.triangles.len()
        && layout.bed.len() == mesh.triangles.len()
        && layout.held.len() == mesh.nodes.len();
    if !fits {
        return Err(FemError::Mismatch);
    }
    let bad = |value: &&f64| !(**value >= 0.0 && value.is_finite());
    if let Some(&value) = layout.thickness.iter().chain(&layout.bed).find(bad) {
        return Err(FemError::Value { value });
    }
    let Stuff { e_mod, nu, rho } = *stuff;
    for value in [e_mod, rho, nu + 1.0, 0.501 - nu] {
        if !(value > 0.0 && value.is_finite()) {
            return Err(FemError::Value { value });
        }
    }
    Ok(())
}

/// For each node whether it is on something solid; one piece.
fn solid_nodes(grid: &Grid, layout: &Layout) -> Result<Vec<bool>, FemError> {
    let mesh = grid.mesh();
    let mut leader: Vec<u32> = (0..).take(mesh.nodes.len()).collect();
    let mut solid = vec![false; mesh.nodes.len()];
    for (nodes, t) in mesh.triangles.iter().zip(&layout.thickness) {
        if *t <= 0.0 {
            continue;
        }
        for node in nodes {
            solid[*node as usize] = true;
        }
        let first = lead(&mut leader, nodes[0]);
        for node in &nodes[1..] {
            let other = lead(&mut leader, *node);
            leader[other as usize] = first;
        }
    }
    let heads = (0..).take(leader.len()).zip(&solid);
    let count = heads
        .filter(|(i, solid)| **solid && leader[*i as usize] == *i)
        .count();
    match count {
        0 => Err(FemError::Empty),
        1 => Ok(solid),
        count => Err(FemError::Pieces { count }),
    }
}

/// The node that stands for a node's piece; ways to it are halved.
fn lead(leader: &mut [u32], mut node: u32) -> u32 {
    while leader[node as usize] != node {
        leader[node as usize] = leader[leader[node as usize] as usize];
        node = leader[node as usize];
    }
    node
}

/// Which unknowns of each node are free.
fn free(grid: &Grid, layout: &Layout, solid: &[bool]) -> Vec<[bool; 3]> {
    let held = layout.held.iter().zip(solid);
    debug_assert_eq!(grid.mesh().nodes.len(), solid.len());
    held.map(|(held, solid)| match held {
        Held::Free => [*solid; 3],
        Held::Supported => [false, *solid, *solid],
        Held::Clamped => [false; 3],
    })
    .collect()
}

fn sum(grid: &Grid, stuff: &Stuff, layout: &Layout, (free, theory): (&[[bool; 3]], Theory)) -> Sum {
    let (mesh, pattern) = (grid.mesh(), &grid.pattern);
    let mut matrix = Matrix::new(pattern);
    let mut mass = vec![[0.0; 3]; mesh.nodes.len()];
    for (index, nodes) in mesh.triangles.iter().enumerate() {
        let (t, bed) = (layout.thickness[index], layout.bed[index]);
        if t <= 0.0 {
            continue;
        }
        let element = Element::new(grid.corners(index), t, stuff.nu, theory);
        let mut k = element.stiffness(rigidity(stuff, t), stuff.nu, t);
        rest(&mut k, bed * element.area);
        let rows = nodes.map(|node| pattern.row_of[node as usize]);
        for i in 0..3 {
            for j in 0..3 {
                let both = (free[nodes[i] as usize], free[nodes[j] as usize]);
                matrix.add(pattern, (rows[i], rows[j]), &block(&k, (i, j), both));
            }
            let of = weight(stuff, t, element.area, theory);
            for (d, of) in of.into_iter().enumerate() {
                if free[nodes[i] as usize][d] {
                    mass[rows[i] as usize][d] += of;
                }
            }
        }
    }
    // What is held stands on its own: a one on the diagonal.
    for (node, free) in free.iter().enumerate() {
        let d = &mut matrix.diagonal[pattern.row_of[node] as usize];
        for (k, free) in free.iter().enumerate() {
            if !free {
                d[4 * k] = 1.0;
            }
        }
    }
    Sum { matrix, mass }
}

/// Mass of a third of a triangle that goes with deflection \[kg\] and with each slope \[kg m2\].
fn weight(stuff: &Stuff, t: f64, area: f64, theory: Theory) -> [f64; 3] {
    let moving = stuff.rho * t * area / 3.0;
    // Thin plates have no inertia against tilting.
    let tilting = match theory {
        Theory::ShearFlexible => moving * t * t / 12.0,
        Theory::Thin => 0.0,
    };
    [moving, tilting, tilting]
}

/// Adds a bed of this stiffness (N/m) under the whole element, spread as linear deflections feel it.
fn rest(k: &mut Stiffness, stiffness: f64) {
    for i in 0..3 {
        for j in 0..3 {
            k[3 * i][3 * j] += stiffness * if i == j { 1.0 / 6.0 } else { 1.0 / 12.0 };
        }
    }
}

/// The block of two nodes, without what is held.
fn block(k: &Stiffness, (i, j): (usize, usize), free: ([bool; 3], [bool; 3])) -> Block {
    core::array::from_fn(|at| {
        let (r, c) = (at / 3, at % 3);
        if free.0[r] && free.1[c] {
            k[3 * i + r][3 * j + c]
        } else {
            0.0
        }
    })
}
