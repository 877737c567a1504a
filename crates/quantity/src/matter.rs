//! Density and duration.

use crate::define::quantity;

quantity! {
    /// A density.
    Density {
        /// From kilograms a cubic metre.
        kg_per_m3 to_kg_per_m3 1.0;
        /// From grams a cubic centimetre.
        g_per_cm3 to_g_per_cm3 1.0e3;
    }
}

quantity! {
    /// A span of time.
    Duration {
        /// From seconds.
        s to_s 1.0;
        /// From minutes.
        minutes to_minutes crate::motion::MINUTE;
    }
}
