//! Entries of the inverse that stand in the pattern of its factor, by the recurrences of Takahashi, Fagan and Chen (1973).

use super::factor::{Block, Factor};
use super::pattern::{NONE, Pattern};
use super::plate::Plate;

impl Plate<'_> {
    /// Deflection of every node under 1 N on that node \[m/N\]: all at once, about twice the work of a factor.
    ///
    /// A load on one node bears on about one triangle's width; a patch smaller or larger than that differs by shear. 0 where a
    /// node is held or open.
    pub fn nodal_compliance(&self) -> Vec<f64> {
        let pattern = &self.grid.pattern;
        let diagonal = selected(pattern, &self.factor);
        let of = |&row: &u32| {
            let moves = self.mass[row as usize][0] > 0.0;
            if moves {
                diagonal[row as usize][0]
            } else {
                0.0
            }
        };
        pattern.row_of.iter().map(of).collect()
    }
}

/// Diagonal blocks of the inverse.
#[inline(never)]
fn selected(pattern: &Pattern, factor: &Factor) -> Vec<Block> {
    let n = pattern.len();
    let mut diagonal = vec![[0.0; 9]; n];
    let mut below = vec![[0.0; 9]; pattern.rows.len()];
    let mut place = vec![NONE; n];
    let mut sums: Vec<Block> = Vec::new();
    let mut unit: Vec<Block> = Vec::new();
    for j in (0..n).rev() {
        let span = pattern.column[j]..pattern.column[j + 1];
        let rows = &pattern.rows[span.clone()];
        unit.clear();
        unit.extend(
            factor.blocks[span.clone()]
                .iter()
                .map(|l| times(l, &factor.inverse[j])),
        );
        sums.clear();
        sums.resize(rows.len(), [0.0; 9]);
        for (at, &i) in (0..).zip(rows) {
            place[i as usize] = at;
        }
        for (at, &k) in rows.iter().enumerate() {
            let k = k as usize;
            less(&mut sums[at], &diagonal[k], &unit[at]);
            let column = pattern.column[k]..pattern.column[k + 1];
            for (&i, z) in pattern.rows[column.clone()].iter().zip(&below[column]) {
                if let Some(l) = unit.get(place[i as usize] as usize) {
                    let to = place[i as usize] as usize;
                    less(&mut sums[to], z, &unit[at]);
                    less_transposed(&mut sums[at], z, l);
                }
            }
        }
        let m = &factor.inverse[j];
        let mut own = [0.0; 9];
        less_transposed(&mut own, m, m);
        own = own.map(|v| -v);
        for (l, z) in unit.iter().zip(&sums) {
            less_transposed(&mut own, l, z);
        }
        diagonal[j] = own;
        for &i in rows {
            place[i as usize] = NONE;
        }
        below[span].copy_from_slice(&sums);
    }
    diagonal
}

fn times(a: &Block, b: &Block) -> Block {
    core::array::from_fn(|at| {
        let (r, c) = (at / 3, at % 3);
        a[3 * r] * b[c] + a[3 * r + 1] * b[3 + c] + a[3 * r + 2] * b[6 + c]
    })
}

/// `to` -= a b.
fn less(to: &mut Block, a: &Block, b: &Block) {
    for (to, v) in to.iter_mut().zip(times(a, b)) {
        *to -= v;
    }
}

/// `to` -= a^T b.
fn less_transposed(to: &mut Block, a: &Block, b: &Block) {
    for r in 0..3 {
        for c in 0..3 {
            to[3 * r + c] -= a[r] * b[c] + a[3 + r] * b[3 + c] + a[6 + r] * b[6 + c];
        }
    }
}
