//! A plane cut upright through the part: what it meets, and the material that stands there.

use thinwright_core::part::{Cell, Height, Part, State};
use thinwright_core::plan::{Contour, Point, Region};
use thinwright_core::task::Face;

/// Chord error of arcs before they are cut, mm.
const CHORD: f64 = 0.005;
/// Strips narrower than this are none, mm.
const HAIR: f64 = 1.0e-6;

/// A straight line over the part, seen from above; the section is looked at along its left hand.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Plane {
    /// A point on it: where the section's x is 0.
    pub(crate) through: Point,
    /// Its direction, rad: the section's x.
    pub(crate) direction: f64,
}

/// A strip of the section in which everything is the same.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Strip {
    /// Where it begins and ends along the plane, mm.
    pub(crate) x: (f64, f64),
    /// What it belongs to (its area is left empty).
    pub(crate) cell: Cell,
}

/// Material in a strip, between two heights.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Block {
    /// Along the plane, mm.
    pub(crate) x: (f64, f64),
    /// Bottom and top, mm.
    pub(crate) z: (f64, f64),
}

/// Where a plane enters and leaves a region, along the plane.
fn crossings(plane: Plane, region: &Region) -> Vec<f64> {
    let contours = std::iter::once(&region.outer).chain(&region.holes);
    let mut all: Vec<f64> = contours.flat_map(|c| of_contour(plane, c)).collect();
    all.sort_by(f64::total_cmp);
    all
}

fn of_contour(plane: Plane, contour: &Contour) -> Vec<f64> {
    let (sin, cos) = (libm::sin(plane.direction), libm::cos(plane.direction));
    let local = |p: Point| {
        let (dx, dy) = (p.x - plane.through.x, p.y - plane.through.y);
        (dx * cos + dy * sin, dy * cos - dx * sin)
    };
    let points: Vec<(f64, f64)> = contour.flatten(CHORD).into_iter().map(local).collect();
    let next = points.iter().cycle().skip(1);
    // Half open, so that a corner on the plane counts once.
    let pairs = points
        .iter()
        .zip(next)
        .filter(|(a, b)| (a.1 < 0.0) != (b.1 < 0.0));
    pairs
        .map(|(a, b)| a.0 - a.1 * (b.0 - a.0) / (b.1 - a.1))
        .collect()
}

fn inside(crossings: &[f64], x: f64) -> bool {
    crossings.iter().filter(|c| **c < x).count() % 2 == 1
}

/// The strips of a section from left to right, over the blank and the part.
pub(crate) fn strips(part: &Part, plane: Plane) -> Vec<Strip> {
    let recess = |face| {
        part.recess(face)
            .map_or_else(Vec::new, |r| crossings(plane, &r.region))
    };
    let slots = part.slots.iter().map(|s| crossings(plane, &s.region));
    let regions = [
        crossings(plane, &part.blank),
        crossings(plane, &part.outline),
        recess(Face::A),
        recess(Face::B),
        part.bore
            .as_ref()
            .map_or_else(Vec::new, |b| crossings(plane, &b.0)),
        // One after the other: slots do not overlap.
        slots.flatten().collect::<Vec<f64>>(),
    ];
    let mut ends: Vec<f64> = regions.iter().flatten().copied().collect();
    ends.sort_by(f64::total_cmp);
    ends.dedup_by(|a, b| (*a - *b).abs() < HAIR);
    let strip = |pair: &[f64]| {
        let x = 0.5 * (pair[0] + pair[1]);
        let [blank, outline, a, b, bore, slot] = regions.each_ref().map(|r| inside(r, x));
        (blank || outline).then(|| Strip {
            x: (pair[0], pair[1]),
            cell: Cell {
                area: Default::default(),
                outline,
                recess: (a, b),
                bore,
                slot,
            },
        })
    };
    ends.windows(2).filter_map(strip).collect()
}

/// The finished part in the section.
pub(crate) fn finished(part: &Part, strips: &[Strip]) -> Vec<Block> {
    let heights = |cell: &Cell| {
        if !cell.outline || cell.bore || cell.slot {
            return None;
        }
        let floor = |recessed: bool, face| {
            if recessed {
                part.floor(face)
            } else {
                part.face_height(face)
            }
        };
        Some((floor(cell.recess.1, Face::B), floor(cell.recess.0, Face::A)))
    };
    blocks(strips, heights)
}

/// The stock in a state of the part.
pub(crate) fn stock(part: &Part, state: &State, strips: &[Strip]) -> Vec<Block> {
    let alike = |a: &Cell, b: &Cell| {
        (a.outline, a.recess, a.bore, a.slot) == (b.outline, b.recess, b.bore, b.slot)
    };
    let heights = |cell: &Cell| {
        let index = part.cells.iter().position(|c| alike(c, cell))?;
        state.stock.get(index).copied()
    };
    blocks(strips, heights)
}

/// What is in `before` and no more in `after`, of the same strips.
pub(crate) fn removed(
    part: &Part,
    (before, after): (&State, &State),
    strips: &[Strip],
) -> Vec<Block> {
    let mut out = Vec::new();
    for strip in strips {
        let one = std::slice::from_ref(strip);
        let (old, new) = (stock(part, before, one), stock(part, after, one));
        let Some(old) = old.first() else { continue };
        let Some(new) = new.first() else {
            out.push(*old);
            continue;
        };
        for z in [(old.z.0, new.z.0), (new.z.1, old.z.1)] {
            if z.1 - z.0 > HAIR {
                out.push(Block { x: old.x, z });
            }
        }
    }
    merged(out)
}

fn blocks(strips: &[Strip], heights: impl Fn(&Cell) -> Option<(Height, Height)>) -> Vec<Block> {
    let each = strips.iter().filter_map(|s| {
        let (bottom, top) = heights(&s.cell).filter(|(bottom, top)| bottom < top)?;
        Some(Block {
            x: s.x,
            z: (bottom.mm(), top.mm()),
        })
    });
    merged(each.collect())
}

/// Neighbours of the same heights as one.
fn merged(blocks: Vec<Block>) -> Vec<Block> {
    let mut out: Vec<Block> = Vec::new();
    for block in blocks {
        let near = |a: f64, b: f64| (a - b).abs() < HAIR;
        let joins = |o: &&mut Block| {
            near(o.x.1, block.x.0) && near(o.z.0, block.z.0) && near(o.z.1, block.z.1)
        };
        match out.iter_mut().rev().take(2).find(joins) {
            Some(last) => last.x.1 = block.x.1,
            None => out.push(block),
        }
    }
    out
}

/// The outlines of blocks that touch, as closed polygons.
pub(crate) fn outlines(blocks: &[Block]) -> Vec<Vec<(f64, f64)>> {
    let mut out = Vec::new();
    let mut run: Vec<Block> = Vec::new();
    for block in blocks {
        let joins = run.last().is_some_and(|last| {
            (last.x.1 - block.x.0).abs() < HAIR && last.z.0 < block.z.1 && block.z.0 < last.z.1
        });
        if !joins && !run.is_empty() {
            out.push(outline(&std::mem::take(&mut run)));
        }
        run.push(*block);
    }
    if !run.is_empty() {
        out.push(outline(&run));
    }
    out
}

fn outline(run: &[Block]) -> Vec<(f64, f64)> {
    let tops = run.iter().flat_map(|b| [(b.x.0, b.z.1), (b.x.1, b.z.1)]);
    let bottoms = run
        .iter()
        .rev()
        .flat_map(|b| [(b.x.1, b.z.0), (b.x.0, b.z.0)]);
    tops.chain(bottoms).collect()
}

/// Lines at 45 degrees over blocks, `pitch` apart, as pairs of ends; `rising` to the right or falling.
pub(crate) fn hatch(blocks: &[Block], pitch: f64, rising: bool) -> Vec<((f64, f64), (f64, f64))> {
    let mut out = Vec::new();
    let slope = if rising { 1.0 } else { -1.0 };
    for block in blocks {
        // On a line z - slope x is the same everywhere; the lines of all blocks share one comb.
        let corners = [block.x.0, block.x.1].map(|x| [block.z.0, block.z.1].map(|z| z - slope * x));
        let all = corners.into_iter().flatten();
        let (least, most) = all.fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), v| {
            (a.min(v), b.max(v))
        });
        let mut c = (least / pitch).ceil() * pitch;
        while c < most {
            let at = |z: f64| (z - c) / slope;
            let (a, b) = (at(block.z.0), at(block.z.1));
            let (left, right) = (a.min(b).max(block.x.0), a.max(b).min(block.x.1));
            if right - left > HAIR {
                out.push(((left, c + slope * left), (right, c + slope * right)));
            }
            c += pitch;
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    const PLANE: Plane = Plane {
        through: Point { x: 0.0, y: 0.0 },
        direction: 0.0,
    };

    fn block(x: (f64, f64), z: (f64, f64)) -> Block {
        Block { x, z }
    }

    #[test]
    fn a_plane_crosses_a_ring_four_times() {
        let middle = Point::new(0.0, 0.0);
        let ring = Region {
            outer: Contour::circle(middle, 50.0),
            holes: vec![Contour::circle(middle, 10.0)],
        };
        let found = crossings(PLANE, &ring);
        for (found, expected) in found.iter().zip([-50.0, -10.0, 10.0, 50.0]) {
            assert!((found - expected).abs() < 0.01, "{found}");
        }
        assert_eq!(found.len(), 4);
        // A plane at 30 off the middle: half the chord is 40.
        let off = Plane {
            through: Point::new(0.0, 30.0),
            direction: 0.0,
        };
        let found = crossings(off, &ring);
        assert!((found[0] + 40.0).abs() < 0.02 && (found[1] - 40.0).abs() < 0.02);
    }

    #[test]
    fn a_turned_plane_measures_along_itself() {
        let bar = Region::solid(Contour::rectangle(Point::new(0.0, 0.0), 10.0, 80.0, 0.0));
        let upright = Plane {
            direction: core::f64::consts::FRAC_PI_2,
            ..PLANE
        };
        let found = crossings(upright, &bar);
        assert!((found[0] + 40.0).abs() < 1e-9 && (found[1] - 40.0).abs() < 1e-9);
    }

    #[test]
    fn hatching_stays_inside_and_covers_by_its_pitch() {
        let blocks = [
            block((0.0, 10.0), (0.0, 20.0)),
            block((10.0, 40.0), (5.0, 9.0)),
        ];
        for rising in [true, false] {
            let lines = hatch(&blocks, 2.0, rising);
            let mut length = 0.0;
            for (a, b) in &lines {
                for p in [a, b] {
                    let within = |k: &Block| {
                        p.0 >= k.x.0 - 1e-9
                            && p.0 <= k.x.1 + 1e-9
                            && p.1 >= k.z.0 - 1e-9
                            && p.1 <= k.z.1 + 1e-9
                    };
                    assert!(blocks.iter().any(within), "{p:?}");
                }
                assert!(((b.1 - a.1).abs() - (b.0 - a.0).abs()).abs() < 1e-9);
                length += core::f64::consts::SQRT_2 * (b.0 - a.0);
            }
            // Length of lines times their distance is the area, but for the ends.
            let area = 200.0 + 120.0;
            let covered = length * 2.0 / core::f64::consts::SQRT_2;
            assert!((covered - area).abs() < 0.1 * area, "{covered}");
        }
    }

    #[test]
    fn touching_blocks_share_an_outline() {
        let blocks = [
            block((0.0, 10.0), (0.0, 20.0)),
            block((10.0, 40.0), (5.0, 9.0)),
            block((50.0, 60.0), (5.0, 9.0)),
        ];
        let found = outlines(&blocks);
        assert_eq!(found.iter().map(Vec::len).collect::<Vec<_>>(), [8, 4]);
    }
}
