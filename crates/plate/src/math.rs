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

/// Steps after which a root is taken as found; it usually takes ten.
const ROOT_STEPS: u32 = 80;
/// Relative width or step at which a root is found.
const ROOT_WIDTH: f64 = 1e-14;

/// The root of `f` between `low` and `high`, where its sign differs: false position with the stale end's value halved.
pub(crate) fn root(mut low: f64, mut high: f64, f: impl Fn(f64) -> f64) -> f64 {
    let (mut at_low, mut at_high) = (f(low), f(high));
    let mut last = low;
    let mut moved_low = None;
    for _ in 0..ROOT_STEPS {
        let next = (low * at_high - high * at_low) / (at_high - at_low);
        if !next.is_finite() || (next - last).abs() <= ROOT_WIDTH * next.abs() {
            break;
        }
        last = next;
        let value = f(next);
        let replace_low = (value < 0.0) == (at_low < 0.0);
        if replace_low {
            (low, at_low) = (next, value);
            if moved_low == Some(true) {
                at_high *= 0.5;
            }
        } else {
            (high, at_high) = (next, value);
            if moved_low == Some(false) {
                at_low *= 0.5;
            }
        }
        moved_low = Some(replace_low);
    }
    last
}
