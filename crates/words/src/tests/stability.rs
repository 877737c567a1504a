//! Whether a step will sing, in words: what is known is told, what is not is not made up.

use super::{plain_blanks, speak};
use crate::stability::{Sign, depth_axis, speed_axis};
use thinwright_core::estimate::{Estimate, Known};
use thinwright_core::field::Field;
use thinwright_core::job::{Push, Pushed};
use thinwright_core::stability::{
    CutReport, LimitReport, Lobes, ModeReport, SpeedReport, StabilityReport,
};
use thinwright_core::strategy::{Listen, Step};
use thinwright_core::vibration::{Axis, TipKnown, Whose};
use thinwright_quantity::{
    Angle, Frequency, Length, Speed, SpindleSpeed, Stiffness, Stress, UnitSystem,
};

fn mode(whose: Whose, axis: Axis, hz: Option<f64>) -> ModeReport {
    ModeReport {
        whose,
        axis,
        stiffness: Stiffness::n_per_um(1.25),
        damping: 0.02,
        frequency: hz.map(Frequency::from_si),
    }
}

/// 0.5 mm at 18 000 rpm; quiet up to 0.8 mm there as far as a tone is known.
fn report(known: TipKnown) -> StabilityReport {
    let mm = Length::mm;
    let tuned = known > TipKnown::Nothing;
    let tone = tuned.then_some(1800.0);
    StabilityReport {
        known,
        modes: vec![
            mode(Whose::Cutter, Axis::X, tone),
            mode(Whose::Cutter, Axis::Y, tone),
            mode(Whose::Web, Axis::Z, Some(650.0)),
        ],
        cut: CutReport {
            n: SpindleSpeed::rpm(18_000.0),
            ap: mm(0.5),
            z: 3,
            arc: (Angle::from_si(0.0), Angle::from_si(1.0)),
            kt: Stress::from_si(8.0e8),
            kr_ratio: 0.3,
            corner: mm(0.0),
        },
        share: 0.8,
        quiet: (mm(0.1234), mm(0.41)),
        limit: tuned.then(|| LimitReport {
            depth: mm(1.1),
            flip: false,
            whose: Whose::Cutter,
            frequency: Frequency::from_si(1850.0),
        }),
        here: tuned.then(|| mm(0.8)),
        speeds: if tuned {
            vec![SpeedReport {
                n: SpindleSpeed::rpm(12_000.0),
                depth: mm(1.1),
                off: mm(0.7),
                drums: false,
            }]
        } else {
            Vec::new()
        },
        tone_error: 0.03,
        damped_below: None,
        top: mm(1.25),
        range: (SpindleSpeed::rpm(6000.0), SpindleSpeed::rpm(24_000.0)),
    }
}

fn step(report: StabilityReport) -> Step {
    Step {
        stability: Some(report),
        listen: Some(Listen {
            quiet: Length::mm(0.41),
            start: Length::mm(0.4),
            increment: Length::mm(0.15),
            planned: Length::mm(0.5),
        }),
        vc: Speed::m_per_min(300.0),
        ..super::strategy::step(1, Vec::new())
    }
}

fn song(report: StabilityReport) -> String {
    let mut out = String::new();
    speak(
        UnitSystem::Metric,
        |_| {},
        |speaker| {
            out = plain_blanks(&speaker.song(&step(report)).join("\n"));
        },
    );
    out
}

fn has(text: &str, wanted: &[&str]) {
    for wanted in wanted {
        assert!(text.contains(wanted), "{wanted:?} is not in\n{text}");
    }
}

#[test]
fn nothing_known_is_no_refusal_and_no_speed() {
    let text = song(report(TipKnown::Nothing));
    has(
        &text,
        &[
            "no speed can be picked",
            "up to 0.123 mm at the bad end of what is not known, up to 0.41 mm at likely values",
            "0.5 mm is planned: it may sing. Shops cut deeper than this every day",
            "tap the cutter in its collet",
            "the push test",
            "First trial: start at 0.4 mm",
            "rising tone",
            "slanting marks",
            "the cutter sideways, 1.25 N/\u{B5}m, damping 2 %",
            "the web along the cutter, 1.25 N/\u{B5}m at 650 Hz",
        ],
    );
    for never in ["will sing", "Good speed", "sings from", "1800"] {
        assert!(!text.contains(never), "{never:?} is in\n{text}");
    }
    let quiet = StabilityReport {
        quiet: (Length::mm(0.6), Length::mm(2.0)),
        ..report(TipKnown::Nothing)
    };
    has(&song(quiet), &["it stays quiet as far as can be told"]);
    let between = StabilityReport {
        quiet: (Length::mm(0.1), Length::mm(2.0)),
        ..report(TipKnown::Nothing)
    };
    has(
        &song(between),
        &["it may sing, though not at likely values"],
    );
}

#[test]
fn less_than_a_cut_is_not_told_in_figures() {
    let hardly = StabilityReport {
        quiet: (Length::mm(0.0031), Length::mm(0.02)),
        ..report(TipKnown::Nothing)
    };
    let text = song(hardly);
    has(&text, &["quiet only below 0.01 mm at the bad end"]);
    assert!(!text.contains("0.0031"), "{text}");
}

#[test]
fn a_tone_gives_depth_speeds_and_what_an_error_costs() {
    let text = song(report(TipKnown::Frequency));
    has(
        &text,
        &[
            "depths are advice",
            "At 18 000 rpm it is quiet up to 0.8 mm: 80 % of what comes out, with the tone 2 % off",
            "0.5 mm is planned, 0.63 of that.",
            "it sings from 1.1 mm on: a tone of its own near 1850 Hz, that of the cutter",
            "Good speed: 12 000 rpm, quiet up to 1.1 mm; the tone 3 % off costs 0.4 mm of it.",
            "make the push test",
        ],
    );
    assert!(!text.contains("drums"), "{text}");
}

#[test]
fn every_other_tooth_and_a_drumming_web_are_told_apart() {
    let mut loud = report(TipKnown::Measured);
    loud.limit = loud.limit.map(|l| LimitReport {
        flip: true,
        whose: Whose::Web,
        ..l
    });
    loud.here = Some(Length::mm(0.2));
    loud.speeds[0].drums = true;
    let text = song(loud);
    has(
        &text,
        &[
            "nothing is refused for it",
            "0.5 mm is planned, 2.5 times that: it will sing, as far as can be told.",
            "every other tooth cuts deep, and the web swings near 1850 Hz",
            "the web drums there.",
            "push it in step with its own tone",
        ],
    );
    assert!(!text.contains("To know more"), "{text}");
}

#[test]
fn beyond_the_chart_nobody_has_looked() {
    let mut quiet = report(TipKnown::Measured);
    quiet.limit = None;
    quiet.here = Some(Length::mm(3.0));
    quiet.speeds[0].depth = Length::mm(3.0);
    quiet.speeds[0].off = Length::mm(2.0);
    let text = song(quiet.clone());
    has(
        &text,
        &[
            "quiet beyond 1.25 mm",
            "0.5 mm is planned.",
            "nothing sings at this speed up to 1.25 mm",
            "the tone 3 % off costs nothing",
        ],
    );
    assert!(!text.contains(" 3 mm"), "{text}");
    quiet.speeds.clear();
    has(&song(quiet), &["No other speed"]);
}

#[test]
fn rubbing_is_told_and_not_counted() {
    for (slow, wanted) in [(100.0, "this cut is faster"), (900.0, "this cut is slower")] {
        let damped = StabilityReport {
            damped_below: Some(Speed::m_per_min(slow)),
            ..report(TipKnown::Measured)
        };
        has(&song(damped), &["Not counted on: below some", wanted]);
    }
}

#[test]
fn the_sheet_has_a_line_where_a_tone_is_known() {
    speak(
        UnitSystem::Metric,
        |_| {},
        |speaker| {
            assert_eq!(speaker.song_short(&report(TipKnown::Nothing)), None);
            let known = report(TipKnown::Frequency);
            let line = plain_blanks(&speaker.song_short(&known).unwrap());
            assert_eq!(
                line,
                "Quiet to 0.8 mm, sings from 1.1 mm; best near 12 000 rpm."
            );
            assert!(!speaker.may_it_sing(&known));
            assert!(speaker.may_it_sing(&report(TipKnown::Nothing)));
        },
    );
}

#[test]
fn the_chart_has_words_for_those_who_cannot_see_it() {
    speak(
        UnitSystem::Metric,
        |_| {},
        |speaker| {
            let known = report(TipKnown::Frequency);
            let lobes = Lobes {
                speeds: [6000.0, 9000.0, 24_000.0].map(SpindleSpeed::rpm).into(),
                limit: vec![Some(Length::mm(0.7)), Some(Length::mm(0.3)), None],
                flip: vec![false, true, false],
            };
            let said = plain_blanks(&speaker.chart_said(&known, Some(&lobes)));
            has(
                &said,
                &[
                    "from 6000 rpm to 24 000 rpm: least 0.3 mm at 9000 rpm",
                    "The step stands at 18 000 rpm and 0.5 mm.",
                ],
            );
            let bare = speaker.chart_said(&report(TipKnown::Nothing), None);
            has(&plain_blanks(&bare), &["quiet at any speed up to 0.123 mm"]);
            let row = |k: usize| {
                let row =
                    speaker.chart_row(lobes.speeds[k], lobes.limit[k], lobes.flip[k], known.top);
                plain_blanks(&row.join(" | "))
            };
            assert_eq!(row(0), "6000 rpm | 0.7 mm | tone of its own");
            assert_eq!(row(1), "9000 rpm | 0.3 mm | every other tooth");
            assert_eq!(row(2), "24 000 rpm | beyond 1.25 mm | -");
        },
    );
    assert_eq!(depth_axis(UnitSystem::Inch), "step-down ap, in");
    assert_eq!(speed_axis(UnitSystem::Metric), "spindle speed n, rpm");
}

#[test]
fn every_sign_has_words_of_its_own() {
    let signs = [
        Sign::Limit,
        Sign::Margin,
        Sign::Flip,
        Sign::Point,
        Sign::Above,
        Sign::Here,
        Sign::Speed,
        Sign::Drums,
        Sign::BadEnd,
        Sign::Likely,
    ];
    speak(
        UnitSystem::Metric,
        |_| {},
        |speaker| {
            let known = report(TipKnown::Frequency);
            let words: Vec<String> = signs.iter().map(|s| speaker.sign(*s, &known)).collect();
            for (k, text) in words.iter().enumerate() {
                assert!(!text.is_empty() && !words[..k].contains(text), "{text}");
            }
        },
    );
}

#[test]
fn a_push_test_tells_stiffness_and_what_stayed() {
    let pushed = |k: f64, lost: f64| Pushed {
        stiffness: Estimate {
            low: 0.8 * k,
            likely: k,
            high: 1.25 * k,
            known: Known::Measured,
        },
        lost,
    };
    speak(
        UnitSystem::Metric,
        |_| {},
        |speaker| {
            let both = Push {
                axes: [Some(pushed(1.0e6, 1.2e-5)), Some(pushed(2.0e6, 0.0)), None],
            };
            let lines = speaker.push(&both);
            assert_eq!(lines.len(), 3, "{lines:?}");
            let text = plain_blanks(&lines.join("\n"));
            has(
                &text,
                &[
                    "Along X: 1 N/\u{B5}m, from 0.8 N/\u{B5}m to 1.25 N/\u{B5}m; 0.012 mm of it did not come back.",
                    "Along Y: 2 N/\u{B5}m",
                    "all of it came back",
                    "The softer of X and Y takes the place of the class",
                ],
            );
            let down = Push {
                axes: [None, None, Some(pushed(3.0e6, 0.0))],
            };
            has(
                &speaker.push(&down).join("\n"),
                &["Along Z alone", "still stands"],
            );
        },
    );
}

#[test]
fn a_push_test_that_was_made_is_not_asked_for() {
    let fill = |answers: &mut thinwright_core::Answers| {
        answers.set(Field::PushForce, "50", Known::Measured);
    };
    speak(UnitSystem::Metric, fill, |speaker| {
        let lines = speaker.song(&step(report(TipKnown::Nothing))).join("\n");
        assert!(lines.contains("tap the cutter") && !lines.contains("make the push test"));
    });
}
