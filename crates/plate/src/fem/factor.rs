//! The sparse Cholesky factor of a plate's stiffness, in blocks of three, and what is solved with it.
//!
//! Up-looking, as in Davis, Direct Methods for Sparse Linear Systems (2006), ch. 4, with blocks for entries. The work energy
//! of a load that stands on few nodes needs only the rows on their way to the root of the elimination tree.

use super::pattern::{NONE, Pattern};

/// A pivot below this share of its diagonal entry means that nothing holds the plate: the roundings of a floppy but held one stay
/// four orders above, those of a free one two orders below.
const PIVOT: f64 = 1e-12;

/// A block of three by three, row by row.
pub(super) type Block = [f64; 9];

/// The lower triangular factor.
#[derive(Debug, Clone)]
pub(super) struct Factor {
    /// Inverses of the diagonal blocks, lower triangular.
    pub(super) inverse: Vec<Block>,
    /// Blocks below the diagonal, in the pattern's order.
    pub(super) blocks: Vec<Block>,
}

/// A symmetric matrix in the pattern: diagonal blocks, and those left of the diagonal in the pattern's row order.
#[derive(Debug, Clone)]
pub(super) struct Matrix {
    pub(super) diagonal: Vec<Block>,
    pub(super) lower: Vec<Block>,
}

impl Matrix {
    /// An empty matrix.
    pub(super) fn new(pattern: &Pattern) -> Matrix {
        Matrix {
            diagonal: vec![[0.0; 9]; pattern.len()],
            lower: vec![[0.0; 9]; pattern.rows.len()],
        }
    }

    /// Adds a block that couples the rows `i` and `j`, given as rows of `i`; both ways are the same for a symmetric matrix.
    pub(super) fn add(&mut self, pattern: &Pattern, (i, j): (u32, u32), block: &Block) {
        if i == j {
            add(&mut self.diagonal[i as usize], block);
        } else if i > j {
            let span = pattern.row[i as usize]..pattern.row[i as usize + 1];
            if let Ok(at) = pattern.columns[span.clone()].binary_search(&j) {
                add(&mut self.lower[span.start + at], block);
            }
        }
    }
}

fn add(to: &mut Block, block: &Block) {
    for (to, value) in to.iter_mut().zip(block) {
        *to += value;
    }
}

/// `to` -= a b^T.
fn less_times_transposed(to: &mut Block, a: &Block, b: &Block) {
    for r in 0..3 {
        for c in 0..3 {
            to[3 * r + c] -=
                a[3 * r] * b[3 * c] + a[3 * r + 1] * b[3 * c + 1] + a[3 * r + 2] * b[3 * c + 2];
        }
    }
}

/// Inverse of the lower Cholesky factor of a block; `None` where a pivot vanishes beside `beside`.
fn inverse_factor(d: &Block, beside: &Block) -> Option<Block> {
    let sound = |pivot: f64, k: usize| (pivot > PIVOT * beside[4 * k]).then(|| pivot.sqrt());
    let a = sound(d[0], 0)?;
    let (b, c) = (d[3] / a, d[6] / a);
    let e = sound(d[4] - b * b, 1)?;
    let f = (d[7] - c * b) / e;
    let g = sound(d[8] - c * c - f * f, 2)?;
    let (ia, ie, ig) = (1.0 / a, 1.0 / e, 1.0 / g);
    let ib = -b * ia * ie;
    Some([
        ia,
        0.0,
        0.0,
        ib,
        ie,
        0.0,
        -(c * ia + f * ib) * ig,
        -f * ie * ig,
        ig,
    ])
}

impl Factor {
    /// Factors the matrix; `None` when it is not positive definite: nothing holds the plate.
    // Callers may be built for size; what computes stays as fast as it is built here.
    #[inline(never)]
    pub(super) fn new(pattern: &Pattern, matrix: &Matrix) -> Option<Factor> {
        let n = pattern.len();
        let mut inverse: Vec<Block> = Vec::with_capacity(n);
        let mut blocks = vec![[0.0; 9]; pattern.rows.len()];
        let mut filled = pattern.column.clone();
        let mut x = vec![[0.0; 9]; n];
        for k in 0..n {
            let span = pattern.row[k]..pattern.row[k + 1];
            let columns = &pattern.columns[span.clone()];
            for (&i, block) in columns.iter().zip(&matrix.lower[span]) {
                x[i as usize] = *block;
            }
            let mut d = matrix.diagonal[k];
            for &i in columns {
                let i = i as usize;
                // L_ki = x_i L_ii^-T
                let (v, m) = (x[i], &inverse[i]);
                let l: Block = core::array::from_fn(|at| {
                    let (r, c) = (at / 3, at % 3);
                    v[3 * r] * m[3 * c] + v[3 * r + 1] * m[3 * c + 1] + v[3 * r + 2] * m[3 * c + 2]
                });
                let done = pattern.column[i]..filled[i];
                for (&j, below) in pattern.rows[done.clone()].iter().zip(&blocks[done]) {
                    less_times_transposed(&mut x[j as usize], &l, below);
                }
                less_times_transposed(&mut d, &l, &l);
                blocks[filled[i]] = l;
                filled[i] += 1;
            }
            inverse.push(inverse_factor(&d, &matrix.diagonal[k])?);
        }
        Some(Factor { inverse, blocks })
    }

    /// Solves L y = b in place, for `Q` loads at once.
    #[inline(never)]
    pub(super) fn forward<const Q: usize>(&self, pattern: &Pattern, x: &mut [[[f64; Q]; 3]]) {
        for j in 0..pattern.len() {
            let v = lower(&self.inverse[j], &x[j]);
            x[j] = v;
            let span = pattern.column[j]..pattern.column[j + 1];
            for (&i, block) in pattern.rows[span.clone()].iter().zip(&self.blocks[span]) {
                let to = &mut x[i as usize];
                for r in 0..3 {
                    for q in 0..Q {
                        to[r][q] -= block[3 * r] * v[0][q]
                            + block[3 * r + 1] * v[1][q]
                            + block[3 * r + 2] * v[2][q];
                    }
                }
            }
        }
    }

    /// Solves L^T x = y in place, for `Q` loads at once.
    #[inline(never)]
    pub(super) fn backward<const Q: usize>(&self, pattern: &Pattern, x: &mut [[[f64; Q]; 3]]) {
        for j in (0..pattern.len()).rev() {
            let span = pattern.column[j]..pattern.column[j + 1];
            let mut v = x[j];
            for (&i, block) in pattern.rows[span.clone()].iter().zip(&self.blocks[span]) {
                let from = &x[i as usize];
                for r in 0..3 {
                    for q in 0..Q {
                        v[r][q] -= block[r] * from[0][q]
                            + block[3 + r] * from[1][q]
                            + block[6 + r] * from[2][q];
                    }
                }
            }
            let m = &self.inverse[j];
            for q in 0..Q {
                x[j][0][q] = m[0] * v[0][q] + m[3] * v[1][q] + m[6] * v[2][q];
                x[j][1][q] = m[4] * v[1][q] + m[7] * v[2][q];
                x[j][2][q] = m[8] * v[2][q];
            }
        }
    }
}

/// A lower triangular block times values.
fn lower<const Q: usize>(m: &Block, v: &[[f64; Q]; 3]) -> [[f64; Q]; 3] {
    let mut out = [[0.0; Q]; 3];
    for q in 0..Q {
        out[0][q] = m[0] * v[0][q];
        out[1][q] = m[3] * v[0][q] + m[4] * v[1][q];
        out[2][q] = m[6] * v[0][q] + m[7] * v[1][q] + m[8] * v[2][q];
    }
    out
}

/// Room for the work energies of loads that stand on few nodes.
pub(super) struct Path {
    x: Vec<[[f64; 1]; 3]>,
    on: Vec<bool>,
    rows: Vec<u32>,
}

impl Path {
    pub(super) fn new(pattern: &Pattern) -> Path {
        Path {
            x: vec![[[0.0]; 3]; pattern.len()],
            on: vec![false; pattern.len()],
            rows: Vec::new(),
        }
    }

    /// b^T A^-1 b of a load on the deflections of a few rows.
    #[inline(never)]
    pub(super) fn energy(
        &mut self,
        (pattern, factor): (&Pattern, &Factor),
        load: impl Iterator<Item = (u32, f64)>,
    ) -> f64 {
        for (row, value) in load {
            self.x[row as usize][0][0] += value;
            let mut at = row;
            while at != NONE && !self.on[at as usize] {
                self.on[at as usize] = true;
                self.rows.push(at);
                at = pattern.parent[at as usize];
            }
        }
        self.rows.sort_unstable();
        let mut energy = 0.0;
        for &j in &self.rows {
            let j = j as usize;
            let v = lower(&factor.inverse[j], &self.x[j]);
            energy += v[0][0] * v[0][0] + v[1][0] * v[1][0] + v[2][0] * v[2][0];
            let span = pattern.column[j]..pattern.column[j + 1];
            for (&i, block) in pattern.rows[span.clone()].iter().zip(&factor.blocks[span]) {
                let to = &mut self.x[i as usize];
                for r in 0..3 {
                    to[r][0] -= block[3 * r] * v[0][0]
                        + block[3 * r + 1] * v[1][0]
                        + block[3 * r + 2] * v[2][0];
                }
            }
        }
        for &j in &self.rows {
            self.x[j as usize] = [[0.0]; 3];
            self.on[j as usize] = false;
        }
        self.rows.clear();
        energy
    }
}
