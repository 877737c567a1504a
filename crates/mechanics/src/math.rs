//! Portable maths: `libm` everywhere, so that results do not depend on the platform; quadrature, roots, maxima.

pub(crate) use core::f64::consts::{FRAC_PI_2, FRAC_PI_4, PI, TAU};
pub(crate) use libm::{acos, asin, atan2, ceil, cos, exp, hypot, log as ln, pow, sin, tan};

/// Places and weights of Gauss's rule with five points on (-1, 1); the middle one is 0.
const GAUSS: [(f64, f64); 3] = [
    (0.0, 0.568_888_888_888_888_9),
    (0.538_469_310_105_683_1, 0.478_628_670_499_366_47),
    (0.906_179_845_938_664, 0.236_926_885_056_189_08),
];
/// Halvings of a bracket: enough for the last bit of a root of its size.
const HALVINGS: u32 = 60;
/// Inverse of the golden ratio.
const GOLDEN: f64 = 0.618_033_988_749_894_9;
/// Adding this leaves a double no room for a fraction: 1.5 times 2^52.
const NO_FRACTION: f64 = 6_755_399_441_055_744.0;

/// Integral of `f` from `a` to `b` by Gauss's rule with five points: exact for polynomials of degree nine.
pub(crate) fn gauss(f: impl Fn(f64) -> f64, a: f64, b: f64) -> f64 {
    let (middle, half) = (0.5 * (a + b), 0.5 * (b - a));
    let mut sum = GAUSS[0].1 * f(middle);
    for (place, weight) in &GAUSS[1..] {
        sum += weight * (f(middle - half * place) + f(middle + half * place));
    }
    half * sum
}

/// Root of an increasing `f` between `a` and `b` by bisection; the nearer end where there is none.
pub(crate) fn bisect(f: impl Fn(f64) -> f64, a: f64, b: f64) -> f64 {
    let (mut low, mut high) = (a, b);
    for _ in 0..HALVINGS {
        let middle = 0.5 * (low + high);
        if f(middle) < 0.0 {
            low = middle;
        } else {
            high = middle;
        }
    }
    0.5 * (low + high)
}

/// Greatest value of `f` with one hump between `a` and `b`, by golden section, `steps` evaluations.
pub(crate) fn hump(f: impl Fn(f64) -> f64, a: f64, b: f64, steps: u32) -> f64 {
    let (mut low, mut high) = (a, b);
    let (mut left, mut right) = (high - GOLDEN * (high - low), low + GOLDEN * (high - low));
    let (mut at_left, mut at_right) = (f(left), f(right));
    for _ in 0..steps {
        if at_left < at_right {
            (low, left, at_left) = (left, right, at_right);
            right = low + GOLDEN * (high - low);
            at_right = f(right);
        } else {
            (high, right, at_right) = (right, left, at_left);
            left = high - GOLDEN * (high - low);
            at_left = f(left);
        }
    }
    at_left.max(at_right)
}

/// `x` to the power `a`, to nine digits, several times faster than `libm::pow`; 0 for what is not positive.
///
/// ln by the series of atanh on the mantissa, exp by its own series after taking out powers of two: additions,
/// products and one quotient, so the same bits everywhere. For tables that are summed, where nine digits are plenty.
#[inline]
pub(crate) fn pow_near(x: f64, a: f64) -> f64 {
    const MANTISSA: u64 = (1 << 52) - 1;
    const ONE: u64 = 1023 << 52;
    if !(f64::MIN_POSITIVE..=f64::MAX).contains(&x) {
        return if x > 0.0 { pow(x, a) } else { 0.0 };
    }
    let bits = x.to_bits();
    // Mantissa in 1 to 2, brought to 0.707 to 1.414, so that the series runs on at most 0.172.
    let mut mantissa = f64::from_bits((bits & MANTISSA) | ONE);
    #[allow(clippy::cast_precision_loss, reason = "an exponent of 11 bits")]
    let mut exponent = (bits >> 52) as f64 - 1023.0;
    if mantissa > core::f64::consts::SQRT_2 {
        mantissa *= 0.5;
        exponent += 1.0;
    }
    let s = (mantissa - 1.0) / (mantissa + 1.0);
    // Even and odd terms apart: two short chains of products run side by side.
    let t = s * s;
    let t2 = t * t;
    let series = 1.0
        + t2 * (0.2 + t2 * (1.0 / 9.0))
        + t * (1.0 / 3.0 + t2 * (1.0 / 7.0 + t2 * (1.0 / 11.0)));
    // Power of two: whole (rounded by adding and taking away a number without fraction bits) and rest.
    let two = a * (exponent + 2.0 * core::f64::consts::LOG2_E * s * series);
    let whole = (two + NO_FRACTION) - NO_FRACTION;
    if !(-1022.0..1023.0).contains(&whole) {
        return pow(x, a);
    }
    let y = (two - whole) * core::f64::consts::LN_2;
    let y2 = y * y;
    let even = 1.0 + y2 * (0.5 + y2 * (1.0 / 24.0 + y2 * (1.0 / 720.0 + y2 * (1.0 / 40320.0))));
    let odd = 1.0 + y2 * (1.0 / 6.0 + y2 * (1.0 / 120.0 + y2 * (1.0 / 5040.0)));
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "between 1 and 2046, checked above"
    )]
    let scale = f64::from_bits(((whole + 1023.0) as u64) << 52);
    (even + y * odd) * scale
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn near_power_has_nine_digits() {
        for k in -600..600 {
            let x = pow(10.0, 0.02 * f64::from(k)) * 1.000_37;
            for a in [-0.34, 0.0, 0.14, 0.66, 0.75, 0.86, 1.0] {
                let exact = pow(x, a);
                assert!((pow_near(x, a) / exact - 1.0).abs() < 1e-9, "{x} {a}");
            }
        }
        assert!(pow_near(0.0, 0.75).abs() < f64::MIN_POSITIVE);
        assert!(pow_near(f64::INFINITY, 0.75).is_infinite());
        assert!(pow_near(1e-310, 0.75) > 0.0);
    }

    #[test]
    fn gauss_is_exact_for_the_ninth_degree() {
        let of = |x: f64| 10.0 * x.powi(9) - 3.0 * x * x + 1.0;
        let exact = 1024.0 - 1.0 - (8.0 + 1.0) + 3.0;
        assert!((gauss(of, -1.0, 2.0) - exact).abs() < 1e-10 * exact);
    }

    #[test]
    fn roots_and_humps_are_found() {
        assert!((bisect(|x| x * x - 2.0, 0.0, 2.0) - core::f64::consts::SQRT_2).abs() < 1e-15);
        assert!((bisect(|x| x - 5.0, 0.0, 2.0) - 2.0).abs() < 1e-12);
        assert!((hump(sin, 0.0, PI, 40) - 1.0).abs() < 1e-14);
    }
}
