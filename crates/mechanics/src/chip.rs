//! Chip thickness: mean and greatest, and what thins it.

use crate::engagement::engagement_angle;
use crate::math::{FRAC_PI_2, acos, asin, sin};

/// Mean chip thickness over the engagement, hm = 2 fz ae sin(kappa) / (d phi): exact for the circular tooth path.
///
/// Units: `fz`, `ae`, `d` m, `kappa` (lead angle) rad; m.
/// Valid for: a circular tooth path, fz well below d. Source: palbit2019 prints it in degrees.
pub fn mean_chip_thickness(fz: f64, ae: f64, d: f64, kappa: f64) -> f64 {
    let phi = engagement_angle(ae, d);
    if phi <= 0.0 {
        return 0.0;
    }
    2.0 * fz * ae.min(d) * sin(kappa) / (d * phi)
}

/// The usual short form hm = fz sqrt(ae / d) sin(kappa): 2 % high at 0.1 d, 57 % high in a full slot. Kept as a witness.
///
/// Units: m, rad; m. Source: ceratizit2018 prints a table of it.
pub fn mean_chip_thickness_sqrt(fz: f64, ae: f64, d: f64, kappa: f64) -> f64 {
    fz * (ae / d).sqrt() * sin(kappa)
}

/// Feed per tooth for a mean chip thickness, the inverse of [`mean_chip_thickness`].
///
/// Units: m, rad; m; 0 where nothing is engaged. Source: palbit2019.
pub fn feed_for_mean_chip(hm: f64, ae: f64, d: f64, kappa: f64) -> f64 {
    let each = mean_chip_thickness(1.0, ae, d, kappa);
    if each > 0.0 { hm / each } else { 0.0 }
}

/// Greatest chip thickness: fz sin(phi) up to half immersion, fz beyond; times sin(kappa).
///
/// Units: m, rad; m. Source: derived; symbols of iso3002.
pub fn greatest_chip_thickness(fz: f64, ae: f64, d: f64, kappa: f64) -> f64 {
    fz * sin(kappa) / radial_thinning(ae, d)
}

/// Factor by which feed per tooth may rise in a light side cut: d / (2 sqrt(ae (d - ae))), 1 from half the diameter on.
///
/// Units: m; -. Source: widia prints a table.
/// # Example
/// At ae = 0.1 d: 1.67.
pub fn radial_thinning(ae: f64, d: f64) -> f64 {
    if 2.0 * ae >= d || ae <= 0.0 {
        return 1.0;
    }
    d / (2.0 * (ae * (d - ae)).sqrt())
}

/// Lead angle of an edge with a corner of radius `re` that gives its mean chip thickness: area of the chip over its width,
/// sin(kappa) = ap / (length of edge in the cut).
///
/// Units: m; rad. Valid for: any step-down; pi/2 for a sharp corner. Source: derived from the geometry.
/// # Example
/// ap = re: asin(2 / pi) = 39.5 degrees.
pub fn lead_angle_corner(ap: f64, re: f64) -> f64 {
    if re <= 0.0 || ap <= 0.0 {
        return FRAC_PI_2;
    }
    let arc = re * acos((1.0 - ap / re).max(0.0));
    asin((ap / (arc + (ap - re).max(0.0))).min(1.0))
}

/// Chip thickness normal to the edge under a lead angle: fz sin(kappa).
///
/// Units: m, rad; m. Source: derived; symbols of iso3002.
pub fn lead_angle_thinning(fz: f64, kappa: f64) -> f64 {
    fz * sin(kappa)
}

/// Diameter at which a ball end cuts at depth `ap`: 2 sqrt(ap (d - ap)).
///
/// Units: m; m. Source: derived; printed tables agree.
pub fn ball_effective_diameter(ap: f64, d: f64) -> f64 {
    2.0 * (ap.min(d) * (d - ap.min(d))).sqrt()
}

/// Diameter at which a corner radius `re` cuts at depth `ap` < `re`: d - 2 re + 2 sqrt(ap (2 re - ap)).
///
/// Units: m; m. Source: derived.
pub fn corner_effective_diameter(ap: f64, d: f64, re: f64) -> f64 {
    if ap >= re {
        return d;
    }
    d - 2.0 * re + 2.0 * (ap * (2.0 * re - ap)).sqrt()
}

/// Factor on feed for a round insert of diameter `ic` at depth `ap`: ic / (2 sqrt(ap (ic - ap))).
///
/// Units: m; -. Source: derived; dapra2015 prints it rounded up by 2 to 6 %.
pub fn round_insert_factor(ap: f64, ic: f64) -> f64 {
    radial_thinning(ap, ic)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_full_slot_has_two_over_pi_of_the_feed() {
        assert!((mean_chip_thickness(1.0, 6.0, 6.0, FRAC_PI_2) * FRAC_PI_2 - 1.0).abs() < 1e-12);
        assert!(mean_chip_thickness(1.0, 0.0, 6.0, FRAC_PI_2).abs() < 1e-15);
        // Towards no stepover the short form becomes exact.
        let (exact, short) = (
            mean_chip_thickness(1.0, 1e-6, 1.0, FRAC_PI_2),
            mean_chip_thickness_sqrt(1.0, 1e-6, 1.0, FRAC_PI_2),
        );
        assert!((exact / short - 1.0).abs() < 1e-5);
        let feed = feed_for_mean_chip(0.02, 1.0, 6.0, 0.8);
        assert!((mean_chip_thickness(feed, 1.0, 6.0, 0.8) - 0.02).abs() < 1e-15);
    }

    #[test]
    fn a_corner_leads_less_the_deeper_it_cuts() {
        let mut last = 0.0;
        for k in 1..60 {
            let angle = lead_angle_corner(0.05 * f64::from(k), 1.0);
            assert!(angle > last && angle < FRAC_PI_2, "{k}");
            last = angle;
        }
        assert!((libm::sin(lead_angle_corner(1.0, 1.0)) * FRAC_PI_2 - 1.0).abs() < 1e-12);
        // A shallow cut sees the chord of the arc: half the angle at its top.
        let half = 0.5 * acos(1.0 - 1e-4);
        assert!((lead_angle_corner(1e-4, 1.0) / half - 1.0).abs() < 1e-4);
    }

    #[test]
    fn mean_stays_below_greatest_and_thinning_below_infinity() {
        for k in 1..100 {
            let ae = 6.0 * f64::from(k) / 100.0;
            let (mean, most) = (
                mean_chip_thickness(0.05, ae, 6.0, FRAC_PI_2),
                greatest_chip_thickness(0.05, ae, 6.0, FRAC_PI_2),
            );
            assert!(mean > 0.0 && mean < most && most <= 0.05 + 1e-15, "{ae}");
        }
    }
}
