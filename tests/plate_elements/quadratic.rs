//! The other element: deflection and both slopes quadratic on six nodes, integrated in full. No trick, so it needs none of
//! the crate's code; it stiffens where the plate is thin against the element.

use crate::band::{Envelope, firsts, graph, multiplications, ordering};
use crate::plates::Place;
use core::f64::consts::TAU;
use std::collections::BTreeMap;
use thinwright_plate::fem::{Grid, Layout, Stuff};

/// Points and weights that integrate the fourth degree (Dunavant 1985, from memory, held against exact means in a test).
pub(crate) const POINTS: [([f64; 3], f64); 6] = {
    const A: f64 = 0.445_948_490_915_965;
    const B: f64 = 0.091_576_213_509_771;
    const WA: f64 = 0.223_381_589_678_011;
    const WB: f64 = 0.109_951_743_655_322;
    [
        ([1.0 - 2.0 * A, A, A], WA),
        ([A, 1.0 - 2.0 * A, A], WA),
        ([A, A, 1.0 - 2.0 * A], WA),
        ([1.0 - 2.0 * B, B, B], WB),
        ([B, 1.0 - 2.0 * B, B], WB),
        ([B, B, 1.0 - 2.0 * B], WB),
    ]
};
/// Share of the thickness that carries shear.
const SHEAR_SHARE: f64 = 5.0 / 6.0;
/// Rings and places on a ring that stand for a patch.
const RINGS: u32 = 8;
const ON_RING: u32 = 24;
/// Rounds of the search for the first tone.
const ROUNDS: u32 = 40;
const SIDES: [(usize, usize); 3] = [(0, 1), (1, 2), (2, 0)];

/// A plate of quadratic elements, factored.
pub(crate) struct Quadratic<'a> {
    grid: &'a Grid,
    layout: Layout,
    /// Six nodes of each solid triangle, by place in the equations; none where it is open.
    nodes: Vec<Option<[usize; 6]>>,
    held: Vec<bool>,
    factor: Envelope,
    rho: f64,
    /// Unknowns that are free.
    pub(crate) unknowns: usize,
    /// Multiplications that the factor takes.
    pub(crate) work: f64,
}

/// Shape functions at a point, corners first, then the middles of the sides.
pub(crate) fn shapes(at: &[f64; 3]) -> [f64; 6] {
    let corner = |i: usize| at[i] * (2.0 * at[i] - 1.0);
    let side = |k: usize| 4.0 * at[SIDES[k].0] * at[SIDES[k].1];
    [corner(0), corner(1), corner(2), side(0), side(1), side(2)]
}

fn slopes(at: &[f64; 3], grad: &[[f64; 2]; 3]) -> [[f64; 2]; 6] {
    let corner = |i: usize| grad[i].map(|g| (4.0 * at[i] - 1.0) * g);
    let side = |k: usize| {
        let (i, j) = SIDES[k];
        [0, 1].map(|d| 4.0 * (at[i] * grad[j][d] + at[j] * grad[i][d]))
    };
    [corner(0), corner(1), corner(2), side(0), side(1), side(2)]
}

/// Gradients of the area coordinates.
fn gradients(at: [[f64; 2]; 3], area: f64) -> [[f64; 2]; 3] {
    let [a, b, c] = at;
    [(b, c), (c, a), (a, b)]
        .map(|(p, q)| [(p[1] - q[1]) / (2.0 * area), (q[0] - p[0]) / (2.0 * area)])
}

/// Stiffness of an element.
fn stiffness(grid: &Grid, index: usize, stuff: &Stuff, t: f64) -> [[f64; 18]; 18] {
    let area = grid.area(index);
    let grad = gradients(grid.corners(index), area);
    let bending = stuff.e_mod * t * t * t / (12.0 * (1.0 - stuff.nu * stuff.nu));
    let shearing = SHEAR_SHARE * stuff.e_mod * t / (2.0 * (1.0 + stuff.nu));
    let mut k = [[0.0; 18]; 18];
    for (at, weight) in &POINTS {
        let (shape, slope) = (shapes(at), slopes(at, &grad));
        // Rows: curvature xx, yy, 2 xy, shear x, y.
        let mut rows = [[0.0; 18]; 5];
        for n in 0..6 {
            let [x, y] = slope[n];
            rows[0][3 * n + 1] = x;
            rows[1][3 * n + 2] = y;
            rows[2][3 * n + 1] = y;
            rows[2][3 * n + 2] = x;
            rows[3][3 * n] = x;
            rows[3][3 * n + 1] = shape[n];
            rows[4][3 * n] = y;
            rows[4][3 * n + 2] = shape[n];
        }
        let weight = weight * area;
        for j in 0..18 {
            let of = [
                bending * (rows[0][j] + stuff.nu * rows[1][j]),
                bending * (rows[1][j] + stuff.nu * rows[0][j]),
                bending * 0.5 * (1.0 - stuff.nu) * rows[2][j],
                shearing * rows[3][j],
                shearing * rows[4][j],
            ];
            for (i, k) in k.iter_mut().enumerate() {
                k[j] += weight * (0..5).map(|r| rows[r][i] * of[r]).sum::<f64>();
            }
        }
    }
    k
}

/// Nodes of the solid triangles, the middles of the sides numbered behind the corners, all without gaps; and their count.
fn numbered(grid: &Grid, layout: &Layout) -> (Vec<Option<[usize; 6]>>, usize) {
    let mut names: BTreeMap<(u32, u32), usize> = BTreeMap::new();
    let mut name = |a: u32, b: u32| {
        let next = names.len();
        *names.entry((a.min(b), a.max(b))).or_insert(next)
    };
    let triangles = grid.mesh().triangles.iter().zip(&layout.thickness);
    let of = |(t, thick): (&[u32; 3], &f64)| {
        let side = |k: usize| (t[SIDES[k].0], t[SIDES[k].1]);
        (*thick > 0.0).then(|| {
            let all = [
                (t[0], t[0]),
                (t[1], t[1]),
                (t[2], t[2]),
                side(0),
                side(1),
                side(2),
            ];
            all.map(|(a, b)| name(a, b))
        })
    };
    let nodes: Vec<_> = triangles.map(of).collect();
    let count = names.len();
    (nodes, count)
}

impl<'a> Quadratic<'a> {
    /// Puts a layout together on a mesh, clamped at such places.
    pub(crate) fn new(
        (grid, layout): (&'a Grid, Layout),
        stuff: &Stuff,
        clamped: fn(Place) -> bool,
    ) -> Quadratic<'a> {
        let (mut nodes, count) = numbered(grid, &layout);
        let solid: Vec<[usize; 6]> = nodes.iter().flatten().copied().collect();
        let neighbours = graph(count, &solid);
        let place = ordering(&neighbours);
        let first = firsts(&neighbours, &place);
        for six in nodes.iter_mut().flatten() {
            *six = six.map(|n| place[n]);
        }
        let held = held(grid, (&nodes, count), clamped);
        let work = multiplications(&first);
        let mut matrix = Envelope::new(first);
        for (index, six) in nodes.iter().enumerate() {
            let Some(six) = six else { continue };
            let k = stiffness(grid, index, stuff, layout.thickness[index]);
            let rows: [usize; 18] = core::array::from_fn(|i| 3 * six[i / 3] + i % 3);
            for (i, row) in rows.iter().enumerate() {
                for (j, column) in rows.iter().enumerate() {
                    if !held[row / 3] && !held[column / 3] {
                        matrix.add(*row, *column, k[i][j]);
                    }
                }
            }
        }
        for (node, _) in held.iter().enumerate().filter(|(_, held)| **held) {
            (0..3).for_each(|d| matrix.add(3 * node + d, 3 * node + d, 1.0));
        }
        Quadratic {
            grid,
            unknowns: 3 * held.iter().filter(|held| !**held).count(),
            layout,
            nodes,
            held,
            factor: matrix.factor(),
            rho: stuff.rho,
            work,
        }
    }

    /// Mean deflection of a patch under an even load of 1 N on it.
    pub(crate) fn compliance(&self, (at, radius): (Place, f64)) -> f64 {
        let mut load = vec![0.0; 3 * self.held.len()];
        let mut count = 0.0;
        for ring in 0..RINGS {
            let r = radius * ((f64::from(ring) + 0.5) / f64::from(RINGS)).sqrt();
            for k in 0..ON_RING {
                let turn = (f64::from(k) + 0.5 * f64::from(ring % 2)) / f64::from(ON_RING) * TAU;
                let place = [at[0] + r * libm::cos(turn), at[1] + r * libm::sin(turn)];
                let Some((triangle, shares)) = self.grid.locate(place) else {
                    continue;
                };
                if let Some(six) = self.nodes[triangle] {
                    count += 1.0;
                    for (node, share) in six.into_iter().zip(shapes(&shares)) {
                        load[3 * node] += share;
                    }
                }
            }
        }
        self.release(&mut load);
        load.iter_mut().for_each(|l| *l /= count);
        let mut w = load.clone();
        self.factor.solve(&mut w);
        w.iter().zip(&load).map(|(w, l)| w * l).sum()
    }

    /// What bears on a held node goes into what holds it.
    fn release(&self, load: &mut [f64]) {
        for (node, _) in self.held.iter().enumerate().filter(|(_, held)| **held) {
            load[3 * node..3 * node + 3].fill(0.0);
        }
    }

    fn times_mass(&self, x: &[f64]) -> Vec<f64> {
        let mut y = vec![0.0; x.len()];
        for (index, six) in self.nodes.iter().enumerate() {
            let Some(six) = six else { continue };
            let t = self.layout.thickness[index];
            let moving = self.rho * t * self.grid.area(index);
            let of = [moving, moving * t * t / 12.0, moving * t * t / 12.0];
            for (at, weight) in &POINTS {
                let shape = shapes(at);
                for (d, of) in of.iter().enumerate() {
                    let here: f64 = six.iter().zip(shape).map(|(n, s)| s * x[3 * n + d]).sum();
                    for (n, s) in six.iter().zip(shape) {
                        y[3 * n + d] += weight * of * s * here;
                    }
                }
            }
        }
        self.release(&mut y);
        y
    }

    /// The first tone, Hz, by inverse iteration from an even push.
    pub(crate) fn first_tone(&self) -> f64 {
        let mut x: Vec<f64> = (0..3 * self.held.len())
            .map(|i| if i % 3 == 0 { 1.0 } else { 0.0 })
            .collect();
        let mut squared = 0.0;
        for _ in 0..ROUNDS {
            let y = self.times_mass(&x);
            let size: f64 = x.iter().zip(&y).map(|(x, y)| x * y).sum();
            x = y;
            self.factor.solve(&mut x);
            let scale = size.sqrt();
            let y = self.times_mass(&x);
            // The quotient of one over the square: never below the truth.
            squared = 1.0 / (x.iter().zip(&y).map(|(x, y)| x * y).sum::<f64>() / size).sqrt();
            x.iter_mut().for_each(|x| *x /= scale);
        }
        squared.sqrt() / TAU
    }
}

/// Nodes that are clamped, by place in the equations.
fn held(
    grid: &Grid,
    (nodes, count): (&[Option<[usize; 6]>], usize),
    clamped: fn(Place) -> bool,
) -> Vec<bool> {
    let side = |t: &[u32; 3], k: usize| {
        let (a, b) = (t[SIDES[k].0], t[SIDES[k].1]);
        (a.min(b), a.max(b))
    };
    let mut met: BTreeMap<(u32, u32), u32> = BTreeMap::new();
    for t in &grid.mesh().triangles {
        (0..3).for_each(|k| *met.entry(side(t, k)).or_default() += 1);
    }
    let mut held = vec![false; count];
    for (t, six) in grid.mesh().triangles.iter().zip(nodes) {
        let Some(six) = six else { continue };
        let on = t.map(|n| clamped(grid.mesh().nodes[n as usize]));
        for k in 0..3 {
            let (i, j) = SIDES[k];
            held[six[k]] |= on[k];
            held[six[3 + k]] |= on[i] && on[j] && met[&side(t, k)] == 1;
        }
    }
    held
}
