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
