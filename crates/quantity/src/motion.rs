//! What moves: speeds, spindle speed, frequency, acceleration.

use crate::define::quantity;
use crate::geometry::INCH;

const MINUTE: f64 = 60.0;

quantity! {
    /// A speed: feed or surface speed.
    Speed {
        /// From metres a second.
        m_per_s to_m_per_s 1.0;
        /// From millimetres a minute.
        mm_per_min to_mm_per_min 1.0e-3 / MINUTE;
        /// From metres a minute.
        m_per_min to_m_per_min 1.0 / MINUTE;
        /// From inches a minute.
        inch_per_min to_inch_per_min INCH / MINUTE;
        /// From feet a minute.
        ft_per_min to_ft_per_min 12.0 * INCH / MINUTE;
    }
}

quantity! {
    /// The speed of a spindle, turns over time.
    SpindleSpeed {
        /// From turns a second.
        per_s to_per_s 1.0;
        /// From turns a minute.
        rpm to_rpm 1.0 / MINUTE;
    }
}

quantity! {
    /// A frequency.
    Frequency {
        /// From hertz.
        hz to_hz 1.0;
    }
}

quantity! {
    /// An acceleration.
    Acceleration {
        /// From metres a second, a second.
        m_per_s2 to_m_per_s2 1.0;
        /// From millimetres a second, a second.
        mm_per_s2 to_mm_per_s2 1.0e-3;
    }
}
