//! Running integrals of a tooth's force over the immersion: an arc of its helix is a difference of two of them.

use crate::engagement::Immersion;
use crate::kienzle::Cutting;
use crate::math::{cos, pow_near, sin};

/// Pieces of the immersion.
const PIECES: usize = 24;

/// Feed-wise, normal and tangential parts of a force per depth: times cos, sin and 1.
pub(super) type Parts = [f64; 3];

/// Where the immersion begins, the sine and cosine at every node.
pub(super) struct Nodes {
    pub(super) start: f64,
    step: f64,
    per_step: f64,
    directions: [(f64, f64); PIECES + 1],
}

impl Nodes {
    pub(super) fn new(immersion: &Immersion) -> Nodes {
        let start = immersion.phi_st;
        #[allow(clippy::cast_precision_loss, reason = "a small number")]
        let step = immersion.width() / PIECES as f64;
        // One rotation after the other.
        let (mut s, mut c) = (sin(start), cos(start));
        let (turn_s, turn_c) = (sin(step), cos(step));
        let mut directions = [(s, c); PIECES + 1];
        for direction in &mut directions[1..] {
            (s, c) = (s * turn_c + c * turn_s, c * turn_c - s * turn_s);
            *direction = (s, c);
        }
        Nodes {
            start,
            step,
            per_step: 1.0 / step,
            directions,
        }
    }
}

/// Force of one tooth per depth, and its integral from entry, at the nodes; the force runs straight between them.
pub(super) struct Table {
    force: [Parts; PIECES + 1],
    sum: [Parts; PIECES + 1],
}

impl Table {
    /// `chip` turns the chip thickness of a tooth without runout into that of this tooth.
    pub(super) fn new(
        nodes: &Nodes,
        cutting: &Cutting,
        fz: f64,
        chip: impl Fn(f64) -> f64,
    ) -> Table {
        let unit = cutting.kc1_1 * cutting.wear * cutting.h_ref;
        let exponent = 1.0 - cutting.mc;
        let mut table = Table {
            force: [[0.0; 3]; PIECES + 1],
            sum: [[0.0; 3]; PIECES + 1],
        };
        for (i, (s, c)) in nodes.directions.iter().enumerate() {
            // At the ends of a half turn the sine may come out a rounding below 0.
            let h = chip(fz * s.max(0.0));
            let f = unit * pow_near(h / cutting.h_ref, exponent);
            table.force[i] = [f * c, f * s, f];
            if i > 0 {
                table.sum[i] = core::array::from_fn(|k| {
                    table.sum[i - 1][k]
                        + 0.5 * nodes.step * (table.force[i - 1][k] + table.force[i][k])
                });
            }
        }
        table
    }

    /// The integral over the whole immersion.
    pub(super) fn whole(&self) -> Parts {
        self.sum[PIECES]
    }

    /// The integral from entry to an angle; to an end where the angle is beyond it.
    pub(super) fn to(&self, nodes: &Nodes, phi: f64) -> Parts {
        let (i, share) = place(nodes, phi);
        let (a, b) = (&self.force[i], &self.force[i + 1]);
        let length = share * nodes.step;
        let sum = &self.sum[i];
        let part = |k: usize| sum[k] + length * (a[k] + 0.5 * share * (b[k] - a[k]));
        [part(0), part(1), part(2)]
    }

    /// The force per depth at an angle within the immersion.
    pub(super) fn at(&self, nodes: &Nodes, phi: f64) -> Parts {
        let (i, share) = place(nodes, phi);
        let (a, b) = (&self.force[i], &self.force[i + 1]);
        core::array::from_fn(|k| a[k] + share * (b[k] - a[k]))
    }
}

/// The piece that an angle falls in, and how far along it.
fn place(nodes: &Nodes, phi: f64) -> (usize, f64) {
    #[allow(clippy::cast_precision_loss, reason = "a small number")]
    let along = ((phi - nodes.start) * nodes.per_step).clamp(0.0, PIECES as f64);
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "clamped to the table just above; what is not a number becomes 0"
    )]
    let i = (along as u32 as usize).min(PIECES - 1);
    #[allow(clippy::cast_precision_loss, reason = "a small number")]
    let share = along - i as f64;
    (i, share)
}
