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

#[test]
fn no_text_makes_it_panic() {
    let alphabet: Vec<char> = "0123456789 .,/-+−½¼\"'µmkinrpNh%°e\u{202F}\u{A0}\u{0}é"
        .chars()
        .collect();
    let mut seed = 1_u64;
    for _ in 0..20_000 {
        let mut text = String::new();
        for _ in 0..12 {
            seed = seed
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(1_442_695_040_888_963_407);
            text.push(alphabet[usize::try_from(seed >> 40).unwrap_or(0) % alphabet.len()]);
        }
        for kind in [Kind::Length, Kind::Count, Kind::Ratio, Kind::Stiffness] {
            if let Ok(value) = parse(kind, &text, UnitSystem::Inch) {
                assert!(value.is_finite());
            }
        }
    }
}
