use super::*;
use crate::agreement;
use crate::sounds::{Seed, Sound};

/// What is promised of a frequency, and of damping in clean cases; how far both are met is asserted where it is measured.
const FREQUENCY: f64 = 0.01;
const DAMPING: f64 = 0.3;
const RATES: [f64; 3] = [44_100.0, 48_000.0, 16_000.0];

fn heard(sound: &Sound) -> Taps {
    taps(&sound.heard(), sound.rate).expect("a sound")
}

/// Six blows of unequal force, about 0.8 s apart.
fn knocked(mut sound: Sound, frequency: f64, zeta: f64, seed: u64) -> Sound {
    let mut seed = Seed(seed);
    for blow in 0..6 {
        let at = 0.3 + 0.8 * f64::from(blow) + 0.1 * seed.even();
        sound = sound.tap(at, frequency, zeta, seed.between(0.1, 0.8));
    }
    sound
}

/// Demands six taps within 1 %; gives the worst errors of frequency and of those dampings that were told, and how many.
fn six(sound: &Sound, frequency: f64, zeta: f64, what: &str) -> (f64, f64, usize) {
    let heard = heard(sound);
    assert_eq!((heard.taps.len(), heard.dull), (6, 0), "{what}: {heard:?}");
    let off = |x: f64, y: f64| (x / y - 1.0).abs();
    let worst = |values: &mut dyn Iterator<Item = f64>| values.fold(0.0, f64::max);
    let frequencies = worst(&mut heard.taps.iter().map(|tap| off(tap.frequency, frequency)));
    assert!(frequencies < FREQUENCY, "{what}: {heard:?}");
    let told: Vec<f64> = heard.taps.iter().filter_map(|tap| tap.damping).collect();
    let agreed = agreement(&heard.taps, 0.02).expect("all agree");
    assert_eq!(agreed.count, 6, "{what}");
    let dampings = worst(&mut told.iter().map(|d| off(*d, zeta)));
    (frequencies, dampings, told.len())
}

#[test]
fn rings_in_a_quiet_room_give_frequency_and_damping() {
    let mut worst: (f64, f64) = (0.0, 0.0);
    for (i, frequency) in [400.0, 640.0, 1000.0, 1700.0, 2950.0, 4300.0, 6000.0]
        .into_iter()
        .enumerate()
    {
        for (j, zeta) in [0.005, 0.01, 0.02, 0.04].into_iter().enumerate() {
            let seed = (10 * i + j) as u64;
            let rate = RATES[(i + j) % 3];
            let sound = knocked(
                Sound::silence(rate, 5.4).white(0.0003, seed),
                frequency,
                zeta,
                seed,
            );
            let found = six(
                &sound,
                frequency,
                zeta,
                &format!("{frequency} {zeta} {rate}"),
            );
            assert!(found.1 < DAMPING, "{frequency} {zeta} {rate}: {found:?}");
            assert!(found.2 >= 5, "{frequency} {zeta} {rate}: {found:?}");
            worst = (worst.0.max(found.0), worst.1.max(found.1));
        }
    }
    // The ring's own frequency is lower than the natural one by zeta^2 / 2: 0.0008 of this.
    assert!(worst.0 < 0.003 && worst.1 < 0.1, "{worst:?}");
}

#[test]
fn noise_hum_and_fans_do_not_hide_a_ring() {
    let mut worst: f64 = 0.0;
    for (i, frequency) in [430.0, 1234.0, 2600.0, 5100.0].into_iter().enumerate() {
        let zeta = [0.006, 0.02][i % 2];
        let rate = RATES[i % 3];
        let room = || Sound::silence(rate, 5.4).white(0.0005, 50 + i as u64);
        let rooms = [
            ("white", room().white(0.004, 60)),
            ("pink", room().pink(0.01, 61)),
            ("hum 50", room().hum(50.0, 0.1)),
            ("hum 60", room().hum(60.0, 0.05).pink(0.002, 62)),
            (
                "fan",
                room().pink(0.005, 63).tone(870.0, 0.02).tone(1740.0, 0.01),
            ),
            ("whistle", room().tone(frequency * 1.21, 0.05)),
        ];
        for (what, room) in rooms {
            let sound = knocked(room, frequency, zeta, 70 + i as u64);
            let found = six(
                &sound,
                frequency,
                zeta,
                &format!("{what} {frequency} {rate}"),
            );
            worst = worst.max(found.0);
            assert!(found.1 < DAMPING, "{what} {frequency} {rate}: {found:?}");
        }
    }
    assert!(worst < 0.005, "{worst}");
}

#[test]
fn a_bounce_counts_once() {
    for (rate, gap) in [
        (48_000.0, 0.02),
        (44_100.0, 0.05),
        (16_000.0, 0.09),
        (48_000.0, 0.13),
    ] {
        let mut sound = Sound::silence(rate, 5.0).white(0.0005, 4);
        for blow in 0..5 {
            let at = 0.3 + 0.9 * f64::from(blow);
            sound = sound
                .tap(at, 1500.0, 0.01, 0.6)
                .tap(at + gap, 1500.0, 0.01, 0.3);
        }
        let heard = heard(&sound);
        assert_eq!(heard.taps.len(), 5, "{gap}: {heard:?}");
        let agreed = agreement(&heard.taps, 0.01).expect("all agree");
        assert_eq!(agreed.count, 5);
        let damping = agreed.damping.expect("clean");
        assert!((damping / 0.01 - 1.0).abs() < DAMPING, "{gap}: {damping}");
    }
}

#[test]
fn of_several_tones_the_strongest_is_told() {
    let mut sound = Sound::silence(48_000.0, 5.0).white(0.001, 8);
    for blow in 0..5 {
        let at = 0.4 + 0.9 * f64::from(blow);
        let tones = [
            (820.0, 0.012, 0.4),
            (2250.0, 0.02, 0.25),
            (4700.0, 0.01, 0.1),
        ];
        for (frequency, zeta, height) in tones {
            sound = sound.tap(at, frequency, zeta, height);
        }
    }
    let agreed = agreement(&heard(&sound).taps, 0.02).expect("all agree");
    assert_eq!(agreed.count, 5);
    assert!((agreed.frequency / 820.0 - 1.0).abs() < 0.002, "{agreed:?}");
}

#[test]
fn an_overdriven_recorder_is_told_and_the_frequency_holds() {
    let loud = knocked(
        Sound::silence(48_000.0, 5.4).white(0.0005, 5),
        900.0,
        0.01,
        5,
    )
    .clipped(0.5);
    let heard = heard(&loud);
    assert!(heard.clipped && heard.taps.iter().any(|tap| tap.clipped));
    let agreed = agreement(&heard.taps, 0.02).expect("all agree");
    assert!(agreed.count == 6 && (agreed.frequency / 900.0 - 1.0).abs() < FREQUENCY);
    let blows = heard.taps.iter().filter(|tap| tap.clipped).count();
    assert!(blows < 6, "a weak blow is not clipped");
}

#[test]
fn buried_decay_is_not_told() {
    let mut sound = Sound::silence(48_000.0, 5.0).white(0.03, 6);
    for blow in 0..5 {
        sound = sound.tap(0.4 + 0.9 * f64::from(blow), 2000.0, 0.02, 0.3);
    }
    let heard = heard(&sound);
    assert!(heard.taps.len() >= 3, "{heard:?}");
    assert!(
        heard
            .taps
            .iter()
            .all(|tap| (tap.frequency / 2000.0 - 1.0).abs() < 0.02)
    );
    let told = heard.taps.iter().filter_map(|tap| tap.damping);
    assert!(
        told.into_iter().all(|d| (d / 0.02 - 1.0).abs() < DAMPING),
        "{heard:?}"
    );
}

#[test]
fn what_is_not_a_knock_gives_nothing() {
    for rate in RATES {
        for seed in 0..2 {
            for seconds in [0.5, 5.0] {
                let room = || Sound::silence(rate, seconds);
                let sounds = [
                    ("silence", room()),
                    ("white", room().white(0.1, seed)),
                    ("pink", room().pink(0.1, seed)),
                    ("speech", room().speech(0.2, seed)),
                    (
                        "speech in a room",
                        room().speech(0.2, seed).pink(0.003, seed),
                    ),
                    ("siren", room().siren(300.0, 3000.0, 0.3)),
                    (
                        "siren in a room",
                        room().siren(200.0, 1500.0, 0.3).white(0.01, seed),
                    ),
                    ("hum", room().hum(50.0, 0.3).white(0.001, seed)),
                    (
                        "tones",
                        room()
                            .tone(1000.0, 0.3)
                            .tone(1013.0, 0.3)
                            .white(0.001, seed),
                    ),
                ];
                for (what, sound) in sounds {
                    let heard = heard(&sound);
                    assert_eq!(heard.taps, [], "{what} {rate} {seconds} {seed}");
                    assert_eq!(heard.silent, what == "silence");
                    assert!(!heard.clipped, "{what}");
                }
            }
        }
    }
}

#[test]
fn music_agrees_on_nothing() {
    for rate in RATES {
        for seed in 0..3 {
            let music = Sound::silence(rate, 8.0)
                .chords(0.5, seed)
                .white(0.0003, seed);
            let agreed = agreement(&heard(&music).taps, 0.02);
            assert!(
                agreed.is_none_or(|agreed| agreed.count < 3),
                "{rate} {seed}: {agreed:?}"
            );
        }
    }
}

#[test]
fn no_input_stops_it() {
    let odd = [f32::MAX, f32::MIN, f32::MIN_POSITIVE, -0.0, 1e-40, 0.5];
    let mut seed = Seed(1);
    for rate in [4000.0, 8000.0, 11_025.0, 192_000.0, 400_000.0] {
        for length in [0, 1, 2, 100, 1700, 20_000] {
            let mut draw = || odd[whole(seed.even() * 6.0)];
            let samples: Vec<f32> = (0..length).map(|_| draw()).collect();
            if let Ok(heard) = taps(&samples, rate) {
                assert!(heard.taps.iter().all(|tap| tap.frequency.is_finite()));
            }
            let step: Vec<f32> = (0..length)
                .map(|i| if i < length / 2 { 0.0 } else { f32::MAX })
                .collect();
            assert!(
                taps(&step, rate).map_or(true, |heard| heard.taps.is_empty()),
                "{rate} {length}"
            );
        }
    }
    assert!(taps(&[], 48_000.0).is_err() && taps(&[f32::NAN; 9000], 48_000.0).is_err());
}
