//! The units that people type: a name, the dimension it belongs to, its size in SI.

use crate::geometry::{DEGREE, INCH};
use crate::kind::Kind;
use crate::load::{HORSEPOWER, POUND_FORCE};

/// What a unit measures.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Dimension {
    Length,
    Angle,
    Speed,
    Turning,
    Frequency,
    Force,
    Stress,
    Torque,
    Power,
    Stiffness,
    Time,
    Acceleration,
    Share,
}

/// The dimension of a kind; a count has none.
pub(crate) fn dimension(kind: Kind) -> Option<Dimension> {
    Some(match kind {
        Kind::Length | Kind::ShortLength | Kind::Roughness => Dimension::Length,
        Kind::Angle => Dimension::Angle,
        Kind::FeedSpeed | Kind::SurfaceSpeed => Dimension::Speed,
        Kind::SpindleSpeed => Dimension::Turning,
        Kind::Frequency => Dimension::Frequency,
        Kind::Force => Dimension::Force,
        Kind::Stress => Dimension::Stress,
        Kind::Torque => Dimension::Torque,
        Kind::Power => Dimension::Power,
        Kind::Stiffness => Dimension::Stiffness,
        Kind::Duration => Dimension::Time,
        Kind::Acceleration => Dimension::Acceleration,
        Kind::Ratio => Dimension::Share,
        Kind::Count => return None,
    })
}

/// Spellings as folded by the parser: lower case, `u` for micro, a blank for a dot, plain digits for powers.
const UNITS: &[(&[&str], Dimension, f64)] = &[
    (&["mm"], Dimension::Length, 1.0e-3),
    (&["cm"], Dimension::Length, 1.0e-2),
    (&["m"], Dimension::Length, 1.0),
    (&["um", "micron", "microns"], Dimension::Length, 1.0e-6),
    (
        &["in", "inch", "inches", "\"", "''"],
        Dimension::Length,
        INCH,
    ),
    (&["thou"], Dimension::Length, INCH * 1.0e-3),
    (&["uin"], Dimension::Length, INCH * 1.0e-6),
    (&["ft", "'"], Dimension::Length, INCH * 12.0),
    (&["°", "deg", "degree", "degrees"], Dimension::Angle, DEGREE),
    (&["rad"], Dimension::Angle, 1.0),
    (&["mm/min"], Dimension::Speed, 1.0e-3 / 60.0),
    (&["mm/s"], Dimension::Speed, 1.0e-3),
    (&["m/min"], Dimension::Speed, 1.0 / 60.0),
    (&["m/s"], Dimension::Speed, 1.0),
    (
        &["in/min", "inch/min", "ipm"],
        Dimension::Speed,
        INCH / 60.0,
    ),
    (&["in/s"], Dimension::Speed, INCH),
    (
        &["ft/min", "sfm", "fpm"],
        Dimension::Speed,
        12.0 * INCH / 60.0,
    ),
    (
        &["rpm", "1/min", "min-1", "/min", "r/min", "rev/min"],
        Dimension::Turning,
        1.0 / 60.0,
    ),
    (&["1/s", "/s", "rps"], Dimension::Turning, 1.0),
    (&["hz"], Dimension::Frequency, 1.0),
    (&["khz"], Dimension::Frequency, 1.0e3),
    (&["n"], Dimension::Force, 1.0),
    (&["kn"], Dimension::Force, 1.0e3),
    (&["lbf", "lb", "lbs"], Dimension::Force, POUND_FORCE),
    (&["kgf"], Dimension::Force, 9.806_65),
    (&["pa"], Dimension::Stress, 1.0),
    (&["bar"], Dimension::Stress, 1.0e5),
    (&["n/mm2", "mpa"], Dimension::Stress, 1.0e6),
    (&["gpa"], Dimension::Stress, 1.0e9),
    (
        &["psi", "lbf/in2"],
        Dimension::Stress,
        POUND_FORCE / (INCH * INCH),
    ),
    (
        &["ksi"],
        Dimension::Stress,
        1.0e3 * POUND_FORCE / (INCH * INCH),
    ),
    (&["n m", "nm"], Dimension::Torque, 1.0),
    (
        &[
            "lbf in", "in lbf", "in lb", "lbf-in", "in-lbf", "in-lb", "lb in",
        ],
        Dimension::Torque,
        POUND_FORCE * INCH,
    ),
    (
        &[
            "lbf ft", "ft lbf", "ft lb", "lbf-ft", "ft-lbf", "ft-lb", "lb ft",
        ],
        Dimension::Torque,
        POUND_FORCE * 12.0 * INCH,
    ),
    (&["kw"], Dimension::Power, 1.0e3),
    (&["w"], Dimension::Power, 1.0),
    (&["hp"], Dimension::Power, HORSEPOWER),
    (&["n/um"], Dimension::Stiffness, 1.0e6),
    (&["n/mm"], Dimension::Stiffness, 1.0e3),
    (&["n/m"], Dimension::Stiffness, 1.0),
    (
        &["lbf/in", "lb/in"],
        Dimension::Stiffness,
        POUND_FORCE / INCH,
    ),
    (&["ms"], Dimension::Time, 1.0e-3),
    (&["s", "sec"], Dimension::Time, 1.0),
    (&["min"], Dimension::Time, 60.0),
    (&["h", "hr"], Dimension::Time, 3600.0),
    (&["mm/s2"], Dimension::Acceleration, 1.0e-3),
    (&["m/s2"], Dimension::Acceleration, 1.0),
    (&["in/s2"], Dimension::Acceleration, INCH),
    (&["%", "percent"], Dimension::Share, 1.0e-2),
];

/// A unit by its typed name.
pub(crate) fn by_name(name: &str) -> Option<(Dimension, f64)> {
    UNITS
        .iter()
        .find(|u| u.0.contains(&name))
        .map(|u| (u.1, u.2))
}
