//! An upright section: cut material hatched, edges that stand behind it, the blank around it.

use super::cut::{self, Block, Plane, Strip};
use super::mark::{Mark, Stroke};
use super::pen::{Path, View};
use thinwright_core::part::Part;
use thinwright_core::plan::Point;

/// Distance of hatching lines on paper, mm.
const HATCH: f64 = 2.0;

/// The plane through the middle, along x.
pub(crate) fn middle(part: &Part) -> Plane {
    let b = part.outline.outer.bounds();
    let through = b.map_or(Point::new(0.0, 0.0), |b| {
        Point::new(0.5 * (b.min.x + b.max.x), 0.5 * (b.min.y + b.max.y))
    });
    Plane {
        through: Point::new(0.0, through.y),
        direction: 0.0,
    }
}

/// Where slots are crossed, along a plane.
pub(crate) fn crossed(strips: &[Strip]) -> Vec<(f64, f64)> {
    strips.iter().filter(|s| s.cell.slot).map(|s| s.x).collect()
}

/// The part finished, in a section.
pub(crate) fn finished(part: &Part, strips: &[Strip], view: &View) -> Vec<Mark> {
    let blocks = cut::finished(part, strips);
    let mut out = vec![Mark::Line(Stroke::Blank, blank(part, strips, view))];
    out.extend(material(&blocks, view));
    out.push(Mark::Line(Stroke::Wide, behind(&blocks, view)));
    out
}

/// Blocks hatched and outlined.
pub(crate) fn material(blocks: &[Block], view: &View) -> Vec<Mark> {
    vec![
        Mark::Line(Stroke::Hatch, hatching(blocks, view, true)),
        Mark::Line(Stroke::Wide, outline(blocks, view)),
    ]
}

/// Hatching of blocks.
pub(crate) fn hatching(blocks: &[Block], view: &View, rising: bool) -> String {
    let mut path = Path::default();
    for (a, b) in cut::hatch(
        blocks,
        HATCH * core::f64::consts::SQRT_2 / view.scale,
        rising,
    ) {
        path.segment(view.at(a.0, a.1), view.at(b.0, b.1));
    }
    path.0
}

/// Outlines of blocks.
pub(crate) fn outline(blocks: &[Block], view: &View) -> String {
    let mut path = Path::default();
    for polygon in cut::outlines(blocks) {
        let points: Vec<(f64, f64)> = polygon.iter().map(|p| view.at(p.0, p.1)).collect();
        path.polygon(&points);
    }
    path.0
}

/// The blank around the part.
pub(crate) fn blank(part: &Part, strips: &[Strip], view: &View) -> String {
    let (Some(first), Some(last)) = (strips.first(), strips.last()) else {
        return String::new();
    };
    let z = (part.blank_heights.0.mm(), part.blank_heights.1.mm());
    super::pen::rectangle(view.at(first.x.0, z.0), view.at(last.x.1, z.1))
}

/// Edges seen beyond the plane: top and bottom of the rim over the recesses, floors behind slots and bores.
pub(crate) fn behind(blocks: &[Block], view: &View) -> String {
    let mut path = Path::default();
    let (Some(first), Some(last)) = (blocks.first(), blocks.last()) else {
        return path.0;
    };
    let low = blocks.iter().map(|b| b.z.0).fold(f64::INFINITY, f64::min);
    let high = blocks
        .iter()
        .map(|b| b.z.1)
        .fold(f64::NEG_INFINITY, f64::max);
    for z in [low, high] {
        path.segment(view.at(first.x.0, z), view.at(last.x.1, z));
    }
    for pair in blocks.windows(2) {
        let (a, b) = (pair[0], pair[1]);
        if b.x.0 - a.x.1 > 1.0e-6 {
            for z in [a.z.0.max(b.z.0), a.z.1.min(b.z.1)] {
                path.segment(view.at(a.x.1, z), view.at(b.x.0, z));
            }
        }
    }
    path.0
}

/// Tops, bottoms and walls of blocks, without the outermost walls: there the part is broken off.
pub(crate) fn broken(blocks: &[Block], view: &View) -> String {
    let mut path = Path::default();
    let last = blocks.len().saturating_sub(1);
    for (i, b) in blocks.iter().enumerate() {
        for z in [b.z.0, b.z.1] {
            path.segment(view.at(b.x.0, z), view.at(b.x.1, z));
        }
        for (x, wall) in [(b.x.0, i > 0), (b.x.1, i < last)] {
            if wall {
                path.segment(view.at(x, b.z.0), view.at(x, b.z.1));
            }
        }
    }
    path.0
}
