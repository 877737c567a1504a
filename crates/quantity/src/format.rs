//! What people read: a number with as many digits as it deserves, and its unit.

use crate::kind::{Kind, UnitSystem, unit_name, unit_size};

/// Which way a number is rounded to the digits that are shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rounding {
    /// To the nearest.
    Nearest,
    /// Towards minus infinity: for what must not be exceeded.
    Down,
    /// Towards plus infinity: for what must not be missed.
    Up,
}

/// Between groups of three digits from 10 000 on: a thin no-break space.
const GROUP: char = '\u{202F}';

/// Below this a short length is read in micrometres, in m.
const SHORTEST_IN_MM: f64 = 1.0e-5;
/// A micrometre in m.
const MICRO: f64 = 1.0e-6;
/// In units of the last digit shown: what unit conversion may have added, forgiven when a direction is asked for.
const HAIR: f64 = 1.0e-6;

/// How many digits a number deserves.
#[derive(Clone, Copy)]
struct Digits {
    significant: i32,
    most_decimals: i32,
}

const fn digits(significant: i32, most_decimals: i32) -> Digits {
    Digits {
        significant,
        most_decimals,
    }
}

/// The digits of a kind.
fn digits_of(kind: Kind, system: UnitSystem) -> Digits {
    use UnitSystem::{Inch, Metric};
    match (kind, system) {
        (Kind::Length, Metric) => digits(6, 3),
        (Kind::Length, Inch) => digits(6, 4),
        (Kind::ShortLength, Metric) => digits(3, 4),
        (Kind::ShortLength, Inch) => digits(3, 5),
        (Kind::Roughness, Metric | Inch) => digits(3, 2),
        (Kind::FeedSpeed, Metric) => digits(5, 0),
        (Kind::FeedSpeed, Inch) => digits(4, 1),
        (Kind::SurfaceSpeed, _) => digits(4, 0),
        (Kind::SpindleSpeed, _) => digits(6, 0),
        (Kind::Count, _) => digits(9, 0),
        (Kind::Angle | Kind::Duration, _) => digits(3, 1),
        (Kind::Stress | Kind::Frequency | Kind::Acceleration, _) => digits(4, 1),
        (Kind::Power | Kind::Torque | Kind::Force | Kind::Stiffness | Kind::Ratio, _) => {
            digits(3, 3)
        }
    }
}

/// The digits of micrometres.
const DIGITS_OF_MICROMETRES: Digits = digits(3, 2);

/// A number and its unit as read by people; `-` for what is no number.
///
/// From 10 000 on a thin no-break space parts groups of three digits, and a no-break space parts number and unit. A
/// short length under 0.01 mm is given in µm.
///
/// Units: `si` in SI; counts and ratios plain.
pub fn format(kind: Kind, si: f64, system: UnitSystem, rounding: Rounding) -> String {
    let short = kind == Kind::ShortLength && system == UnitSystem::Metric;
    let micrometres = short && si.abs() < SHORTEST_IN_MM;
    let (number, unit) = if micrometres && si != 0.0 {
        (rounded(si / MICRO, DIGITS_OF_MICROMETRES, rounding), "µm")
    } else {
        (
            format_bare(kind, si, system, rounding),
            unit_name(kind, system),
        )
    };
    let number = grouped(&number);
    match (unit, number.as_str()) {
        ("", _) | (_, "-") => number,
        ("°", _) => number + unit,
        _ => number + "\u{A0}" + unit,
    }
}

/// The number alone in the unit of [`unit_name`], without groups: for copying into another program.
pub fn format_bare(kind: Kind, si: f64, system: UnitSystem, rounding: Rounding) -> String {
    rounded(
        si / unit_size(kind, system),
        digits_of(kind, system),
        rounding,
    )
}

/// A number with so many digits and no idle zeros; `-` if it is not finite.
fn rounded(value: f64, digits: Digits, rounding: Rounding) -> String {
    if !value.is_finite() {
        return "-".to_owned();
    }
    let decimals = decimals(value, digits);
    let scale = 10.0_f64.powi(decimals);
    let scaled = value * scale;
    let kept = match rounding {
        Rounding::Nearest => scaled.round(),
        Rounding::Down => (scaled + HAIR).floor(),
        Rounding::Up => (scaled - HAIR).ceil(),
    } / scale;
    let places = usize::try_from(decimals).unwrap_or(0);
    let mut text = std::format!("{kept:.places$}");
    if text.contains('.') {
        text.truncate(text.trim_end_matches('0').trim_end_matches('.').len());
    }
    if text == "-0" { "0".to_owned() } else { text }
}

/// Decimals that show the significant digits; never negative, so that no whole digit is lost.
fn decimals(value: f64, digits: Digits) -> i32 {
    let mut decimals = digits.significant - 1;
    let mut rest = value.abs();
    while rest >= 10.0 && decimals > 0 {
        rest /= 10.0;
        decimals -= 1;
    }
    while rest > 0.0 && rest < 1.0 && decimals < digits.most_decimals {
        rest *= 10.0;
        decimals += 1;
    }
    decimals.min(digits.most_decimals)
}

/// Whole digits in groups of three.
fn grouped(text: &str) -> String {
    let (whole, rest) = text
        .split_once('.')
        .map_or((text, None), |(w, r)| (w, Some(r)));
    let count = whole.trim_start_matches('-').len();
    if count < 5 {
        return text.to_owned();
    }
    let mut out = String::new();
    for (i, c) in whole.chars().enumerate() {
        let left = whole.len() - i;
        if left % 3 == 0 && out.chars().any(|c| c.is_ascii_digit()) {
            out.push(GROUP);
        }
        out.push(c);
    }
    if let Some(rest) = rest {
        out.push('.');
        out.push_str(rest);
    }
    out
}

#[cfg(test)]
mod tests;
