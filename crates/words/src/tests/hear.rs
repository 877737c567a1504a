//! Listening, in words.

use super::{plain_blanks, speak};
use crate::hear::*;
use thinwright_core::heard::Chatter;
use thinwright_core::vibration::Whose;
use thinwright_quantity::{Frequency, Kind, Length, SpindleSpeed, UnitSystem, parse};
use thinwright_sound::{Agreed, Origin, Unheard};

fn agreed(count: usize) -> Agreed {
    Agreed {
        frequency: 1234.4,
        spread: 0.0123,
        damping: Some(0.02),
        count,
    }
}

fn tone(frequency: f64, origin: Origin) -> CutTone {
    CutTone {
        frequency,
        origin,
        multiple: 3.0,
        strong: true,
    }
}

/// What is said of tones, in one line.
fn told(tones: &[CutTone], advice: Option<&Chatter>) -> String {
    let mut out = String::new();
    speak(
        UnitSystem::Metric,
        |_| {},
        |speaker| {
            out = plain_blanks(&speaker.cut_told(tones, advice).join(" | "));
        },
    );
    out
}

#[test]
fn where_nothing_is_found_no_number_is_told() {
    for (rang, dull) in [(0, 0), (0, 3)] {
        let said = taps_told(None, (rang, dull), 5);
        assert!(
            said.starts_with("Nothing found") && !said.contains("Hz"),
            "{said}"
        );
    }
    assert!(taps_told(None, (3, 0), 5).contains("no two agree"));
    let said = told(&[], None);
    assert!(!said.contains(|c: char| c.is_ascii_digit()), "{said}");
}

#[test]
fn too_few_taps_are_told_as_too_few() {
    let few = plain_blanks(&taps_told(Some(&agreed(3)), (4, 0), 5));
    assert!(
        few.contains("Only 3 taps agree of 5") && few.contains("not enough"),
        "{few}"
    );
    let enough = plain_blanks(&taps_told(Some(&agreed(5)), (6, 0), 5));
    assert_eq!(enough, "1234 Hz: 5 taps agree within 1.2 %.");
}

#[test]
fn chatter_comes_first_and_weak_tones_are_not_told_of() {
    let all = [tone(300.0, Origin::Teeth), tone(777.0, Origin::Off)];
    let said = told(&all, None);
    let (chatter, forced) = (said.find("777 Hz"), said.find("300 Hz"));
    assert!(chatter.is_some() && chatter < forced, "{said}");
    let weak = CutTone {
        strong: false,
        ..tone(777.0, Origin::Off)
    };
    let said = told(&[tone(300.0, Origin::Teeth), weak], None);
    assert!(!said.contains("777"), "{said}");
    assert!(tone_is(&weak).ends_with("(weak)"));
}

#[test]
fn chatter_names_whose_it_is_and_one_change_at_a_time() {
    let known = Chatter {
        whose: Some((Whose::Web, Frequency::hz(800.0))),
        speed: Some(SpindleSpeed::rpm(12_000.0)),
        depth: Length::mm(0.5),
    };
    let all = [tone(777.0, Origin::Off)];
    let said = told(&all, Some(&known));
    for part in [
        "that of the web, 800 Hz",
        "12\u{202F}000",
        "step-down of 0.5 mm",
        one_change(),
    ] {
        let part = plain_blanks(part);
        assert!(said.contains(&part), "{part}: {said}");
    }
    let unknown = Chatter {
        whose: None,
        speed: None,
        ..known
    };
    let said = told(&all, Some(&unknown));
    assert!(
        said.contains("No tone that is known is near") && said.contains("no other speed"),
        "{said}"
    );
}

#[test]
fn a_web_is_as_reckoned_softer_or_stiffer() {
    speak(
        UnitSystem::Metric,
        |_| {},
        |speaker| {
            let said = |heard: f64| {
                plain_blanks(&speaker.web_heard(Frequency::hz(heard), Frequency::hz(1000.0)))
            };
            assert!(
                said(1050.0).contains("5 % off. That is as near"),
                "{}",
                said(1050.0)
            );
            assert!(
                said(700.0).contains("30 % lower. The web is softer"),
                "{}",
                said(700.0)
            );
            assert!(said(1400.0).contains("40 % higher"), "{}", said(1400.0));
        },
    );
}

#[test]
fn every_reason_leads_on() {
    let all = [
        Deaf::Unsafe,
        Deaf::NoInterface,
        Deaf::Refused,
        Deaf::NoMicrophone,
        Deaf::Busy,
        Deaf::NoSound,
        Deaf::TooLarge,
    ];
    for why in all {
        assert!(deaf(why).ends_with("type the tone."), "{why:?}");
    }
    let short = Unheard::TooShort {
        seconds: 0.2,
        least: 1.0,
    };
    assert_eq!(
        deaf(Deaf::Unheard(short)),
        "Too short to judge: at least 1 s are needed."
    );
}

#[test]
fn figures_are_typed_as_fields_take_them() {
    for f in [123.456, 1234.56, 9876.5, 11_234.0] {
        let back = parse(Kind::Frequency, &typed(f), UnitSystem::Metric).unwrap();
        assert!((back / f - 1.0).abs() < 1e-3, "{f}: {back}");
    }
    assert_eq!(damping(0.020_49), "0.02");
    assert_eq!(level(-43.4), "\u{2212}43\u{A0}dB");
    assert_eq!(figure(-0.2), "0");
    assert!(count(2, 5, 3).ends_with("; 1 beside them"));
}
