//! Round values for lines.

/// Most lines of a map.
const MOST_LINES: f64 = 9.0;
/// Of a step of lines: less than this is no difference.
const HAIR: f64 = 1.0e-6;

/// Values 1, 2 or 5 times a power of ten apart, strictly between two values, the least first; a few, and at most nine.
pub(super) fn round_levels((least, most): (f64, f64)) -> (f64, Vec<f64>) {
    let span = most - least;
    if !(span.is_finite() && span > HAIR * most.abs()) {
        return (0.0, Vec::new());
    }
    let mut step = libm::pow(10.0, libm::floor(libm::log10(span / MOST_LINES)));
    for factor in [1.0, 2.0, 5.0, 10.0] {
        if factor * step * MOST_LINES >= span {
            step *= factor;
            break;
        }
    }
    let mut levels = Vec::new();
    let mut count = libm::floor(least / step + HAIR) + 1.0;
    while count * step < most - HAIR * step {
        levels.push(count * step);
        count += 1.0;
    }
    (step, levels)
}

/// Whether a level is an even number of steps: those lines are heavier and have their value written on them.
pub(super) fn heavy(level: f64, step: f64) -> bool {
    libm::fmod(libm::round(level / step), 2.0).abs() < 0.5
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn levels_are_round_and_a_handful() {
        let check = |range, wanted: &[f64]| {
            let (_, levels) = round_levels(range);
            assert_eq!(levels.len(), wanted.len(), "{levels:?}");
            for (found, wanted) in levels.iter().zip(wanted) {
                assert!((found - wanted).abs() < 1e-9 * wanted, "{levels:?}");
            }
        };
        check((0.3, 9.3), &[1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0]);
        check((1.0, 93.0), &[20.0, 40.0, 60.0, 80.0]);
        check(
            (0.0, 45.0),
            &[5.0, 10.0, 15.0, 20.0, 25.0, 30.0, 35.0, 40.0],
        );
        check((90.0, 100.0), &[92.0, 94.0, 96.0, 98.0]);
        check((0.0, 0.0), &[]);
        check((f64::NAN, 1.0), &[]);
        let mut most = 1.0e-9;
        while most < 1.0e6 {
            let count = round_levels((0.02 * most, most)).1.len();
            assert!((3..=9).contains(&count), "{most}: {count}");
            most *= 1.13;
        }
    }

    #[test]
    fn every_second_line_is_heavy() {
        let (step, levels) = round_levels((0.0, 0.9));
        let heavy: Vec<bool> = levels.iter().map(|l| heavy(*l, step)).collect();
        assert_eq!(heavy, [false, true, false, true, false, true, false, true]);
    }
}
