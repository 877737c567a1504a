//! A loop as a chain of edges of the asked length.

use super::buckets::count;
use super::gaps::{CORNER, Sample};
use super::outline::Outline;
use super::planar::{between, distance, dot, length, minus};
use super::size::Sizes;
use super::{MeshError, Point};

/// Fewest edges of a loop without corners.
const FEWEST: usize = 6;

/// A point of the chain.
pub(crate) struct Stop {
    pub(crate) at: Point,
    pub(crate) corner: bool,
    /// Heights of the first rows of elements on the edge that starts here, inside and outside, m.
    pub(crate) rows: [f64; 2],
}

/// A piece of a side, short enough for one edge length.
struct Piece {
    ends: [Point; 2],
    way: f64,
    edges: f64,
}

/// The chain of a loop, from its first point on; at most `most` points. A node stands in every corner and crossing.
pub(crate) fn chain(
    outline: &Outline,
    (samples, crossed): (&[Sample], &[(usize, f64)]),
    sizes: &Sizes,
    most: usize,
) -> Result<Vec<Stop>, MeshError> {
    let vertices = vertices(outline, crossed);
    let n = vertices.len();
    let side = |i: usize| [vertices[i % n].0, vertices[(i + 1) % n].0];
    let length_of = |i: usize| distance(side(i)[0], side(i)[1]);
    let first = vertices.iter().position(|&(_, breaks)| breaks);
    let start = first.unwrap_or(0);
    let fewest = if first.is_some() { 1 } else { FEWEST };
    let mut way: f64 = (0..start).map(length_of).sum();
    let whole: f64 = (0..n).map(length_of).sum();
    let mut stops = Vec::new();
    let mut pieces = Vec::new();
    for i in start..start + n {
        cut(side(i), &mut way, sizes, &mut pieces);
        if i + 1 == start + n || vertices[(i + 1) % n].1 {
            divide(&pieces, fewest, most, &mut stops)?;
            pieces.clear();
            if stops.len() > most {
                let nodes = stops.len();
                return Err(MeshError::TooLarge { nodes });
            }
        }
    }
    let ways: Vec<f64> = stops.iter().map(|&(_, way, _)| way).collect();
    let chain = stops.iter().enumerate().map(|(i, &(at, way, begins))| {
        let next = ways.get(i + 1).copied().unwrap_or(ways[0] + whole);
        let middle = 0.5 * (way + next.max(way)) % whole;
        Stop {
            at,
            corner: begins && first.is_some(),
            rows: rows(samples, middle),
        }
    });
    Ok(chain.collect())
}

/// The points of a loop and where it is crossed, in order, and whether an edge must end there.
fn vertices(outline: &Outline, crossed: &[(usize, f64)]) -> Vec<(Point, bool)> {
    let n = outline.points.len();
    let mut crossed = crossed.iter().peekable();
    let mut vertices = Vec::with_capacity(n);
    for i in 0..n {
        let [before, at] = outline.side((i + n - 1) % n);
        let side = outline.side(i);
        let (d, e) = (minus(at, before), minus(side[1], at));
        let corner = dot(d, e) <= CORNER * length(d) * length(e);
        vertices.push((at, corner));
        while let Some((_, s)) = crossed.next_if(|place| place.0 == i) {
            vertices.push((between(side[0], side[1], *s), true));
        }
    }
    vertices
}

/// What was seen nearest to a place on the loop.
fn rows(samples: &[Sample], way: f64) -> [f64; 2] {
    let after = samples.partition_point(|sample| sample.way < way);
    let near = [after.checked_sub(1), Some(after)];
    let near = near.into_iter().flatten().filter_map(|i| samples.get(i));
    near.min_by(|a, b| (a.way - way).abs().total_cmp(&(b.way - way).abs()))
        .map_or([f64::INFINITY; 2], |sample| sample.rows)
}

/// Cuts a side into pieces and counts the edges that each shall have.
fn cut(side: [Point; 2], way: &mut f64, sizes: &Sizes, pieces: &mut Vec<Piece>) {
    let l = distance(side[0], side[1]);
    let parts = count(l / sizes.cell, 100_000) + 1;
    #[allow(clippy::cast_precision_loss, reason = "at most 100 000")]
    let at = |i: usize| between(side[0], side[1], i as f64 / parts as f64);
    for i in 0..parts {
        let ends = [at(i), at(i + 1)];
        let length = distance(ends[0], ends[1]);
        let edges = length / sizes.at(between(ends[0], ends[1], 0.5));
        pieces.push(Piece {
            ends,
            way: *way,
            edges,
        });
        *way += length;
    }
}

/// Sets points over a span so that each edge has the same share; the span's end belongs to the next one.
fn divide(
    pieces: &[Piece],
    fewest: usize,
    most: usize,
    stops: &mut Vec<(Point, f64, bool)>,
) -> Result<(), MeshError> {
    let all: f64 = pieces.iter().map(|piece| piece.edges).sum();
    let edges = count(all + 0.5, 10 * most + 10).max(fewest);
    if edges > most {
        return Err(MeshError::TooLarge { nodes: edges });
    }
    #[allow(clippy::cast_precision_loss, reason = "at most `most`")]
    let share = all / edges as f64;
    let (mut before, mut set) = (0.0, 0);
    for piece in pieces {
        #[allow(clippy::cast_precision_loss, reason = "at most `most`")]
        while set < edges && share * set as f64 <= before + piece.edges {
            // Two crossings may lie in one point: what is between them has no length.
            let part = if piece.edges > 0.0 {
                ((share * set as f64 - before) / piece.edges).clamp(0.0, 1.0)
            } else {
                0.0
            };
            let at = between(piece.ends[0], piece.ends[1], part);
            let way = piece.way + part * distance(piece.ends[0], piece.ends[1]);
            stops.push((at, way, set == 0));
            set += 1;
        }
        before += piece.edges;
    }
    Ok(())
}
