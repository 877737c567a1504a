use super::*;

fn check(kind: Kind, text: &str, system: UnitSystem, expected: f64) {
    let value = parse(kind, text, system).unwrap_or_else(|e| panic!("{text:?}: {e}"));
    assert!(
        (value - expected).abs() <= 1.0e-12 * expected.abs().max(1.0e-9),
        "{text:?}: {value} {expected}"
    );
}

fn fails(kind: Kind, text: &str, expected: ParseErrorKind) {
    let error = parse(kind, text, UnitSystem::Metric).expect_err(text);
    assert_eq!(error.kind, expected, "{text:?}");
    assert!(
        text.get(error.at.clone()).is_some(),
        "{text:?} {:?}",
        error.at
    );
}

#[test]
fn lengths_as_machinists_type_them() {
    let (mm, inch) = (UnitSystem::Metric, UnitSystem::Inch);
    for (text, system, expected) in [
        ("6", mm, 0.006),
        ("6", inch, 0.1524),
        (" 6.35 ", mm, 0.006_35),
        ("6,35 mm", inch, 0.006_35),
        ("0,250", inch, 0.006_35),
        ("1/4 in", mm, 0.006_35),
        ("1/4\"", mm, 0.006_35),
        ("1 1/4\"", mm, 0.031_75),
        ("1½ in", mm, 0.0381),
        ("¼ in", mm, 0.006_35),
        (".25 in", mm, 0.006_35),
        ("5 thou", mm, 0.000_127),
        ("12 µm", mm, 12.0e-6),
        ("12um", mm, 12.0e-6),
        ("−2", mm, -0.002),
        ("1250", mm, 1.25),
        ("1 250", mm, 1.25),
        ("1\u{202F}250 mm", mm, 1.25),
        ("7.", mm, 0.007),
        ("1250,125", mm, 1.250_125),
        ("18 000,5", mm, 18.0005),
        ("1'250", mm, 1.25),
        ("\u{2009}6\u{A0}mm\u{202F}", inch, 0.006),
        ("1\u{2009}250", mm, 1.25),
        ("- 6 mm", mm, -0.006),
        ("+6 mm", mm, 0.006),
        ("-1 1/4 in", mm, -0.031_75),
        ("1-1/4\"", mm, 0.031_75),
        ("1 / 4 in", mm, 0.006_35),
        ("1⁄4 in", mm, 0.006_35),
        ("1 ¾\"", mm, 0.044_45),
        ("⅜ in", mm, 0.009_525),
        ("25.4/2", mm, 0.0127),
        ("3''", mm, 0.0762),
        ("3”", mm, 0.0762),
        ("2'", mm, 0.6096),
        ("6 in.", mm, 0.1524),
        ("6 MM", mm, 0.006),
        ("12 micron", mm, 12.0e-6),
        (",250", inch, 0.006_35),
        ("2.500", mm, 0.0025),
    ] {
        check(Kind::Length, text, system, expected);
    }
}

#[test]
fn other_quantities() {
    let mm = UnitSystem::Metric;
    for (kind, text, expected) in [
        (Kind::SpindleSpeed, "18k rpm", 300.0),
        (Kind::SpindleSpeed, "18 000", 300.0),
        (Kind::SpindleSpeed, "18000 1/min", 300.0),
        (Kind::SpindleSpeed, "18k", 300.0),
        (Kind::Roughness, "6.3", 6.3e-6),
        (Kind::Roughness, "0.01 mm", 1.0e-5),
        (Kind::Roughness, "125 µin", 125.0e-6 * 0.0254),
        (Kind::Power, "1.5 kW", 1500.0),
        (Kind::Power, "2 hp", 2.0 * 745.699_871_582_270_2),
        (Kind::Power, "0,8", 800.0),
        (Kind::Stiffness, "1 N/um", 1.0e6),
        (Kind::Stiffness, "1 N/µm", 1.0e6),
        (Kind::Stiffness, "1", 1.0e6),
        (
            Kind::Stiffness,
            "5710.147 lbf/in",
            5710.147 * 4.448_221_615_260_5 / 0.0254,
        ),
        (Kind::FeedSpeed, "40 in/min", 40.0 * 0.0254 / 60.0),
        (Kind::FeedSpeed, "600 mm/min", 0.01),
        (Kind::SurfaceSpeed, "300 m/min", 5.0),
        (Kind::SurfaceSpeed, "300 sfm", 300.0 * 0.3048 / 60.0),
        (Kind::Angle, "3°", 3.0_f64.to_radians()),
        (Kind::Angle, "3 deg", 3.0_f64.to_radians()),
        (Kind::Ratio, "80 %", 0.8),
        (Kind::Ratio, "0.8", 0.8),
        (Kind::Count, "18", 18.0),
        (Kind::Stress, "800 N/mm²", 8.0e8),
        (Kind::Torque, "0.6 N m", 0.6),
        (Kind::Acceleration, "500", 0.5),
        (Kind::Acceleration, "500 mm/s^2", 0.5),
        (Kind::SpindleSpeed, "18000 min⁻¹", 300.0),
        (Kind::SpindleSpeed, "18000 min^-1", 300.0),
        (Kind::SpindleSpeed, "400 Hz", 400.0),
        (Kind::SpindleSpeed, "18 000 1/min", 300.0),
        (Kind::SpindleSpeed, "18k", 300.0),
        (Kind::SpindleSpeed, "1.2k rev/min", 20.0),
        (Kind::Angle, "3º", 3.0_f64.to_radians()),
        (Kind::Torque, "0.6 N·m", 0.6),
        (Kind::Torque, "0.6 Nm", 0.6),
        (
            Kind::Torque,
            "10 lbf-in",
            10.0 * 4.448_221_615_260_5 * 0.0254,
        ),
        (Kind::Stress, "70 GPa", 7.0e10),
        (Kind::Stress, "80 kPa", 8.0e4),
        (Kind::Stress, "1 ksi", 4.448_221_615_260_5e3 / 0.000_645_16),
        (Kind::Duration, "90 s", 90.0),
        (Kind::Duration, "2 min.", 120.0),
        (Kind::Ratio, "1/4", 0.25),
        (Kind::Ratio, "80%", 0.8),
        (Kind::Count, "4/2", 2.0),
    ] {
        check(kind, text, mm, expected);
    }
}

#[test]
fn what_is_refused_says_why() {
    for (kind, text, expected) in [
        (Kind::Length, "", ParseErrorKind::Empty),
        (Kind::Length, "  ", ParseErrorKind::Empty),
        (Kind::Length, "six", ParseErrorKind::NotANumber),
        (Kind::Length, "nan", ParseErrorKind::NotANumber),
        (Kind::Length, "inf", ParseErrorKind::NotANumber),
        (Kind::Length, "1e3", ParseErrorKind::UnknownUnit),
        (Kind::Length, "1-2", ParseErrorKind::NotANumber),
        (
            Kind::Length,
            "6 rpm",
            ParseErrorKind::WrongUnit(Kind::Length),
        ),
        (Kind::Length, "6 furlong", ParseErrorKind::UnknownUnit),
        (Kind::Length, "6 mil", ParseErrorKind::AmbiguousMil),
        (Kind::Length, "1,250", ParseErrorKind::AmbiguousComma),
        (Kind::Length, "1.250.000", ParseErrorKind::AmbiguousComma),
        (Kind::Length, "1/0", ParseErrorKind::DivisionByZero),
        (Kind::Length, "12 34", ParseErrorKind::NotANumber),
        (Kind::Length, "1/0.0", ParseErrorKind::DivisionByZero),
        (Kind::Length, "1 1/0", ParseErrorKind::DivisionByZero),
        (Kind::Length, "0 250", ParseErrorKind::NotANumber),
        (Kind::Length, "18 0000", ParseErrorKind::NotANumber),
        (Kind::Length, "18 000/2", ParseErrorKind::NotANumber),
        (Kind::Length, "1/4 125", ParseErrorKind::NotANumber),
        (Kind::Length, "1 5/4", ParseErrorKind::NotANumber),
        (Kind::Length, "1.5 1/4", ParseErrorKind::NotANumber),
        (Kind::Length, "1.5½", ParseErrorKind::NotANumber),
        (Kind::Length, "½½", ParseErrorKind::NotANumber),
        (Kind::Length, "1/2/3", ParseErrorKind::NotANumber),
        (Kind::Length, "--5", ParseErrorKind::NotANumber),
        (Kind::Length, "-", ParseErrorKind::NotANumber),
        (Kind::Length, ".", ParseErrorKind::NotANumber),
        (Kind::Length, "mm", ParseErrorKind::NotANumber),
        (Kind::Length, "1' 6\"", ParseErrorKind::UnknownUnit),
        (Kind::Length, "6 m m", ParseErrorKind::UnknownUnit),
        (Kind::Length, "6 mm 7", ParseErrorKind::UnknownUnit),
        (Kind::Length, "-1,250 mm", ParseErrorKind::AmbiguousComma),
        (Kind::Length, "1,250.5", ParseErrorKind::AmbiguousComma),
        (Kind::Length, "1,250,000", ParseErrorKind::AmbiguousComma),
    ] {
        fails(kind, text, expected);
    }
}

#[test]
fn other_quantities_are_refused_too() {
    for (kind, text, expected) in [
        (Kind::Force, "2 mils", ParseErrorKind::AmbiguousMil),
        (Kind::Stiffness, "2e", ParseErrorKind::UnknownUnit),
        (Kind::Stiffness, "2000000000", ParseErrorKind::TooLarge),
        (Kind::Count, "1/2", ParseErrorKind::NotWhole),
        (
            Kind::SpindleSpeed,
            "600 mm/min",
            ParseErrorKind::WrongUnit(Kind::SpindleSpeed),
        ),
        (
            Kind::Stiffness,
            "2 N",
            ParseErrorKind::WrongUnit(Kind::Stiffness),
        ),
        (
            Kind::Length,
            "99999999999999999999",
            ParseErrorKind::TooLarge,
        ),
        (Kind::Count, "2.5", ParseErrorKind::NotWhole),
        (Kind::Count, "-2", ParseErrorKind::Negative),
        (Kind::Count, "2 mm", ParseErrorKind::WrongUnit(Kind::Count)),
    ] {
        fails(kind, text, expected);
    }
}

/// The part of the text that is at fault.
#[test]
fn errors_point_at_the_text() {
    for (text, at_fault) in [
        ("  six ", "six"),
        (" 6 furlong ", "furlong"),
        ("6rpm", "rpm"),
        ("½ rpm", "rpm"),
        ("12 34 mm", "34 mm"),
        (" −1,250 mm", "−1,250"),
        ("3 1/0 mm", "3 1/0"),
        ("9e9 km", "e9 km"),
        ("9999999 km", "9999999 km"),
        (" 5 mil", "mil"),
        ("   ", ""),
    ] {
        let error = parse(Kind::Length, text, UnitSystem::Metric).expect_err(text);
        assert_eq!(text.get(error.at), Some(at_fault), "{text:?}");
    }
}

#[test]
fn errors_say_what_to_type_instead() {
    let said = |kind, text| {
        parse(kind, text, UnitSystem::Metric)
            .expect_err(text)
            .to_string()
    };
    for (kind, text, hint) in [
        (Kind::Length, "", "type a number"),
        (Kind::Length, "6 rpm", "use mm or in"),
        (Kind::Power, "6 rpm", "use kW or leave"),
        (Kind::Count, "6 mm", "type the number alone"),
        (Kind::Ratio, "6 mm", "use % or"),
        (Kind::Length, "1,250", "1250 or 1.25"),
        (Kind::Length, "5 mil", "mm or thou"),
        (Kind::Count, "2.5", "such as 3"),
    ] {
        let sentence = said(kind, text);
        assert!(sentence.contains(hint), "{sentence}");
        assert!(
            sentence.starts_with(char::is_lowercase) && !sentence.ends_with('.'),
            "{sentence}"
        );
    }
}

#[test]
fn no_zero_has_a_sign() {
    for text in ["-0", "−0.0 mm", "-0/3"] {
        let zero = parse(Kind::Length, text, UnitSystem::Metric).unwrap();
        assert_eq!(zero.to_bits(), 0, "{text}");
    }
}

fn next(seed: &mut u64) -> usize {
    *seed = seed
        .wrapping_mul(6_364_136_223_846_793_005)
        .wrapping_add(1_442_695_040_888_963_407);
    usize::try_from(*seed >> 40).unwrap_or(0)
}

/// Whatever comes, a finite number of a sane size or an error that points into the text.
fn check_any(text: &str) {
    for kind in [
        Kind::Length,
        Kind::Count,
        Kind::Ratio,
        Kind::Stiffness,
        Kind::SpindleSpeed,
    ] {
        match parse(kind, text, UnitSystem::Inch) {
            Ok(value) => assert!(value.is_finite() && value.abs() <= MOST_STIFF, "{text:?}"),
            Err(error) => assert!(text.get(error.at.clone()).is_some(), "{text:?} {error:?}"),
        }
    }
}

#[test]
fn no_text_makes_it_panic() {
    let alphabet: Vec<char> = "0123456789 .,/-+−½⅛⁄\"'µmkinrpNh%°e\u{202F}\u{A0}\u{0}é"
        .chars()
        .collect();
    let mut seed = 1_u64;
    for _ in 0..20_000 {
        let length = next(&mut seed) % 13;
        let text: String = (0..length)
            .map(|_| alphabet[next(&mut seed) % alphabet.len()])
            .collect();
        check_any(&text);
    }
}

#[test]
fn no_bytes_make_it_panic() {
    let mut seed = 2_u64;
    for _ in 0..20_000 {
        let length = next(&mut seed) % 25;
        let bytes: Vec<u8> = (0..length)
            .map(|_| u8::try_from(next(&mut seed) % 256).unwrap_or(0))
            .collect();
        check_any(&String::from_utf8_lossy(&bytes));
    }
    check_any(&"9".repeat(100_000));
    check_any(&"1 000 ".repeat(20_000));
}
