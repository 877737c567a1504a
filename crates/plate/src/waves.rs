//! The general solutions of a plate in polar coordinates, wave number by wave number, lengths in outer radii.

use crate::math::ln;

/// One term c (r / r0)^p, or c r^p ln r.
#[derive(Clone, Copy)]
pub(crate) struct Term {
    c: f64,
    p: i32,
    r0: f64,
    log: bool,
}

impl Term {
    pub(crate) fn power(c: f64, p: i32) -> Self {
        Self {
            c,
            p,
            r0: 1.0,
            log: false,
        }
    }

    pub(crate) fn log(c: f64, p: i32) -> Self {
        Self {
            c,
            p,
            r0: 1.0,
            log: true,
        }
    }

    /// c (r / r0)^p: keeps high powers in range.
    fn about(r0: f64, c: f64, p: i32) -> Self {
        Self {
            c,
            p,
            r0,
            log: false,
        }
    }

    /// Value after an operator that turns r^p into `poly` r^(p - `lower`), `slope` being its derivative by p.
    fn apply(&self, r: f64, lower: i32, (poly, slope): (f64, f64)) -> f64 {
        let base = self.c * (r / self.r0).powi(self.p) * r.powi(-lower);
        if self.log {
            base * (slope + poly * ln(r))
        } else {
            base * poly
        }
    }

    pub(crate) fn value(&self, r: f64) -> f64 {
        self.apply(r, 0, (1.0, 0.0))
    }

    pub(crate) fn slope(&self, r: f64) -> f64 {
        self.apply(r, 1, (f64::from(self.p), 1.0))
    }

    /// Radial bending moment over -D, for a wave number squared `n2`.
    pub(crate) fn moment(&self, r: f64, n2: f64, nu: f64) -> f64 {
        let p = f64::from(self.p);
        self.apply(r, 2, (p * (p - 1.0) + nu * (p - n2), 2.0 * p - 1.0 + nu))
    }

    /// Kirchhoff's edge force over -D, for a wave number squared `n2`.
    pub(crate) fn shear(&self, r: f64, n2: f64, nu: f64) -> f64 {
        let p = f64::from(self.p);
        let poly = (p * p - n2) * (p - 2.0) - (1.0 - nu) * n2 * (p - 1.0);
        let slope = 2.0 * p * (p - 2.0) + (p * p - n2) - (1.0 - nu) * n2;
        self.apply(r, 3, (poly, slope))
    }
}

/// One wave cos(n theta): the general solutions, and the free plate under a point load.
pub(crate) struct Wave {
    pub(crate) n: f64,
    /// The four general solutions, each at most about 1 on the annulus.
    pub(crate) basis: [Term; 4],
    /// The wave of (distance)^2 ln(distance) inside the circle of the load, and outside of it.
    pub(crate) inside: [Term; 3],
    pub(crate) outside: [Term; 3],
}

impl Wave {
    /// Wave `n` on an annulus of inner radius `b` (outer 1), the load at radius `load`.
    pub(crate) fn new(n: u32, b: f64, load: f64) -> Self {
        match n {
            0 => Self::round(load),
            1 => Self::tilted(b, load),
            _ => Self::high(n, b, load),
        }
    }

    fn round(load: f64) -> Self {
        let (s2, l) = (load * load, ln(load));
        Self {
            n: 0.0,
            basis: [
                Term::power(1.0, 0),
                Term::power(1.0, 2),
                Term::log(1.0, 0),
                Term::log(1.0, 2),
            ],
            inside: [
                Term::power(s2 * l, 0),
                Term::power(1.0 + l, 2),
                Term::power(0.0, 0),
            ],
            outside: [Term::log(1.0, 2), Term::log(s2, 0), Term::power(s2, 0)],
        }
    }

    fn tilted(b: f64, load: f64) -> Self {
        Self {
            n: 1.0,
            basis: [
                Term::power(1.0, 1),
                Term::power(1.0, 3),
                Term::about(b, 1.0, -1),
                Term::log(1.0, 1),
            ],
            inside: [
                Term::power(-load * (1.0 + 2.0 * ln(load)), 1),
                Term::power(-0.5 / load, 3),
                Term::power(0.0, 0),
            ],
            outside: [
                Term::log(-2.0 * load, 1),
                Term::power(-load, 1),
                Term::power(-0.5 * load * load * load, -1),
            ],
        }
    }

    fn high(n: u32, b: f64, load: f64) -> Self {
        let p = i32::try_from(n).unwrap_or(i32::MAX - 2);
        let n = f64::from(n);
        let s2 = load * load;
        let (less, more) = (s2 / (n * (n - 1.0)), -s2 / (n * (n + 1.0)));
        let none = Term::power(0.0, 0);
        Self {
            n,
            basis: [
                Term::power(1.0, p),
                Term::power(1.0, p + 2),
                Term::about(b, 1.0, -p),
                Term::about(b, 1.0, 2 - p),
            ],
            inside: [
                Term::about(load, less, p),
                Term::about(load, more, p + 2),
                none,
            ],
            outside: [
                Term::about(load, less, 2 - p),
                Term::about(load, more, -p),
                none,
            ],
        }
    }
}
