//! One spindle speed: the limit depth, the greatest multiplier, what vibrates at the limit.

use super::disk::clearance;
use super::march;
use super::series::Series;
use super::system::System;
use super::zeros::{horner, nearest, on_circle, root};
use crate::math::{Complex, atan2, cos, exp, sin};
use core::f64::consts::PI;

/// Depths that are looked at before one is closed in on.
const ROWS: u32 = 32;
/// Places between two of them at which a multiplier of -1 is looked for.
const PARTS: u32 = 8;
/// Halvings that close in on a crossing before Newton's method takes over, and those that do without.
const HALVINGS: u32 = 8;
const LAST_HALVINGS: u32 = 40;
/// Most steps of Newton's method and of the closing in; how near the circle, or each other, the ends are then.
const STEPS: u32 = 24;
const DONE: f64 = 1.0e-11;
/// A coefficient above this leaves too few digits: the range of depths is halved until there is none.
const LARGE: f64 = 1.0e7;
/// The first rung of the ladder, in depths whose stiffness equals the damping of the weakest mode; and the last.
const START: f64 = 24.0;
const MOST_RUNGS: u32 = 40;
/// More elements than this are not worked through: hundreds of vibrations between two teeth, or a cut like a wall.
const MOST_PIECES: f64 = 2000.0;
/// How often it is halved.
const SHRINKINGS: u32 = 24;
/// The least multiplier that [`System::radius`] tells from nothing.
const LEAST_RADIUS: f64 = 0.1;
/// How near to -1 a multiplier is taken as a flip \[rad\].
const FLIP: f64 = 1.0e-6;

/// How a cut becomes unstable.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Kind {
    #[default]
    /// A vibration of its own frequency (secondary Hopf bifurcation).
    Hopf,
    /// Every other tooth cuts deep (period doubling).
    Flip,
    /// Not known: so far nothing sings, and deeper too many digits are lost to tell.
    Unseen,
}

/// Where a cut becomes unstable.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Crossing {
    /// Limit depth \[m\].
    pub depth: f64,
    /// The multiplier there, of modulus 1, with its imaginary part not negative.
    pub multiplier: (f64, f64),
    /// How.
    pub kind: Kind,
}

/// One spindle speed, ready for any depth up to a greatest.
#[derive(Debug, Clone, PartialEq)]
pub struct Period<'a> {
    system: &'a System,
    /// Time between two teeth \[s\].
    time: f64,
    /// Greatest depth \[m\].
    most: f64,
    /// The transition matrix; its variable is the strength over twice the greatest depth.
    state: Series,
    /// Its characteristic polynomial.
    polynomial: Vec<Vec<f64>>,
}

impl System {
    /// A spindle speed \[1/s\], for depths up to `most` \[m\], or less where more would cost too many digits: see [`Period::most`].
    /// `None` for impossible input.
    #[must_use]
    pub fn at(&self, n: f64, most: f64) -> Option<Period<'_>> {
        let sound = n > 0.0 && n.is_finite() && most > 0.0 && most.is_finite();
        if !sound {
            return None;
        }
        let decay: f64 = self.modes.iter().map(|(omega, zeta)| omega * zeta).sum();
        let time = 1.0 / (n * f64::from(self.teeth));
        let mut most = most;
        for _ in 0..SHRINKINGS {
            if march::pieces(self, n, 2.0 * most) > MOST_PIECES {
                most *= 0.5;
                continue;
            }
            let state = march::through(self, n, 2.0 * most);
            if state.greatest() < LARGE {
                let polynomial = state.characteristic(exp(-2.0 * decay * time));
                let greatest = polynomial
                    .iter()
                    .flatten()
                    .fold(0.0_f64, |g, c| g.max(c.abs()));
                if greatest < LARGE {
                    let system = self;
                    return Some(Period {
                        system,
                        time,
                        most,
                        state,
                        polynomial,
                    });
                }
            }
            most *= 0.5;
        }
        None
    }

    /// The first depth \[m\] up to `most` at which the cut becomes unstable at spindle speed `n` \[1/s\], looking upwards from nothing. `None`
    /// where it stays quiet, and for impossible input.
    #[must_use]
    pub fn limit(&self, n: f64, most: f64) -> Option<Crossing> {
        if !(n > 0.0 && most > 0.0 && most.is_finite()) {
            return None;
        }
        let mut rung = 0;
        loop {
            if let Some(found) = self.limit_on(n, rung) {
                return (found.depth <= most).then_some(found);
            }
            if self.rung(rung) >= most || rung >= MOST_RUNGS {
                return None;
            }
            rung += 1;
        }
    }

    /// Depth \[m\] that a rung of the ladder reaches on which a limit is looked for. Shallow cuts have short series: the first reaches
    /// as far as most limits are, each further one twice as far.
    #[must_use]
    pub fn rung(&self, rung: u32) -> f64 {
        let twos = (0..rung.min(MOST_RUNGS)).fold(1.0, |twos, _| 2.0 * twos);
        START * self.gentlest * twos
    }

    /// The first depth on a rung at which the cut becomes unstable, if it is stable on those below; whatever was looked at
    /// before.
    #[must_use]
    pub fn limit_on(&self, n: f64, rung: u32) -> Option<Crossing> {
        let to = self.rung(rung);
        let from = if rung == 0 { 0.0 } else { self.rung(rung - 1) };
        // Slower or deeper than can be followed: not seen.
        let Some(period) = self.at(n, to).filter(|period| period.most > from) else {
            return (n > 0.0 && n.is_finite()).then(|| unseen(from));
        };
        let found = period.limit_above(from);
        // What lies beyond was not seen.
        found.or_else(|| (period.most < to).then(|| unseen(period.most)))
    }

    /// Greatest modulus of a multiplier \[-\] at spindle speed `n` \[1/s\] and a depth \[m\]: below 1 the cut is quiet, above it sings. What is
    /// less than 0.1 counts as 0; `None` for impossible input.
    #[must_use]
    pub fn radius(&self, n: f64, depth: f64) -> Option<f64> {
        let reach = 0.5 * (1.0 + 1.0 / LEAST_RADIUS);
        let mut period = self.at(n, depth * reach)?;
        while period.most < depth {
            period = self.at(n, depth)?;
            if period.most < depth {
                return None;
            }
        }
        Some(period.radius(depth))
    }
}

impl Period<'_> {
    /// The greatest depth that can be asked \[m\].
    #[must_use]
    pub fn most(&self) -> f64 {
        self.most
    }

    /// Whether a depth \[m\] up to [`Period::most`] is stable.
    #[must_use]
    pub fn is_stable(&self, depth: f64) -> bool {
        clearance(&mut self.series(depth)) > 0.0
    }

    /// The characteristic function at a depth, as a power series of w = 1 / multiplier.
    fn series(&self, depth: f64) -> Vec<f64> {
        let strength = 0.5 * depth / self.most;
        let powers = self.polynomial.iter().map(Vec::len).max().unwrap_or(1);
        let mut g: Vec<f64> = Vec::with_capacity(powers + self.polynomial.len());
        for power in (0..powers).rev() {
            // times strength (1 - w)
            g.push(0.0);
            for i in (0..g.len()).rev() {
                let before = if i > 0 { g[i - 1] } else { 0.0 };
                g[i] = strength * (g[i] - before);
            }
            let length = g.len().max(self.polynomial.len() + 1);
            g.resize(length, 0.0);
            for (k, p) in self.polynomial.iter().enumerate() {
                g[k + 1] -= p.get(power).copied().unwrap_or(0.0);
            }
        }
        g[0] += 1.0;
        g
    }

    /// The first depth at which the cut becomes unstable, looking upwards from nothing; `None` where it stays quiet up to
    /// [`Period::most`].
    #[must_use]
    pub fn limit(&self) -> Option<Crossing> {
        self.limit_above(0.0)
    }

    /// The same above a depth that is known to be stable.
    fn limit_above(&self, from: f64) -> Option<Crossing> {
        let (mut low, mut high) = self.bracket(from, self.most)?;
        if low <= 0.0 {
            // All within the first row: there may be more in it.
            (low, high) = self.bracket(0.0, high)?;
        }
        for _ in 0..HALVINGS {
            (low, high) = self.halved(low, high);
        }
        let crossing = self.followed(low, high).unwrap_or_else(|| {
            for _ in 0..LAST_HALVINGS {
                (low, high) = self.halved(low, high);
            }
            (on_circle(&self.series(high)), high)
        });
        Some(told(crossing))
    }

    /// The first of equal steps within which the cut becomes unstable, or a part of one in which it does so for a while.
    fn bracket(&self, from: f64, to: f64) -> Option<(f64, f64)> {
        let at = |row: f64| from + (to - from) * row / f64::from(ROWS);
        let flips = self.at_flip();
        let value = |depth: f64| horner(&flips, Complex::new(depth / self.most, 0.0)).0.re;
        for row in 0..ROWS {
            let low = f64::from(row);
            if !self.is_stable(at(low + 1.0)) {
                return Some((at(low), at(low + 1.0)));
            }
            // A flip may come and go between two rows.
            for part in 1..PARTS {
                let middle = at(low + f64::from(part) / f64::from(PARTS));
                if value(middle) < 0.0 && !self.is_stable(middle) {
                    return Some((at(low), middle));
                }
            }
        }
        None
    }

    /// The characteristic function at the multiplier -1, as a power series of the depth over the greatest.
    fn at_flip(&self) -> Vec<f64> {
        let powers = self.polynomial.iter().map(Vec::len).max().unwrap_or(1);
        let mut sum = vec![0.0; powers];
        sum[0] = 1.0;
        let mut sign = 1.0;
        for p in &self.polynomial {
            for (s, p) in sum.iter_mut().zip(p) {
                *s += sign * p;
            }
            sign = -sign;
        }
        sum
    }

    fn halved(&self, low: f64, high: f64) -> (f64, f64) {
        let middle = 0.5 * (low + high);
        if self.is_stable(middle) {
            (middle, high)
        } else {
            (low, middle)
        }
    }

    /// The zero that comes into the disk between two depths, and the depth at which it does; `None` where it cannot be
    /// followed.
    fn followed(&self, low: f64, high: f64) -> Option<(Complex, f64)> {
        let g = self.series(high);
        let mut w = root(&g, nearest(&g))?;
        let (mut a, mut b) = ((low, 0.0), (high, w.norm2() - 1.0));
        a.1 = root(&self.series(low), w)?.norm2() - 1.0;
        if !(a.1 > 0.0 && b.1 <= 0.0) {
            return None;
        }
        // Regula falsi; the end that stays twice counts half (Illinois).
        for _ in 0..STEPS {
            let depth = (a.0 * b.1 - b.0 * a.1) / (b.1 - a.1);
            w = root(&self.series(depth), w)?;
            let out = w.norm2() - 1.0;
            if out.abs() <= DONE || b.0 - a.0 <= DONE * b.0 {
                return Some((w, depth));
            }
            if out > 0.0 {
                a = (depth, out);
                b.1 *= 0.5;
            } else {
                b = (depth, out);
                a.1 *= 0.5;
            }
        }
        None
    }

    /// Greatest modulus of a multiplier at a depth, see [`System::radius`].
    fn radius(&self, depth: f64) -> f64 {
        let g = self.series(depth);
        let clear = |reach: f64| {
            let mut power = 1.0;
            let mut scaled: Vec<f64> = Vec::with_capacity(g.len());
            for c in &g {
                scaled.push(c * power);
                power *= reach;
            }
            clearance(&mut scaled) > 0.0
        };
        let (mut low, mut high) = (0.0, 1.0 / LEAST_RADIUS);
        if clear(high) {
            return 0.0;
        }
        for _ in 0..LAST_HALVINGS + HALVINGS {
            let middle = 0.5 * (low + high);
            if clear(middle) {
                low = middle;
            } else {
                high = middle;
            }
        }
        2.0 / (low + high)
    }
}

/// So deep nothing sings; deeper was not seen.
fn unseen(depth: f64) -> Crossing {
    Crossing {
        depth,
        multiplier: (0.0, 0.0),
        kind: Kind::Unseen,
    }
}

/// A crossing where a zero w comes into the disk.
fn told((w, depth): (Complex, f64)) -> Crossing {
    let theta = atan2(w.im.abs(), w.re);
    Crossing {
        depth,
        multiplier: (cos(theta), sin(theta)),
        kind: if PI - theta < FLIP {
            Kind::Flip
        } else {
            Kind::Hopf
        },
    }
}
