//! Rectangles with any mix of free, supported and clamped edges, by Ritz's method with orthonormal polynomials.
//!
//! Used for walls (one edge clamped, the others free) and for the frequencies of floors. Upper bounds for frequencies and
//! lower bounds for compliances, both improving with the number of polynomials: lowest frequencies come within 0.01 %, a load
//! on a free edge within 0.5 %, a load inside a clamped floor within 3 to 12 % only (use [`crate::rectangle`] there).

use crate::dense::{Cholesky, symmetric_eigen};
use crate::legendre::{Basis, Jet, gauss};
use crate::sheet::{PlateError, Sheet, on_plate, positive, ratio_within, settled};

/// Polynomials in each direction of a square; a long panel takes more along than across, about 200 in all.
const COUNT: f64 = 14.0;
/// Fewest and most in one direction.
const COUNT_MIN: f64 = 8.0;
const COUNT_MAX: f64 = 26.0;
/// Quadrature points in each direction: exact for the products that occur.
const POINTS: u32 = 34;
/// Vectors carried beside those asked for, and turns of the subspace iteration.
const SPARE: usize = 6;
const TURNS: u32 = 60;
/// Relative change of the frequencies squared at which the iteration ends.
const STEADY: f64 = 1e-10;
/// Most modes offered.
const MODES_MAX: usize = 12;
/// Frequencies squared below this share of D / (rho t a^4) belong to rigid movement.
const RIGID: f64 = 1e-6;
/// What is added to the stiffness of a plate that may move as a rigid body, in D / a^4.
const SHIFT: f64 = 1.0;
/// Greatest ratio of the sides.
const ASPECT_MAX: f64 = 10.0;

/// How an edge is held.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Edge {
    /// Not at all.
    Free,
    /// It cannot move, but turn.
    Supported,
    /// It can neither move nor turn.
    Clamped,
}

impl Edge {
    fn order(self) -> u32 {
        match self {
            Self::Free => 0,
            Self::Supported => 1,
            Self::Clamped => 2,
        }
    }
}

/// A rectangle `a` along x by `b` along y \[m\], with its edges.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Panel {
    /// Length along x \[m\].
    pub a: f64,
    /// Length along y \[m\].
    pub b: f64,
    /// Edges at x = 0 and x = a.
    pub x_edges: (Edge, Edge),
    /// Edges at y = 0 and y = b.
    pub y_edges: (Edge, Edge),
}

impl Panel {
    /// All four edges clamped: a floor.
    #[must_use]
    pub fn floor(a: f64, b: f64) -> Self {
        let clamped = (Edge::Clamped, Edge::Clamped);
        Self {
            a,
            b,
            x_edges: clamped,
            y_edges: clamped,
        }
    }

    /// A wall of `length` along x and `height` along y, clamped at its foot (y = 0).
    #[must_use]
    pub fn wall(length: f64, height: f64) -> Self {
        let free = (Edge::Free, Edge::Free);
        Self {
            a: length,
            b: height,
            x_edges: free,
            y_edges: (Edge::Clamped, Edge::Free),
        }
    }
}

/// A panel with its stiffness set up and factored: for many loads on one panel.
pub struct Ritz {
    panel: Panel,
    rigidity: f64,
    x: Basis,
    y: Basis,
    /// Stiffness over D / a^4 with unit mass (per rho t a b / 4), row by row, shifted where it would be singular.
    stiffness: Vec<f64>,
    factor: Cholesky,
    shift: f64,
}

/// Products of the polynomials of one direction, in the panel's own lengths (unit span).
struct Products {
    count: usize,
    curvature: Vec<f64>,
    slope: Vec<f64>,
    mixed: Vec<f64>,
}

/// Polynomials along x and along y for sides in the ratio a/b.
fn counts(ratio: f64) -> (usize, usize) {
    let root = ratio.sqrt();
    let count = |wanted: f64| {
        #[allow(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "between 8 and 26"
        )]
        let count = wanted.clamp(COUNT_MIN, COUNT_MAX) as usize;
        count
    };
    (count(COUNT * root), count(COUNT / root))
}

fn products(basis: &Basis, points: &[(f64, f64)]) -> Products {
    let count = basis.count();
    let jets: Vec<(f64, Vec<Jet>)> = points.iter().map(|&(x, w)| (w, basis.at(x))).collect();
    let integral = |p: usize, q: usize| {
        let mut all = vec![0.0; count * count];
        for (w, jet) in &jets {
            for i in 0..count {
                for k in 0..count {
                    all[i * count + k] += w * jet[i][p] * jet[k][q];
                }
            }
        }
        all
    };
    // A derivative by the true length, in units of the side, is twice that on -1 to 1.
    Products {
        count,
        curvature: integral(2, 2).into_iter().map(|v| 16.0 * v).collect(),
        slope: integral(1, 1).into_iter().map(|v| 4.0 * v).collect(),
        mixed: integral(2, 0).into_iter().map(|v| 4.0 * v).collect(),
    }
}

impl Ritz {
    /// Sets up and factors the panel.
    ///
    /// # Errors
    /// Impossible sheet or lengths, sides in a ratio beyond 10.
    pub fn new(sheet: &Sheet, panel: &Panel) -> Result<Self, PlateError> {
        let rigidity = sheet.checked_rigidity()?;
        let ratio = ratio_within(
            positive(panel.a)? / positive(panel.b)?,
            1.0 / ASPECT_MAX,
            ASPECT_MAX,
        )?;
        let points = gauss(POINTS);
        let ends = |(first, last): (Edge, Edge)| (first.order(), last.order());
        let (along_x, along_y) = counts(ratio);
        let x = Basis::new(ends(panel.x_edges), along_x, &points);
        let y = Basis::new(ends(panel.y_edges), along_y, &points);
        let held = [panel.x_edges, panel.y_edges].into_iter().any(|(p, q)| {
            p == Edge::Clamped
                || q == Edge::Clamped
                || (p == Edge::Supported && q == Edge::Supported)
        });
        let shift = if held { 0.0 } else { SHIFT };
        let stiffness = assemble(
            sheet.nu,
            ratio,
            shift,
            (&products(&x, &points), &products(&y, &points)),
        );
        let factor =
            Cholesky::new(along_x * along_y, stiffness.clone()).ok_or(PlateError::NotSettled)?;
        Ok(Self {
            panel: *panel,
            rigidity,
            x,
            y,
            stiffness,
            factor,
            shift,
        })
    }

    fn shape(&self, x: f64, y: f64) -> Vec<f64> {
        let px = self.x.at(2.0 * x / self.panel.a - 1.0);
        let py = self.y.at(2.0 * y / self.panel.b - 1.0);
        px.iter()
            .flat_map(|p| py.iter().map(move |q| p[0] * q[0]))
            .collect()
    }

    /// Deflection per force \[m/N\] under a point load at (x, y) \[m\].
    ///
    /// # Errors
    /// A load off the panel, or a panel that nothing holds.
    pub fn compliance(&self, x: f64, y: f64) -> Result<f64, PlateError> {
        on_plate(x, 0.0, self.panel.a)?;
        on_plate(y, 0.0, self.panel.b)?;
        if self.shift > 0.0 {
            return Err(PlateError::NotSettled);
        }
        let mut load = self.shape(x, y);
        self.factor.forward(&mut load);
        let energy: f64 = load.iter().map(|v| v * v).sum();
        // Unit mass holds for the area a b / 4 on which the polynomials are orthonormal.
        let (a, b) = (self.panel.a, self.panel.b);
        settled(energy * 4.0 * a * a * a / (b * self.rigidity))
    }

    /// The `count` lowest frequency parameters omega a^2 sqrt(rho t / D) \[-\] (`a` along x); movement as a rigid body is left out.
    ///
    /// # Errors
    /// More than 12 modes, or an iteration that does not settle.
    pub fn parameters(&self, count: usize) -> Result<Vec<f64>, PlateError> {
        if count == 0 || count > MODES_MAX {
            return Err(PlateError::NotSettled);
        }
        let size = self.x.count() * self.y.count();
        let rigid = if self.shift > 0.0 { 3 } else { 0 };
        let wanted = count + rigid;
        let width = wanted + SPARE;
        let mut vectors = start_vectors(size, width, &self.stiffness);
        let mut last = vec![0.0; wanted];
        for _ in 0..TURNS {
            for vector in &mut vectors {
                self.factor.solve(vector);
            }
            let values =
                rayleigh_ritz(&self.stiffness, &mut vectors).ok_or(PlateError::NotSettled)?;
            let steady = values
                .iter()
                .zip(&last)
                .all(|(v, l)| (v - l).abs() <= STEADY * v.abs());
            last.clear();
            last.extend_from_slice(&values[..wanted]);
            if steady {
                break;
            }
        }
        let free: Vec<f64> = last
            .iter()
            .map(|v| v - self.shift)
            .filter(|v| *v > RIGID)
            .collect();
        if free.len() < count {
            return Err(PlateError::NotSettled);
        }
        Ok(free[..count].iter().map(|v| v.sqrt()).collect())
    }

    /// The `count` lowest frequencies \[Hz\] of a panel of this sheet.
    ///
    /// # Errors
    /// As [`Ritz::parameters`].
    pub fn frequencies(&self, sheet: &Sheet, count: usize) -> Result<Vec<f64>, PlateError> {
        sheet.checked_rigidity()?;
        self.parameters(count)?
            .into_iter()
            .map(|v| sheet.frequency(v, self.panel.a))
            .collect()
    }
}

/// Stiffness matrix over D / a^4: bending in both directions, Poisson's coupling and twist.
fn assemble(nu: f64, ratio: f64, shift: f64, (x, y): (&Products, &Products)) -> Vec<f64> {
    let (nx, ny) = (x.count, y.count);
    let size = nx * ny;
    let r2 = ratio * ratio;
    let mut all = vec![0.0; size * size];
    for i in 0..size {
        for k in 0..size {
            let (ix, kx, iy, ky) = (i / ny, k / ny, i % ny, k % ny);
            let (p, q) = (ix * nx + kx, iy * ny + ky);
            let (pt, qt) = (kx * nx + ix, ky * ny + iy);
            let mut sum = 2.0 * (1.0 - nu) * r2 * x.slope[p] * y.slope[q];
            sum += nu * r2 * (x.mixed[p] * y.mixed[qt] + x.mixed[pt] * y.mixed[q]);
            if iy == ky {
                sum += x.curvature[p];
            }
            if ix == kx {
                sum += r2 * r2 * y.curvature[q];
            }
            if i == k {
                sum += shift;
            }
            all[i * size + k] = sum;
        }
    }
    all
}

/// Unit vectors at the least diagonal entries: close to the lowest modes already.
fn start_vectors(size: usize, width: usize, stiffness: &[f64]) -> Vec<Vec<f64>> {
    let mut order: Vec<usize> = (0..size).collect();
    order.sort_by(|p, q| stiffness[p * size + p].total_cmp(&stiffness[q * size + q]));
    order[..width]
        .iter()
        .map(|&at| (0..size).map(|i| if i == at { 1.0 } else { 0.0 }).collect())
        .collect()
}

/// Makes the vectors orthonormal, diagonalises the stiffness on them, returns the values in rising order.
fn rayleigh_ritz(stiffness: &[f64], vectors: &mut Vec<Vec<f64>>) -> Option<Vec<f64>> {
    let width = vectors.len();
    for i in 0..width {
        // Twice, so that nearly parallel vectors come out orthogonal too.
        for _ in 0..2 {
            let (done, rest) = vectors.split_at_mut(i);
            for before in done.iter() {
                let dot: f64 = before.iter().zip(&rest[0]).map(|(p, q)| p * q).sum();
                rest[0]
                    .iter_mut()
                    .zip(before)
                    .for_each(|(v, b)| *v -= dot * b);
            }
            let norm = rest[0].iter().map(|v| v * v).sum::<f64>().sqrt();
            if norm.is_nan() || norm <= f64::MIN_POSITIVE {
                return None;
            }
            rest[0].iter_mut().for_each(|v| *v /= norm);
        }
    }
    let size = vectors[0].len();
    let images: Vec<Vec<f64>> = vectors
        .iter()
        .map(|v| {
            (0..size)
                .map(|i| {
                    stiffness[i * size..(i + 1) * size]
                        .iter()
                        .zip(v)
                        .map(|(p, q)| p * q)
                        .sum()
                })
                .collect()
        })
        .collect();
    let mut small = vec![0.0; width * width];
    for i in 0..width {
        for k in 0..width {
            small[i * width + k] = vectors[i].iter().zip(&images[k]).map(|(p, q)| p * q).sum();
        }
    }
    let (values, turned) = symmetric_eigen(width, &mut small);
    let mut order: Vec<usize> = (0..width).collect();
    order.sort_by(|p, q| values[*p].total_cmp(&values[*q]));
    *vectors = order
        .iter()
        .map(|&k| {
            (0..size)
                .map(|i| {
                    (0..width)
                        .map(|m| vectors[m][i] * turned[m * width + k])
                        .sum()
                })
                .collect()
        })
        .collect();
    Some(order.iter().map(|&k| values[k]).collect())
}

#[cfg(test)]
mod tests;
