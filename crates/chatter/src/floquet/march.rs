//! The way through the cut: how the state at the end of a stretch follows from that at its start, as a power series.

use super::nodes::{NODES, Nodes};
use super::series::Series;
use super::system::{MOST_MODES, System};
use super::windows::Window;
use crate::floquet::{MOST_LEVELS, TINY};
use crate::math::{cos, exp, sin};
use core::f64::consts::TAU;

/// Vibrations of the fastest mode in one element: twelve points then err by less than 1e-6 of the amplitude.
const CYCLES: f64 = 0.5;
/// How far the stiffness of the cut may carry a phase in one element \[rad\]; keeps the series short.
const PHASE: f64 = 3.0;
/// Entries above this are of no use any more.
const BEYOND: f64 = 1.0e9;

/// One mode between the points of an element: what it does by itself.
struct Swing {
    /// Decay times cosine and sine at the points and at the end.
    fall: [f64; NODES + 1],
    cos: [f64; NODES + 1],
    sin: [f64; NODES + 1],
    /// Damped angular frequency, and undamped and decay over it.
    omega_d: f64,
    omega_over: f64,
    decay_over: f64,
}

impl Swing {
    fn new((omega, zeta): (f64, f64), length: f64, nodes: &Nodes) -> Swing {
        let omega_d = omega * (1.0 - zeta * zeta).sqrt();
        let mut swing = Swing {
            fall: [0.0; NODES + 1],
            cos: [0.0; NODES + 1],
            sin: [0.0; NODES + 1],
            omega_d,
            omega_over: omega / omega_d,
            decay_over: zeta * omega / omega_d,
        };
        for (i, x) in nodes.at.iter().chain(&[1.0]).enumerate() {
            let t = x * length;
            swing.fall[i] = exp(-zeta * omega * t);
            swing.cos[i] = cos(omega_d * t);
            swing.sin[i] = sin(omega_d * t);
        }
        swing
    }

    /// Position after position and after velocity (over omega) at a point, and velocity (over omega) after both.
    fn free(&self, i: usize) -> [f64; 4] {
        let (e, c, s) = (self.fall[i], self.cos[i], self.sin[i]);
        [
            e * (c + self.decay_over * s),
            e * self.omega_over * s,
            -e * self.omega_over * s,
            e * (c - self.decay_over * s),
        ]
    }
}

/// The state after a whole tooth period from that at its start, in powers of the strength: a depth of `scale` \[m\] counts 1.
/// What grows beyond all use is given back as it stands.
pub(super) fn through(system: &System, n: f64, scale: f64) -> Series {
    match system.modes.len() {
        1 => through_of::<2>(system, n, scale),
        2 => through_of::<4>(system, n, scale),
        3 => through_of::<6>(system, n, scale),
        // Columns beyond those of the modes stay empty.
        _ => through_of::<{ 2 * MOST_MODES }>(system, n, scale),
    }
}

/// About how many elements a tooth period takes.
pub(super) fn pieces(system: &System, n: f64, scale: f64) -> f64 {
    let cutting = system.windows.iter().filter(|w| !w.teeth.is_empty());
    let time = cutting.map(|w| (w.end - w.start) / (TAU * n)).sum::<f64>();
    let fastest = system.fastest / TAU + n;
    let pieces = time * (fastest / CYCLES).max((scale * system.strongest).sqrt() / PHASE);
    if pieces.is_nan() {
        f64::INFINITY
    } else {
        pieces
    }
}

fn through_of<const N: usize>(system: &System, n: f64, scale: f64) -> Series {
    let mut state = Series::one(2 * system.modes.len());
    for window in &system.windows {
        let length = (window.end - window.start) / (TAU * n);
        if window.teeth.is_empty() {
            state = flight(system, length).times(&state);
            continue;
        }
        let fastest = system.fastest / TAU + n;
        let stiff = (scale * system.strongest * length * length).sqrt();
        let pieces = (length * fastest / CYCLES)
            .max(stiff / PHASE)
            .ceil()
            .max(1.0);
        let piece = length / pieces;
        let turn = (window.end - window.start) / pieces;
        let swings: Vec<Swing> = system
            .modes
            .iter()
            .map(|m| Swing::new(*m, piece, &system.nodes))
            .collect();
        let mut done = 0.0;
        while done < pieces {
            let phi = window.start + turn * done;
            let element = Element {
                system,
                swings: &swings,
                length: piece,
                scale,
            };
            state = element.transfer::<N>(window, phi, turn).times(&state);
            if state.greatest() >= BEYOND {
                return state;
            }
            done += 1.0;
        }
    }
    state
}

/// Free flight: nothing cuts.
fn flight(system: &System, length: f64) -> Series {
    let modes = system.modes.len();
    let size = 2 * modes;
    let mut terms = vec![0.0; size * size];
    for (i, mode) in system.modes.iter().enumerate() {
        let free = Swing::new(*mode, length, &system.nodes).free(NODES);
        place(&mut terms, (i, modes), free);
    }
    Series { size, terms }
}

/// Puts what a mode does by itself into the matrix of a step.
fn place(terms: &mut [f64], (i, modes): (usize, usize), [qq, qp, pq, pp]: [f64; 4]) {
    let size = 2 * modes;
    terms[i * size + i] = qq;
    terms[i * size + modes + i] = qp;
    terms[(modes + i) * size + i] = pq;
    terms[(modes + i) * size + modes + i] = pp;
}

/// A stretch of the cut in which little happens.
struct Element<'a> {
    system: &'a System,
    swings: &'a [Swing],
    /// How long it lasts \[s\].
    length: f64,
    scale: f64,
}

/// Something at each point of an element, for each column.
type AtNodes<const N: usize> = [[f64; N]; NODES];

impl Element<'_> {
    /// The state at its end from that at its start: level by level, what the cut does to what the level before has moved.
    fn transfer<const N: usize>(&self, window: &Window, phi: f64, turn: f64) -> Series {
        let modes = self.swings.len();
        let size = 2 * modes;
        let square = size * size;
        let coupling = self
            .system
            .nodes
            .at
            .map(|x| self.system.coupling(phi + x * turn, &window.teeth));
        let mut terms = vec![0.0; square];
        let mut q: Vec<AtNodes<N>> = vec![[[0.0; N]; NODES]; modes];
        for (i, (swing, q)) in self.swings.iter().zip(&mut q).enumerate() {
            place(&mut terms, (i, modes), swing.free(NODES));
            for (node, q) in q.iter_mut().enumerate() {
                let free = swing.free(node);
                q[i] = free[0];
                q[modes + i] = free[1];
            }
        }
        let mut next = q.clone();
        for _ in 1..MOST_LEVELS {
            let from = terms.len();
            terms.resize(from + square, 0.0);
            for (i, swing) in self.swings.iter().enumerate() {
                let waves = self.waves(swing, &q, |node| {
                    &coupling[node][i * modes..(i + 1) * modes]
                });
                self.answer(swing, &waves, &mut next[i]);
                self.arrive(swing, &waves, (&mut terms[from..], i, modes));
            }
            core::mem::swap(&mut q, &mut next);
            if terms[from..].iter().all(|t| t.abs() <= TINY) {
                break;
            }
        }
        Series { size, terms }
    }

    /// Cosine and sine waves of the force on a mode.
    fn waves<'c, const N: usize>(
        &self,
        swing: &Swing,
        q: &[AtNodes<N>],
        coupling: impl Fn(usize) -> &'c [f64],
    ) -> [AtNodes<N>; 2] {
        let mut waves = [[[0.0; N]; NODES]; 2];
        for node in 0..NODES {
            let lift = self.scale / swing.fall[node];
            let mut force = [0.0; N];
            for (k, q) in coupling(node).iter().zip(q) {
                let by = lift * k;
                for (f, q) in force.iter_mut().zip(&q[node]) {
                    *f += by * q;
                }
            }
            let turns = [swing.cos[node], swing.sin[node]];
            for (wave, turn) in waves.iter_mut().zip(turns) {
                for (to, f) in wave[node].iter_mut().zip(&force) {
                    *to = f * turn;
                }
            }
        }
        waves
    }

    /// What a mode answers at the points.
    fn answer<const N: usize>(&self, swing: &Swing, waves: &[AtNodes<N>; 2], q: &mut AtNodes<N>) {
        for (node, q) in q.iter_mut().enumerate() {
            let by = -self.length * swing.fall[node] / swing.omega_d;
            let [a, b] = integrals(&self.system.nodes.up_to[node], waves);
            let (s, c) = (by * swing.sin[node], by * swing.cos[node]);
            for ((q, a), b) in q.iter_mut().zip(a).zip(b) {
                *q = s * a - c * b;
            }
        }
    }

    /// The same at the end: position and velocity over omega.
    fn arrive<const N: usize>(
        &self,
        swing: &Swing,
        waves: &[AtNodes<N>; 2],
        (terms, i, modes): (&mut [f64], usize, usize),
    ) {
        let size = 2 * modes;
        let by = -self.length * swing.fall[NODES];
        let (s, c) = (swing.sin[NODES], swing.cos[NODES]);
        let omega = swing.omega_d * swing.omega_over;
        let [a, b] = integrals(&self.system.nodes.whole, waves);
        for column in 0..size.min(N) {
            let (a, b) = (a[column], b[column]);
            let q = by * (s * a - c * b) / swing.omega_d;
            let v = by * (c * a + s * b) - swing.decay_over * swing.omega_d * q;
            terms[i * size + column] = q;
            terms[(modes + i) * size + column] = v / omega;
        }
    }
}

/// Integrals of both waves with the same weights.
fn integrals<const N: usize>(weights: &[f64; NODES], waves: &[AtNodes<N>; 2]) -> [[f64; N]; 2] {
    let mut sums = [[0.0; N]; 2];
    for (node, weight) in weights.iter().enumerate() {
        for (sum, wave) in sums.iter_mut().zip(waves) {
            for (sum, value) in sum.iter_mut().zip(&wave[node]) {
                *sum += weight * value;
            }
        }
    }
    sums
}
