//! What vibrates and what drives it, made ready for any spindle speed.

use super::nodes::Nodes;
use super::windows::{Window, windows};
use crate::edge::Edge;
use crate::math::{cos, sin};
use crate::mode::{Cut, Mode};

/// Most modes that are reckoned with together.
pub const MOST_MODES: usize = 6;

/// What may be stronger between the points at which strength is looked at.
const BETWEEN: f64 = 1.2;

/// A mode, and the direction in which it moves cutter and work against each other.
///
/// x is the feed, y the normal to it, z the axis of the cutter (positive away from the floor); a unit vector.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Moving {
    /// The mode, with its stiffness in this direction.
    pub mode: Mode,
    /// The direction \[-\].
    pub along: [f64; 3],
}

impl Moving {
    /// A mode in feed.
    #[must_use]
    pub fn x(mode: Mode) -> Moving {
        let along = [1.0, 0.0, 0.0];
        Moving { mode, along }
    }

    /// A mode across the feed.
    #[must_use]
    pub fn y(mode: Mode) -> Moving {
        let along = [0.0, 1.0, 0.0];
        Moving { mode, along }
    }

    /// A mode along the axis of the cutter.
    #[must_use]
    pub fn z(mode: Mode) -> Moving {
        let along = [0.0, 0.0, 1.0];
        Moving { mode, along }
    }
}

/// Modes and a cut, ready for any spindle speed.
#[derive(Debug, Clone, PartialEq)]
pub struct System {
    /// Natural angular frequency \[rad/s\] and damping ratio of each mode that gives.
    pub(super) modes: Vec<(f64, f64)>,
    /// Their stiffness \[N/m\] and direction.
    pub(super) stiffness: Vec<f64>,
    pub(super) along: Vec<[f64; 3]>,
    /// Which of the modes handed in each of them is.
    pub(super) given: Vec<usize>,
    /// Acceleration of a mode by displacement of another, per depth \[1/(m s^2)\]: factors of sin^2, sin cos, cos^2, sin, cos and 1.
    terms: [Vec<f64>; 6],
    pub(super) windows: Vec<Window>,
    pub(super) nodes: Nodes,
    pub(super) teeth: u32,
    /// The fastest damped angular frequency \[rad/s\].
    pub(super) fastest: f64,
    /// Depth \[m\] at which that coupling equals what damping holds against it, for the weakest mode.
    pub(super) gentlest: f64,
    /// A bound on the coupling of one mode to all \[1/(m s^2)\].
    pub(super) strongest: f64,
}

impl System {
    /// Modes under a cut; `None` for impossible input: no mode that gives, more than [`MOST_MODES`], damping ratios of 1 and more,
    /// directions that are not finite.
    #[must_use]
    pub fn new(moving: &[Moving], cut: &Cut, edge: &Edge) -> Option<System> {
        let sound = |m: &Moving| {
            m.mode.is_sound()
                && m.along
                    .iter()
                    .all(|a| a.is_finite() && a.abs() <= 1.0 + 1e-9)
        };
        if !cut.is_sound() || !moving.iter().all(sound) {
            return None;
        }
        let given: Vec<usize> = (0..moving.len())
            .filter(|i| moving[*i].mode.k.is_finite())
            .collect();
        let gives: Vec<&Moving> = given.iter().map(|i| &moving[*i]).collect();
        let damped = gives.iter().all(|m| m.mode.zeta < 1.0);
        if gives.is_empty() || gives.len() > MOST_MODES || !damped {
            return None;
        }
        let fastest = gives.iter().map(|m| m.mode.omega_n).fold(0.0, f64::max);
        let mut system = System {
            modes: gives
                .iter()
                .map(|m| (m.mode.omega_n, m.mode.zeta))
                .collect(),
            stiffness: gives.iter().map(|m| m.mode.k).collect(),
            along: gives.iter().map(|m| m.along).collect(),
            given,
            terms: couplings(&gives, cut, edge),
            windows: windows(cut.z, cut.phi_st, cut.phi_ex),
            nodes: Nodes::new(),
            teeth: cut.z,
            fastest,
            strongest: 0.0,
            gentlest: 0.0,
        };
        let rows = system.strengths();
        let held = |(strength, m): (&f64, &&Moving)| {
            2.0 * m.mode.zeta * m.mode.omega_n * m.mode.omega_n / strength
        };
        system.gentlest = rows
            .iter()
            .zip(&gives)
            .map(held)
            .fold(f64::INFINITY, f64::min);
        system.strongest = rows.into_iter().fold(0.0, f64::max);
        (system.strongest.is_finite() && system.strongest > 0.0).then_some(system)
    }

    /// How strongly each mode is coupled to all at most, seen at points of each window and a little more \[1/(m s^2)\].
    fn strengths(&self) -> Vec<f64> {
        let count = self.modes.len();
        let mut most = vec![0.0_f64; count];
        for window in self.windows.iter().filter(|w| !w.teeth.is_empty()) {
            for x in [0.0, 0.25, 0.5, 0.75, 1.0] {
                let turn = window.start + x * (window.end - window.start);
                let coupling = self.coupling(turn, &window.teeth);
                for (most, row) in most.iter_mut().zip(coupling.chunks_exact(count)) {
                    *most = most.max(BETWEEN * row.iter().map(|k| k.abs()).sum::<f64>());
                }
            }
        }
        most
    }

    /// The coupling of the modes with the cutter turned so far, row by row \[1/(m s^2)\].
    pub(super) fn coupling(&self, turn: f64, teeth: &[f64]) -> Vec<f64> {
        let mut sums = [0.0; 6];
        for ahead in teeth {
            let (s, c) = (sin(turn + ahead), cos(turn + ahead));
            for (sum, part) in sums.iter_mut().zip([s * s, s * c, c * c, s, c, 1.0]) {
                *sum += part;
            }
        }
        let mut found = vec![0.0; self.terms[0].len()];
        for (sum, term) in sums.iter().zip(&self.terms) {
            for (k, t) in found.iter_mut().zip(term) {
                *k += sum * t;
            }
        }
        found
    }
}

/// Force along a direction from displacement along another: -force = kn n n' - kt t n', with the integrals along the edge.
fn couplings(gives: &[&Moving], cut: &Cut, edge: &Edge) -> [Vec<f64>; 6] {
    let (kt, kn) = (cut.kt, cut.kt * cut.kr_ratio);
    let force = |term: usize, a: &[f64; 3], b: &[f64; 3]| match term {
        0 => kn * edge.ss * a[0] * b[0] - kt * edge.s * a[1] * b[0],
        1 => kt * edge.s * (a[0] * b[0] - a[1] * b[1]) + kn * edge.ss * (a[0] * b[1] + a[1] * b[0]),
        2 => kt * edge.s * a[0] * b[1] + kn * edge.ss * a[1] * b[1],
        3 => kt * edge.c * a[1] * b[2] - kn * edge.sc * (a[0] * b[2] + a[2] * b[0]),
        4 => -kt * edge.c * a[0] * b[2] - kn * edge.sc * (a[1] * b[2] + a[2] * b[1]),
        _ => kn * edge.cc * a[2] * b[2],
    };
    core::array::from_fn(|term| {
        let pairs = gives.iter().flat_map(|a| {
            let per_mass = a.mode.omega_n * a.mode.omega_n / a.mode.k;
            gives
                .iter()
                .map(move |b| per_mass * force(term, &a.along, &b.along))
        });
        pairs.collect()
    })
}
