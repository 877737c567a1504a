//! The kinds of quantity that fields and findings are given in, and the systems of units.

use crate::geometry::{DEGREE, INCH};
use crate::load::POUND_FORCE;
use crate::motion::MINUTE;

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
    /// A roughness: micrometres, or microinches.
    Roughness,
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

/// The unit in which a kind is shown, and meant when none is typed.
///
/// Metric and inch differ in lengths, speeds and forces; the rest is read in SI units on either side of the ocean.
pub fn unit_name(kind: Kind, system: UnitSystem) -> &'static str {
    shown(kind, system).0
}

/// Size in SI of the unit that [`unit_name`] names.
pub(crate) fn unit_size(kind: Kind, system: UnitSystem) -> f64 {
    shown(kind, system).1
}

/// Name and size of the unit in which a kind is shown.
fn shown(kind: Kind, system: UnitSystem) -> (&'static str, f64) {
    use UnitSystem::{Inch, Metric};
    match (kind, system) {
        (Kind::Length | Kind::ShortLength, Metric) => ("mm", 1.0e-3),
        (Kind::Length | Kind::ShortLength, Inch) => ("in", INCH),
        (Kind::Roughness, Metric) => ("µm", 1.0e-6),
        (Kind::Roughness, Inch) => ("µin", INCH * 1.0e-6),
        (Kind::FeedSpeed, Metric) => ("mm/min", 1.0e-3 / MINUTE),
        (Kind::FeedSpeed, Inch) => ("in/min", INCH / MINUTE),
        (Kind::SurfaceSpeed, Metric) => ("m/min", 1.0 / MINUTE),
        (Kind::SurfaceSpeed, Inch) => ("ft/min", 12.0 * INCH / MINUTE),
        (Kind::Force, Metric) => ("N", 1.0),
        (Kind::Force, Inch) => ("lbf", POUND_FORCE),
        (Kind::Angle, _) => ("°", DEGREE),
        (Kind::SpindleSpeed, _) => ("rpm", 1.0 / MINUTE),
        (Kind::Frequency, _) => ("Hz", 1.0),
        (Kind::Stress, _) => ("N/mm²", 1.0e6),
        (Kind::Torque, _) => ("N m", 1.0),
        (Kind::Power, _) => ("kW", 1.0e3),
        (Kind::Stiffness, _) => ("N/µm", 1.0e6),
        (Kind::Duration, _) => ("min", MINUTE),
        (Kind::Acceleration, _) => ("mm/s²", 1.0e-3),
        (Kind::Count | Kind::Ratio, _) => ("", 1.0),
    }
}
