//! Any input gives a sound mesh or an error, in bounded time.

use super::plans::{COARSE, circle, rectangle, slot};
use super::sound::{bounded, conforming};
use crate::mesh::{Fineness, Loop, LoopKind, MeshError, mesh};

/// Values that have broken other programs, and plain ones.
const ODD: [f64; 12] = [
    0.0,
    -0.0,
    f64::NAN,
    f64::INFINITY,
    f64::NEG_INFINITY,
    f64::MIN_POSITIVE,
    5e-324,
    f64::MAX,
    1e-9,
    1e-300,
    999.0,
    -1.0,
];
const KINDS: [LoopKind; 3] = [LoopKind::Outer, LoopKind::Hole, LoopKind::Line];

/// Repeatable draws (Knuth's linear congruential generator of 64 bits, from memory).
struct Draw(u64);

impl Draw {
    fn next(&mut self) -> usize {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        usize::try_from(self.0 >> 40).unwrap()
    }

    /// A value on a grid of 0.1 mm, up to 60 mm: so points and lines often coincide.
    fn plain(&mut self) -> f64 {
        (self.next() % 600) as f64 * 1e-4
    }

    fn coordinate(&mut self, oddness: usize) -> f64 {
        if self.next().is_multiple_of(oddness) {
            ODD[self.next() % ODD.len()]
        } else {
            self.plain()
        }
    }

    fn fineness(&mut self) -> Fineness {
        let mut fineness = COARSE;
        fineness.most_nodes = 3000;
        match self.next() % 8 {
            0 => fineness.most = self.coordinate(2),
            1 => fineness.least = self.coordinate(2),
            2 => fineness.across = 200.0 * self.coordinate(2),
            3 => fineness.most_nodes = self.next() % 100,
            _ => {}
        }
        fineness
    }
}

fn sound(loops: &[Loop], fineness: &Fineness) -> Option<MeshError> {
    match mesh(loops, fineness) {
        Ok(mesh) => {
            conforming(&mesh);
            assert!(bounded(&mesh, loops), "{loops:?} {fineness:?}");
            assert!(mesh.nodes.len() <= fineness.most_nodes);
            None
        }
        Err(why) => Some(why),
    }
}

#[test]
fn anything_gives_a_mesh_or_an_error() {
    let mut draw = Draw(3);
    let mut meshes = 0;
    for _ in 0..3000 {
        let mut loops = Vec::new();
        for i in 0..1 + draw.next() % 3 {
            let points = (0..2 + draw.next() % 4)
                .map(|_| [draw.coordinate(60), draw.coordinate(60)])
                .collect();
            let kind = if i == 0 {
                LoopKind::Outer
            } else {
                KINDS[draw.next() % 3]
            };
            loops.push(Loop { points, kind });
        }
        let fineness = draw.fineness();
        meshes += usize::from(sound(&loops, &fineness).is_none());
    }
    assert!(meshes > 300, "{meshes}");
}

#[test]
fn loops_over_each_other_are_meshed() {
    let mut draw = Draw(4);
    let mut failed = Vec::new();
    for _ in 0..300 {
        let mut loops = vec![rectangle(LoopKind::Outer, [0.08, 0.06], 0.005)];
        for _ in 0..1 + draw.next() % 8 {
            let [x, y, u, v] = [0; 4].map(|_| draw.plain() - 0.03);
            let kind = KINDS[1 + draw.next() % 2];
            loops.push(match draw.next() % 3 {
                0 => circle(kind, [x, y], 0.001 + draw.plain() / 3.0),
                1 => slot([x, y], [u + 0.001, v], 0.004),
                _ => rectangle(kind, [0.002 + u.abs(), 0.002 + v.abs()], 0.0),
            });
        }
        let why = sound(&loops, &COARSE);
        failed.extend(why.filter(|why| !matches!(why, MeshError::Unresolved { .. })));
    }
    assert_eq!(failed, []);
}
