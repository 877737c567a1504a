//! How one tone of a ring dies away: brought down to rest by its frequency, its height and phase over time.

use crate::math::{Complex, TURN, atan2, energy, hann, ln, turned_back, whole};

/// Length of the window that follows the tone, in its periods: first, then by the decay found, between these.
const FIRST: f64 = 8.0;
const SHORTEST: f64 = 6.0;
const LONGEST: f64 = 32.0;
/// The window is so many times the time in which the height falls to 1/e, and never longer than this (s).
const OF_DECAY: f64 = 0.7;
const LONGEST_SECONDS: f64 = 0.06;
/// Places in one window's length.
const PLACES: usize = 8;
/// The height is believed down to this many times the floor (10 dB).
const OVER_FLOOR: f64 = 3.2;
/// Time after the blow that is left out (s): hammer and part are still in touch.
const TOUCH: f64 = 0.0005;
/// No height is known better than to this share, whatever the floor.
const BEST: f64 = 0.02;
/// Points without which there is no line.
const LEAST_POINTS: usize = 5;

/// A ring as it was followed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Ring {
    /// [1/s]
    pub(crate) frequency: f64,
    /// Decay of the height, exp(-sigma t) [1/s].
    pub(crate) sigma: f64,
    /// By how much the logarithm of the height falls between first and last point, as measured.
    pub(crate) fall: f64,
    /// The same by the straight line.
    pub(crate) fall_of_line: f64,
    /// Root mean square distance from the straight line, in logarithms.
    pub(crate) scatter: f64,
    /// Whether it went down to the floor before the stretch ended.
    pub(crate) buried: bool,
}

/// What is followed: samples from the blow on, without the next one.
pub(crate) struct Stretch<'a> {
    pub(crate) samples: &'a [f64],
    pub(crate) rate: f64,
}

/// Sum of weights, and the straight line through weighted points: slope, and root mean square distance.
fn line(points: &[(f64, f64, f64)]) -> (f64, f64) {
    let sum = |f: &dyn Fn(&(f64, f64, f64)) -> f64| points.iter().map(f).sum::<f64>();
    let weight = sum(&|p| p.2).max(f64::MIN_POSITIVE);
    let (t, y) = (sum(&|p| p.2 * p.0) / weight, sum(&|p| p.2 * p.1) / weight);
    let spread = sum(&|p| p.2 * (p.0 - t) * (p.0 - t));
    let slope = sum(&|p| p.2 * (p.0 - t) * (p.1 - y)) / spread.max(f64::MIN_POSITIVE);
    let off = |p: &(f64, f64, f64)| p.1 - y - slope * (p.0 - t);
    let scatter = (sum(&|p| p.2 * off(p) * off(p)) / weight).sqrt();
    (slope, scatter)
}

impl Stretch<'_> {
    /// Follows the tone near `frequency` with a window of `length` samples. `noise(length)` is the mean square of what
    /// else is in that band, per unit of the window's energy.
    fn with_window(&self, frequency: f64, length: usize, noise: f64) -> Option<Ring> {
        let window = hann(length);
        let floor = (noise * energy(&window)).sqrt();
        let turn = TURN * frequency / self.rate;
        let still: Vec<Complex> = window
            .iter()
            .enumerate()
            .map(|(i, w)| turned_back(turn * i as f64) * w)
            .collect();
        let skip = whole(TOUCH * self.rate);
        let mut points: Vec<(f64, Complex)> = Vec::new();
        let mut buried = false;
        for from in (skip..(self.samples.len() + 1).saturating_sub(length))
            .step_by((length / PLACES).max(1))
        {
            let frame = &self.samples[from..from + length];
            let sum: Complex = frame.iter().zip(&still).map(|(x, s)| s * x).sum();
            if sum.norm_sqr().sqrt() <= OVER_FLOOR * floor || sum.norm_sqr() <= 0.0 {
                buried = true;
                break;
            }
            points.push((
                from as f64 / self.rate,
                sum * turned_back(turn * from as f64),
            ));
        }
        if points.len() < LEAST_POINTS {
            return None;
        }
        let weight = |c: &Complex| 1.0 / (BEST * BEST + floor * floor / c.norm_sqr());
        let height = |c: &Complex| 0.5 * ln(c.norm_sqr());
        let heights: Vec<_> = points
            .iter()
            .map(|(t, c)| (*t, height(c), weight(c)))
            .collect();
        let mut phase = 0.0;
        let mut before = points[0].1;
        let mut phases = Vec::with_capacity(points.len());
        for (t, c) in &points {
            let step = c * before.conj();
            phase += atan2(step.im, step.re);
            before = *c;
            phases.push((*t, phase, weight(c)));
        }
        let (slope, scatter) = line(&heights);
        let span = points[points.len() - 1].0 - points[0].0;
        Some(Ring {
            frequency: frequency + line(&phases).0 / TURN,
            sigma: -slope,
            fall: heights[0].1 - heights[heights.len() - 1].1,
            fall_of_line: -slope * span,
            scatter,
            buried,
        })
    }

    /// Follows the tone near `frequency`; the window fits the decay at the second go. Nothing where it is buried at once.
    pub(crate) fn follow(&self, frequency: f64, noise: &dyn Fn(f64, f64) -> f64) -> Option<Ring> {
        let go = |frequency: f64, seconds: f64| {
            let length = whole(seconds * self.rate).max(PLACES);
            self.with_window(frequency, length, noise(frequency, seconds))
        };
        let first = go(frequency, FIRST / frequency)?;
        let close = |ring: &Ring| (ring.frequency / frequency - 1.0).abs() < 0.5 / FIRST;
        if !close(&first) {
            return None;
        }
        let wanted = OF_DECAY / first.sigma.max(f64::MIN_POSITIVE);
        let longest = (LONGEST / first.frequency).min(LONGEST_SECONDS);
        let seconds = wanted.min(longest).max(SHORTEST / first.frequency);
        let second = go(first.frequency, seconds).filter(close);
        Some(second.unwrap_or(first))
    }
}
