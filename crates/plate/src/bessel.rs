//! Bessel functions of integer order for the vibration of round plates.
//!
//! J and Y come from `libm`; the modified ones from integrals that the trapezoidal rule sums to the last digits. They are scaled,
//! I by exp(-x) and K by exp(x), so that nothing overflows.

use crate::math::{cos, cosh, exp};

/// Points of the trapezoidal rule on the half circle for I; enough for x up to about 1000.
const CIRCLE_POINTS: u32 = 240;
/// Step of the trapezoidal rule for K: this over (10 + sqrt(x)), as the integrand narrows with x.
const LINE_STEP: f64 = 0.5;
/// An integrand below this share of 1 no longer counts.
const NEGLIGIBLE: f64 = 1e-18;
/// Terms of the power series of I.
const SERIES_TERMS: u32 = 60;
/// Below this argument the power series of I is used.
const SERIES_BELOW: f64 = 10.0;

/// A function and its derivative.
#[derive(Clone, Copy)]
pub(crate) struct Value {
    pub(crate) f: f64,
    pub(crate) df: f64,
}

fn order(n: u32) -> i32 {
    i32::try_from(n).unwrap_or(i32::MAX)
}

/// J of order n and its derivative.
pub(crate) fn j(n: u32, x: f64) -> Value {
    let f = libm::jn(order(n), x);
    Value {
        f,
        df: f64::from(n) / x * f - libm::jn(order(n) + 1, x),
    }
}

/// Y of order n and its derivative.
pub(crate) fn y(n: u32, x: f64) -> Value {
    let f = libm::yn(order(n), x);
    Value {
        f,
        df: f64::from(n) / x * f - libm::yn(order(n) + 1, x),
    }
}

/// exp(-x) I of order n, and exp(-x) times the derivative of I.
pub(crate) fn i_scaled(n: u32, x: f64) -> Value {
    let f = i_of(n, x);
    Value {
        f,
        df: f64::from(n) / x * f + i_of(n + 1, x),
    }
}

/// exp(x) K of order n, and exp(x) times the derivative of K.
pub(crate) fn k_scaled(n: u32, x: f64) -> Value {
    let f = k_of(n, x);
    Value {
        f,
        df: f64::from(n) / x * f - k_of(n + 1, x),
    }
}

fn i_of(n: u32, x: f64) -> f64 {
    if x < SERIES_BELOW {
        let quarter = 0.25 * x * x;
        let mut term = exp(-x);
        for m in 1..=n {
            term *= 0.5 * x / f64::from(m);
        }
        let mut sum = term;
        for m in 1..SERIES_TERMS {
            term *= quarter / (f64::from(m) * f64::from(m + n));
            sum += term;
        }
        return sum;
    }
    let step = core::f64::consts::PI / f64::from(CIRCLE_POINTS);
    let mut sum = 0.0;
    for m in 0..=CIRCLE_POINTS {
        let angle = f64::from(m) * step;
        let share = if m == 0 || m == CIRCLE_POINTS {
            0.5
        } else {
            1.0
        };
        sum += share * exp(x * (cos(angle) - 1.0)) * cos(f64::from(n) * angle);
    }
    sum / f64::from(CIRCLE_POINTS)
}

fn k_of(n: u32, x: f64) -> f64 {
    let width = LINE_STEP / (10.0 + x.sqrt());
    let mut sum = 0.5;
    let mut step = 0;
    loop {
        step += 1;
        let s = f64::from(step) * width;
        let term = exp(-x * (cosh(s) - 1.0)) * cosh(f64::from(n) * s);
        sum += term;
        // The integrand may rise first (small x, high n); it ends once it falls below what counts.
        if term < NEGLIGIBLE * sum || step > 2000 {
            return sum * width;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: Abramowitz and Stegun, tables 9.8 and 9.11 (from memory), and the Wronskian I K' - I' K = -1/x (10.4).
    #[test]
    fn known_values_and_the_wronskian() {
        assert!((i_scaled(0, 1.0).f - 0.465_759_607_593).abs() < 1e-11);
        assert!((k_scaled(0, 1.0).f - 1.144_463_079_8).abs() < 1e-9);
        assert!((j(0, 1.0).f - 0.765_197_686_557).abs() < 1e-11);
        for n in 0..6 {
            for x in [0.05, 0.3, 1.0, 3.0, 9.9, 10.1, 30.0, 100.0, 400.0] {
                let (i, k) = (i_scaled(n, x), k_scaled(n, x));
                let wronskian = x * (i.f * k.df - i.df * k.f);
                assert!((wronskian + 1.0).abs() < 1e-11, "n {n} x {x}: {wronskian}");
                let (j, y) = (j(n, x), y(n, x));
                let other = 0.5 * core::f64::consts::PI * x * (j.f * y.df - j.df * y.f);
                assert!((other - 1.0).abs() < 1e-9, "n {n} x {x}: {other}");
            }
        }
    }
}
