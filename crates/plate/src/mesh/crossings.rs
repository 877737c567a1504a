//! Where loops cross: a node will stand there, whatever the division of the lines.

use super::buckets::{Buckets, short};
use super::outline::{Outline, extent};
use super::planar::{bounds, cross, crossing, length, minus};

/// Sine of the least angle of a crossing that gets its own node: under it (12 degrees), two lines nearly coincide.
const LEAST_ANGLE: f64 = 0.2;

/// For each loop the places where others cross it: the side and the share of it, in order.
pub(crate) fn crossings(outlines: &[Outline]) -> Vec<Vec<(usize, f64)>> {
    let sides: Vec<(usize, usize)> = outlines
        .iter()
        .enumerate()
        .flat_map(|(of, outline)| (0..outline.points.len()).map(move |side| (of, side)))
        .collect();
    let [low, high] = extent(outlines);
    #[allow(clippy::cast_precision_loss, reason = "a number of points")]
    let cells = (sides.len() as f64).sqrt();
    let widest = (high[0] - low[0]).max(high[1] - low[1]);
    let mut seen = Buckets::new(low, high, widest / cells);
    let mut found = vec![Vec::new(); outlines.len()];
    for (number, &(of, side)) in sides.iter().enumerate() {
        let own = outlines[of].side(side);
        let [from, to] = bounds(own);
        seen.visit(from, to, |other| {
            let (with, its) = sides[other as usize];
            let line = outlines[with].side(its);
            if with == of || !clearly(own, line) {
                return;
            }
            if let Some((s, t)) = crossing(own, line) {
                insert(&mut found[of], (side, s));
                insert(&mut found[with], (its, t));
            }
        });
        seen.put(short(number), from, to);
    }
    found
}

/// Puts a place into its order, once.
fn insert(places: &mut Vec<(usize, f64)>, (side, s): (usize, f64)) {
    let at = places.partition_point(|&(other, t)| (other, t) < (side, s));
    if places.get(at) != Some(&(side, s)) {
        places.insert(at, (side, s));
    }
}

fn clearly([a, b]: [super::Point; 2], [c, d]: [super::Point; 2]) -> bool {
    let (u, v) = (minus(b, a), minus(d, c));
    cross(u, v).abs() > LEAST_ANGLE * length(u) * length(v)
}
