//! All lines as one drawing: edges that meet in nodes only, and nodes that keep their distance.
//!
//! Lines drawn first stay as they are. A later one goes through the nodes that it comes close to and is cut where it
//! crosses: so two lines that nearly coincide become one, and no slivers arise.

use super::buckets::{Buckets, short};
use super::crossings::crossings;
use super::gaps::{SNAP, Sample};
use super::outline::{Outline, extent};
use super::planar::{along, between, bounds, crossing, distance, foot, minus};
use super::resample::{Stop, chain};
use super::size::Sizes;
use super::{Fineness, LoopKind, MeshError, Point};

/// A point goes to the near end of an edge that it lies on if it is within this share of the edge length; else it cuts it.
const TO_END: f64 = 0.5;
/// Steps of work per point after which the drawing is given up.
const PATIENCE: usize = 200;
/// The height of the first row of elements where nothing is near, over the edge: an equilateral triangle's.
const ROW: f64 = 0.87;
/// Nodes of two rows may be this close, over the height of a row.
const ROWS_APART: f64 = 0.85;

/// An edge of the drawing, and what it bounds.
#[derive(Clone, Copy)]
pub(crate) struct Edge {
    pub(crate) ends: [u32; 2],
    /// How often the outer loop and holes pass along it, forwards less backwards: what is on its left is inside.
    pub(crate) bounds: [i32; 2],
}

/// A place where a node would be well.
#[derive(Clone, Copy)]
pub(crate) struct Row {
    pub(crate) at: Point,
    /// A node near by.
    pub(crate) near: u32,
    /// The distance that it may have from others, m, if the edge length asks for more.
    pub(crate) apart: f64,
}

/// The drawing.
pub(crate) struct Lines {
    pub(crate) nodes: Vec<Point>,
    pub(crate) edges: Vec<Edge>,
    /// Places for a first row of nodes beside the lines.
    pub(crate) rows: Vec<Row>,
    near_nodes: Buckets,
    near_edges: Buckets,
    alive: Vec<bool>,
    work: usize,
}

/// Draws all loops.
pub(crate) fn draw(
    outlines: &[Outline],
    samples: &[Vec<Sample>],
    sizes: &Sizes,
    fineness: &Fineness,
) -> Result<Lines, MeshError> {
    let [low, high] = extent(outlines);
    let buckets = || Buckets::new(low, high, fineness.most.min(4.0 * sizes.cell));
    let mut lines = Lines {
        nodes: Vec::new(),
        edges: Vec::new(),
        rows: Vec::new(),
        near_nodes: buckets(),
        near_edges: buckets(),
        alive: Vec::new(),
        work: 0,
    };
    let crossed = crossings(outlines);
    for (i, outline) in outlines.iter().enumerate() {
        let along = (&samples[i][..], &crossed[i][..]);
        let stops = chain(outline, along, sizes, fineness.most_nodes)?;
        lines.work += PATIENCE * (stops.len() + 10);
        lines.add(outline.kind, &stops, sizes)?;
        if lines.nodes.len() > fineness.most_nodes {
            return Err(MeshError::TooLarge {
                nodes: lines.nodes.len(),
            });
        }
    }
    let alive = std::mem::take(&mut lines.alive);
    let mut keep = alive.iter();
    lines.edges.retain(|_| keep.next() == Some(&true));
    Ok(lines)
}

impl Lines {
    fn ends(&self, edge: usize) -> [Point; 2] {
        self.edges[edge].ends.map(|i| self.nodes[i as usize])
    }

    fn add(&mut self, kind: LoopKind, stops: &[Stop], sizes: &Sizes) -> Result<(), MeshError> {
        let bounds = match kind {
            LoopKind::Outer => [1, 0],
            LoopKind::Hole => [0, 1],
            LoopKind::Line => [0, 0],
        };
        let mut numbers = Vec::with_capacity(stops.len());
        for stop in stops {
            numbers.push(self.place(stop, sizes)?);
        }
        for i in 0..stops.len() {
            let next = (i + 1) % stops.len();
            let ends = [numbers[i], numbers[next]];
            self.connect(Edge { ends, bounds }, sizes)?;
            let [a, b] = [stops[i].at, stops[next].at];
            let l = distance(a, b);
            for (row, sign) in stops[i].rows.iter().zip([1.0, -1.0]) {
                let d = minus(b, a);
                let height = row.min(ROW * l);
                let normal = [-sign * d[1] / l, sign * d[0] / l];
                if l > 0.0 {
                    self.rows.push(Row {
                        at: along(between(a, b, 0.5), normal, height),
                        near: numbers[i],
                        apart: ROWS_APART * row,
                    });
                }
            }
        }
        Ok(())
    }

    /// The node for a point: one that is near, or a new one, on the edge that is near.
    fn place(&mut self, stop: &Stop, sizes: &Sizes) -> Result<u32, MeshError> {
        let p = stop.at;
        let edge = sizes.at(p);
        let near = SNAP * edge;
        if let Some(node) = self.nearest_node(p, near) {
            return Ok(node);
        }
        let Some((on, s)) = self.nearest_edge(p, near) else {
            return Ok(self.new_node(p));
        };
        let ends = self.ends(on);
        let at = between(ends[0], ends[1], s);
        let end = usize::from(s > 0.5);
        let to_end = if stop.corner { near } else { TO_END * edge };
        if distance(at, ends[end]) < to_end {
            return Ok(self.edges[on].ends[end]);
        }
        let node = self.new_node(at);
        self.split(on, node, sizes)?;
        Ok(node)
    }

    fn new_node(&mut self, p: Point) -> u32 {
        let number = short(self.nodes.len());
        self.nodes.push(p);
        self.near_nodes.put(number, p, p);
        number
    }

    fn nearest_node(&self, p: Point, near: f64) -> Option<u32> {
        let mut best = None;
        let mut least = near;
        self.near_nodes.visit_around(p, near, |i| {
            let d = distance(p, self.nodes[i as usize]);
            if d < least {
                (best, least) = (Some(i), d);
            }
        });
        best
    }

    fn nearest_edge(&self, p: Point, near: f64) -> Option<(usize, f64)> {
        let mut best = None;
        let mut least = near;
        self.near_edges.visit_around(p, near, |i| {
            let i = i as usize;
            if self.alive[i] {
                let (s, d) = foot(p, self.ends(i));
                if d < least {
                    (best, least) = (Some((i, s)), d);
                }
            }
        });
        best
    }

    /// Puts a node into an edge.
    fn split(&mut self, edge: usize, node: u32, sizes: &Sizes) -> Result<(), MeshError> {
        let Edge { ends, bounds } = self.edges[edge];
        self.alive[edge] = false;
        for ends in [[ends[0], node], [node, ends[1]]] {
            self.connect(Edge { ends, bounds }, sizes)?;
        }
        Ok(())
    }

    /// Draws an edge: through nodes that are near, cut where it crosses.
    fn connect(&mut self, edge: Edge, sizes: &Sizes) -> Result<(), MeshError> {
        let mut open = vec![edge];
        while let Some(Edge { ends, bounds }) = open.pop() {
            self.work = self.work.checked_sub(1).ok_or(MeshError::Triangulation)?;
            if ends[0] == ends[1] {
                continue;
            }
            let via = match self.on_the_way(ends, sizes) {
                Some(node) => Some(node),
                None => self.cut(ends, sizes, &mut open)?,
            };
            if let Some(node) = via {
                open.push(Edge {
                    ends: [node, ends[1]],
                    bounds,
                });
                open.push(Edge {
                    ends: [ends[0], node],
                    bounds,
                });
            } else {
                self.keep(ends, bounds);
            }
        }
        Ok(())
    }

    /// The node that an edge nearly passes through.
    fn on_the_way(&self, ends: [u32; 2], sizes: &Sizes) -> Option<u32> {
        let [a, b] = ends.map(|i| self.nodes[i as usize]);
        let l = distance(a, b);
        let near = SNAP * sizes.at(between(a, b, 0.5));
        let [low, high] = bounds([a, b]);
        let mut best = None;
        let mut least = near;
        let reach = [
            [low[0] - near, low[1] - near],
            [high[0] + near, high[1] + near],
        ];
        self.near_nodes.visit(reach[0], reach[1], |i| {
            let p = self.nodes[i as usize];
            let (s, d) = foot(p, [a, b]);
            let inside = s > 0.0 && s < 1.0 && !ends.contains(&i);
            // Both new edges are shorter than the old one, so this comes to an end.
            if inside && d < least && distance(a, p) < l && distance(p, b) < l {
                (best, least) = (Some(i), d);
            }
        });
        best
    }

    /// The node where an edge first crosses another, which is cut there.
    fn cut(
        &mut self,
        ends: [u32; 2],
        sizes: &Sizes,
        open: &mut Vec<Edge>,
    ) -> Result<Option<u32>, MeshError> {
        let own = ends.map(|i| self.nodes[i as usize]);
        let [low, high] = bounds(own);
        let mut first: Option<(f64, f64, usize)> = None;
        self.near_edges.visit(low, high, |i| {
            let i = i as usize;
            let apart = !self.edges[i].ends.iter().any(|end| ends.contains(end));
            if self.alive[i] && apart {
                let found = crossing(own, self.ends(i));
                if let Some((s, t)) = found.filter(|&(s, _)| first.is_none_or(|f| s < f.0)) {
                    first = Some((s, t, i));
                }
            }
        });
        let Some((_, t, other)) = first else {
            return Ok(None);
        };
        let crossed = self.ends(other);
        let at = between(crossed[0], crossed[1], t);
        let end = usize::from(t > 0.5);
        let near = SNAP * sizes.at(at);
        if distance(at, crossed[end]) < near {
            return Ok(Some(self.edges[other].ends[end]));
        }
        if let Some(node) = self.nearest_node(at, near) {
            self.reroute(other, node, open);
            return Ok(Some(node));
        }
        let node = self.new_node(at);
        self.reroute(other, node, open);
        Ok(Some(node))
    }

    /// Leads an edge through a node; its two parts are still to be drawn.
    fn reroute(&mut self, edge: usize, node: u32, open: &mut Vec<Edge>) {
        let Edge { ends, bounds } = self.edges[edge];
        self.alive[edge] = false;
        for ends in [[ends[0], node], [node, ends[1]]] {
            open.push(Edge { ends, bounds });
        }
    }

    /// Keeps an edge, together with one that is there already.
    fn keep(&mut self, ends: [u32; 2], passes: [i32; 2]) {
        let line = ends.map(|i| self.nodes[i as usize]);
        let [low, high] = bounds(line);
        let mut same = None;
        self.near_edges.visit(low, low, |i| {
            let i = i as usize;
            let other = self.edges[i].ends;
            if self.alive[i] && (other == ends || other == [ends[1], ends[0]]) {
                same = Some((i, if other == ends { 1 } else { -1 }));
            }
        });
        if let Some((i, sign)) = same {
            let there = &mut self.edges[i].bounds;
            *there = [there[0] + sign * passes[0], there[1] + sign * passes[1]];
            return;
        }
        self.near_edges.put(short(self.edges.len()), low, high);
        self.edges.push(Edge {
            ends,
            bounds: passes,
        });
        self.alive.push(true);
    }
}
