//! Small dense linear algebra: what series and Ritz methods of plates need, and no more.

/// A pivot below this share of the largest entry counts as singular.
const SINGULAR: f64 = 1e-300;

/// Solves the 4 by 4 system with partial pivoting; `None` when singular.
pub(crate) fn solve4(mut a: [[f64; 4]; 4], mut b: [f64; 4]) -> Option<[f64; 4]> {
    for col in 0..4 {
        let pivot = pivot_row(&a, col);
        if a[pivot][col].abs() <= SINGULAR {
            return None;
        }
        a.swap(col, pivot);
        b.swap(col, pivot);
        for row in col + 1..4 {
            let factor = eliminate(&mut a, row, col);
            b[row] -= factor * b[col];
        }
    }
    for row in (0..4).rev() {
        for k in row + 1..4 {
            b[row] -= a[row][k] * b[k];
        }
        b[row] /= a[row][row];
    }
    Some(b)
}

/// Determinant of a 4 by 4 matrix, each column first scaled to a largest entry of 1 (only the sign and the zeros matter).
pub(crate) fn determinant4(mut a: [[f64; 4]; 4]) -> f64 {
    for col in 0..4 {
        let most = a.iter().fold(0.0_f64, |m, row| m.max(row[col].abs()));
        for row in &mut a {
            row[col] /= most.max(f64::MIN_POSITIVE);
        }
    }
    let mut det = 1.0;
    for col in 0..4 {
        let pivot = pivot_row(&a, col);
        if a[pivot][col].abs() <= SINGULAR {
            return 0.0;
        }
        if pivot != col {
            a.swap(col, pivot);
            det = -det;
        }
        det *= a[col][col];
        for row in col + 1..4 {
            eliminate(&mut a, row, col);
        }
    }
    det
}

/// Clears entry (row, col) with the pivot row `col`; gives the factor used.
fn eliminate(a: &mut [[f64; 4]; 4], row: usize, col: usize) -> f64 {
    let pivot = a[col];
    let factor = a[row][col] / pivot[col];
    for (entry, above) in a[row].iter_mut().zip(pivot) {
        *entry -= factor * above;
    }
    factor
}

fn pivot_row(a: &[[f64; 4]; 4], col: usize) -> usize {
    let mut pivot = col;
    for row in col + 1..4 {
        if a[row][col].abs() > a[pivot][col].abs() {
            pivot = row;
        }
    }
    pivot
}

/// Lower triangular factor of a symmetric positive definite matrix, row by row.
pub(crate) struct Cholesky {
    n: usize,
    l: Vec<f64>,
}

impl Cholesky {
    /// Factors the matrix given row by row; `None` when it is not positive definite.
    pub(crate) fn new(n: usize, mut a: Vec<f64>) -> Option<Self> {
        for i in 0..n {
            for j in 0..=i {
                let (before, row_i) = a.split_at(i * n);
                let row_j = if i == j {
                    &row_i[..j]
                } else {
                    &before[j * n..j * n + j]
                };
                let dot: f64 = row_i[..j].iter().zip(row_j).map(|(p, q)| p * q).sum();
                let rest = row_i[j] - dot;
                if i == j {
                    if rest.is_nan() || rest <= 0.0 {
                        return None;
                    }
                    a[i * n + i] = rest.sqrt();
                } else {
                    a[i * n + j] = rest / a[j * n + j];
                }
            }
        }
        Some(Self { n, l: a })
    }

    /// Solves L y = b in place: the norm of y is the energy of b.
    pub(crate) fn forward(&self, b: &mut [f64]) {
        for i in 0..self.n {
            let row = &self.l[i * self.n..i * self.n + i];
            let dot: f64 = row.iter().zip(b.iter()).map(|(p, q)| p * q).sum();
            b[i] = (b[i] - dot) / self.l[i * self.n + i];
        }
    }

    /// Solves L L^T x = b in place.
    pub(crate) fn solve(&self, b: &mut [f64]) {
        self.forward(b);
        self.backward(b);
    }

    /// Solves L^T x = y in place.
    pub(crate) fn backward(&self, b: &mut [f64]) {
        for i in (0..self.n).rev() {
            b[i] /= self.l[i * self.n + i];
            let value = b[i];
            for (k, entry) in b.iter_mut().enumerate().take(i) {
                *entry -= self.l[i * self.n + k] * value;
            }
        }
    }
}

/// Sweeps of Jacobi rotations; a small symmetric matrix needs about eight.
const SWEEPS: u32 = 40;
/// Off-diagonal share at which the sweeps stop.
const DIAGONAL: f64 = 1e-30;

/// Eigenvalues and eigenvectors (as columns, row by row) of a small symmetric matrix, by Jacobi's rotations.
pub(crate) fn symmetric_eigen(n: usize, a: &mut [f64]) -> (Vec<f64>, Vec<f64>) {
    let mut v = vec![0.0; n * n];
    for i in 0..n {
        v[i * n + i] = 1.0;
    }
    for _ in 0..SWEEPS {
        let (mut off, mut on) = (0.0, 0.0);
        for i in 0..n {
            on += a[i * n + i] * a[i * n + i];
            for j in 0..i {
                off += a[i * n + j] * a[i * n + j];
            }
        }
        if off <= DIAGONAL * on {
            break;
        }
        for p in 0..n {
            for q in p + 1..n {
                rotate(n, a, &mut v, (p, q));
            }
        }
    }
    ((0..n).map(|i| a[i * n + i]).collect(), v)
}

fn rotate(n: usize, a: &mut [f64], v: &mut [f64], (p, q): (usize, usize)) {
    let apq = a[p * n + q];
    if apq.abs() < f64::MIN_POSITIVE {
        return;
    }
    let theta = 0.5 * (a[q * n + q] - a[p * n + p]) / apq;
    let sign = if theta < 0.0 { -1.0 } else { 1.0 };
    let t = sign / (theta.abs() + (theta * theta + 1.0).sqrt());
    let c = 1.0 / (t * t + 1.0).sqrt();
    let s = t * c;
    for k in 0..n {
        let (x, y) = (a[k * n + p], a[k * n + q]);
        a[k * n + p] = c * x - s * y;
        a[k * n + q] = s * x + c * y;
    }
    for k in 0..n {
        let (x, y) = (a[p * n + k], a[q * n + k]);
        a[p * n + k] = c * x - s * y;
        a[q * n + k] = s * x + c * y;
        let (x, y) = (v[k * n + p], v[k * n + q]);
        v[k * n + p] = c * x - s * y;
        v[k * n + q] = s * x + c * y;
    }
}
