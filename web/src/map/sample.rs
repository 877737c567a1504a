//! Values of a picture of the web at places and along lines.

use thinwright_core::WebPicture;
use thinwright_core::plan::Point;

/// Ends closer than this are one, mm.
const SAME: f64 = 1.0e-6;

/// A run of places along a line, each with its value; straight between them.
pub(crate) type Run = Vec<(f64, f64)>;

/// The values along a line through a point, from left to right; a new run wherever material begins anew.
///
/// The places are told as distances from that point in the direction (rad).
pub(crate) fn along(
    picture: &WebPicture,
    values: &[f64],
    (through, direction): (Point, f64),
) -> Vec<Run> {
    let (sin, cos) = (libm::sin(direction), libm::cos(direction));
    let mut pieces: Vec<[(f64, f64); 2]> = Vec::new();
    for triangle in &picture.triangles {
        let corner = triangle.map(|i| {
            let p = picture.nodes[i as usize];
            let (dx, dy) = (p.x - through.x, p.y - through.y);
            // Half open, so that a corner on the line counts once.
            (dx * cos + dy * sin, dy * cos - dx * sin, values[i as usize])
        });
        let mut cuts = (0..3).filter_map(|k| {
            let (a, b) = (corner[k], corner[(k + 1) % 3]);
            ((a.1 < 0.0) != (b.1 < 0.0)).then(|| {
                let share = a.1 / (a.1 - b.1);
                (a.0 + share * (b.0 - a.0), a.2 + share * (b.2 - a.2))
            })
        });
        if let (Some(a), Some(b)) = (cuts.next(), cuts.next()) {
            pieces.push(if a.0 <= b.0 { [a, b] } else { [b, a] });
        }
    }
    pieces.sort_by(|a, b| a[0].0.total_cmp(&b[0].0));
    let mut runs: Vec<Run> = Vec::new();
    for [a, b] in pieces {
        match runs.last_mut() {
            // Along a side that lies on the line, two triangles tell the same.
            Some(run) if run.last().is_some_and(|l| a.0 - l.0 < SAME) => {
                if run.last().is_some_and(|l| l.0 < b.0) {
                    run.push(b);
                }
            }
            _ => runs.push(vec![a, b]),
        }
    }
    runs
}

/// The value at a place in the triangles that count, by their numbers; nothing elsewhere.
pub(super) fn at(
    picture: &WebPicture,
    values: &[f64],
    p: Point,
    counts: impl Fn(usize) -> bool,
) -> Option<f64> {
    let share = |a: Point, b: Point| (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
    let triangles = picture.triangles.iter().enumerate();
    triangles.filter(|(i, _)| counts(*i)).find_map(|(_, t)| {
        let [a, b, c] = t.map(|i| picture.nodes[i as usize]);
        let shares = [share(b, c), share(c, a), share(a, b)];
        let sum: f64 = shares.iter().sum();
        let inside = sum > 0.0 && shares.iter().all(|s| *s >= -SAME * sum);
        let weighed = t
            .iter()
            .zip(shares)
            .map(|(i, s)| values[*i as usize] * s / sum);
        inside.then(|| weighed.sum())
    })
}

#[cfg(test)]
mod tests {
    use super::super::fixture::disc;
    use super::*;

    #[test]
    fn a_plane_is_sampled_as_it_is() {
        let picture = disc();
        let plane: Vec<f64> = picture
            .nodes
            .iter()
            .map(|p| 3.0 + 2.0 * p.x - p.y)
            .collect();
        for (x, y) in [(30.0, 10.0), (-50.3, 2.7), (0.1, -71.9)] {
            let found = at(&picture, &plane, Point::new(x, y), |_| true).unwrap();
            assert!(
                (found - (3.0 + 2.0 * x - y)).abs() < 1e-9,
                "{x} {y} {found}"
            );
        }
        assert_eq!(at(&picture, &plane, Point::new(1.0, 1.0), |_| true), None);
        assert_eq!(at(&picture, &plane, Point::new(90.0, 0.0), |_| true), None);
        let direction = 0.4_f64;
        let through = Point::new(2.0, 5.0);
        let runs = along(&picture, &plane, (through, direction));
        // The hole in the middle parts the line.
        assert_eq!(
            runs.len(),
            if 5.0 * libm::cos(direction) - 2.0 * libm::sin(direction) < 4.0 {
                2
            } else {
                1
            }
        );
        for (s, value) in runs.iter().flatten() {
            let (x, y) = (
                2.0 + s * libm::cos(direction),
                5.0 + s * libm::sin(direction),
            );
            assert!((value - (3.0 + 2.0 * x - y)).abs() < 1e-9, "{s} {value}");
        }
    }

    #[test]
    fn the_middle_line_runs_from_edge_to_edge() {
        let picture = disc();
        let runs = along(&picture, &picture.bow, (Point::new(0.0, 0.0), 0.0));
        let ends: Vec<f64> = runs
            .iter()
            .flat_map(|r| [r[0].0, r[r.len() - 1].0])
            .collect();
        for (found, wanted) in ends.iter().zip([-80.0, -4.0, 4.0, 80.0]) {
            assert!((found - wanted).abs() < 1e-6, "{ends:?}");
        }
        assert_eq!(ends.len(), 4);
        for run in &runs {
            assert!(run.windows(2).all(|w| w[0].0 < w[1].0 + 1e-9));
        }
    }
}
