//! The kinds of quantity that fields and findings are given in, and the systems of units.

/// A system of units for what is typed without a unit and for what is shown.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum UnitSystem {
    /// Millimetres.
    #[default]
    Metric,
    /// Inches.
    Inch,
}

/// A kind of quantity.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Kind {
    /// A length of a part or cutter.
    Length,
    /// A length of chips, errors and finishes: more digits.
    ShortLength,
    /// An angle.
    Angle,
    /// A feed.
    FeedSpeed,
    /// A surface speed.
    SurfaceSpeed,
    /// A spindle speed.
    SpindleSpeed,
    /// A frequency.
    Frequency,
    /// A force.
    Force,
    /// A stress or specific cutting force.
    Stress,
    /// A torque.
    Torque,
    /// A power.
    Power,
    /// A stiffness.
    Stiffness,
    /// A span of time.
    Duration,
    /// An acceleration.
    Acceleration,
    /// A count.
    Count,
    /// A plain ratio; may be typed in percent.
    Ratio,
}

/// The unit in which a kind is shown.
pub fn unit_name(kind: Kind, system: UnitSystem) -> &'static str {
    let metric = system == UnitSystem::Metric;
    match kind {
        Kind::Length | Kind::ShortLength => {
            if metric {
                "mm"
            } else {
                "in"
            }
        }
        Kind::Angle => "°",
        Kind::FeedSpeed => {
            if metric {
                "mm/min"
            } else {
                "in/min"
            }
        }
        Kind::SurfaceSpeed => {
            if metric {
                "m/min"
            } else {
                "ft/min"
            }
        }
        Kind::SpindleSpeed => "rpm",
        Kind::Frequency => "Hz",
        Kind::Force => {
            if metric {
                "N"
            } else {
                "lbf"
            }
        }
        Kind::Stress => "N/mm²",
        Kind::Torque => "N m",
        Kind::Power => "kW",
        Kind::Stiffness => "N/µm",
        Kind::Duration => "min",
        Kind::Acceleration => "mm/s²",
        Kind::Count | Kind::Ratio => "",
    }
}

/// Size in SI of the unit in which a kind is shown, or meant when none is typed.
pub(crate) fn unit_size(kind: Kind, system: UnitSystem) -> f64 {
    use crate::geometry::{DEGREE, INCH};
    let metric = system == UnitSystem::Metric;
    match kind {
        Kind::Length | Kind::ShortLength => {
            if metric {
                1.0e-3
            } else {
                INCH
            }
        }
        Kind::Angle => DEGREE,
        Kind::FeedSpeed => {
            if metric {
                1.0e-3 / 60.0
            } else {
                INCH / 60.0
            }
        }
        Kind::SurfaceSpeed => {
            if metric {
                1.0 / 60.0
            } else {
                12.0 * INCH / 60.0
            }
        }
        Kind::SpindleSpeed => 1.0 / 60.0,
        Kind::Force => {
            if metric {
                1.0
            } else {
                crate::load::POUND_FORCE
            }
        }
        Kind::Stress | Kind::Stiffness => 1.0e6,
        Kind::Power => 1.0e3,
        Kind::Duration => 60.0,
        Kind::Acceleration => 1.0e-3,
        Kind::Frequency | Kind::Torque | Kind::Count | Kind::Ratio => 1.0,
    }
}
