//! A mesh to try the map on: rings of triangles.

use thinwright_core::plan::Point;
use thinwright_core::{Tone, WebPicture};
use thinwright_quantity::Frequency;

/// Distance from the middle.
pub(super) fn radius(p: Point) -> f64 {
    p.distance(Point::new(0.0, 0.0))
}

type Mesh = (Vec<Point>, Vec<[u32; 3]>, Vec<f64>);

/// A ring between two radii, of so many rings and so many pieces around, with a value at each node.
pub(super) fn ring(
    inner: f64,
    outer: f64,
    (rings, around): (u32, u32),
    value: impl Fn(Point) -> f64,
) -> Mesh {
    let mut nodes = Vec::new();
    for i in 0..=rings {
        let r = inner + (outer - inner) * f64::from(i) / f64::from(rings);
        for k in 0..around {
            let angle = core::f64::consts::TAU * f64::from(k) / f64::from(around);
            nodes.push(Point::new(r * libm::cos(angle), r * libm::sin(angle)));
        }
    }
    let mut triangles = Vec::new();
    for i in 0..rings {
        for k in 0..around {
            let next = (k + 1) % around;
            let [a, b] = [k, next].map(|k| i * around + k);
            let [c, d] = [k, next].map(|k| (i + 1) * around + k);
            triangles.extend([[a, c, d], [a, d, b]]);
        }
    }
    let values = nodes.iter().map(|p| value(*p)).collect();
    (nodes, triangles, values)
}

/// A web between boss (radius 18) and wall (70) in a rim up to 80: as soft as a clamped disc would be, more or less.
pub(super) fn disc() -> WebPicture {
    let give = |p: Point| {
        let share = (radius(p) / 70.0).min(1.0);
        9.0e-7 * (1.0 - share * share) * (1.0 - share * share) + 1.0e-9
    };
    let (nodes, triangles, compliance) = ring(4.0, 80.0, (38, 72), give);
    let middle = |t: &[u32; 3]| t.iter().map(|i| radius(nodes[*i as usize])).sum::<f64>() / 3.0;
    let floor = triangles
        .iter()
        .map(|t| (18.0..70.0).contains(&middle(t)))
        .collect();
    let shape = nodes.iter().map(|p| p.x / 70.0).collect();
    WebPicture {
        floor,
        softest: Point::new(18.0, 0.0),
        most: give(Point::new(18.0, 0.0)),
        bow: compliance.clone(),
        tones: vec![Tone {
            frequency: Frequency::from_si(812.0),
            shape,
        }],
        error: 0.02,
        nodes,
        triangles,
        compliance,
    }
}
