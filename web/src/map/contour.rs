//! Lines of equal value over a mesh of triangles, and what they enclose.

use thinwright_core::plan::Point;

/// A corner of what is enclosed: a node (twice the same), or a cut of the side between two nodes (the lesser first).
type End = (u32, u32);

/// Values at the nodes of triangles, with who is whose neighbour.
pub(crate) struct Field<'a> {
    nodes: &'a [Point],
    triangles: Vec<[u32; 3]>,
    /// For each side of each triangle, from its corner of the same number to the next: it is an edge of the field.
    edges: Vec<[bool; 3]>,
    values: Vec<f64>,
}

/// A closed line around where the values are at a level or above, what is enclosed on its left.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Around {
    /// Its corners; the first is not repeated.
    pub(crate) points: Vec<Point>,
    /// For each corner: the way to the next is a line of equal value, not an edge of the field.
    pub(crate) level: Vec<bool>,
}

/// A line of equal value.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Line {
    pub(crate) points: Vec<Point>,
    /// It ends where it began; the first point is not repeated.
    pub(crate) closed: bool,
}

impl<'a> Field<'a> {
    /// A field over triangles, counter-clockwise; those with a corner without a value are left out.
    pub(crate) fn new(
        nodes: &'a [Point],
        triangles: impl Iterator<Item = [u32; 3]>,
        values: Vec<f64>,
    ) -> Field<'a> {
        let has = |i: &u32| values.get(*i as usize).is_some_and(|v| v.is_finite());
        let triangles: Vec<[u32; 3]> = triangles.filter(|t| t.iter().all(has)).collect();
        let mut sides: Vec<(u32, u32)> = triangles.iter().flat_map(|t| sides_of(*t)).collect();
        sides.sort_unstable();
        let edge = |(a, b): (u32, u32)| sides.binary_search(&(b, a)).is_err();
        Field {
            edges: triangles.iter().map(|t| sides_of(*t).map(edge)).collect(),
            nodes,
            triangles,
            values,
        }
    }

    /// Least and greatest value; nothing of an empty field.
    pub(crate) fn range(&self) -> Option<(f64, f64)> {
        let mut corners = self.triangles.iter().flatten().map(|i| self.value(*i));
        let first = corners.next()?;
        Some(corners.fold((first, first), |(a, b), v| (a.min(v), b.max(v))))
    }

    /// The same field upside down.
    pub(crate) fn negative(&self) -> Field<'a> {
        Field {
            nodes: self.nodes,
            triangles: self.triangles.clone(),
            edges: self.edges.clone(),
            values: self.values.iter().map(|v| -v).collect(),
        }
    }

    fn value(&self, i: u32) -> f64 {
        self.values[i as usize]
    }

    fn point(&self, (a, b): End, level: f64) -> Point {
        let (p, q) = (self.nodes[a as usize], self.nodes[b as usize]);
        if a == b {
            return p;
        }
        let (v, w) = (self.value(a), self.value(b));
        let share = (level - v) / (w - v);
        Point::new(p.x + share * (q.x - p.x), p.y + share * (q.y - p.y))
    }

    /// The nodes in use with their values.
    pub(crate) fn places(&self) -> impl Iterator<Item = (Point, f64)> {
        let mut used: Vec<u32> = self.triangles.iter().flatten().copied().collect();
        used.sort_unstable();
        used.dedup();
        let place = |i: u32| (self.nodes[i as usize], self.value(i));
        used.into_iter().map(place)
    }

    /// All lines around where the values are at a level or above.
    pub(crate) fn around(&self, level: f64) -> Vec<Around> {
        let mut ways: Vec<(End, End, bool)> = Vec::new();
        for (triangle, edges) in self.triangles.iter().zip(&self.edges) {
            self.cut(*triangle, *edges, level, &mut ways);
        }
        ways.sort_unstable();
        let mut used = vec![false; ways.len()];
        let mut out = Vec::new();
        for first in 0..ways.len() {
            let (mut points, mut levels) = (Vec::new(), Vec::new());
            let mut at = Some(first).filter(|i| !used[*i]);
            while let Some(i) = at {
                used[i] = true;
                let (from, to, is_level) = ways[i];
                points.push(self.point(from, level));
                levels.push(is_level);
                let next = ways.partition_point(|w| w.0 < to);
                let same = ways[next..].iter().take_while(|w| w.0 == to).count();
                at = (next..next + same).find(|i| !used[*i]);
            }
            if points.len() > 2 {
                out.push(Around {
                    points,
                    level: levels,
                });
            }
        }
        out
    }

    /// The ways along the edge of what a triangle has at a level or above; ways that a neighbour goes back are left out.
    fn cut(&self, t: [u32; 3], edges: [bool; 3], level: f64, ways: &mut Vec<(End, End, bool)>) {
        let within = t.map(|i| self.value(i) >= level);
        if within == [false; 3] {
            return;
        }
        // Corners of that part in order, each with whether the way to the next lies on an edge of the field.
        let mut corners: Vec<(End, bool)> = Vec::with_capacity(4);
        for (k, edge) in edges.into_iter().enumerate() {
            let (a, b) = (k, (k + 1) % 3);
            if within[a] {
                corners.push(((t[a], t[a]), edge));
            }
            if within[a] != within[b] {
                // A way out goes on across the triangle, a way in along this side.
                let cut = (t[a].min(t[b]), t[a].max(t[b]));
                corners.push((cut, within[b] && edge));
            }
        }
        for (k, (from, edge)) in corners.iter().enumerate() {
            let to = corners[(k + 1) % corners.len()].0;
            let across = from.0 != from.1 && to.0 != to.1;
            if across || *edge {
                ways.push((*from, to, across));
            }
        }
    }
}

fn sides_of(t: [u32; 3]) -> [(u32, u32); 3] {
    [(t[0], t[1]), (t[1], t[2]), (t[2], t[0])]
}

/// The lines of equal value among what encloses.
pub(crate) fn lines(all: &[Around]) -> Vec<Line> {
    let mut out = Vec::new();
    for around in all {
        let count = around.points.len();
        let Some(start) = (0..count).find(|i| !around.level[*i]) else {
            out.push(Line {
                points: around.points.clone(),
                closed: true,
            });
            continue;
        };
        let mut points: Vec<Point> = Vec::new();
        for k in 1..=count {
            let i = (start + k) % count;
            points.push(around.points[i]);
            if !around.level[i] {
                if points.len() > 1 {
                    out.push(Line {
                        points: std::mem::take(&mut points),
                        closed: false,
                    });
                }
                points.clear();
            }
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::super::fixture;
    use super::*;

    fn length(line: &Line) -> f64 {
        let next = line.points.iter().cycle().skip(1);
        let pairs = line.points.iter().zip(next);
        let count = line.points.len() - usize::from(!line.closed);
        pairs.take(count).map(|(a, b)| a.distance(*b)).sum()
    }

    fn area(around: &Around) -> f64 {
        let next = around.points.iter().cycle().skip(1);
        let pairs = around.points.iter().zip(next);
        pairs.map(|(a, b)| 0.5 * (a.x * b.y - a.y * b.x)).sum()
    }

    /// A cone over a ring: the line at a level is the circle of a radius.
    #[test]
    fn the_lines_of_a_cone_are_circles() {
        let picture = fixture::ring(10.0, 60.0, (24, 96), |p| 60.0 - fixture::radius(p));
        let field = Field::new(&picture.0, picture.1.iter().copied(), picture.2.clone());
        let range = field.range().unwrap();
        assert!(range.0.abs() < 1e-9 && (range.1 - 50.0).abs() < 1e-9);
        for level in [10.0, 25.0, 33.3] {
            let around = field.around(level);
            let found = lines(&around);
            assert_eq!(found.len(), 1, "{level}");
            let radius = 60.0 - level;
            assert!(found[0].closed);
            assert!((length(&found[0]) / (core::f64::consts::TAU * radius) - 1.0).abs() < 0.01);
            for p in &found[0].points {
                assert!((fixture::radius(*p) - radius).abs() < 0.1, "{p:?}");
            }
            // Enclosed: between that circle and the inner edge, which is no line of equal value.
            let enclosed: f64 = around.iter().map(area).sum();
            let wanted = core::f64::consts::PI * (radius * radius - 100.0);
            assert!(
                (enclosed / wanted - 1.0).abs() < 0.01,
                "{enclosed} {wanted}"
            );
        }
        assert!(field.around(50.1).is_empty());
        // Below everything: the whole field, without a line.
        let all = field.around(-1.0);
        assert_eq!((all.len(), lines(&all).len()), (2, 0));
    }

    /// A plane over a ring: straight lines from edge to edge, twice where the hole parts them.
    #[test]
    fn lines_end_at_the_edges_of_the_field() {
        let picture = fixture::ring(20.0, 60.0, (16, 128), |p| p.x);
        let field = Field::new(&picture.0, picture.1.iter().copied(), picture.2.clone());
        let check = |level: f64, count: usize| {
            let found = lines(&field.around(level));
            assert_eq!(found.len(), count, "{level}");
            let half = |r: f64| (r * r - level * level).max(0.0).sqrt();
            let wanted = 2.0 * (half(60.0) - half(20.0));
            let sum: f64 = found.iter().map(length).sum();
            assert!((sum / wanted - 1.0).abs() < 0.02, "{sum} {wanted}");
            for line in &found {
                assert!(!line.closed && line.points.iter().all(|p| (p.x - level).abs() < 1e-9));
            }
        };
        check(5.3, 2);
        check(40.1, 1);
        check(-12.7, 2);
    }

    #[test]
    fn a_level_through_nodes_and_values_that_are_none_do_no_harm() {
        let mut picture = fixture::ring(20.0, 60.0, (4, 12), fixture::radius);
        picture.2[5] = f64::NAN;
        let field = Field::new(&picture.0, picture.1.iter().copied(), picture.2.clone());
        for level in [20.0, 30.0, 40.0, 60.0] {
            for around in field.around(level) {
                assert_eq!(around.points.len(), around.level.len());
                assert!(around.points.iter().all(|p| p.is_finite()));
            }
        }
        let none = Field::new(&picture.0, std::iter::empty(), Vec::new());
        assert!(none.range().is_none() && none.around(1.0).is_empty());
    }
}
