//! Small vibrations about the cut as planned: the equation with its delay, step by step.
//!
//! The steps end where teeth enter and leave, and the delay is a whole number of them. Fourth order of Runge and Kutta; halfway
//! between, the past is the cubic through its places and speeds.

use super::{Milling, Stretch, Swinging};
use core::f64::consts::{PI, TAU};

/// Steps for each vibration of the fastest mode, and at least for each stretch.
const PER_VIBRATION: f64 = 50.0;
const PER_STRETCH: f64 = 48.0;
/// Tooth periods integrated, and those at the end that the growth is taken from.
const PERIODS: usize = 1200;
const LOOKED_AT: usize = 600;

type Vector<const M: usize> = [f64; M];

/// One step: its length, and the force change over the modal mass at its start, middle and end.
struct Step<const M: usize> {
    length: f64,
    change: [[Vector<M>; M]; 3],
}

/// Places and speeds of all modes.
#[derive(Clone, Copy)]
struct State<const M: usize> {
    place: Vector<M>,
    speed: Vector<M>,
}

fn sum<const M: usize>(a: &Vector<M>, factor: f64, b: &Vector<M>) -> Vector<M> {
    core::array::from_fn(|i| a[i] + factor * b[i])
}

struct Run<const M: usize> {
    modes: [Swinging; M],
    steps: Vec<Step<M>>,
    period: f64,
}

impl<const M: usize> Run<M> {
    fn new(milling: &Milling, depth: f64) -> Self {
        let modes: [Swinging; M] = core::array::from_fn(|i| milling.modes[i]);
        let edge = milling.edge();
        let fastest = modes.iter().map(|m| m.omega).fold(0.0, f64::max);
        let per_angle = 1.0 / (TAU * milling.n);
        let mut steps = Vec::new();
        for Stretch { from, to, ahead } in milling.stretches() {
            let vibrations = (to - from) * per_angle * fastest / TAU;
            let count = (PER_VIBRATION * vibrations).max(PER_STRETCH).ceil();
            let turn = (to - from) / count;
            let change = |phi: f64| {
                let whole = milling.force_change(&edge, phi, &ahead);
                core::array::from_fn(|i| {
                    let strength = depth * modes[i].omega * modes[i].omega / modes[i].k;
                    core::array::from_fn(|j| strength * whole[i][j])
                })
            };
            let mut done = 0.0;
            while done < count {
                let at = from + turn * done;
                steps.push(Step {
                    length: turn * per_angle,
                    change: [change(at), change(at + 0.5 * turn), change(at + turn)],
                });
                done += 1.0;
            }
        }
        Self {
            modes,
            steps,
            period: milling.period(),
        }
    }

    /// Acceleration of each mode, over a surface left by the past.
    fn acceleration(
        &self,
        change: &[Vector<M>; M],
        state: &State<M>,
        past: &Vector<M>,
    ) -> Vector<M> {
        let cut = sum(&state.place, -1.0, past);
        core::array::from_fn(|i| {
            let m = &self.modes[i];
            let push: f64 = change[i].iter().zip(&cut).map(|(h, u)| h * u).sum();
            -push - 2.0 * m.zeta * m.omega * state.speed[i] - m.omega * m.omega * state.place[i]
        })
    }

    /// The state after a step, and the places halfway.
    fn stepped(
        &self,
        step: &Step<M>,
        now: &State<M>,
        past: [&Vector<M>; 3],
    ) -> (State<M>, Vector<M>) {
        let h = step.length;
        let [start, middle, end] = &step.change;
        let tried = |time: f64, speed: &Vector<M>, pushed: &Vector<M>| State {
            place: sum(&now.place, time, speed),
            speed: sum(&now.speed, time, pushed),
        };
        let first = self.acceleration(start, now, past[0]);
        let two = tried(0.5 * h, &now.speed, &first);
        let second = self.acceleration(middle, &two, past[1]);
        let three = tried(0.5 * h, &two.speed, &second);
        let third = self.acceleration(middle, &three, past[1]);
        let four = tried(h, &three.speed, &third);
        let fourth = self.acceleration(end, &four, past[2]);
        let blend = |k: [&Vector<M>; 4]| {
            core::array::from_fn(|i| (k[0][i] + 2.0 * (k[1][i] + k[2][i]) + k[3][i]) / 6.0)
        };
        let next = tried(
            h,
            &blend([&now.speed, &two.speed, &three.speed, &four.speed]),
            &blend([&first, &second, &third, &fourth]),
        );
        let bow = sum(&now.speed, -1.0, &next.speed);
        let middle = sum(&now.place, 1.0, &next.place);
        let halfway = core::array::from_fn(|i| 0.5 * middle[i] + h / 8.0 * bow[i]);
        (next, halfway)
    }

    /// One tooth period: the places at all steps and halfway, the state at its end, the mean size.
    fn period(&self, start: State<M>, past: &[Vector<M>]) -> (Vec<Vector<M>>, State<M>, f64) {
        let (mut now, mut energy) = (start, 0.0);
        let mut places = Vec::with_capacity(past.len());
        places.push(now.place);
        for (step, past) in self.steps.iter().zip(past.windows(3).step_by(2)) {
            let (next, halfway) = self.stepped(step, &now, [&past[0], &past[1], &past[2]]);
            for (i, m) in self.modes.iter().enumerate() {
                let speed = next.speed[i] / m.omega;
                energy += step.length * (next.place[i] * next.place[i] + speed * speed);
            }
            places.extend([halfway, next.place]);
            now = next;
        }
        (places, now, (energy / self.period).sqrt())
    }

    fn growth(&self) -> f64 {
        // A start with a bit of everything: a kick to every mode, on a surface with waves of several lengths.
        let halves = 2 * self.steps.len();
        let wave = |at: f64, mode: f64| -> f64 {
            let of = |q: u32| libm::sin(PI * f64::from(q) * at + f64::from(q) + mode);
            (1..=6).map(of).sum()
        };
        let mut past: Vec<Vector<M>> = (0..=halves)
            .map(|i| core::array::from_fn(|mode| wave(float(i) / float(halves), float(mode))))
            .collect();
        let mut state = State {
            place: past[halves],
            speed: core::array::from_fn(|i| 0.7 * self.modes[i].omega),
        };
        let mut sizes = Vec::with_capacity(PERIODS);
        let mut total = 0.0;
        for _ in 0..PERIODS {
            let (mut places, mut end, size) = self.period(state, &past);
            // Brought back to size one, so that nothing runs out of range.
            let shrunk = |vector: &mut Vector<M>| vector.iter_mut().for_each(|x| *x /= size);
            places.iter_mut().for_each(shrunk);
            shrunk(&mut end.place);
            shrunk(&mut end.speed);
            (past, state) = (places, end);
            total += libm::log(size);
            sizes.push(total);
        }
        libm::exp(slope(&sizes[PERIODS - LOOKED_AT..]))
    }
}

#[allow(clippy::cast_precision_loss, reason = "counts of steps")]
fn float(count: usize) -> f64 {
    count as f64
}

/// Slope of the straight line through values one apart, by least squares; weights that fade towards both ends take out
/// what only swings about the line.
fn slope(values: &[f64]) -> f64 {
    let count = float(values.len());
    let middle = 0.5 * (count - 1.0);
    let (mut above, mut below) = (0.0, 0.0);
    for (i, value) in values.iter().enumerate() {
        let root = libm::sin(PI * (float(i) + 0.5) / count);
        let t = float(i) - middle;
        above += root * root * t * value;
        below += root * root * t * t;
    }
    above / below
}

/// By what a vibration multiplies from one tooth to the next in the long run, at an axial depth, m (or at a factor of the force
/// on an edge with a corner).
pub(crate) fn growth(milling: &Milling, depth: f64) -> f64 {
    match milling.modes.len() {
        1 => Run::<1>::new(milling, depth).growth(),
        2 => Run::<2>::new(milling, depth).growth(),
        3 => Run::<3>::new(milling, depth).growth(),
        4 => Run::<4>::new(milling, depth).growth(),
        other => panic!("{other} modes are not provided for"),
    }
}
