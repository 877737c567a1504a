//! A plate on a bed of springs: filler, tape or wax under the floor.

use crate::sheet::{PlateError, Sheet, positive, settled};
use core::f64::consts::PI;

/// First zero of the deflection of the infinite plate, in characteristic lengths: there it begins to lift (`timoshenko1959`, from memory).
const LIFTS_AT: f64 = 3.92;

/// Deflection per force \[m/N\] under a point load on a wide plate on a bed of stiffness `k0` \[Pa/m\]: 1 / (8 sqrt(k0 D)).
///
/// Hertz 1884, in `timoshenko1959` art. 58 (from memory). The bed also pulls (the plate is stuck to it) and each point
/// of it gives for itself (Winkler); the plate reaches several [`characteristic_length`]s beyond the load. For a contact
/// patch of radius c below half that length the point-load value is a few percent too soft, so on the safe side.
///
/// # Errors
/// Impossible sheet or bed.
pub fn compliance(sheet: &Sheet, k0: f64) -> Result<f64, PlateError> {
    let d = sheet.checked_rigidity()?;
    positive(k0)?;
    settled(1.0 / (8.0 * (k0 * d).sqrt()))
}

/// Length \[m\] over which the load spreads: (D / k0)^(1/4).
///
/// # Errors
/// Impossible sheet or bed.
pub fn characteristic_length(sheet: &Sheet, k0: f64) -> Result<f64, PlateError> {
    let d = sheet.checked_rigidity()?;
    positive(k0)?;
    settled((d / k0).sqrt().sqrt())
}

/// Radius \[m\] at which the plate begins to lift off, so that a bed that only pushes holds it down no further.
///
/// # Errors
/// Impossible sheet or bed.
pub fn contact_radius(sheet: &Sheet, k0: f64) -> Result<f64, PlateError> {
    Ok(LIFTS_AT * characteristic_length(sheet, k0)?)
}

/// Bed stiffness \[Pa/m\] of a layer of modulus `e_mod` \[Pa\] and `thickness` \[m\], free to bulge: E / h.
///
/// A wide thin layer that cannot bulge is stiffer, E (1 - nu) / ((1 + nu) (1 - 2 nu)) / h: this is the safe end.
///
/// # Errors
/// Impossible layer.
pub fn layer_stiffness(e_mod: f64, thickness: f64) -> Result<f64, PlateError> {
    settled(positive(e_mod)? / positive(thickness)?)
}

/// Frequency \[Hz\] of the plate bouncing as a whole on the bed: sqrt(k0 / (rho t)) / (2 pi); bending only raises it.
///
/// # Errors
/// Impossible sheet or bed.
pub fn first_frequency(sheet: &Sheet, k0: f64) -> Result<f64, PlateError> {
    sheet.checked_rigidity()?;
    positive(k0)?;
    settled((k0 / (sheet.rho * sheet.t)).sqrt() / (2.0 * PI))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::math::exp;

    const SHEET: Sheet = Sheet {
        e_mod: 69e9,
        nu: 0.33,
        rho: 2700.0,
        t: 3e-3,
    };

    /// The closed form against its Hankel integral, w = 1/(2 pi) int s ds / (k0 + D s^4).
    #[test]
    fn the_closed_form_is_the_integral_over_all_waves() {
        let k0 = 2e10;
        let d = SHEET.rigidity();
        let scale = 1.0 / characteristic_length(&SHEET, k0).unwrap();
        let mut sum = 0.0;
        // s = scale exp(u): the trapezoidal rule in u is sharp.
        for i in -400..=400 {
            let s = scale * exp(0.05 * f64::from(i));
            sum += 0.05 * s * s / (k0 + d * s * s * s * s);
        }
        let found = compliance(&SHEET, k0).unwrap();
        assert!((sum / (2.0 * PI) / found - 1.0).abs() < 1e-9);
    }

    /// The deflection at the lift-off radius is zero: the same integral with a Bessel function.
    #[test]
    fn the_plate_lifts_where_its_deflection_vanishes() {
        let at = |x: f64| {
            let step = 1e-3;
            (1..40_000)
                .map(|i| {
                    let s = step * f64::from(i);
                    step * s * libm::j0(s * x) / (1.0 + s * s * s * s)
                })
                .sum::<f64>()
        };
        assert!(at(LIFTS_AT - 0.02) > 0.0 && at(LIFTS_AT + 0.02) < 0.0);
    }

    #[test]
    fn impossible_beds_are_refused() {
        for k0 in [0.0, -1.0, f64::NAN, f64::INFINITY] {
            assert!(compliance(&SHEET, k0).is_err() && contact_radius(&SHEET, k0).is_err());
            assert!(first_frequency(&SHEET, k0).is_err());
        }
        assert!(layer_stiffness(1e9, 0.0).is_err());
        assert!((layer_stiffness(1e9, 0.01).unwrap() - 1e11).abs() < 1.0);
    }
}
