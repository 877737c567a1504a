//! What moves: speeds, spindle speed, frequency, acceleration.

use crate::define::quantity;
use crate::geometry::INCH;

/// A minute in seconds.
pub(crate) const MINUTE: f64 = 60.0;

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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn speeds_agree() {
        assert!((Speed::m_per_min(0.6).to_mm_per_min() - 600.0).abs() < 1e-9);
        assert!((Speed::inch_per_min(10.0).to_mm_per_min() - 254.0).abs() < 1e-9);
        assert!((Speed::ft_per_min(1000.0).to_m_per_min() - 304.8).abs() < 1e-9);
        assert!((SpindleSpeed::rpm(18_000.0).to_per_s() - 300.0).abs() < 1e-9);
        assert!((Acceleration::mm_per_s2(500.0).to_m_per_s2() - 0.5).abs() < 1e-12);
    }
}
