//! A mesh made ready: where its triangles lie, and the pattern of every factor on it.

use super::FemError;
use super::pattern::Pattern;
use crate::mesh::Mesh;

/// Triangles per bucket when places are looked up, on average.
const PER_BUCKET: f64 = 2.0;
/// Most buckets along a side.
const MOST_BUCKETS: f64 = 256.0;
/// How far outside a triangle, in area coordinates, a place still counts as on it.
const ON_EDGE: f64 = -1e-9;

/// A mesh with what is worked out once for it.
#[derive(Debug, Clone)]
pub struct Grid {
    mesh: Mesh,
    pub(super) pattern: Pattern,
    corner: [f64; 2],
    step: f64,
    across: usize,
    buckets: Vec<Vec<u32>>,
}

impl Grid {
    /// Makes a mesh ready.
    ///
    /// # Errors
    /// An empty mesh, or one whose triangles do not all turn counter-clockwise.
    pub fn new(mesh: Mesh) -> Result<Grid, FemError> {
        let n = mesh.nodes.len();
        let sound =
            |t: &[u32; 3]| t.iter().all(|&i| (i as usize) < n) && area(&corners(&mesh, t)) > 0.0;
        if mesh.triangles.is_empty() {
            return Err(FemError::Empty);
        }
        if !mesh.triangles.iter().all(sound) {
            return Err(FemError::Mismatch);
        }
        let pattern = Pattern::new(n, &mesh.triangles).ok_or(FemError::Mismatch)?;
        let bound = |pick: fn(f64, f64) -> f64, start: f64, d: usize| {
            mesh.nodes.iter().fold(start, |most, p| pick(most, p[d]))
        };
        let corner = [0, 1].map(|d| bound(f64::min, f64::INFINITY, d));
        let size = [0, 1].map(|d| bound(f64::max, f64::NEG_INFINITY, d) - corner[d]);
        #[allow(clippy::cast_precision_loss, reason = "a small count")]
        let count = mesh.triangles.len() as f64;
        let step = (size[0] * size[1] * PER_BUCKET / count)
            .sqrt()
            .max(size[0].max(size[1]) / MOST_BUCKETS);
        let mut grid = Grid {
            pattern,
            corner,
            step,
            across: cell(size[0], step) + 1,
            buckets: Vec::new(),
            mesh,
        };
        grid.buckets = vec![Vec::new(); grid.across * (cell(size[1], step) + 1)];
        for index in 0..grid.mesh.triangles.len() {
            grid.put(index);
        }
        Ok(grid)
    }

    /// Notes a triangle in every bucket that its bounds touch.
    fn put(&mut self, index: usize) {
        let at = self.corners(index);
        let range = |d: usize| {
            let least = at.iter().fold(f64::INFINITY, |m, p| m.min(p[d]));
            let most = at.iter().fold(f64::NEG_INFINITY, |m, p| m.max(p[d]));
            cell(least - self.corner[d], self.step)..=cell(most - self.corner[d], self.step)
        };
        let (xs, ys) = (range(0), range(1));
        for y in ys {
            for x in xs.clone() {
                if let Some(bucket) = self.buckets.get_mut(y * self.across + x) {
                    bucket.push(u32::try_from(index).unwrap_or(u32::MAX));
                }
            }
        }
    }

    /// The mesh.
    pub fn mesh(&self) -> &Mesh {
        &self.mesh
    }

    /// Corners of a triangle \[m\].
    pub fn corners(&self, triangle: usize) -> [[f64; 2]; 3] {
        corners(&self.mesh, &self.mesh.triangles[triangle])
    }

    /// Area of a triangle \[m2\].
    pub fn area(&self, triangle: usize) -> f64 {
        area(&self.corners(triangle))
    }

    /// Middle of a triangle \[m\].
    pub fn middle(&self, triangle: usize) -> [f64; 2] {
        let at = self.corners(triangle);
        [0, 1].map(|d| (at[0][d] + at[1][d] + at[2][d]) / 3.0)
    }

    /// The triangle that a place lies on, with its area coordinates there; `None` outside.
    pub fn locate(&self, place: [f64; 2]) -> Option<(usize, [f64; 3])> {
        let [dx, dy] = [0, 1].map(|d| place[d] - self.corner[d]);
        // Comparisons that a number which is none fails too.
        if !(dx >= 0.0 && dy >= 0.0) {
            return None;
        }
        let (x, y) = (cell(dx, self.step), cell(dy, self.step));
        if x >= self.across {
            return None;
        }
        let bucket = self.buckets.get(y * self.across + x)?;
        bucket.iter().find_map(|&index| {
            let [a, b, c] = self.corners(index as usize);
            let whole = area(&[a, b, c]);
            let shares = [[place, b, c], [a, place, c], [a, b, place]].map(|t| area(&t) / whole);
            shares
                .iter()
                .all(|&share| share >= ON_EDGE)
                .then_some((index as usize, shares))
        })
    }
}

/// Which bucket a distance falls in.
fn cell(distance: f64, step: f64) -> usize {
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a saturating cast of a distance that is not negative"
    )]
    let cell = (distance / step) as usize;
    cell
}

fn corners(mesh: &Mesh, triangle: &[u32; 3]) -> [[f64; 2]; 3] {
    triangle.map(|i| mesh.nodes[i as usize])
}

/// Signed area, positive when counter-clockwise.
fn area([a, b, c]: &[[f64; 2]; 3]) -> f64 {
    0.5 * ((b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1]))
}
