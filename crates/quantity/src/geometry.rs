//! Length and angle.

use crate::define::quantity;

/// The international inch in metres, exact: a 36th of the yard of 0.9144 m.
///
/// Source: nbs1959 (international yard and pound, 24 FR 5348).
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
        assert!((INCH - 0.9144 / 36.0).abs() < 1e-17); // nbs1959: the yard is 0.9144 m
        assert!((Angle::deg(180.0).to_rad() - core::f64::consts::PI).abs() < 1e-12);
    }

    #[test]
    fn arithmetic() {
        let six = Length::mm(6.0);
        let seven = Length::mm(7.0);
        assert!((six + seven - six - seven).abs() < Length::um(1e-9));
        assert!(((-six * 2.0 / 4.0).to_mm() + 3.0).abs() < 1e-12);
        assert!((six / Length::mm(3.0) - 2.0).abs() < 1e-12);
        assert_eq!(
            (six.min(seven), six.max(seven), (-six).abs()),
            (six, seven, six)
        );
        assert_eq!(Length::default(), Length::from_si(0.0));
        assert!(six < seven && six.is_finite() && !(six / 0.0).is_finite());
    }
}
