//! Triangles between the lines.

use spade::handles::FixedVertexHandle;
use spade::{ConstrainedDelaunayTriangulation, Point2, PositionInTriangulation, Triangulation};

use super::buckets::{Buckets, short};
use super::lines::{Lines, Row};
use super::planar::{bounds, circle, distance, foot, shape};
use super::size::Sizes;
use super::{Fineness, Mesh, MeshError, Point, smooth};

/// Most rounds of setting points.
const ROUNDS: usize = 40;
/// Rounds of moving points.
const MOVES: usize = 2;
/// Greatest radius of the circle around a triangle, over that of an equilateral one with the asked edge.
const RADIUS: f64 = 1.4;
/// Least distance of a new point from others and from lines, over the asked edge.
const APART: f64 = 0.62;
const OFF_LINES: f64 = 0.4;

type Delaunay = ConstrainedDelaunayTriangulation<Point2<f64>>;

struct Fill<'a> {
    sizes: &'a Sizes,
    most_nodes: usize,
    lines: Lines,
    /// Nodes that may not move.
    fixed: usize,
    near_nodes: Buckets,
    near_edges: Buckets,
    /// For each node an earlier one near by.
    near: Vec<u32>,
}

/// The mesh of a drawing.
pub(crate) fn triangles(
    lines: Lines,
    [low, high]: [Point; 2],
    sizes: &Sizes,
    fineness: &Fineness,
) -> Result<Mesh, MeshError> {
    let cell = fineness.most.min(4.0 * sizes.cell);
    let mut near_nodes = Buckets::new(low, high, cell);
    let mut near_edges = Buckets::new(low, high, cell);
    for (i, &p) in lines.nodes.iter().enumerate() {
        near_nodes.put(short(i), p, p);
    }
    for (i, edge) in lines.edges.iter().enumerate() {
        let [from, to] = bounds(edge.ends.map(|end| lines.nodes[end as usize]));
        near_edges.put(short(i), from, to);
    }
    let near = (0..lines.nodes.len())
        .map(|i| short(i.saturating_sub(1)))
        .collect();
    let mut fill = Fill {
        sizes,
        most_nodes: fineness.most_nodes,
        fixed: lines.nodes.len(),
        lines,
        near_nodes,
        near_edges,
        near,
    };
    fill.points()?;
    let mut mesh = fill.mesh()?;
    for _ in 0..MOVES {
        smooth::smooth(&mut fill.lines.nodes, fill.fixed, &mesh);
        mesh = fill.mesh()?;
    }
    Ok(without_orphans(&fill.lines.nodes, mesh))
}

impl Fill<'_> {
    /// Inserts the nodes from `from` on, each looked for from its neighbour.
    fn insert(&self, delaunay: &mut Delaunay, from: usize) -> Result<(), MeshError> {
        for (i, &[x, y]) in self.lines.nodes.iter().enumerate().skip(from) {
            let start = FixedVertexHandle::from_index(self.near[i] as usize);
            let vertex = if i == 0 {
                delaunay.insert(Point2::new(x, y))
            } else {
                delaunay.insert_with_hint(Point2::new(x, y), start)
            };
            if vertex.map(|vertex| vertex.index()) != Ok(i) {
                return Err(MeshError::Triangulation);
            }
        }
        Ok(())
    }

    fn delaunay(&self) -> Result<Delaunay, MeshError> {
        let mut delaunay = Delaunay::new();
        self.insert(&mut delaunay, 0)?;
        for edge in &self.lines.edges {
            let [a, b] = edge
                .ends
                .map(|end| FixedVertexHandle::from_index(end as usize));
            if delaunay.try_add_constraint(a, b).is_empty() && !delaunay.exists_constraint(a, b) {
                return Err(MeshError::Triangulation);
            }
        }
        Ok(delaunay)
    }

    /// Sets points where triangles are too large.
    fn points(&mut self) -> Result<(), MeshError> {
        let mut delaunay = self.delaunay()?;
        let mut wanted = std::mem::take(&mut self.lines.rows);
        for _ in 0..ROUNDS {
            let inside = self.inside(&delaunay);
            let before = self.lines.nodes.len();
            for row in wanted {
                self.try_point(row, &delaunay, &inside);
            }
            if self.lines.nodes.len() > self.most_nodes {
                return Err(MeshError::TooLarge {
                    nodes: self.lines.nodes.len(),
                });
            }
            self.insert(&mut delaunay, before)?;
            wanted = self.large(&delaunay);
            if wanted.is_empty() {
                break;
            }
        }
        Ok(())
    }

    /// Middles of the circles around triangles that are too large, where a point may still be set.
    fn large(&self, delaunay: &Delaunay) -> Vec<Row> {
        let inside = self.inside(delaunay);
        let faces = delaunay.inner_faces();
        let faces = faces.filter(|face| inside[face.fix().index()]);
        let wanted = faces.filter_map(|face| {
            let [a, b, c] = face.vertices().map(|vertex| {
                let p = vertex.position();
                [p.x, p.y]
            });
            let (middle, radius) = circle(a, b, c);
            let edge = self.sizes.at(middle);
            let large = radius > RADIUS * edge / 3.0_f64.sqrt();
            let row = Row {
                at: middle,
                near: short(face.vertices()[0].fix().index()),
                apart: f64::INFINITY,
            };
            (large && self.free(&row, edge)).then_some(row)
        });
        wanted.collect()
    }

    /// Whether a place keeps its distance from nodes and lines.
    fn free(&self, row: &Row, edge: f64) -> bool {
        let p = row.at;
        if !(p[0].is_finite() && p[1].is_finite()) {
            return false;
        }
        let apart = row.apart.min(APART * edge);
        let off = row.apart.min(OFF_LINES * edge);
        let mut free = true;
        self.near_nodes.visit_around(p, apart, |i| {
            free &= distance(p, self.lines.nodes[i as usize]) >= apart;
        });
        self.near_edges.visit_around(p, off, |i| {
            let ends = self.lines.edges[i as usize].ends;
            let (_, d) = foot(p, ends.map(|end| self.lines.nodes[end as usize]));
            free &= d >= off;
        });
        free
    }

    /// Sets a point if it is inside and keeps its distance.
    fn try_point(&mut self, row: Row, delaunay: &Delaunay, inside: &[bool]) {
        let p = row.at;
        if !self.free(&row, self.sizes.at(p)) {
            return;
        }
        let from = FixedVertexHandle::from_index(row.near as usize);
        let within = match delaunay.locate_with_hint(Point2::new(p[0], p[1]), from) {
            PositionInTriangulation::OnFace(face) => inside[face.index()],
            PositionInTriangulation::OnEdge(edge) => {
                let face = delaunay.directed_edge(edge).face();
                inside[face.fix().index()]
            }
            _ => false,
        };
        if within {
            self.near_nodes.put(short(self.lines.nodes.len()), p, p);
            self.lines.nodes.push(p);
            self.near.push(row.near);
        }
    }

    /// For each face, whether it is inside the outer loop and outside all holes.
    fn inside(&self, delaunay: &Delaunay) -> Vec<bool> {
        // From each node the edges that start there, by number; few, so a chain is looked through.
        let mut starts = vec![u32::MAX; self.lines.nodes.len()];
        let mut chained = vec![u32::MAX; self.lines.edges.len()];
        for (i, edge) in self.lines.edges.iter().enumerate() {
            if edge.bounds != [0, 0] {
                let start = &mut starts[edge.ends[0] as usize];
                chained[i] = std::mem::replace(start, short(i));
            }
        }
        let passed = |[a, b]: [u32; 2]| {
            let mut next = starts[a as usize];
            while let Some(edge) = self.lines.edges.get(next as usize) {
                if edge.ends[1] == b {
                    return edge.bounds;
                }
                next = chained[next as usize];
            }
            [0, 0]
        };
        let mut passes: Vec<Option<[i32; 2]>> = vec![None; delaunay.num_all_faces()];
        let outer = delaunay.outer_face().fix().index();
        passes[outer] = Some([0, 0]);
        let mut open: Vec<_> = delaunay.convex_hull().map(|edge| edge.fix()).collect();
        while let Some(edge) = open.pop() {
            let edge = delaunay.directed_edge(edge);
            let Some([m, n]) = passes[edge.face().fix().index()] else {
                continue;
            };
            let there = edge.rev();
            let face = there.face();
            if passes[face.fix().index()].is_some() {
                continue;
            }
            let ends = [there.from(), there.to()].map(|vertex| short(vertex.fix().index()));
            let (with, against) = (passed(ends), passed([ends[1], ends[0]]));
            passes[face.fix().index()] = Some([m + with[0] - against[0], n + with[1] - against[1]]);
            open.extend([there.next().fix(), there.prev().fix()]);
        }
        let inside = |pass: &Option<[i32; 2]>| matches!(pass, Some([m, 0]) if *m != 0);
        passes.iter().map(inside).collect()
    }

    fn mesh(&self) -> Result<Mesh, MeshError> {
        let delaunay = self.delaunay()?;
        let inside = self.inside(&delaunay);
        let faces = delaunay.inner_faces();
        let faces = faces.filter(|face| inside[face.fix().index()]);
        let corners = faces.map(|face| face.vertices().map(|v| v.fix().index()));
        // A flat triangle has no area to carry anything; it arises on the hull only.
        let nodes = &self.lines.nodes;
        let triangles = corners
            .filter(|&[a, b, c]| shape(nodes[a], nodes[b], nodes[c]) > 0.0)
            .map(|corners| corners.map(short))
            .collect();
        Ok(Mesh {
            nodes: Vec::new(),
            triangles,
        })
    }
}

/// The mesh with those nodes only that triangles use.
fn without_orphans(nodes: &[Point], mesh: Mesh) -> Mesh {
    let mut number = vec![u32::MAX; nodes.len()];
    for &i in mesh.triangles.iter().flatten() {
        number[i as usize] = 0;
    }
    let mut kept = Vec::with_capacity(nodes.len());
    for (number, &p) in number.iter_mut().zip(nodes).filter(|(n, _)| **n == 0) {
        *number = short(kept.len());
        kept.push(p);
    }
    let renumbered = |corners: &[u32; 3]| corners.map(|i| number[i as usize]);
    Mesh {
        nodes: kept,
        triangles: mesh.triangles.iter().map(renumbered).collect(),
    }
}
