//! What every mesh must be.

use crate::mesh::planar::{bounds, dot, foot, length, minus, turn};
use crate::mesh::{Loop, LoopKind, Mesh, Point};
use std::collections::BTreeMap;

/// Boundary edges lie on loops within this share of their length (chords' sagittas) and m.
const ON_LOOP: (f64, f64) = (0.2, 2e-5);

fn corners(mesh: &Mesh, triangle: [u32; 3]) -> [Point; 3] {
    triangle.map(|i| mesh.nodes[i as usize])
}

/// The least angle of a triangle, degrees.
pub(super) fn least_angle(mesh: &Mesh, triangle: [u32; 3]) -> f64 {
    let corners = corners(mesh, triangle);
    let angle = |i: usize| {
        let u = minus(corners[(i + 1) % 3], corners[i]);
        let v = minus(corners[(i + 2) % 3], corners[i]);
        libm::acos((dot(u, v) / length(u) / length(v)).clamp(-1.0, 1.0)).to_degrees()
    };
    angle(0).min(angle(1)).min(angle(2))
}

fn middle(mesh: &Mesh, triangle: [u32; 3]) -> Point {
    let [a, b, c] = corners(mesh, triangle);
    [(a[0] + b[0] + c[0]) / 3.0, (a[1] + b[1] + c[1]) / 3.0]
}

/// The area of the triangles whose middles are wanted.
pub(super) fn area(mesh: &Mesh, wanted: impl Fn(Point) -> bool) -> f64 {
    let parts = mesh.triangles.iter().filter(|&&t| wanted(middle(mesh, t)));
    parts
        .map(|&t| {
            let [a, b, c] = corners(mesh, t);
            0.5 * turn(a, b, c)
        })
        .sum()
}

fn sides(outline: &Loop) -> impl Iterator<Item = [Point; 2]> {
    let points = &outline.points;
    (0..points.len()).map(|i| [points[i], points[(i + 1) % points.len()]])
}

/// Whether a point is inside a loop.
pub(super) fn inside(outline: &Loop, p: Point) -> bool {
    let crossed = sides(outline).filter(|[a, b]| {
        (a[1] > p[1]) != (b[1] > p[1])
            && p[0] < a[0] + (p[1] - a[1]) / (b[1] - a[1]) * (b[0] - a[0])
    });
    crossed.count() % 2 == 1
}

/// How far a point is from a loop.
fn off(outline: &Loop, p: Point) -> f64 {
    sides(outline)
        .map(|side| foot(p, side).1)
        .fold(f64::INFINITY, f64::min)
}

/// Triangles counter-clockwise; edges shared by two, or by one where the plate ends; no node without a triangle.
pub(super) fn check(mesh: &Mesh, loops: &[Loop]) {
    conforming(mesh);
    for edge in boundary(mesh) {
        let ends = edge.map(|i| mesh.nodes[i as usize]);
        let allowed = ON_LOOP.0 * length(minus(ends[1], ends[0])) + ON_LOOP.1;
        let ends_here = |outline: &&Loop| outline.kind != LoopKind::Line;
        let mut on = loops.iter().filter(ends_here);
        assert!(
            on.any(|outline| ends.iter().all(|&p| off(outline, p) < allowed)),
            "an edge of the mesh inside the plate: {ends:?}"
        );
    }
    for &triangle in &mesh.triangles {
        let p = middle(mesh, triangle);
        for outline in loops {
            let wrong = match outline.kind {
                LoopKind::Outer => !inside(outline, p),
                LoopKind::Hole => inside(outline, p),
                LoopKind::Line => false,
            };
            // A concave line's chord lets a thin triangle's middle lie across it.
            let size = length(minus(mesh.nodes[triangle[0] as usize], p));
            assert!(!wrong || off(outline, p) < ON_LOOP.0 * size, "{p:?}");
        }
    }
}

/// The checks that need no loops.
pub(super) fn conforming(mesh: &Mesh) {
    let mut used = vec![false; mesh.nodes.len()];
    let mut directed = BTreeMap::new();
    for &triangle in &mesh.triangles {
        let [a, b, c] = corners(mesh, triangle);
        assert!(turn(a, b, c) > 0.0, "{triangle:?}");
        for i in 0..3 {
            used[triangle[i] as usize] = true;
            let again = directed.insert((triangle[i], triangle[(i + 1) % 3]), ());
            assert!(again.is_none(), "an edge of two triangles on one side");
        }
    }
    assert!(used.iter().all(|&used| used), "a node without a triangle");
}

/// Edges of one triangle only.
fn boundary(mesh: &Mesh) -> Vec<[u32; 2]> {
    let mut count: BTreeMap<[u32; 2], u32> = BTreeMap::new();
    for t in &mesh.triangles {
        for i in 0..3 {
            let [a, b] = [t[i], t[(i + 1) % 3]];
            *count.entry([a.min(b), a.max(b)]).or_default() += 1;
        }
    }
    assert!(count.values().all(|&n| n <= 2));
    let single = count.into_iter().filter(|&(_, n)| n == 1);
    single.map(|(edge, _)| edge).collect()
}

/// Triangles with corners on both sides of a loop, farther from it than `allowed`.
pub(super) fn straddles(mesh: &Mesh, loops: &[Loop], allowed: f64) -> usize {
    let mut found = 0;
    for outline in loops {
        let within: Vec<f64> = mesh
            .nodes
            .iter()
            .map(|&p| {
                let away = off(outline, p);
                if inside(outline, p) { away } else { -away }
            })
            .collect();
        let across = |t: &&[u32; 3]| {
            let sides = t.map(|i| within[i as usize]);
            sides.iter().any(|&s| s > allowed) && sides.iter().any(|&s| s < -allowed)
        };
        found += mesh.triangles.iter().filter(across).count();
    }
    found
}

/// Whether a mesh is finite and within the box of the outer loop.
pub(super) fn bounded(mesh: &Mesh, loops: &[Loop]) -> bool {
    let outer = loops
        .iter()
        .filter(|outline| outline.kind == LoopKind::Outer);
    let boxes = outer.flat_map(sides).map(bounds);
    let all = boxes.fold(None, |all: Option<[Point; 2]>, [low, high]| {
        let [l, h] = all.unwrap_or([low, high]);
        Some([
            [l[0].min(low[0]), l[1].min(low[1])],
            [h[0].max(high[0]), h[1].max(high[1])],
        ])
    });
    let Some([low, high]) = all else {
        return false;
    };
    let slack = 1e-9 * (high[0] - low[0] + high[1] - low[1]);
    mesh.nodes.iter().all(|p| {
        (0..2).all(|i| p[i].is_finite() && p[i] >= low[i] - slack && p[i] <= high[i] + slack)
    })
}
