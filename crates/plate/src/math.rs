//! Portable functions, and a root between two bounds.

pub(crate) fn exp(x: f64) -> f64 {
    libm::exp(x)
}

pub(crate) fn ln(x: f64) -> f64 {
    libm::log(x)
}

pub(crate) fn sin(x: f64) -> f64 {
    libm::sin(x)
}

pub(crate) fn cos(x: f64) -> f64 {
    libm::cos(x)
}

pub(crate) fn cosh(x: f64) -> f64 {
    libm::cosh(x)
}

/// Halvings that bring any bracket to the last bits.
const HALVINGS: u32 = 60;

/// The root of `f` between `low` and `high`, where its sign differs.
pub(crate) fn bisect(mut low: f64, mut high: f64, f: impl Fn(f64) -> f64) -> f64 {
    let rising = f(low) < 0.0;
    for _ in 0..HALVINGS {
        let mid = 0.5 * (low + high);
        if (f(mid) < 0.0) == rising {
            low = mid;
        } else {
            high = mid;
        }
    }
    0.5 * (low + high)
}
