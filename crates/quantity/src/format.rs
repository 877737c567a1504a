//! What people read: a number with as many digits as it deserves, and its unit.

use crate::kind::{Kind, UnitSystem, unit_name, unit_size};

/// Which way a number is rounded to the digits that are shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Rounding {
    /// To the nearest.
    Nearest,
    /// Down: for what must not be exceeded.
    Down,
    /// Up: for what must not be missed.
    Up,
}

/// Between groups of three digits from 10 000 on: a thin no-break space.
const GROUP: char = '\u{202F}';

/// Significant digits, and the most decimals, of a kind.
fn digits(kind: Kind, system: UnitSystem) -> (i32, i32) {
    let inch = system == UnitSystem::Inch;
    match kind {
        Kind::Length => {
            if inch {
                (6, 4)
            } else {
                (6, 3)
            }
        }
        Kind::ShortLength => {
            if inch {
                (3, 5)
            } else {
                (3, 4)
            }
        }
        Kind::FeedSpeed => {
            if inch {
                (4, 1)
            } else {
                (5, 0)
            }
        }
        Kind::SurfaceSpeed => (4, 0),
        Kind::SpindleSpeed => (6, 0),
        Kind::Count => (9, 0),
        Kind::Angle => (3, 1),
        Kind::Power | Kind::Torque | Kind::Force | Kind::Stiffness | Kind::Ratio => (3, 3),
        Kind::Stress | Kind::Frequency | Kind::Acceleration => (4, 1),
        Kind::Duration => (3, 1),
    }
}

/// A number and its unit as read by people; `-` for what is no number.
pub fn format(kind: Kind, si: f64, system: UnitSystem, rounding: Rounding) -> String {
    let number = grouped(&format_bare(kind, si, system, rounding));
    let unit = unit_name(kind, system);
    match (unit, number.as_str()) {
        ("", _) | (_, "-") => number,
        ("°", _) => number + unit,
        _ => number + "\u{A0}" + unit,
    }
}

/// The number alone, without groups: for copying into another program.
pub fn format_bare(kind: Kind, si: f64, system: UnitSystem, rounding: Rounding) -> String {
    let value = si / unit_size(kind, system);
    if !value.is_finite() {
        return "-".to_owned();
    }
    let (significant, most) = digits(kind, system);
    let decimals = decimals(value, significant).min(most);
    let scale = 10.0_f64.powi(decimals);
    // A millionth of the last digit forgives what unit conversion adds.
    let hair = 1.0e-6;
    let rounded = match rounding {
        Rounding::Nearest => (value * scale).round(),
        Rounding::Down => (value * scale + hair).floor(),
        Rounding::Up => (value * scale - hair).ceil(),
    } / scale;
    let places = usize::try_from(decimals.max(0)).unwrap_or(0);
    let mut text = std::format!("{rounded:.places$}");
    if text.contains('.') {
        text.truncate(text.trim_end_matches('0').trim_end_matches('.').len());
    }
    if text == "-0" { "0".to_owned() } else { text }
}

/// Decimals that give so many significant digits; never negative, so that no whole digit is lost.
fn decimals(value: f64, significant: i32) -> i32 {
    let mut whole = 0;
    let mut rest = value.abs();
    while rest >= 1.0 && whole < 40 {
        rest /= 10.0;
        whole += 1;
    }
    if whole > 0 {
        return (significant - whole).max(0);
    }
    let mut zeros = 0;
    while rest > 0.0 && rest < 0.1 && zeros < 12 {
        rest *= 10.0;
        zeros += 1;
    }
    significant + zeros
}

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
mod tests {
    use super::*;
    use crate::parse;

    fn check(kind: Kind, si: f64, system: UnitSystem, expected: &str) {
        assert_eq!(
            format(kind, si, system, Rounding::Nearest).replace('\u{A0}', " "),
            expected
        );
    }

    #[test]
    fn numbers_read_as_people_write_them() {
        check(Kind::Length, 0.006, UnitSystem::Metric, "6 mm");
        check(Kind::Length, 0.006_35, UnitSystem::Inch, "0.25 in");
        check(Kind::ShortLength, 3.5e-5, UnitSystem::Metric, "0.035 mm");
        check(
            Kind::SpindleSpeed,
            300.0,
            UnitSystem::Metric,
            "18\u{202F}000 rpm",
        );
        check(Kind::SpindleSpeed, 50.0, UnitSystem::Metric, "3000 rpm");
        check(
            Kind::FeedSpeed,
            0.64 / 60.0,
            UnitSystem::Metric,
            "640 mm/min",
        );
        check(
            Kind::FeedSpeed,
            0.64 / 60.0,
            UnitSystem::Inch,
            "25.2 in/min",
        );
        check(Kind::Stiffness, 1.234e6, UnitSystem::Metric, "1.23 N/µm");
        check(Kind::Power, 1500.0, UnitSystem::Metric, "1.5 kW");
        check(Kind::Angle, 0.052_36, UnitSystem::Metric, "3°");
        check(Kind::Length, -1.0e-12, UnitSystem::Metric, "0 mm");
        check(Kind::Force, f64::NAN, UnitSystem::Metric, "-");
    }

    #[test]
    fn rounding_keeps_its_direction() {
        let shown =
            |rounding| format_bare(Kind::ShortLength, 1.2345e-5, UnitSystem::Metric, rounding);
        assert_eq!(shown(Rounding::Down), "0.0123");
        assert_eq!(shown(Rounding::Up), "0.0124");
    }

    #[test]
    fn what_is_shown_is_read_back() {
        let kinds = [
            Kind::Length,
            Kind::ShortLength,
            Kind::Angle,
            Kind::FeedSpeed,
            Kind::SurfaceSpeed,
            Kind::SpindleSpeed,
            Kind::Frequency,
            Kind::Force,
            Kind::Stress,
            Kind::Torque,
            Kind::Power,
            Kind::Stiffness,
            Kind::Duration,
            Kind::Acceleration,
            Kind::Ratio,
        ];
        let mut seed = 7_u64;
        for _ in 0..5000 {
            seed = seed
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(1_442_695_040_888_963_407);
            let kind = kinds[usize::try_from(seed >> 40).unwrap_or(0) % kinds.len()];
            #[allow(clippy::cast_precision_loss, reason = "any number will do")]
            let share = (seed >> 11) as f64 / (1_u64 << 53) as f64;
            for system in [UnitSystem::Metric, UnitSystem::Inch] {
                let value = unit_size(kind, system) * 1000.0 * share;
                let text = format(kind, value, system, Rounding::Nearest);
                let back = parse(kind, &text, system).unwrap_or_else(|e| panic!("{text}: {e}"));
                let bare: f64 = format_bare(kind, value, system, Rounding::Nearest)
                    .parse()
                    .unwrap();
                let printed = bare * unit_size(kind, system);
                assert!(
                    (back - printed).abs() <= 1.0e-9 * printed.abs() + 1.0e-15,
                    "{text} {back} {printed}"
                );
                let (significant, most) = digits(kind, system);
                let half = 0.5
                    * 10.0_f64
                        .powi(-decimals(value / unit_size(kind, system), significant).min(most));
                assert!(
                    (back - value).abs() <= 1.001 * half * unit_size(kind, system),
                    "{text} {value}"
                );
            }
        }
    }
}
