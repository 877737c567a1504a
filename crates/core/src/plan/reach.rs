//! What a round cutter reaches: opened area, leftover, and the largest cutter that passes.

use super::{Area, Point, distance_point, widest_circle};

/// Leftover pieces below this size are chord error, not material (mm2).
const LEFTOVER_LEAST_MM2: f64 = 0.02;
/// Half the width under which a leftover piece is a trace of the flattening (mm).
const LEFTOVER_HALF_WIDTH_MM: f64 = 0.006;
/// A leftover that holds a circle of this share of the cutter's radius is a passage that was missed, not a corner:
/// a corner of interior angle a holds (1 - sin(a/2)) / (1 + sin(a/2)), which is under 0.7 down to 20 degrees.
const MISSED_SHARE: f64 = 0.7;
/// A leftover that lies farther than this many radii from the cutter's centre is a passage too (a corner under 29 degrees).
const MISSED_DEPTH: f64 = 4.0;
/// Added to the cutter so that the traces of flattening vanish (mm).
const TRACE_MM: f64 = 0.012;
/// Ratio of one trial radius to the next in the search for the narrowest place.
const SCAN_RATIO: f64 = 1.3;
/// Steps of the scan: covers widths down to 1 / 39 of the widest place.
const SCAN_STEPS: i32 = 14;
/// Accuracy of the narrowest width (mm).
const WIDTH_ERROR_MM: f64 = 0.005;

/// What a cutter of that radius (mm) can reach inside the area: moved in by the radius, then out again.
pub fn opened(area: &Area, radius: f64) -> Area {
    let radius = radius.max(0.0);
    area.offset(-radius).offset(radius).intersect(area)
}

/// What a cutter of that radius (mm) leaves: corners and passages it does not fit into, traces of the flattening dropped.
pub fn leftover(area: &Area, radius: f64) -> Area {
    area.subtract(&opened(area, radius))
        .without_slivers(LEFTOVER_LEAST_MM2, LEFTOVER_HALF_WIDTH_MM)
}

/// A cutter of that radius goes everywhere but into corners, without a gap in its way.
fn passes(area: &Area, radius: f64) -> bool {
    let centres = area.offset(-radius);
    if centres.component_count() != area.component_count() {
        return false;
    }
    let rest = area.subtract(&centres.offset(radius + TRACE_MM));
    if rest.is_empty(LEFTOVER_LEAST_MM2) {
        return true;
    }
    let far = |p: &Point| distance_point(&centres, *p) > MISSED_DEPTH * radius;
    let missed =
        |piece: &Area| !piece.is_thin(MISSED_SHARE * radius) || piece.loops().flatten().any(far);
    !rest.components().iter().any(missed)
}

/// A cutter of that radius reaches all of the area, its centre staying in as many pieces as the area has.
fn leaves_nothing(area: &Area, radius: f64) -> bool {
    let centres = area.offset(-radius);
    centres.component_count() == area.component_count()
        && area
            .subtract(&centres.offset(radius + TRACE_MM))
            .is_empty(LEFTOVER_LEAST_MM2)
}

/// The width of the narrowest place (mm): the diameter of the largest cutter that passes everywhere (corners apart).
///
/// Trial radii rise from a small one until the first that does not pass, then the place is found by halving.
/// Every piece must stay in one piece for the cutter's centre, and what it leaves may only be corners. Right to
/// about 0.02 mm; 0 when empty.
pub fn narrowest_width(area: &Area) -> f64 {
    let Some((_, widest)) = widest_circle(area) else {
        return 0.0;
    };
    // Discs, rings, slots: the largest circle that fits leaves nothing, then no smaller one does. (That it leaves only what
    // looks like corners beside it would not do: a dead end narrower than the corner it might be hides there.)
    let nearly = widest - WIDTH_ERROR_MM / 2.0;
    if nearly > 0.0 && leaves_nothing(area, nearly) {
        return 2.0 * nearly;
    }
    let mut low = 0.0;
    let mut high = widest;
    for step in 0..SCAN_STEPS {
        let radius = widest / SCAN_RATIO.powi(SCAN_STEPS - step);
        if !passes(area, radius) {
            high = radius;
            break;
        }
        low = radius;
    }
    while high - low > WIDTH_ERROR_MM / 2.0 {
        let middle = f64::midpoint(low, high);
        if passes(area, middle) {
            low = middle;
        } else {
            high = middle;
        }
    }
    low + high
}
