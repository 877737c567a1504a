//! Portable functions, and the few operations on lists that listening needs.

/// Real and imaginary part.
pub(crate) type Complex = rustfft::num_complex::Complex<f64>;

pub(crate) const TURN: f64 = core::f64::consts::TAU;

pub(crate) fn cos(x: f64) -> f64 {
    libm::cos(x)
}

/// `exp(-i angle)`.
pub(crate) fn turned_back(angle: f64) -> Complex {
    Complex::new(libm::cos(angle), -libm::sin(angle))
}

pub(crate) fn ln(x: f64) -> f64 {
    libm::log(x)
}

pub(crate) fn exp(x: f64) -> f64 {
    libm::exp(x)
}

pub(crate) fn atan2(y: f64, x: f64) -> f64 {
    libm::atan2(y, x)
}

/// Ten times the decimal logarithm of a ratio of powers; a ratio of nothing is that of the smallest number.
pub(crate) fn decibels(ratio: f64) -> f64 {
    10.0 * libm::log10(ratio.max(f64::MIN_POSITIVE))
}

/// The ratio of powers of so many decibels.
pub(crate) fn ratio(decibels: f64) -> f64 {
    libm::pow(10.0, decibels / 10.0)
}

/// The whole number below, at least 0.
pub(crate) fn whole(x: f64) -> usize {
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "clamped at nought before; a cast of a huge float saturates"
    )]
    let below = x.max(0.0) as usize;
    below
}

/// The smallest power of two that is not below `x`, at least `least` (itself a power of two).
pub(crate) fn power_of_two(x: f64, least: usize) -> usize {
    let mut size = least;
    while (size as f64) < x && size < usize::MAX / 4 {
        size *= 2;
    }
    size
}

/// The value below which the share `share` of the values lies; 0 where there is none. Reorders the values.
pub(crate) fn quantile(values: &mut [f64], share: f64) -> f64 {
    if values.is_empty() {
        return 0.0;
    }
    let at = whole(share * values.len() as f64).min(values.len() - 1);
    *values.select_nth_unstable_by(at, f64::total_cmp).1
}

/// Hann's window over `size` samples, periodic: 0 at the first, and at the one behind the last.
///
/// Source: Harris 1978, from memory.
pub(crate) fn hann(size: usize) -> Vec<f64> {
    (0..size)
        .map(|i| 0.5 - 0.5 * cos(TURN * i as f64 / size as f64))
        .collect()
}

/// The sum of squares.
pub(crate) fn energy(values: &[f64]) -> f64 {
    values.iter().map(|v| v * v).sum()
}
