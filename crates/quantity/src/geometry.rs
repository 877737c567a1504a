//! Length and angle.

use crate::define::quantity;

/// The international inch in metres, exact (agreement of 1959; ISO 80000-3).
pub(crate) const INCH: f64 = 0.0254;
/// A degree in radians.
pub(crate) const DEGREE: f64 = core::f64::consts::PI / 180.0;

quantity! {
    /// A length.
    Length {
        /// From metres.
        m to_m 1.0;
        /// From millimetres.
        mm to_mm 1.0e-3;
        /// From micrometres.
        um to_um 1.0e-6;
        /// From inches.
        inch to_inch INCH;
        /// From thousandths of an inch.
        thou to_thou INCH * 1.0e-3;
    }
}

quantity! {
    /// An angle.
    Angle {
        /// From radians.
        rad to_rad 1.0;
        /// From degrees.
        deg to_deg DEGREE;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn units_of_length_agree() {
        assert!((Length::inch(1.0).to_mm() - 25.4).abs() < 1e-12);
        assert!((Length::thou(1000.0) / Length::inch(1.0) - 1.0).abs() < 1e-12);
        assert!((Length::mm(6.0) - Length::um(6000.0)).abs() < Length::um(1e-9));
        assert!((Angle::deg(180.0).to_rad() - core::f64::consts::PI).abs() < 1e-12);
    }
}
