//! Clearing an area by offset passes from the wall inwards: path lengths, loops, bends.

use super::area::ring_length;
use super::{Area, Point};

/// A vertex whose corner stands out more than this is a corner, not a chord of an arc (mm).
const CORNER_HEIGHT_MM: f64 = 0.02;
/// Bends whose radii differ by less than this share are kept as one.
const BEND_RATIO: f64 = 1.05;
/// Bends wider than this are straight for the cutter (mm).
const BEND_WIDEST_MM: f64 = 200.0;
/// Neighbours on each side that a radius is taken over.
const WINDOW: usize = 3;
/// Chords whose lengths differ by less than this factor belong to one arc.
const CHORD_RATIO: f64 = 1.5;
/// Turns are held to this in the estimate of a corner's height (rad).
const TURN_GREATEST: f64 = 3.0;
/// Most passes that are counted.
const PASSES_GREATEST: f64 = 2000.0;
/// Passes that enclose less than this are the last point of a pass (mm2).
const PASS_LEAST_MM2: f64 = 1e-4;
/// Pieces between passes below this size need no pass of their own (mm2).
const TIP_LEAST_MM2: f64 = 0.05;

/// Part of a path that turns towards the material.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bend {
    /// Radius of the centre's path (mm).
    pub radius_mm: f64,
    /// Length of the path at about that radius (mm).
    pub length_mm: f64,
}

/// The path of the cutter's centre at one distance from the wall.
#[derive(Debug, Clone, PartialEq)]
pub struct Ring {
    /// Distance from the boundary of the area (mm).
    pub offset_mm: f64,
    /// Length of the path (mm).
    pub length_mm: f64,
    /// Closed loops; each is reached by a link.
    pub loops: usize,
    /// Sharp inner corners: places where the centre turns on the spot towards the material.
    pub corner_count: usize,
    /// Tightest inner bend of the centre's path (mm), right to about 1 % (the grid's rounding): 0 at a sharp corner, infinite when it never turns that way.
    pub least_radius_mm: f64,
    /// The inner bends, by radius.
    pub bends: Vec<Bend>,
}

/// All passes.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Clearing {
    /// From the wall inwards; then, where passes are further apart than a cutter's radius, the tips left between them.
    pub rings: Vec<Ring>,
    /// Length of all passes (mm).
    pub total_length_mm: f64,
    /// Links from one loop to the next (or lifts).
    pub links: usize,
}

impl Clearing {
    /// Share of the path in inner bends tighter than that radius of the centre's path (mm).
    pub fn share_tighter(&self, radius_mm: f64) -> f64 {
        let bends = self.rings.iter().flat_map(|ring| &ring.bends);
        let tight: f64 = bends
            .filter(|b| b.radius_mm < radius_mm)
            .map(|b| b.length_mm)
            .sum();
        if self.total_length_mm > 0.0 {
            tight / self.total_length_mm
        } else {
            0.0
        }
    }

    /// Sharp inner corners of all passes.
    pub fn corner_count(&self) -> usize {
        self.rings.iter().map(|ring| ring.corner_count).sum()
    }
}

/// Length of the path of a cutter's centre once along all walls of the area (mm).
pub fn wall_pass_length(area: &Area, cutter_radius: f64) -> f64 {
    area.offset(-cutter_radius).perimeter_mm()
}

/// Passes at `cutter_radius`, + `stepover`, + stepover ... from the boundary until nothing is left (all mm).
///
/// The allowance on the wall is taken off the area beforehand (`Area::offset`). Nothing comes back for a radius or
/// stepover that is not positive, nor for a stepover so small that it would take more than 2000 passes.
pub fn clearing(area: &Area, cutter_radius: f64, stepover: f64) -> Clearing {
    let mut result = Clearing::default();
    if !(cutter_radius > 0.0 && stepover > 0.0 && (cutter_radius + stepover).is_finite()) {
        return result;
    }
    let room = area
        .bounds()
        .map_or(0.0, |b| b.width().min(b.height()) / 2.0);
    if room / stepover > PASSES_GREATEST {
        return result;
    }
    let mut offset = cutter_radius;
    let mut pass = area.offset(-cutter_radius);
    while !pass.is_empty(PASS_LEAST_MM2) {
        result.rings.push(ring(&pass, offset));
        let next = pass.offset(-stepover);
        if stepover > cutter_radius {
            let tips = pass
                .offset(-cutter_radius)
                .subtract(&next.offset(cutter_radius));
            if !tips.is_empty(TIP_LEAST_MM2) {
                result.rings.push(ring(&tips, offset + cutter_radius));
            }
        }
        pass = next;
        offset += stepover;
    }
    result.total_length_mm = result.rings.iter().map(|r| r.length_mm).sum();
    result.links = result
        .rings
        .iter()
        .map(|r| r.loops)
        .sum::<usize>()
        .saturating_sub(1);
    result
}

fn ring(pass: &Area, offset_mm: f64) -> Ring {
    let mut ring = Ring {
        offset_mm,
        length_mm: 0.0,
        loops: pass.loop_count(),
        corner_count: 0,
        least_radius_mm: f64::INFINITY,
        bends: Vec::new(),
    };
    for points in pass.loops() {
        ring.length_mm += ring_length(points);
        let turns = turns(points);
        for (i, turn) in turns.iter().enumerate() {
            match turn {
                Turn::Away => {}
                Turn::Corner => {
                    ring.corner_count += 1;
                    ring.least_radius_mm = 0.0;
                }
                Turn::Arc { chord, .. } => {
                    let radius_mm = radius_around(&turns, i, *chord);
                    if radius_mm < BEND_WIDEST_MM {
                        ring.least_radius_mm = ring.least_radius_mm.min(radius_mm);
                        ring.add_bend(Bend {
                            radius_mm,
                            length_mm: *chord,
                        });
                    }
                }
            }
        }
    }
    ring
}

/// What the path does at a vertex.
#[derive(Debug, Clone, Copy)]
enum Turn {
    /// Goes straight on or turns away from the material.
    Away,
    /// Turns on the spot.
    Corner,
    /// Follows an arc: the shorter chord at the vertex (mm) and the turn (rad).
    Arc { chord: f64, angle: f64 },
}

fn turns(points: &[Point]) -> Vec<Turn> {
    let count = points.len();
    let turn = |i: usize| {
        let (before, at, after) = (
            points[(i + count - 1) % count],
            points[i],
            points[(i + 1) % count],
        );
        let (u, v) = (at.minus(before), after.minus(at));
        let angle = libm::atan2(u.cross(v), u.dot(v));
        let chord = u.norm().min(v.norm());
        // Height of an arc that turns by this much over this chord.
        let height = chord * libm::tan(angle.min(TURN_GREATEST) / 4.0) / 2.0;
        match angle {
            angle if angle <= 0.0 => Turn::Away,
            _ if height > CORNER_HEIGHT_MM => Turn::Corner,
            angle => Turn::Arc { chord, angle },
        }
    };
    (0..count).map(turn).collect()
}

/// Radius of the arc around a vertex, over the neighbours that have chords alike: the grid's rounding evens out.
fn radius_around(turns: &[Turn], at: usize, chord: f64) -> f64 {
    let count = turns.len();
    let (mut length, mut angle) = (0.0, 0.0);
    let mut add = |turn: Turn| match turn {
        Turn::Arc { chord: c, angle: a } if c < chord * CHORD_RATIO && chord < c * CHORD_RATIO => {
            length += c;
            angle += a;
            true
        }
        _ => false,
    };
    add(turns[at]);
    let reach = WINDOW.min((count - 1) / 2);
    let _ = (1..=reach).all(|k| add(turns[(at + k) % count]));
    let _ = (1..=reach).all(|k| add(turns[(at + count - k) % count]));
    length / angle
}

impl Ring {
    fn add_bend(&mut self, bend: Bend) {
        let like = |b: &&mut Bend| {
            b.radius_mm < bend.radius_mm * BEND_RATIO && bend.radius_mm < b.radius_mm * BEND_RATIO
        };
        match self.bends.iter_mut().find(like) {
            Some(known) => known.length_mm += bend.length_mm,
            None => self.bends.push(bend),
        }
    }
}
