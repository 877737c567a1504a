//! How long edges shall be, place by place: a grid of lengths whose neighbours differ little.

use super::buckets::count;
use super::{Fineness, Point};

/// Growth of the edge length per length of way.
const GROWTH: f64 = 0.6;
/// Most cells of the grid.
const MOST_CELLS: f64 = 25_000.0;
const MOST_SIDE: usize = 200_000;
/// A way across a cell's corner.
const DIAGONAL: f64 = std::f64::consts::SQRT_2;

/// Edge lengths at the middles of square cells.
pub(crate) struct Sizes {
    low: Point,
    pub(crate) cell: f64,
    across: usize,
    up: usize,
    edge: Vec<f64>,
    least: f64,
}

impl Sizes {
    /// The greatest length everywhere.
    pub(crate) fn new([low, high]: [Point; 2], fineness: &Fineness) -> Sizes {
        let (w, h) = (high[0] - low[0], high[1] - low[1]);
        let smallest = (w * h / MOST_CELLS).sqrt().max((w + h) / MOST_CELLS);
        let cell = fineness.least.max(smallest);
        let across = count(w / cell, MOST_SIDE) + 2;
        let up = count(h / cell, MOST_SIDE) + 2;
        Sizes {
            low: [low[0] - 0.5 * cell, low[1] - 0.5 * cell],
            cell,
            across,
            up,
            edge: vec![fineness.most; across * up],
            least: fineness.least,
        }
    }

    /// Asks for edges of at most this length at a place.
    pub(crate) fn ask(&mut self, p: Point, edge: f64) {
        let x = count((p[0] - self.low[0]) / self.cell, self.across - 1);
        let y = count((p[1] - self.low[1]) / self.cell, self.up - 1);
        let here = &mut self.edge[y * self.across + x];
        *here = here.min(edge.max(self.least));
    }

    /// Lets lengths grow slowly only, away from where they are asked for.
    pub(crate) fn grade(&mut self) {
        let (n, straight) = (self.across, GROWTH * self.cell);
        let slanted = DIAGONAL * straight;
        for y in 0..self.up {
            for x in 0..n {
                let i = y * n + x;
                let mut edge = self.edge[i];
                let mut see = |j: usize, step: f64| edge = edge.min(self.edge[j] + step);
                if x > 0 {
                    see(i - 1, straight);
                }
                if y > 0 {
                    see(i - n, straight);
                    if x > 0 {
                        see(i - n - 1, slanted);
                    }
                    if x + 1 < n {
                        see(i - n + 1, slanted);
                    }
                }
                self.edge[i] = edge;
            }
            for x in (0..n - 1).rev() {
                let i = y * n + x;
                self.edge[i] = self.edge[i].min(self.edge[i + 1] + straight);
            }
        }
        for y in (0..self.up - 1).rev() {
            for x in 0..n {
                let i = y * n + x;
                let mut edge = self.edge[i].min(self.edge[i + n] + straight);
                if x > 0 {
                    edge = edge.min(self.edge[i + n - 1] + slanted);
                    edge = edge.min(self.edge[i - 1] + straight);
                }
                if x + 1 < n {
                    edge = edge.min(self.edge[i + n + 1] + slanted);
                }
                self.edge[i] = edge;
            }
            for x in (0..n - 1).rev() {
                let i = y * n + x;
                self.edge[i] = self.edge[i].min(self.edge[i + 1] + straight);
            }
        }
    }

    /// The edge length at a place, between those of the four cells around it.
    pub(crate) fn at(&self, p: Point) -> f64 {
        let limit = |x: f64, n: usize| {
            let i = count(x, n - 2);
            #[allow(clippy::cast_precision_loss, reason = "a few hundred")]
            let rest = (x - i as f64).clamp(0.0, 1.0);
            (i, rest)
        };
        let (x, s) = limit((p[0] - self.low[0]) / self.cell - 0.5, self.across);
        let (y, t) = limit((p[1] - self.low[1]) / self.cell - 0.5, self.up);
        let row = |i: usize| self.edge[i] * (1.0 - s) + self.edge[i + 1] * s;
        let i = y * self.across + x;
        row(i) * (1.0 - t) + row(i + self.across) * t
    }
}
