//! Chip thickness: mean and greatest, and what thins it.

use crate::engagement::engagement_angle;
use crate::math::{FRAC_PI_2, acos, sin};

/// Mean chip thickness over the engagement, hm = 2 fz ae sin(kappa) / (d phi): exact for the circular tooth path.
///
/// Units: `fz`, `ae`, `d` m, `kappa` (lead angle) rad; m. Source: VDI 3323 practice; formula printed by palbit2019.
pub fn mean_chip_thickness(fz: f64, ae: f64, d: f64, kappa: f64) -> f64 {
    let phi = engagement_angle(ae, d);
    if phi <= 0.0 {
        return 0.0;
    }
    2.0 * fz * ae.min(d) * sin(kappa) / (d * phi)
}

/// The usual short form hm = fz sqrt(ae / d) sin(kappa): 2 % high at 0.1 d, 57 % high in a full slot. Kept as a witness.
///
/// Units: m, rad; m. Source: ceratizit2018, printed table.
pub fn mean_chip_thickness_sqrt(fz: f64, ae: f64, d: f64, kappa: f64) -> f64 {
    fz * (ae / d).sqrt() * sin(kappa)
}

/// Greatest chip thickness: fz sin(phi) up to half immersion, fz beyond; times sin(kappa).
///
/// Units: m, rad; m. Source: geometry, ISO 3002-3.
pub fn greatest_chip_thickness(fz: f64, ae: f64, d: f64, kappa: f64) -> f64 {
    fz * sin(kappa) / radial_thinning(ae, d)
}

/// Factor by which feed per tooth may rise in a light side cut: d / (2 sqrt(ae (d - ae))), 1 from half the diameter on.
///
/// Units: m; -. Source: widia2016, printed table.
/// # Example
/// At ae = 0.1 d: 1.67.
pub fn radial_thinning(ae: f64, d: f64) -> f64 {
    if 2.0 * ae >= d || ae <= 0.0 {
        return 1.0;
    }
    d / (2.0 * (ae * (d - ae)).sqrt())
}

/// Mean lead angle of a corner of radius `re` over a step-down no deeper than it: half of acos(1 - ap / re).
///
/// Units: m; rad; pi/2 where the step-down reaches past the corner. Source: geometry.
pub fn lead_angle_corner(ap: f64, re: f64) -> f64 {
    if ap >= re {
        return FRAC_PI_2;
    }
    0.5 * acos((1.0 - ap / re).clamp(-1.0, 1.0))
}

/// Chip thickness normal to the edge under a lead angle: fz sin(kappa).
///
/// Units: m, rad; m. Source: ISO 3002-3.
pub fn lead_angle_thinning(fz: f64, kappa: f64) -> f64 {
    fz * sin(kappa)
}

/// Diameter at which a ball end cuts at depth `ap`: 2 sqrt(ap (d - ap)).
///
/// Units: m; m. Source: geometry, printed tables.
pub fn ball_effective_diameter(ap: f64, d: f64) -> f64 {
    2.0 * (ap.min(d) * (d - ap.min(d))).sqrt()
}

/// Diameter at which a corner radius `re` cuts at depth `ap` < `re`: d - 2 re + 2 sqrt(ap (2 re - ap)).
///
/// Units: m; m. Source: geometry.
pub fn corner_effective_diameter(ap: f64, d: f64, re: f64) -> f64 {
    if ap >= re {
        return d;
    }
    d - 2.0 * re + 2.0 * (ap * (2.0 * re - ap)).sqrt()
}

/// Factor on feed for a round insert of diameter `ic` at depth `ap`: ic / (2 sqrt(ap (ic - ap))).
///
/// Units: m; -. Source: geometry; dapra2015 prints it rounded up by 2 to 6 %.
pub fn round_insert_factor(ap: f64, ic: f64) -> f64 {
    radial_thinning(ap, ic)
}

#[cfg(test)]
mod tests {
    use super::*;

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
