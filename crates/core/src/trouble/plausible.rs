//! How plausible it is that a limit was really exceeded, given how near it comes at likely values and at worst.

use crate::strategy::Finding;
use thinwright_catalog::Numbers;

/// A likely value below this share of the worst one counts as this share: nothing is known to be impossible.
const LEAST_SHARE: f64 = 1.0e-3;

/// How plausible it is that a utilisation, `likely` at likely values and `worst` at the bad ends, was really above 1.
///
/// The logarithm of the true utilisation is taken as normal on either side of ln(likely): upwards with the spread that
/// puts `worst` at the quantile that bad ends stand for, widened by what the model leaves (the two add as squares);
/// downwards with what the model leaves alone, as a finding does not say how far it may lie below. So
/// P(u > 1) = F(ln(likely) / up) below 1 and F(ln(likely) / down) above it, F the normal distribution. It is 1/2 where the
/// likely value meets the limit, and grows as the utilisation grows with its range, or its worst alone; a likely value that
/// comes nearer to a worst below 1 tells that more is known, and makes it less plausible.
///
/// Units: shares; the result from 0 to 1. An infinite utilisation gives 1.
/// Source: derived; what 95 % stands for as in wilks1941.
pub fn plausible(likely: f64, worst: f64, numbers: &Numbers) -> f64 {
    let worst = worst.max(likely).max(0.0);
    if !worst.is_finite() {
        return 1.0;
    }
    if worst <= 0.0 {
        return 0.0;
    }
    let likely = likely.max(LEAST_SHARE * worst);
    let model = numbers.trouble_model_spread;
    let up = libm::hypot(
        libm::log(worst / likely) / numbers.trouble_worst_quantile,
        model,
    );
    let at = libm::log(likely);
    let spread = if at < 0.0 { up } else { model };
    normal(at / spread)
}

/// The same of a finding.
pub(super) fn of(finding: &Finding, numbers: &Numbers) -> f64 {
    let (likely, worst) = (&finding.at_likely, &finding.at_worst);
    plausible(likely.utilisation(), worst.utilisation(), numbers)
}

/// The normal distribution.
fn normal(x: f64) -> f64 {
    0.5 * libm::erfc(-x * core::f64::consts::FRAC_1_SQRT_2)
}

#[cfg(test)]
mod tests {
    use super::*;
    use thinwright_catalog::Catalog;

    fn p(likely: f64, worst: f64) -> f64 {
        plausible(likely, worst, &Catalog::builtin().numbers)
    }

    #[test]
    fn the_normal_distribution_is_as_printed() {
        // Tables of the normal distribution: F(1) = 0.8413, F(1.645) = 0.9500, F(-1.96) = 0.0250.
        for (x, f) in [(0.0, 0.5), (1.0, 0.8413), (1.645, 0.95), (-1.96, 0.025)] {
            assert!((normal(x) - f).abs() < 5.0e-5, "{x}");
        }
    }

    #[test]
    fn the_limit_met_at_likely_values_is_even_odds_and_met_at_worst_one_in_twenty() {
        assert!((p(1.0, 3.0) - 0.5).abs() < 1.0e-12);
        // Hand-worked: likely 0.4, worst 1: up = hypot(0.9163 / 1.645, 0.2) = 0.5918; F(-1.5483) = 0.0608.
        assert!((p(0.4, 1.0) - 0.0608).abs() < 2.0e-4);
        // A wide range leaves the model's own spread nothing to say: 1 in 20.
        assert!((p(0.01, 1.0) - 0.05).abs() < 0.001);
        // Twice the limit at likely values: F(0.6931 / 0.2).
        assert!((p(2.0, 2.0) - 0.99973).abs() < 1.0e-4);
    }

    #[test]
    fn it_grows_with_the_utilisation_and_with_its_worst() {
        let grid: Vec<f64> = (0..60)
            .map(|k| 0.02 * libm::pow(1.12, f64::from(k)))
            .collect();
        for (i, likely) in grid.iter().enumerate() {
            for worst in &grid[i..] {
                let here = p(*likely, *worst);
                assert!((0.0..=1.0).contains(&here));
                assert!(
                    p(*likely, worst * 1.1) >= here - 1.0e-12,
                    "{likely} {worst}"
                );
                assert!(p(likely * 1.1, worst * 1.1) >= here, "{likely} {worst}");
            }
        }
    }

    #[test]
    fn odd_utilisations_do_no_harm() {
        assert!((p(f64::INFINITY, f64::INFINITY) - 1.0).abs() < f64::EPSILON);
        assert!(p(0.0, 0.0) < f64::EPSILON && p(0.0, 0.5) < 0.05);
        assert!((p(0.2, f64::INFINITY) - 1.0).abs() < f64::EPSILON);
        assert!(p(0.3, 0.1).is_finite() && p(-1.0, 0.0) < f64::EPSILON);
    }
}
