use super::*;
use crate::parse;

const KINDS: [Kind; 16] = [
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
    Kind::Count,
    Kind::Ratio,
];
const DIRECTIONS: [Rounding; 3] = [Rounding::Nearest, Rounding::Down, Rounding::Up];

fn check(kind: Kind, si: f64, system: UnitSystem, expected: &str) {
    let text = format(kind, si, system, Rounding::Nearest);
    assert_eq!(text.replace('\u{A0}', " "), expected);
}

#[test]
fn numbers_read_as_people_write_them() {
    let (mm, inch) = (UnitSystem::Metric, UnitSystem::Inch);
    for (kind, si, system, expected) in [
        (Kind::Length, 0.006, mm, "6 mm"),
        (Kind::Length, 0.006_35, inch, "0.25 in"),
        (Kind::Length, 0.152_475, mm, "152.475 mm"),
        (Kind::Length, -12.345, mm, "-12\u{202F}345 mm"),
        (Kind::Length, 1234.567, mm, "1\u{202F}234\u{202F}567 mm"),
        (Kind::Length, -1.0e-12, mm, "0 mm"),
        (Kind::ShortLength, 3.5e-5, mm, "0.035 mm"),
        (Kind::ShortLength, 1.2e-5, mm, "0.012 mm"),
        (Kind::ShortLength, 8.4e-6, mm, "8.4 µm"),
        (Kind::ShortLength, 0.8e-6, mm, "0.8 µm"),
        (Kind::ShortLength, 0.0, mm, "0 mm"),
        (Kind::ShortLength, 3.5e-5, inch, "0.00138 in"),
        (Kind::SpindleSpeed, 300.0, mm, "18\u{202F}000 rpm"),
        (Kind::SpindleSpeed, 50.0, mm, "3000 rpm"),
        (Kind::FeedSpeed, 0.64 / 60.0, mm, "640 mm/min"),
        (Kind::FeedSpeed, 0.64 / 60.0, inch, "25.2 in/min"),
        (Kind::Stiffness, 1.234e6, mm, "1.23 N/µm"),
        (Kind::Power, 1500.0, mm, "1.5 kW"),
        (Kind::Power, 999.9, mm, "1 kW"),
        (Kind::Angle, 0.052_36, mm, "3°"),
        (Kind::Ratio, 0.8, mm, "0.8"),
        (Kind::Count, 12.0, mm, "12"),
        (Kind::Force, f64::NAN, mm, "-"),
        (Kind::Force, f64::NEG_INFINITY, inch, "-"),
    ] {
        check(kind, si, system, expected);
    }
}

#[test]
fn bare_numbers_have_no_groups_and_one_unit() {
    let mm = UnitSystem::Metric;
    let bare = |kind, si| format_bare(kind, si, mm, Rounding::Nearest);
    assert_eq!(bare(Kind::SpindleSpeed, 300.0), "18000");
    assert_eq!(bare(Kind::ShortLength, 8.4e-6), "0.0084");
    assert_eq!(bare(Kind::Length, -1.0e-12), "0");
    assert_eq!(bare(Kind::Length, f64::INFINITY), "-");
}

#[test]
fn rounding_keeps_its_direction() {
    for (si, rounding, expected) in [
        (1.2345e-5, Rounding::Down, "0.0123"),
        (1.2345e-5, Rounding::Up, "0.0124"),
        (-1.2345e-5, Rounding::Down, "-0.0124"),
        (-1.2345e-5, Rounding::Up, "-0.0123"),
        // What is on the grid stays on it, whichever way.
        (2.9e-3, Rounding::Down, "2.9"),
        (2.9e-3, Rounding::Up, "2.9"),
        (-1.0e-9, Rounding::Up, "0"),
    ] {
        let text = format_bare(Kind::ShortLength, si, UnitSystem::Metric, rounding);
        assert_eq!(text, expected, "{si} {rounding:?}");
    }
}

/// What is shown is read back to within the last digit shown, on the side that was asked for.
fn check_round_trip(kind: Kind, si: f64, system: UnitSystem, rounding: Rounding) {
    let text = format(kind, si, system, rounding);
    let back = parse(kind, &text, system).unwrap_or_else(|e| panic!("{kind:?} {text}: {e}"));
    let bare = format_bare(kind, si, system, rounding);
    let unit = if text.ends_with("\u{A0}µm") {
        1.0e-6
    } else {
        let read = parse(kind, &bare, system).unwrap_or_else(|e| panic!("{kind:?} {bare}: {e}"));
        assert_eq!(read.to_bits(), back.to_bits(), "{text} and {bare}");
        unit_size(kind, system)
    };
    let digits = if text.ends_with("\u{A0}µm") {
        DIGITS_OF_MICROMETRES
    } else {
        digits_of(kind, system)
    };
    let last = unit / 10.0_f64.powi(decimals(si / unit, digits));
    let slack = 2.0 * HAIR * last + 1.0e-14 * si.abs();
    let (below, above) = match rounding {
        Rounding::Nearest => (0.5 * last, 0.5 * last),
        Rounding::Down => (last, 0.0),
        Rounding::Up => (0.0, last),
    };
    let off = back - si;
    assert!(
        -below - slack <= off && off <= above + slack,
        "{kind:?} {rounding:?} {text}: {si} became {back}"
    );
}

#[test]
fn what_is_shown_is_read_back() {
    let mut seed = 7_u64;
    let mut draw = |below: u32| {
        seed = seed
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        u32::try_from(seed >> 33).unwrap_or(0) % below
    };
    for _ in 0..20_000 {
        let kind = KINDS[usize::try_from(draw(16)).unwrap_or(0)];
        let rounding = DIRECTIONS[usize::try_from(draw(3)).unwrap_or(0)];
        // Seven digits anywhere between 1e-7 and 1e6 units.
        let exponent = i32::try_from(draw(13)).unwrap_or(0) - 7;
        let digits = f64::from(1 + draw(9_999_999)) * 1.0e-6;
        let sign = if kind != Kind::Count && draw(2) == 0 {
            -1.0
        } else {
            1.0
        };
        for system in [UnitSystem::Metric, UnitSystem::Inch] {
            let si = sign * digits * 10.0_f64.powi(exponent) * unit_size(kind, system);
            check_round_trip(kind, si, system, rounding);
        }
    }
}

#[test]
fn no_number_makes_it_panic() {
    for kind in [Kind::Length, Kind::ShortLength, Kind::Angle, Kind::Count] {
        for bits in 0..4096_u64 {
            // Every exponent of f64, both signs, infinities and NaN among them.
            let si = f64::from_bits((bits << 52) | 0x000a_bcde_f012_3456);
            for rounding in DIRECTIONS {
                let text = format(kind, si, UnitSystem::Metric, rounding);
                assert!(!text.is_empty() && !text.starts_with("-0\u{A0}") && text != "-0");
            }
        }
    }
}
