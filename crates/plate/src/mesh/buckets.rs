//! What lies near a place: numbers kept in square cells.

use super::Point;

/// Most cells along one side.
const MOST_CELLS: usize = 256;
/// The end of a chain.
const END: u32 = u32::MAX;

/// Numbers of things, kept in every cell that their box touches.
pub(crate) struct Buckets {
    low: Point,
    cell: f64,
    across: usize,
    up: usize,
    /// Where each cell's chain starts, and the chains: a number and the place of the next one.
    first: Vec<u32>,
    chained: Vec<(u32, u32)>,
}

/// A count from a length in cells; what is out of range or not a number becomes 0 or `most`.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "the value is held in range first"
)]
pub(crate) fn count(x: f64, most: usize) -> usize {
    #[allow(clippy::cast_precision_loss, reason = "a few hundred thousand at most")]
    let top = most as f64;
    x.max(0.0).min(top) as usize
}

/// A number of a node or an edge as it is kept; meshes stay far below the limit.
pub(crate) fn short(i: usize) -> u32 {
    u32::try_from(i).unwrap_or(u32::MAX)
}

impl Buckets {
    /// Empty cells over a box; the cells are at least `cell` m wide.
    pub(crate) fn new(low: Point, high: Point, cell: f64) -> Buckets {
        let extent = (high[0] - low[0]).max(high[1] - low[1]);
        #[allow(clippy::cast_precision_loss, reason = "256")]
        let cell = cell
            .max(extent / MOST_CELLS as f64)
            .max(f64::MIN_POSITIVE * 1e10);
        let across = count((high[0] - low[0]) / cell, MOST_CELLS) + 1;
        let up = count((high[1] - low[1]) / cell, MOST_CELLS) + 1;
        Buckets {
            low,
            cell,
            across,
            up,
            first: vec![END; across * up],
            chained: Vec::new(),
        }
    }

    fn range(&self, low: Point, high: Point) -> [usize; 4] {
        let x = |x: f64| count((x - self.low[0]) / self.cell, self.across - 1);
        let y = |y: f64| count((y - self.low[1]) / self.cell, self.up - 1);
        [x(low[0]), x(high[0]), y(low[1]), y(high[1])]
    }

    /// Keeps a number in all cells of a box.
    pub(crate) fn put(&mut self, number: u32, low: Point, high: Point) {
        let [x0, x1, y0, y1] = self.range(low, high);
        for y in y0..=y1 {
            for x in x0..=x1 {
                let first = &mut self.first[y * self.across + x];
                let here = short(self.chained.len());
                self.chained.push((number, std::mem::replace(first, here)));
            }
        }
    }

    /// Shows every number kept in the cells of a box; one that spans cells is shown more than once.
    pub(crate) fn visit(&self, low: Point, high: Point, mut see: impl FnMut(u32)) {
        let [x0, x1, y0, y1] = self.range(low, high);
        for y in y0..=y1 {
            for x in x0..=x1 {
                let mut next = self.first[y * self.across + x];
                while let Some(&(number, after)) = self.chained.get(next as usize) {
                    see(number);
                    next = after;
                }
            }
        }
    }

    /// The same around a point.
    pub(crate) fn visit_around(&self, p: Point, reach: f64, see: impl FnMut(u32)) {
        self.visit(
            [p[0] - reach, p[1] - reach],
            [p[0] + reach, p[1] + reach],
            see,
        );
    }
}
