//! The way through the cut: how the state at the end of a stretch follows from that at its start, as a power series.

use super::nodes::{NODES, Nodes};
use super::series::Series;
use super::system::System;
use super::windows::Window;
use crate::floquet::{MOST_LEVELS, TINY};
use crate::math::{cos, exp, sin};
use core::f64::consts::TAU;

/// Vibrations of the fastest mode in one element: twelve points then err by less than 1e-6 of the amplitude.
const CYCLES: f64 = 0.5;
/// How far the stiffness of the cut may carry a phase in one element \[rad\]; keeps the series short.
const PHASE: f64 = 3.0;

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
pub(super) fn through(system: &System, n: f64, scale: f64) -> Series {
    let size = 2 * system.modes.len();
    let mut state = Series::one(size);
    for window in &system.windows {
        let length = (window.end - window.start) / (TAU * n);
        if window.teeth.is_empty() {
            state = flight(system, length).times(&state);
            continue;
        }
        let fastest = system.fastest / TAU + n;
        let stiff = (scale * system.strongest * length * length).sqrt();
        let pieces = (length * fastest / CYCLES).max(stiff / PHASE).ceil().max(1.0);
        let piece = length / pieces;
        let swings: Vec<Swing> = system.modes.iter().map(|m| Swing::new(*m, piece, &system.nodes)).collect();
        let mut done = 0.0;
        while done < pieces {
            let phi = window.start + (window.end - window.start) * done / pieces;
            let turn = (window.end - window.start) / pieces;
            state = element(system, &swings, (window, phi, turn), (piece, scale)).times(&state);
            if !(state.greatest() < 1.0e9) {
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

/// One element: level by level, what the cut does to what the level before has moved.
fn element(
    system: &System,
    swings: &[Swing],
    (window, phi, turn): (&Window, f64, f64),
    (length, scale): (f64, f64),
) -> Series {
    let modes = swings.len();
    let size = 2 * modes;
    let square = size * size;
    let nodes = &system.nodes;
    let coupling = nodes.at.map(|x| system.coupling(phi + x * turn, &window.teeth));
    let mut terms = vec![0.0; square];
    // Positions: mode by mode, point by point, column by column.
    let mut q = vec![0.0; modes * NODES * size];
    for (i, swing) in swings.iter().enumerate() {
        place(&mut terms, (i, modes), swing.free(NODES));
        for node in 0..NODES {
            let free = swing.free(node);
            let at = (i * NODES + node) * size;
            q[at + i] = free[0];
            q[at + modes + i] = free[1];
        }
    }
    let mut waves = [vec![0.0; NODES * size], vec![0.0; NODES * size]];
    let mut next = q.clone();
    for _ in 1..MOST_LEVELS {
        let from = terms.len();
        terms.resize(from + square, 0.0);
        for (i, swing) in swings.iter().enumerate() {
            for node in 0..NODES {
                let row = &coupling[node][i * modes..(i + 1) * modes];
                let lift = scale / swing.fall[node];
                for column in 0..size {
                    let pushed = |(j, k): (usize, &f64)| k * q[(j * NODES + node) * size + column];
                    let f: f64 = lift * row.iter().enumerate().map(pushed).sum::<f64>();
                    waves[0][node * size + column] = f * swing.cos[node];
                    waves[1][node * size + column] = f * swing.sin[node];
                }
            }
            answer(system, swing, &waves, length, &mut next[i * NODES * size..(i + 1) * NODES * size]);
            arrive(system, swing, &waves, length, (&mut terms[from..], i, modes));
        }
        core::mem::swap(&mut q, &mut next);
        if terms[from..].iter().all(|t| t.abs() <= TINY) {
            break;
        }
    }
    Series { size, terms }
}

/// What a mode answers at the points of an element to forces whose cosine and sine waves are given.
fn answer(system: &System, swing: &Swing, waves: &[Vec<f64>; 2], length: f64, q: &mut [f64]) {
    let size = q.len() / NODES;
    for (node, q) in q.chunks_exact_mut(size).enumerate() {
        let by = -length * swing.fall[node] / swing.omega_d;
        let (s, c) = (by * swing.sin[node], by * swing.cos[node]);
        q.fill(0.0);
        for (from, weight) in system.nodes.up_to[node].iter().enumerate() {
            let (ws, wc) = (weight * s, weight * c);
            let of = from * size..(from + 1) * size;
            let pair = waves[0][of.clone()].iter().zip(&waves[1][of]);
            for (q, (a, b)) in q.iter_mut().zip(pair) {
                *q += ws * a - wc * b;
            }
        }
    }
}

/// The same at the end of the element: position and velocity over omega.
fn arrive(
    system: &System,
    swing: &Swing,
    waves: &[Vec<f64>; 2],
    length: f64,
    (terms, i, modes): (&mut [f64], usize, usize),
) {
    let size = 2 * modes;
    let by = -length * swing.fall[NODES];
    let (s, c) = (swing.sin[NODES], swing.cos[NODES]);
    let omega = swing.omega_d * swing.omega_over;
    for column in 0..size {
        let (mut a, mut b) = (0.0, 0.0);
        for (node, weight) in system.nodes.whole.iter().enumerate() {
            a += weight * waves[0][node * size + column];
            b += weight * waves[1][node * size + column];
        }
        let q = by * (s * a - c * b) / swing.omega_d;
        let v = by * (c * a + s * b) - swing.decay_over * swing.omega_d * q;
        terms[i * size + column] = q;
        terms[(modes + i) * size + column] = v / omega;
    }
}
