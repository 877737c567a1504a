//! Bending stress under the cutter.

use crate::math::ln;
use crate::sheet::{PlateError, Sheet, positive, ratio_within, settled};
use core::f64::consts::PI;

/// Westergaard's equivalent radius is used for a patch smaller than this many thicknesses.
const SMALL_PATCH: f64 = 0.5;

/// Radius \[m\] that stands for a patch of radius `patch` on a plate of thickness `t`: sqrt(1.6 c^2 + t^2) - 0.675 t below
/// half a thickness, the patch itself above.
///
/// Westergaard, in `timoshenko1959` art. 19 and `young2002` art. 11.1 (from memory): a plate cannot bend sharper than its thickness allows.
fn equivalent_radius(patch: f64, t: f64) -> f64 {
    if patch >= SMALL_PATCH * t {
        patch
    } else {
        (1.6 * patch * patch + t * t).sqrt() - 0.675 * t
    }
}

/// Greatest bending stress per force \[Pa/N\] at the centre of a clamped disc under an even load on a patch there.
///
/// Outside a small patch: 6/t^2 times the moment (1 + nu)/(4 pi) (ln(R/c) + c^2/(4 R^2)), `timoshenko1959` art. 19 (from memory; the
/// moment is derived anew in the tests). With a patch as large as the disc it is the uniform load's.
///
/// # Errors
/// Impossible sheet, or a patch that is not inside the disc.
pub fn disc_centre(sheet: &Sheet, radius: f64, patch: f64) -> Result<f64, PlateError> {
    sheet.checked_rigidity()?;
    positive(radius)?;
    if !(patch >= 0.0 && patch.is_finite()) {
        return Err(PlateError::NotPositive { value: patch });
    }
    let c = ratio_within(
        equivalent_radius(patch, sheet.t) / radius,
        f64::MIN_POSITIVE,
        1.0,
    )?;
    let moment = (1.0 + sheet.nu) / (4.0 * PI) * (0.25 * c * c - ln(c));
    settled(6.0 * moment / (sheet.t * sheet.t))
}

/// Bending stress per force \[Pa/N\] at the clamped edge of a disc under an even load on a central patch:
/// 6/t^2 times (1 - c^2/(2 R^2)) / (4 pi).
///
/// `timoshenko1959` art. 19 (from memory).
///
/// # Errors
/// As [`disc_centre`].
pub fn disc_edge(sheet: &Sheet, radius: f64, patch: f64) -> Result<f64, PlateError> {
    sheet.checked_rigidity()?;
    positive(radius)?;
    if !(patch >= 0.0 && patch.is_finite()) {
        return Err(PlateError::NotPositive { value: patch });
    }
    let c = ratio_within(patch / radius, 0.0, 1.0)?;
    settled(6.0 * (1.0 - 0.5 * c * c) / (4.0 * PI) / (sheet.t * sheet.t))
}

/// Greatest bending stress per force \[Pa/N\] under a patch at the centre of a clamped rectangle, `a` by `b` \[m\].
///
/// Taken from the disc inscribed in it. Only the logarithm of the size enters, so the shape changes little; on a
/// long rectangle this is low by some 10 %, within the uncertainty of the patch itself.
///
/// # Errors
/// As [`disc_centre`].
pub fn rectangle_centre(sheet: &Sheet, (a, b): (f64, f64), patch: f64) -> Result<f64, PlateError> {
    positive(a)?;
    positive(b)?;
    disc_centre(sheet, 0.5 * a.min(b), patch)
}

#[cfg(test)]
mod tests {
    use super::*;

    const SHEET: Sheet = Sheet {
        e_mod: 69e9,
        nu: 0.33,
        rho: 2700.0,
        t: 5e-3,
    };

    fn near(value: f64, expected: f64) {
        assert!(
            (value / expected - 1.0).abs() < 1e-9,
            "{value} against {expected}"
        );
    }

    /// The moments of a clamped disc under a uniform load q R^2 (1 + nu)/16 and q R^2/8 (`timoshenko1959` art. 16), when the patch is all of it.
    #[test]
    fn a_patch_as_wide_as_the_disc_is_the_uniform_load() {
        let pressure = 1.0 / (PI * 0.09 * 0.09);
        let section = 6.0 / (SHEET.t * SHEET.t);
        near(
            disc_centre(&SHEET, 0.09, 0.09).unwrap(),
            section * pressure * 0.09 * 0.09 * 1.33 / 16.0,
        );
        near(
            disc_edge(&SHEET, 0.09, 0.09).unwrap(),
            section * pressure * 0.09 * 0.09 / 8.0,
        );
    }

    /// The moment at the centre by second differences of the deflection (own closed form of the patch's deflection inside the patch).
    #[test]
    fn the_moment_is_the_curvature_of_the_deflection() {
        let c = 0.2_f64;
        // Inside the patch w = k0 + k2 r^2 + r^4/(64 pi c^2), over P R^2 / D, with R = 1; slope continuous at r = c with the
        // field outside, (r^2 + c^2/2) ln r + A + B r^2 over 8 pi, clamped at 1.
        let outer_b = -0.5 * (1.0 + 0.5 * c * c);
        let slope_outside = (2.0 * c * ln(c) + c + 0.5 * c + 2.0 * outer_b * c) / (8.0 * PI);
        let k2 = (slope_outside - 4.0 * c / (64.0 * PI)) / (2.0 * c);
        let moment = -(1.0 + 0.33) * 2.0 * k2;
        let stress = disc_centre(&Sheet { t: 0.01, ..SHEET }, 1.0, c).unwrap();
        near(stress, 6.0 * moment / 1e-4);
    }

    #[test]
    fn a_point_load_gives_a_finite_stress() {
        let point = disc_centre(&SHEET, 0.09, 0.0).unwrap();
        assert!(point.is_finite() && point > disc_centre(&SHEET, 0.09, 3e-3).unwrap());
        assert!(disc_centre(&SHEET, 0.09, f64::NAN).is_err());
        assert!(disc_centre(&SHEET, 0.09, 0.1).is_err());
        assert!(disc_edge(&SHEET, 0.0, 0.0).is_err());
        assert!(rectangle_centre(&SHEET, (0.1, f64::NAN), 0.003).is_err());
    }
}
