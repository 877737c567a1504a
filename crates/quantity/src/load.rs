//! Forces and what they do: force, stress, torque, power, stiffness.

use crate::define::quantity;
use crate::geometry::INCH;

/// The pound-force in newtons, exact: the pound of 0.45359237 kg times standard gravity, 9.80665 m/s².
///
/// Source: nbs1959 for the pound; thompson2008 (NIST SP 811, B.8) for the product.
pub(crate) const POUND_FORCE: f64 = 4.448_221_615_260_5;
/// The mechanical horsepower in watts: 550 ft·lbf/s = 745.69987158227022 W.
///
/// Source: thompson2008 (NIST SP 811, B.8) prints 745.6999 W; the digits follow from the exact foot and pound-force.
pub(crate) const HORSEPOWER: f64 = 745.699_871_582_270_2;

quantity! {
    /// A force.
    Force {
        /// From newtons.
        n to_n 1.0;
        /// From pounds of force.
        lbf to_lbf POUND_FORCE;
    }
}

quantity! {
    /// A stress, pressure, modulus or specific cutting force.
    Stress {
        /// From pascals.
        pa to_pa 1.0;
        /// From newtons a square millimetre.
        n_per_mm2 to_n_per_mm2 1.0e6;
        /// From gigapascals.
        gpa to_gpa 1.0e9;
    }
}

quantity! {
    /// A torque.
    Torque {
        /// From newton metres.
        n_m to_n_m 1.0;
    }
}

quantity! {
    /// A power.
    Power {
        /// From watts.
        w to_w 1.0;
        /// From kilowatts.
        kw to_kw 1.0e3;
        /// From mechanical horsepower.
        hp to_hp HORSEPOWER;
    }
}

quantity! {
    /// A stiffness.
    Stiffness {
        /// From newtons a metre.
        n_per_m to_n_per_m 1.0;
        /// From newtons a micrometre.
        n_per_um to_n_per_um 1.0e6;
        /// From pounds of force an inch.
        lbf_per_inch to_lbf_per_inch POUND_FORCE / INCH;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn exact_definitions() {
        // Source: nbs1959: pound 0.45359237 kg, foot 0.3048 m; standard gravity 9.80665 m/s2 (CGPM 1901).
        assert!((POUND_FORCE - 0.453_592_37 * 9.806_65).abs() < 1e-14);
        assert!((HORSEPOWER - 550.0 * 0.3048 * 0.453_592_37 * 9.806_65).abs() < 1e-11);
    }

    #[test]
    fn printed_factors() {
        // Source: thompson2008, B.8 (from memory), seven digits each.
        assert!((Stiffness::lbf_per_inch(1.0).to_n_per_m() - 175.126_8).abs() < 5e-5);
        assert!((Power::hp(1.0).to_w() - 745.699_9).abs() < 5e-5);
        assert!((Force::lbf(1.0).to_n() - 4.448_222).abs() < 5e-7);
        assert!((Stress::gpa(70.0).to_n_per_mm2() - 70_000.0).abs() < 1e-9);
    }
}
