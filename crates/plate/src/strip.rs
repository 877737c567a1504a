//! Beams cut from the plate: the rib between two slots, and the long edge of a wall.

use crate::sheet::{PlateError, Sheet, on_plate, positive, settled};
use core::f64::consts::PI;

/// First root of cos x cosh x = 1: a strip clamped at both ends.
const CLAMPED_CLAMPED: f64 = 4.730_040_744_862_704;
/// First root of cos x cosh x = -1: a strip clamped at one end.
const CLAMPED_FREE: f64 = 1.875_104_068_711_961;
/// Deflection of the free edge of an infinitely long cantilever plate under a point load on it, over P a^2 / D, for nu = 0.3.
/// Own series by finite elements; `jaramillo1950` gives about 0.168 (from memory).
const LONG_EDGE: f64 = 0.1665;

/// A strip: a rib between two slots, `length` along the slots and `width` across, as thick as its sheet \[m\].
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Strip {
    /// Free length \[m\].
    pub length: f64,
    /// Width \[m\].
    pub width: f64,
}

impl Strip {
    /// E I \[N m^2\]: E, not E/(1 - nu^2), as both long edges are free.
    fn stiffness(&self, sheet: &Sheet) -> Result<f64, PlateError> {
        sheet.checked_rigidity()?;
        positive(self.length)?;
        positive(self.width)?;
        positive(sheet.e_mod * self.width * sheet.t * sheet.t * sheet.t / 12.0)
    }
}

/// Deflection per force \[m/N\] at `x` along a strip clamped at both ends: x^3 (L-x)^3 / (3 E I L^3); L^3 / (192 E I) in the middle.
///
/// Euler-Bernoulli, any text on strength (from memory). No shear, no twist under a load off the centre line; a rib that
/// is narrow against its thickness is softer than this by 10 to 30 %.
///
/// # Errors
/// Impossible sheet or lengths, a load off the strip.
pub fn compliance(sheet: &Sheet, strip: &Strip, x: f64) -> Result<f64, PlateError> {
    let ei = strip.stiffness(sheet)?;
    on_plate(x, 0.0, strip.length)?;
    let product = x * (strip.length - x) / strip.length;
    settled(product * product * product / (3.0 * ei))
}

/// Lowest frequency \[Hz\] of a strip clamped at both ends (root 4.7300).
///
/// # Errors
/// Impossible sheet or lengths.
pub fn first_frequency(sheet: &Sheet, strip: &Strip) -> Result<f64, PlateError> {
    beam_frequency(sheet, strip, CLAMPED_CLAMPED)
}

/// Deflection per force \[m/N\] at the free end of a strip clamped at the other: L^3 / (3 E I).
///
/// # Errors
/// Impossible sheet or lengths.
pub fn cantilever_compliance(sheet: &Sheet, strip: &Strip) -> Result<f64, PlateError> {
    let ei = strip.stiffness(sheet)?;
    let l = strip.length;
    settled(l * l * l / (3.0 * ei))
}

/// Lowest frequency \[Hz\] of a strip clamped at one end (root 1.8751).
///
/// # Errors
/// Impossible sheet or lengths.
pub fn cantilever_first_frequency(sheet: &Sheet, strip: &Strip) -> Result<f64, PlateError> {
    beam_frequency(sheet, strip, CLAMPED_FREE)
}

fn beam_frequency(sheet: &Sheet, strip: &Strip, root: f64) -> Result<f64, PlateError> {
    let ei = strip.stiffness(sheet)?;
    let per_length = positive(sheet.rho * sheet.t * strip.width)?;
    let wave = root / strip.length;
    settled(wave * wave / (2.0 * PI) * (ei / per_length).sqrt())
}

/// Deflection per force \[m/N\] under a point load on the free edge, far from the ends, of a long plate of height `a` clamped
/// along the other edge: 0.1665 a^2 / D.
///
/// For a wall, or a rib that is open on one side. Own computation at nu = 0.3 (0.168 in `jaramillo1950`, from memory). Use
/// [`crate::ritz`] for a wall shorter than about five heights, and at its ends, where it is several times softer.
///
/// # Errors
/// Impossible sheet or height.
pub fn long_edge_compliance(sheet: &Sheet, a: f64) -> Result<f64, PlateError> {
    let d = sheet.checked_rigidity()?;
    positive(a)?;
    settled(LONG_EDGE * a * a / d)
}

#[cfg(test)]
mod tests {
    use super::*;

    const SHEET: Sheet = Sheet {
        e_mod: 69e9,
        nu: 0.33,
        rho: 2700.0,
        t: 4e-3,
    };

    /// Source: closed form of the clamped-clamped beam, F L^3 / (192 E I), and symmetry.
    #[test]
    fn the_middle_is_the_handbook_value() {
        let rib = Strip {
            length: 0.045,
            width: 0.008,
        };
        let ei = 69e9 * 0.008 * 4e-3_f64.powi(3) / 12.0;
        let mid = compliance(&SHEET, &rib, 0.0225).unwrap();
        assert!((mid * 192.0 * ei / 0.045_f64.powi(3) - 1.0).abs() < 1e-12);
        let (left, right) = (
            compliance(&SHEET, &rib, 0.01).unwrap(),
            compliance(&SHEET, &rib, 0.035).unwrap(),
        );
        assert!((left / right - 1.0).abs() < 1e-12 && left < mid);
        let tip = cantilever_compliance(&SHEET, &rib).unwrap();
        assert!((tip / mid - 64.0).abs() < 1e-9);
        let ratio = first_frequency(&SHEET, &rib).unwrap()
            / cantilever_first_frequency(&SHEET, &rib).unwrap();
        assert!((ratio - 22.3733 / 3.5160).abs() < 1e-3);
    }

    /// The long edge against the series of polynomials for a wall of five heights, loaded in the middle of its edge.
    #[test]
    fn the_long_edge_is_the_middle_of_a_long_wall() {
        let sheet = Sheet { nu: 0.3, ..SHEET };
        let wall = crate::ritz::Ritz::new(&sheet, &crate::ritz::Panel::wall(0.15, 0.03)).unwrap();
        let ratio =
            wall.compliance(0.075, 0.03).unwrap() / long_edge_compliance(&sheet, 0.03).unwrap();
        assert!((ratio - 1.0).abs() < 0.01, "{ratio}");
    }

    #[test]
    fn impossible_strips_are_refused() {
        for strip in [
            Strip {
                length: 0.0,
                width: 0.01,
            },
            Strip {
                length: 0.1,
                width: f64::NAN,
            },
        ] {
            assert!(compliance(&SHEET, &strip, 0.0).is_err());
            assert!(first_frequency(&SHEET, &strip).is_err());
        }
        assert!(
            compliance(
                &SHEET,
                &Strip {
                    length: 0.1,
                    width: 0.01
                },
                0.2
            )
            .is_err()
        );
        assert!(long_edge_compliance(&SHEET, f64::INFINITY).is_err());
    }
}
