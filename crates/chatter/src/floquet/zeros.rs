//! Zeros of a real polynomial near the unit circle.

use crate::math::{Complex, cos, sin};
use core::f64::consts::PI;

/// Places of the half circle from which Newton's method starts.
const STARTS: u32 = 48;
/// Most steps of Newton's method.
const STEPS: u32 = 24;
/// Squares: a step that ends it, and a place that is too far out.
const SETTLED: f64 = 1.0e-24;
const FAR: f64 = 4.0;

/// A place on the half circle.
fn half_circle(i: u32) -> Complex {
    let theta = PI * f64::from(i) / f64::from(STARTS);
    Complex::new(cos(theta), -sin(theta))
}

/// Of the zeros that Newton's method finds from places all along the half circle, the one nearest to it.
pub(super) fn on_circle(g: &[f64]) -> Complex {
    let off = |w: &Complex| (w.norm2() - 1.0).abs();
    let found = (0..=STARTS).filter_map(|i| root(g, half_circle(i)));
    found
        .min_by(|a, b| off(a).total_cmp(&off(b)))
        .unwrap_or_else(|| nearest(g))
}

/// The place on the half circle where a polynomial is nearest to zero.
pub(super) fn nearest(g: &[f64]) -> Complex {
    let size = |w: &Complex| horner(g, *w).0.norm2();
    let places = (1..STARTS).map(half_circle);
    let all = places.chain([Complex::new(-1.0, 0.0)]);
    all.min_by(|a, b| size(a).total_cmp(&size(b)))
        .unwrap_or(Complex::new(-1.0, 0.0))
}

/// The zero of a real polynomial that Newton's method finds from a start; `None` where it finds none.
pub(super) fn root(g: &[f64], start: Complex) -> Option<Complex> {
    let mut w = start;
    for _ in 0..STEPS {
        let (value, slope) = horner(g, w);
        let step = value.times(slope.inverse());
        w = w.minus(step);
        if w.norm2().is_nan() || w.norm2() >= FAR {
            return None;
        }
        if step.norm2() <= SETTLED {
            return Some(w);
        }
    }
    None
}

/// Value and slope of a real polynomial at a complex place.
pub(super) fn horner(g: &[f64], w: Complex) -> (Complex, Complex) {
    let mut value = Complex::new(0.0, 0.0);
    let mut slope = value;
    for c in g.iter().rev() {
        slope = slope.times(w).plus(value);
        value = value.times(w).plus(Complex::new(*c, 0.0));
    }
    (value, slope)
}
