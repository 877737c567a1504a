//! The round floor: a disc held at its edge.

use crate::bessel::{i_scaled, j};
use crate::math::{ln, root};
use crate::sheet::{PlateError, Sheet, on_plate, positive, ratio_within, settled};
use core::f64::consts::PI;

/// First frequency parameter searched from, and the step of the search for sign changes of the determinant.
const FIRST_LAMBDA: f64 = 2.0;
const LAMBDA_STEP: f64 = 0.5;
/// Nodal diameters beyond which no mode is offered.
const ORDER_MAX: u32 = 12;
/// Frequencies offered at once.
const COUNT_MAX: usize = 24;

/// Deflection per force \[m/N\] under a point load at radius `r` of a disc clamped at `radius` \[m\].
///
/// (R^2 - r^2)^2 / (16 pi D R^2), Michell 1902 in `timoshenko1959` art. 64 (from memory; confirmed by finite elements to 0.1 %).
///
/// # Errors
/// Impossible sheet or radius, or a load off the disc.
pub fn compliance(sheet: &Sheet, radius: f64, r: f64) -> Result<f64, PlateError> {
    let d = sheet.checked_rigidity()?;
    positive(radius)?;
    on_plate(r, 0.0, radius)?;
    let gap = (radius - r) * (radius + r) / radius;
    settled(gap * gap / (16.0 * PI * d))
}

/// Deflection per force \[m/N\] at the centre of a simply supported disc under a point load there.
///
/// (3 + nu) / (1 + nu) R^2 / (16 pi D), `timoshenko1959` (from memory).
///
/// # Errors
/// Impossible sheet or radius.
pub fn compliance_supported(sheet: &Sheet, radius: f64) -> Result<f64, PlateError> {
    let d = sheet.checked_rigidity()?;
    positive(radius)?;
    settled((3.0 + sheet.nu) / (1.0 + sheet.nu) * radius * radius / (16.0 * PI * d))
}

/// Mean deflection per force \[m/N\] over a patch of radius `patch` at the centre of a clamped disc, the load spread evenly on it.
///
/// Bending of the thin plate only. Closed form by integrating the deflection of a uniform central patch over that patch.
/// Tends to [`compliance`] at the centre for a small patch.
///
/// # Errors
/// Impossible sheet, or a patch that is not inside the disc.
pub fn patch_compliance(sheet: &Sheet, radius: f64, patch: f64) -> Result<f64, PlateError> {
    let d = sheet.checked_rigidity()?;
    positive(radius)?;
    let c = ratio_within(positive(patch)? / radius, f64::MIN_POSITIVE, 1.0)?;
    let c2 = c * c;
    // Mean over two independent points of the patch of the ring-load deflection (only the axisymmetric part survives).
    let share = 1.0 + 2.0 * c2 * ln(c) - c2 * (2.0 / 3.0) - 0.25 * c2 * c2;
    settled(radius * radius / (16.0 * PI * d) * share)
}

/// Shear deflection per force \[m/N\] that comes on top for a patch at the centre of a disc: 1/(2 pi kappa G t) (ln(R/c) + 1/4).
///
/// Axisymmetric Mindlin plate with shear factor 5/6, mean over the patch. Own derivation: shear force P r/(2 pi c^2) inside
/// the patch and P/(2 pi r) outside, independent of the bending.
///
/// # Errors
/// Impossible sheet, or a patch that is not inside the disc.
pub fn patch_shear_compliance(sheet: &Sheet, radius: f64, patch: f64) -> Result<f64, PlateError> {
    sheet.checked_rigidity()?;
    positive(radius)?;
    ratio_within(positive(patch)? / radius, f64::MIN_POSITIVE, 1.0)?;
    let g_mod = 0.5 * sheet.e_mod / (1.0 + sheet.nu);
    settled((ln(radius / patch) + 0.25) / (2.0 * PI * SHEAR_FACTOR * g_mod * sheet.t))
}

/// Shear factor of a rectangular section in Mindlin's plate \[-\].
const SHEAR_FACTOR: f64 = 5.0 / 6.0;

/// Deflection per pressure \[m/Pa\] at the centre of a clamped disc: R^4 / (64 D), `chen2003` eq. 47.73 (read).
///
/// # Errors
/// Impossible sheet or radius.
pub fn uniform_compliance(sheet: &Sheet, radius: f64) -> Result<f64, PlateError> {
    let d = sheet.checked_rigidity()?;
    let square = positive(radius)? * radius;
    settled(square * square / (64.0 * d))
}

/// Deflection per pressure \[m/Pa\] at the centre of a simply supported disc: (5 + nu)/(1 + nu) R^4 / (64 D), `chen2003` eq. 47.76 (read).
///
/// # Errors
/// Impossible sheet or radius.
pub fn uniform_compliance_supported(sheet: &Sheet, radius: f64) -> Result<f64, PlateError> {
    Ok((5.0 + sheet.nu) / (1.0 + sheet.nu) * uniform_compliance(sheet, radius)?)
}

/// Lowest frequency \[Hz\] of a clamped disc (parameter 10.2158, `leissa1969` table 2.1 from memory, root of our determinant).
///
/// # Errors
/// Impossible sheet or radius.
pub fn first_frequency(sheet: &Sheet, radius: f64) -> Result<f64, PlateError> {
    frequencies(sheet, radius, 1).map(|f| f[0])
}

/// The `count` lowest frequencies \[Hz\] of a clamped disc, each pair of equal modes twice; at most 24.
///
/// # Errors
/// Impossible sheet or radius, or a `count` of zero or beyond 24.
pub fn frequencies(sheet: &Sheet, radius: f64, count: usize) -> Result<Vec<f64>, PlateError> {
    sheet.checked_rigidity()?;
    positive(radius)?;
    if count == 0 || count > COUNT_MAX {
        return Err(PlateError::NotSettled);
    }
    let mut all: Vec<f64> = Vec::new();
    for n in 0..=ORDER_MAX {
        let found = lambdas(n, count, all.get(count - 1).copied());
        if found.is_empty() {
            break;
        }
        for lambda in found {
            all.push(lambda);
            if n > 0 {
                all.push(lambda);
            }
        }
        all.sort_by(f64::total_cmp);
        all.truncate(count);
    }
    all.into_iter()
        .map(|x| sheet.frequency(x * x, radius))
        .collect()
}

/// The roots with n nodal diameters: at most `count`, none above `most`.
fn lambdas(n: u32, count: usize, most: Option<f64>) -> Vec<f64> {
    let mut found = Vec::new();
    // The first root of n diameters lies above n + 2.
    let mut low = FIRST_LAMBDA + f64::from(n);
    let mut at_low = determinant(n, low);
    while found.len() < count && most.is_none_or(|most| low < most) {
        let high = low + LAMBDA_STEP;
        let at_high = determinant(n, high);
        if (at_low < 0.0) != (at_high < 0.0) {
            let lambda = root(low, high, |x| determinant(n, x));
            if most.is_none_or(|most| lambda < most) {
                found.push(lambda);
            }
        }
        (low, at_low) = (high, at_high);
    }
    found
}

/// J I' - I J' of a clamped disc with n nodal diameters; zero at a mode.
fn determinant(n: u32, lambda: f64) -> f64 {
    let (j, i) = (j(n, lambda), i_scaled(n, lambda));
    j.f * i.df - i.f * j.df
}

#[cfg(test)]
mod tests;
