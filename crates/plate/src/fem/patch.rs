//! The patch on which a cutter bears: a small disc, as far as there is material under it.

use super::grid::Grid;
use core::f64::consts::TAU;

/// Rings of equal area that stand for the disc, each by one circle that halves its area.
const RINGS: u32 = 4;
/// Places on a ring.
const ON_RING: u32 = 12;

/// An even load of 1 N on a patch, as its share on each node.
#[derive(Debug, Clone, PartialEq)]
pub struct Patch {
    /// Nodes and their shares, by node; the shares add up to 1.
    pub(super) loads: Vec<(u32, f64)>,
    /// Triangles under it, each once.
    pub(super) triangles: Vec<u32>,
}

impl Patch {
    /// The patch around a place \[m\] of this radius \[m\], on the triangles that are `solid`; `None` where nothing is.
    ///
    /// The disc is integrated in 48 places of equal area: enough where a slot cuts off half of it (24 came out 1.3 % too stiff there).
    pub(super) fn new(
        grid: &Grid,
        centre: [f64; 2],
        radius: f64,
        solid: impl Fn(usize) -> bool,
    ) -> Option<Patch> {
        let mut loads: Vec<(u32, f64)> = Vec::new();
        let mut triangles = Vec::new();
        let mut count = 0.0;
        for ring in 0..RINGS {
            let r = radius * ((f64::from(ring) + 0.5) / f64::from(RINGS)).sqrt();
            for k in 0..ON_RING {
                // Every second ring is turned by half a step.
                let turn = (f64::from(k) + 0.5 * f64::from(ring % 2)) / f64::from(ON_RING) * TAU;
                let place = [
                    centre[0] + r * libm::cos(turn),
                    centre[1] + r * libm::sin(turn),
                ];
                let Some((triangle, shares)) = grid.locate(place).filter(|at| solid(at.0)) else {
                    continue;
                };
                count += 1.0;
                let nodes = grid.mesh().triangles[triangle];
                loads.extend(nodes.into_iter().zip(shares));
                triangles.push(u32::try_from(triangle).unwrap_or(u32::MAX));
            }
        }
        if count < 0.5 {
            return None;
        }
        loads.sort_unstable_by_key(|load| load.0);
        loads.dedup_by(|next, kept| {
            let same = next.0 == kept.0;
            if same {
                kept.1 += next.1;
            }
            same
        });
        for load in &mut loads {
            load.1 /= count;
        }
        triangles.sort_unstable();
        triangles.dedup();
        Some(Patch { loads, triangles })
    }
}
