//! Single sentences, word for word.

use super::{plain_blanks, speak};
use crate::{Band, band, utilisation};
use thinwright_core::estimate::Known;
use thinwright_core::field::{Field, FieldId};
use thinwright_core::limits::LimitId;
use thinwright_core::problem::{Into, Problem, ProblemKind};
use thinwright_core::strategy::{Listen, Measure};
use thinwright_quantity::{Duration, Kind, Length, UnitSystem, parse};

/// A problem's sentence after a text was typed at its field.
fn problem(units: UnitSystem, field: Field, typed: &str, kind: ProblemKind, expected: &str) {
    speak(
        units,
        |a| a.set(field, typed, Known::Estimated),
        |speaker| {
            let problem = Problem {
                field: field.into(),
                kind,
            };
            assert_eq!(plain_blanks(&speaker.problem(&problem)), expected);
        },
    );
}

#[test]
fn no_web_is_said_with_its_sum() {
    let mm = Length::mm;
    let kind = ProblemKind::NoWeb {
        thickness: mm(30.0),
        depth_a: mm(18.0),
        depth_b: mm(14.0),
    };
    let text = "the two recesses leave no web: 30 - 18 - 14 = -2 mm";
    problem(UnitSystem::Metric, Field::DepthA, "18", kind.clone(), text);
    let text = "the two recesses leave no web: 1.1811 - 0.7087 - 0.5512 = -0.0787 in";
    problem(UnitSystem::Inch, Field::DepthA, "18 mm", kind, text);
    let kind = ProblemKind::WebDisagrees {
        thickness: mm(19.0),
        depth_a: mm(9.0),
        depth_b: mm(6.0),
        web: mm(3.0),
    };
    let text = "the web does not agree: 19 - 9 - 6 = 4, not 3 mm; leave one of them empty";
    problem(UnitSystem::Metric, Field::Web, "3", kind, text);
    let kind = ProblemKind::WebTooThick {
        thickness: mm(10.0),
        depth: mm(8.0),
        web: mm(3.0),
    };
    let text = "this web leaves nothing for the other recess: 10 - 8 - 3 = -1 mm";
    problem(UnitSystem::Metric, Field::Web, "3", kind, text);
}

#[test]
fn bounds_and_fits_show_their_numbers() {
    let kind = ProblemKind::TooLarge {
        value: 8.0,
        greatest: 5.0,
    };
    problem(
        UnitSystem::Metric,
        Field::Diameter,
        "8 m",
        kind,
        "8000 mm is too large: at most 5000 mm",
    );
    let kind = ProblemKind::DoesNotFit {
        size: Length::mm(170.0),
        room: Length::mm(160.0),
        into: Into::Outline,
    };
    let text = "170 mm does not fit into the outline, which has 160 mm";
    problem(
        UnitSystem::Metric,
        Field::RecessDiameterA,
        "170",
        kind,
        text,
    );
}

/// The sentence for a text that does not parse, and whether what it proposes does.
fn misread(field: Field, kind: Kind, typed: &str, expected: &str) {
    let error = parse(kind, typed, UnitSystem::Metric).expect_err(typed);
    problem(
        UnitSystem::Metric,
        field,
        typed,
        ProblemKind::Text(error),
        expected,
    );
}

#[test]
fn misread_texts_say_what_to_type() {
    misread(
        Field::Diameter,
        Kind::Length,
        "1,250",
        "is it 1250 or 1.250? Type it without the comma",
    );
    misread(
        Field::Diameter,
        Kind::Length,
        "5 mil",
        "\u{201C}mil\u{201D} is a millimetre to some and 0.001 in to others: type mm or thou",
    );
    misread(
        Field::Power,
        Kind::Power,
        "5 mm",
        "\u{201C}mm\u{201D} measures something else: use kW, or the number alone",
    );
    misread(
        Field::Diameter,
        Kind::Length,
        "six",
        "\u{201C}six\u{201D} is not a number: type a length such as 6.35 mm or 1/4 in",
    );
    for good in ["6.35 mm", "1/4 in", "1250", "1.250"] {
        assert!(
            parse(Kind::Length, good, UnitSystem::Metric).is_ok(),
            "{good}"
        );
    }
}

#[test]
fn the_web_finding_shows_both_stiffnesses() {
    let say = |web: f64, chain: f64, expected: &str| {
        speak(
            UnitSystem::Metric,
            |_| {},
            |speaker| {
                let measure = Measure {
                    demand: chain * 1.0e6,
                    allowed: web * 1.0e6,
                };
                assert_eq!(
                    plain_blanks(&speaker.measure(LimitId::WebSoftness, &measure)),
                    expected
                );
            },
        );
    };
    let soft = "the web is 1.7 N/µm under the cutter; cutter and machine are 1.9 N/µm: the web is the softest link";
    say(1.7, 1.9, soft);
    say(
        4.1,
        0.8,
        "the web is 4.1 N/µm under the cutter; cutter and machine are 0.8 N/µm",
    );
}

#[test]
fn the_listen_ladder_reads_aloud() {
    let listen = Listen {
        quiet: Length::mm(0.0612),
        start: Length::mm(0.2),
        increment: Length::mm(0.05),
        planned: Length::mm(0.4),
    };
    speak(
        UnitSystem::Metric,
        |_| {},
        |speaker| {
            assert_eq!(
                plain_blanks(&speaker.listen(&listen)),
                "start at 0.2 mm, go deeper by 0.05 mm while it stays quiet, stop at the first rising tone; 0.4 mm is \
             planned; quiet at any speed up to 0.061 mm"
            );
        },
    );
}

#[test]
fn times_read_as_said() {
    speak(
        UnitSystem::Metric,
        |_| {},
        |speaker| {
            for (seconds, expected) in [
                (0.2, "1 s"),
                (45.4, "45 s"),
                (99.6, "2 min"),
                (150.0, "3 min"),
                (5399.0, "1 h 30 min"),
                (7500.0, "2 h 05 min"),
                (f64::NAN, "-"),
            ] {
                assert_eq!(plain_blanks(&speaker.time(Duration::s(seconds))), expected);
            }
        },
    );
}

#[test]
fn utilisations_never_hide_a_broken_limit() {
    for (value, expected) in [
        (0.0, "0.00"),
        (0.42, "0.42"),
        (0.421, "0.43"),
        (1.0, "1.00"),
        (1.000_1, "1.01"),
        (12.5, "12.50"),
        (f64::INFINITY, "over 100"),
        (f64::NAN, "over 100"),
    ] {
        assert_eq!(utilisation(value), expected, "{value}");
    }
    assert_eq!(
        [0.8, 0.81, 1.0, 1.01].map(|u| band(u, 0.8)),
        [Band::Holds, Band::Tight, Band::Tight, Band::Fails]
    );
    assert_eq!(band(f64::NAN, 0.8), Band::Fails);
}

#[test]
fn cutters_are_called_by_what_they_are() {
    let fill = |a: &mut thinwright_core::answers::Answers| {
        let mut set =
            |row, field, text: &str| a.set(FieldId::in_row(field, row), text, Known::DataSheet);
        set(0, Field::CutterDiameter, "6");
        set(0, Field::CutterFlutes, "1");
        set(1, Field::CutterDiameter, "1/8 in");
        set(1, Field::CutterFlutes, "2");
        set(2, Field::CutterDiameter, "4.5");
        set(2, Field::CutterKind, "drill");
        set(3, Field::CutterDiameter, "six");
    };
    speak(UnitSystem::Metric, fill, |speaker| {
        let names = [0, 1, 2, 3, 9].map(|row| plain_blanks(&speaker.cutter(row)));
        assert_eq!(
            names,
            [
                "6 mm end mill, 1 flute",
                "3.175 mm end mill, 2 flutes",
                "4.5 mm drill",
                "cutter 4",
                "cutter 10"
            ]
        );
        let place = speaker.place(FieldId::in_row(Field::CutterFluteLength, 1));
        assert_eq!(place, "Cutter 2: flute length");
    });
}
