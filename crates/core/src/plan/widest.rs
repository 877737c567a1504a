//! The largest circle that fits in an area: where there is most room to enter.

use std::collections::BinaryHeap;

use super::{Area, Point, distance_point};

/// Accuracy of the radius [mm].
const RADIUS_ERROR_MM: f64 = 0.01;
/// Accuracy of the radius as a share of the area's extent.
const RADIUS_ERROR_SHARE: f64 = 1e-6;
/// Most squares that are looked at.
const SQUARES_GREATEST: usize = 20_000;

/// A square that may hold the centre.
#[derive(Debug, Clone, Copy)]
struct Square {
    centre: Point,
    half: f64,
    depth: f64,
    number: usize,
}

impl Square {
    fn new(area: &Area, centre: Point, half: f64, number: usize) -> Self {
        let distance = distance_point(area, centre);
        let depth = if area.contains(centre) {
            distance
        } else {
            -distance
        };
        Self {
            centre,
            half,
            depth,
            number,
        }
    }

    /// Greatest depth that any point of the square can have.
    fn best(&self) -> f64 {
        self.depth + self.half * core::f64::consts::SQRT_2
    }
}

impl PartialEq for Square {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other).is_eq()
    }
}
impl Eq for Square {}
impl PartialOrd for Square {
    fn partial_cmp(&self, other: &Self) -> Option<core::cmp::Ordering> {
        Some(self.cmp(other))
    }
}
impl Ord for Square {
    fn cmp(&self, other: &Self) -> core::cmp::Ordering {
        self.best()
            .total_cmp(&other.best())
            .then(other.number.cmp(&self.number))
    }
}

/// The largest inscribed circle: its centre and radius [mm]; none when the area is empty.
///
/// Squares are halved, the most promising first, until none can hold a centre deeper by more than the accuracy.
pub fn widest_circle(area: &Area) -> Option<(Point, f64)> {
    let bounds = area.bounds()?;
    let extent = bounds.width().max(bounds.height());
    let accuracy = RADIUS_ERROR_MM.max(extent * RADIUS_ERROR_SHARE);
    let half = extent / 2.0;
    let middle = Point::new(
        f64::midpoint(bounds.min.x, bounds.max.x),
        f64::midpoint(bounds.min.y, bounds.max.y),
    );
    let mut best = Square::new(area, middle, half, 0);
    let mut queue = BinaryHeap::from([best]);
    let mut count = 1;
    while let Some(square) = queue.pop() {
        if square.best() - best.depth <= accuracy || count > SQUARES_GREATEST {
            break;
        }
        let quarter = square.half / 2.0;
        for (x, y) in [
            (-quarter, -quarter),
            (quarter, -quarter),
            (-quarter, quarter),
            (quarter, quarter),
        ] {
            let child = Square::new(area, square.centre.plus(Point::new(x, y)), quarter, count);
            count += 1;
            if child.depth > best.depth {
                best = child;
            }
            if child.best() - best.depth > accuracy {
                queue.push(child);
            }
        }
    }
    (best.depth > 0.0).then_some((best.centre, best.depth))
}
