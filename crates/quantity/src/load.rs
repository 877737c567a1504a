//! Forces and what they do: force, stress, torque, power, stiffness.

use crate::define::quantity;
use crate::geometry::INCH;

/// The pound-force in newtons, exact (standard gravity times the international pound; NIST SP 811).
pub(crate) const POUND_FORCE: f64 = 4.448_221_615_260_5;
/// The mechanical horsepower in watts: 550 foot-pounds a second (NIST SP 811).
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
