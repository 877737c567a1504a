//! Listening without a browser: what is heard in sounds made here.

use super::Chosen;
use super::analysis::{Stretch, Wanted, agreed, hear_cut, hear_taps};
use super::choose::fitting;
use std::f64::consts::TAU;
use thinwright_core::{Answers, Field, FieldId, Known};
use thinwright_quantity::UnitSystem;
use thinwright_sound::Tap;
use thinwright_words::hear::Use;

const RATE: f64 = 48_000.0;
const WANTED: Wanted = Wanted {
    count: 5,
    within: 0.02,
};

/// Taps that ring at frequencies, one a second from a quarter on, in a little noise.
#[allow(clippy::cast_possible_truncation, reason = "samples of a sound")]
fn tapped(frequencies: &[f64]) -> Vec<f32> {
    let mut seed = 3_u32;
    let count = (frequencies.len() + 1) * 48_000;
    let mut out: Vec<f64> = (0..count)
        .map(|_| {
            seed = seed.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            2e-4 * (f64::from(seed >> 8) / f64::from(1_u32 << 24) - 0.5)
        })
        .collect();
    for (i, f) in frequencies.iter().enumerate() {
        let start = i * 48_000 + 12_000;
        for (k, sample) in out[start..].iter_mut().take(24_000).enumerate() {
            let t = k as f64 / RATE;
            *sample += 0.4 * libm::exp(-0.02 * TAU * f * t) * libm::sin(TAU * f * t);
        }
    }
    out.into_iter().map(|s| s as f32).collect()
}

fn stretch(samples: &[f32], from: f64, whole: bool) -> Stretch<'_> {
    Stretch {
        samples,
        rate: RATE,
        from,
        whole,
    }
}

#[test]
fn taps_are_counted_once_though_they_leave_what_is_kept() {
    let sound = tapped(&[1200.0, 1205.0, 1210.0, 1202.0, 1204.0, 1206.0, 1201.0]);
    let mut taps = Vec::new();
    // Half a second at a time, of which only the last three seconds are kept.
    for end in (48_000..=sound.len()).step_by(24_000) {
        let from = end.saturating_sub(144_000);
        let heard = hear_taps(
            &stretch(&sound[from..end], from as f64 / RATE, false),
            &taps,
            WANTED,
        );
        taps = heard.unwrap().taps;
    }
    let at: Vec<f64> = taps.iter().map(|t| t.at).collect();
    assert_eq!(at.len(), 7, "{at:?}");
    for (i, at) in at.iter().enumerate() {
        assert!((at - (i as f64 + 0.25)).abs() < 0.01, "{at}");
    }
}

#[test]
fn a_tap_counts_only_once_it_has_rung() {
    let sound = tapped(&[1200.0, 1205.0]);
    let cut = &sound[..48_000 + 12_000 + 4800];
    let count = |whole| {
        hear_taps(&stretch(cut, 0.0, whole), &[], WANTED)
            .unwrap()
            .taps
            .len()
    };
    assert_eq!((count(false), count(true)), (1, 2));
}

#[test]
fn taps_that_do_not_agree_are_no_result() {
    let heard = hear_taps(
        &stretch(&tapped(&[900.0, 1200.0, 1600.0]), 0.0, true),
        &[],
        WANTED,
    );
    let heard = heard.unwrap();
    assert_eq!((heard.taps.len(), heard.agreed), (3, None));
    assert!(!heard.silent && !heard.columns.is_empty());
}

#[test]
fn a_cut_is_heard_with_its_tones() {
    #[allow(clippy::cast_possible_truncation, reason = "samples of a sound")]
    let sample = |i: u32| (0.2 * libm::sin(TAU * 1337.0 * f64::from(i) / RATE)) as f32;
    let sound: Vec<f32> = (0..96_000).map(sample).collect();
    let heard = hear_cut(&stretch(&sound, 0.0, true)).unwrap();
    assert_eq!(heard.tones.tones.len(), 1);
    assert!((heard.tones.tones[0].frequency / 1337.0 - 1.0).abs() < 1e-3);
    assert!(
        hear_cut(&stretch(&sound[..24_000], 0.0, true)).is_err(),
        "half a second"
    );
}

#[test]
fn a_cutter_that_is_gone_or_a_drill_is_not_tapped() {
    let mut answers = Answers::new(UnitSystem::Metric);
    let kind = |row| FieldId::in_row(Field::CutterKind, row);
    answers.set(kind(0), "drill", Known::DataSheet);
    answers.set(kind(1), "end-mill", Known::DataSheet);
    let chosen = |row| Chosen {
        to: Use::Cutter,
        row,
        x: true,
        step: None,
        typed: String::new(),
        count: 5,
    };
    let fit = |row| fitting(&chosen(row), &answers).row;
    assert_eq!(
        (fit(Some(0)), fit(Some(1)), fit(Some(7))),
        (Some(1), Some(1), Some(1))
    );
    assert_eq!(fit(None), None, "the spindle");
    answers.remove_cutter(1);
    assert_eq!(fitting(&chosen(Some(1)), &answers).row, None);
}

#[test]
fn of_many_taps_that_differ_five_never_agree_by_chance() {
    let tap = |(i, frequency): (usize, f64)| Tap {
        at: i as f64,
        frequency,
        damping: None,
        above: 20.0,
        clipped: false,
    };
    // Eight tones in turn: after five turns each was heard five times.
    let wild = (0..40).map(|i| (i, 900.0 + 100.0 * (i % 8) as f64));
    let mut taps: Vec<Tap> = wild.map(tap).collect();
    assert!(agreed(&taps, WANTED).is_none_or(|a| a.count < WANTED.count));
    // Whoever then taps well is not held to what was before.
    taps.extend((40..45).map(|i| tap((i, 1234.0))));
    assert_eq!(agreed(&taps, WANTED).unwrap().count, WANTED.count);
}
