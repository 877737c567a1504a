//! Bessel functions of integer order for the vibration of round plates.
//!
//! J and Y come from `libm`; the modified ones from integrals that the trapezoidal rule sums to the last digits. They are scaled,
//! I by exp(-x) and K by exp(x), so that nothing overflows.

use crate::math::{cos, cosh, exp};

/// Points of the trapezoidal rule on the half circle for I: so many, and so many times sqrt(x).
const CIRCLE_POINTS: f64 = 14.0;
const CIRCLE_GROWTH: f64 = 4.6;
/// Step of the trapezoidal rule for K: this over (10 + sqrt(x)), as the integrand narrows with x.
const LINE_STEP: f64 = 0.5;
/// An integrand below this share of 1 no longer counts.
const NEGLIGIBLE: f64 = 1e-18;
/// Most points of either rule.
const POINTS_MAX: f64 = 2000.0;
const POINTS_ON_LINE: u32 = 2000;
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
    let (f, next) = if x < SERIES_BELOW {
        let scale = exp(-x);
        (scale * i_series(n, x), scale * i_series(n + 1, x))
    } else {
        i_integral(n, x)
    };
    Value {
        f,
        df: f64::from(n) / x * f + next,
    }
}

/// exp(x) K of order n, and exp(x) times the derivative of K.
pub(crate) fn k_scaled(n: u32, x: f64) -> Value {
    let (f, next) = k_integral(n, x);
    Value {
        f,
        df: f64::from(n) / x * f - next,
    }
}

fn i_series(n: u32, x: f64) -> f64 {
    let quarter = 0.25 * x * x;
    let mut term = 1.0;
    for m in 1..=n {
        term *= 0.5 * x / f64::from(m);
    }
    let mut sum = term;
    for m in 1..SERIES_TERMS {
        term *= quarter / (f64::from(m) * f64::from(m + n));
        sum += term;
        if term < NEGLIGIBLE * sum {
            break;
        }
    }
    sum
}

/// exp(-x) I of the orders n and n + 1: mean of exp(x (cos a - 1)) cos(n a) over the half circle.
fn i_integral(n: u32, x: f64) -> (f64, f64) {
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a count of points, at most thousands"
    )]
    let points = (CIRCLE_POINTS + CIRCLE_GROWTH * x.sqrt()).min(POINTS_MAX) as u32 + n;
    let step = core::f64::consts::PI / f64::from(points);
    let (mut sum, mut next) = (0.0, 0.0);
    for m in 0..=points {
        let angle = f64::from(m) * step;
        let share = if m == 0 || m == points { 0.5 } else { 1.0 };
        let weight = share * exp(x * (cos(angle) - 1.0));
        sum += weight * cos(f64::from(n) * angle);
        next += weight * cos(f64::from(n + 1) * angle);
    }
    (sum / f64::from(points), next / f64::from(points))
}

/// exp(x) K of the orders n and n + 1: integral of exp(-x (cosh s - 1)) cosh(n s).
fn k_integral(n: u32, x: f64) -> (f64, f64) {
    let width = LINE_STEP / (10.0 + x.sqrt());
    let (mut sum, mut next) = (0.5, 0.5);
    for step in 1..POINTS_ON_LINE {
        let s = f64::from(step) * width;
        let swell = cosh(s);
        let weight = exp(-x * (swell - 1.0));
        let term = weight * cosh(f64::from(n + 1) * s);
        sum += weight * cosh(f64::from(n) * s);
        next += term;
        // The integrand may rise first (small x, high n); it ends once it falls below what counts.
        if term < NEGLIGIBLE * next {
            break;
        }
    }
    (sum * width, next * width)
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
