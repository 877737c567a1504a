//! Square matrices, and numbers, as power series of the strength of the cut.

use crate::floquet::TINY;

/// A square matrix whose entries are polynomials: one matrix for each power, row by row.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Series {
    /// Rows of the matrix.
    pub(super) size: usize,
    /// The entries, power by power.
    pub(super) terms: Vec<f64>,
}

impl Series {
    /// The matrix that changes nothing.
    pub(super) fn one(size: usize) -> Series {
        let mut terms = vec![0.0; size * size];
        terms.iter_mut().step_by(size + 1).for_each(|t| *t = 1.0);
        Series { size, terms }
    }

    /// How many powers there are.
    pub(super) fn powers(&self) -> usize {
        self.terms.len() / (self.size * self.size)
    }

    /// The product, this matrix on the left.
    pub(super) fn times(&self, right: &Series) -> Series {
        let (size, square) = (self.size, self.size * self.size);
        let powers = self.powers() + right.powers() - 1;
        let mut product = vec![0.0; powers * square];
        for (p, a) in self.terms.chunks_exact(square).enumerate() {
            for (q, b) in right.terms.chunks_exact(square).enumerate() {
                let to = &mut product[(p + q) * square..(p + q + 1) * square];
                multiply_add(a, b, to, size);
            }
        }
        let mut product = Series {
            size,
            terms: product,
        };
        product.trim();
        product
    }

    /// Lets go of the highest powers as long as they are nothing.
    fn trim(&mut self) {
        let square = self.size * self.size;
        while self.terms.len() > square {
            let last = &self.terms[self.terms.len() - square..];
            if last.iter().any(|t| t.abs() > TINY) {
                break;
            }
            self.terms.truncate(self.terms.len() - square);
        }
    }

    /// The greatest entry of any power.
    pub(super) fn greatest(&self) -> f64 {
        self.terms.iter().fold(0.0, |most, t| most.max(t.abs()))
    }

    /// The sum of the diagonal, power by power.
    pub(super) fn trace(&self) -> Vec<f64> {
        let square = self.size * self.size;
        let of = |m: &[f64]| m.iter().step_by(self.size + 1).sum();
        self.terms.chunks_exact(square).map(of).collect()
    }

    /// The trace of a product, without the product.
    fn trace_of_product(&self, right: &Series) -> Vec<f64> {
        let (size, square) = (self.size, self.size * self.size);
        let mut trace = vec![0.0; self.powers() + right.powers() - 1];
        for (p, a) in self.terms.chunks_exact(square).enumerate() {
            for (q, b) in right.terms.chunks_exact(square).enumerate() {
                for (r, row) in a.chunks_exact(size).enumerate() {
                    let column = b[r..].iter().step_by(size);
                    trace[p + q] += row.iter().zip(column).map(|(x, y)| x * y).sum::<f64>();
                }
            }
        }
        trace
    }

    /// This matrix with a polynomial taken from its diagonal.
    fn less(&self, polynomial: &[f64]) -> Series {
        let square = self.size * self.size;
        let mut less = self.clone();
        let powers = polynomial.len().max(self.powers());
        less.terms.resize(powers * square, 0.0);
        for (m, p) in less.terms.chunks_exact_mut(square).zip(polynomial) {
            m.iter_mut().step_by(self.size + 1).for_each(|t| *t -= p);
        }
        less
    }

    /// The coefficients p1, p2 ... of the characteristic polynomial m^N - p1 m^(N-1) - p2 m^(N-2) ..., for a determinant that
    /// is known (recursion of Faddeev and Le Verrier, any handbook of linear algebra, from memory).
    pub(super) fn characteristic(&self, determinant: f64) -> Vec<Vec<f64>> {
        let size = self.size;
        let mut found = vec![self.trace()];
        let mut product = self.clone();
        let mut k = 1.0;
        while found.len() + 1 < size {
            k += 1.0;
            let rest = product.less(&found[found.len() - 1]);
            let trace = if found.len() + 2 < size {
                product = self.times(&rest);
                product.trace()
            } else {
                self.trace_of_product(&rest)
            };
            found.push(trimmed(trace.iter().map(|t| t / k).collect()));
        }
        found.push(vec![-determinant]);
        found
    }
}

/// c += a b for small square matrices.
fn multiply_add(a: &[f64], b: &[f64], c: &mut [f64], size: usize) {
    match size {
        2 => multiply_add_of::<2>(a, b, c),
        4 => multiply_add_of::<4>(a, b, c),
        _ => multiply_add_any(a, b, c, size),
    }
}

/// The same for a size that is known beforehand.
fn multiply_add_of<const N: usize>(a: &[f64], b: &[f64], c: &mut [f64]) {
    let rows = (
        a.as_chunks::<N>().0,
        b.as_chunks::<N>().0,
        c.as_chunks_mut::<N>().0,
    );
    for (row, to) in rows.0.iter().zip(rows.2) {
        for (x, from) in row.iter().zip(rows.1) {
            for (t, y) in to.iter_mut().zip(from) {
                *t += x * y;
            }
        }
    }
}

fn multiply_add_any(a: &[f64], b: &[f64], c: &mut [f64], size: usize) {
    for (row, to) in a.chunks_exact(size).zip(c.chunks_exact_mut(size)) {
        for (x, from) in row.iter().zip(b.chunks_exact(size)) {
            for (t, y) in to.iter_mut().zip(from) {
                *t += x * y;
            }
        }
    }
}

fn trimmed(mut terms: Vec<f64>) -> Vec<f64> {
    while terms.len() > 1 && terms[terms.len() - 1].abs() <= TINY {
        terms.pop();
    }
    terms
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_characteristic_polynomial_vanishes_at_the_eigenvalues() {
        // Upper triangle, linear in x: eigenvalues 0.5 + x, -0.3, 0.2 - x, 0.9 stand on the diagonal.
        let mut terms = vec![0.0; 32];
        for (i, (constant, slope)) in [(0.5, 1.0), (-0.3, 0.0), (0.2, -1.0), (0.9, 0.0)]
            .iter()
            .enumerate()
        {
            terms[5 * i] = *constant;
            terms[16 + 5 * i] = *slope;
        }
        terms[1] = 0.7;
        terms[16 + 6] = -0.4;
        let x: f64 = 0.37;
        let series = Series { size: 4, terms };
        let determinant = (0.5 + x) * -0.3 * (0.2 - x) * 0.9;
        let p = series.characteristic(determinant);
        let at = |c: &Vec<f64>| c.iter().rev().fold(0.0, |sum, t| sum * x + t);
        for root in [0.5 + x, -0.3, 0.2 - x, 0.9_f64] {
            let value = root.powi(4)
                - at(&p[0]) * root.powi(3)
                - at(&p[1]) * root.powi(2)
                - at(&p[2]) * root
                - at(&p[3]);
            assert!(value.abs() < 1e-14, "{root}: {value}");
        }
    }
}
