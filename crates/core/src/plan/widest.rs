//! The largest circle that fits in an area: where there is most room to enter.

use super::{Area, Point, distance_point};

/// Accuracy of the radius (mm).
const RADIUS_ERROR_MM: f64 = 0.005;
/// Accuracy of the radius as a share of the area's extent.
const RADIUS_ERROR_SHARE: f64 = 1e-6;

/// The largest inscribed circle: its centre and radius (mm), right to 0.01 mm; none when the area is empty.
///
/// The area is moved inwards, by halving steps, as far as something is left; the centre lies in the middle of that
/// where the middle is as good as its edge. The radius returned is the true distance of the centre from the boundary.
pub fn widest_circle(area: &Area) -> Option<(Point, f64)> {
    let bounds = area.bounds()?;
    let extent = bounds.width().max(bounds.height());
    let accuracy = RADIUS_ERROR_MM.max(extent * RADIUS_ERROR_SHARE);
    let (mut low, mut high) = (0.0, bounds.width().min(bounds.height()) / 2.0 + accuracy);
    let mut rest = area.clone();
    while high - low > accuracy {
        let middle = f64::midpoint(low, high);
        let deeper = rest.offset(low - middle);
        if deeper.is_empty(0.0) {
            high = middle;
        } else {
            low = middle;
            rest = deeper;
        }
    }
    let piece = rest.components().into_iter().next()?;
    let edge = piece.loops().flatten().copied().next()?;
    let around = piece.bounds()?;
    let middle = Point::new(
        f64::midpoint(around.min.x, around.max.x),
        f64::midpoint(around.min.y, around.max.y),
    );
    let depth = |p: Point| {
        if area.contains(p) {
            distance_point(area, p)
        } else {
            0.0
        }
    };
    let best = if depth(middle) + accuracy >= depth(edge) {
        middle
    } else {
        edge
    };
    Some((best, depth(best))).filter(|(_, radius)| *radius > 0.0)
}
