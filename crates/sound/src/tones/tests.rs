use super::*;
use crate::sounds::{Seed, Sound};

const RATES: [f64; 3] = [44_100.0, 48_000.0, 16_000.0];

fn heard(sound: &Sound) -> Tones {
    tones(&sound.heard(), sound.rate).expect("long enough")
}

/// The tone that is told nearest to a frequency: its error as a share.
fn error(heard: &Tones, frequency: f64) -> Option<f64> {
    let errors = heard
        .tones
        .iter()
        .map(|tone| (tone.frequency / frequency - 1.0).abs());
    errors.min_by(f64::total_cmp)
}

#[test]
fn a_tone_in_noise_is_found_and_nothing_else() {
    let mut seed = Seed(1);
    let mut worst: f64 = 0.0;
    for i in 0..48 {
        let rate = RATES[i % 3];
        let highest: f64 = if rate < 20_000.0 { 7000.0 } else { 12_000.0 };
        let frequency = 101.0 * libm::pow(highest / 101.0 - 1.0, seed.even());
        // The tone's root mean square is 0.07: from 37 dB above the noise to 9 below it.
        let noise = [0.001, 0.01, 0.05, 0.2][i % 4];
        let room = Sound::silence(rate, 2.0).tone(frequency, 0.1);
        let pink = (i / 4) % 2 == 1;
        let sound = if pink {
            room.pink(noise, i as u64)
        } else {
            room.white(noise, i as u64)
        };
        let heard = heard(&sound);
        assert_eq!(
            heard.tones.len(),
            1,
            "{frequency} in {noise}, pink {pink}, {rate}: {heard:?}"
        );
        worst = worst.max((heard.tones[0].frequency / frequency - 1.0).abs());
        assert!((heard.tones[0].level + 20.0).abs() < 3.0, "{heard:?}");
    }
    assert!(worst < 0.002, "{worst}");
}

#[test]
fn between_the_bins_a_tone_is_found_to_a_fiftieth_of_one() {
    let step = 48_000.0 / 8192.0;
    for i in 0..50 {
        let frequency = (170.0 + 0.02 * f64::from(i)) * step;
        let heard = heard(&Sound::silence(48_000.0, 1.5).tone(frequency, 0.1));
        let off = (heard.tones[0].frequency - frequency).abs() / step;
        assert!(off < 0.02, "{frequency}: {off}");
    }
}

#[test]
fn two_tones_are_told_the_stronger_first() {
    for (i, (a, b)) in [
        (300.0, 412.0),
        (950.0, 1010.0),
        (150.0, 9000.0),
        (2000.0, 2075.0),
    ]
    .into_iter()
    .enumerate()
    {
        let rate = RATES[i % 2];
        let sound = Sound::silence(rate, 2.0)
            .tone(a, 0.05)
            .tone(b, 0.2)
            .pink(0.01, i as u64);
        let heard = heard(&sound);
        assert_eq!(heard.tones.len(), 2, "{a} {b}: {heard:?}");
        assert!(
            (heard.tones[0].frequency / b - 1.0).abs() < 0.002,
            "{heard:?}"
        );
        assert!(
            (heard.tones[1].frequency / a - 1.0).abs() < 0.005,
            "{heard:?}"
        );
    }
}

#[test]
fn a_tone_is_found_beside_hum() {
    for (i, mains) in [50.0, 60.0].into_iter().enumerate() {
        for frequency in [131.0, 777.0, 3210.0] {
            let sound = Sound::silence(RATES[i], 2.0)
                .hum(mains, 0.2)
                .tone(frequency, 0.05)
                .white(0.002, 7);
            let heard = heard(&sound);
            let off = error(&heard, frequency).expect("something");
            assert!(off < 0.01, "{mains} {frequency}: {heard:?}");
            let others = heard.tones.iter().map(|tone| tone.frequency);
            for other in others.filter(|f| (f / frequency - 1.0).abs() > 0.01) {
                let off = other / mains - libm::round(other / mains);
                assert!(off.abs() < 0.05, "{other} is no multiple of {mains}");
            }
        }
    }
}

#[test]
fn clipping_is_told_and_the_tone_holds() {
    let sound = Sound::silence(48_000.0, 2.0)
        .tone(1100.0, 0.8)
        .white(0.005, 2)
        .clipped(0.5);
    let heard = heard(&sound);
    assert!(heard.clipped);
    assert!(
        (heard.tones[0].frequency / 1100.0 - 1.0).abs() < 0.001,
        "{heard:?}"
    );
}

/// Teeth that strike at a rate, each a short thud with some noise.
fn cutting(rate: f64, per_second: f64, seed: u64) -> Sound {
    let mut seed = Seed(seed);
    Sound::silence(rate, 2.0).with(|t| {
        let since = t * per_second - libm::floor(t * per_second);
        let thud = libm::exp(-since * 8.0);
        0.1 * thud + 0.05 * thud * seed.normal() + 0.01 * seed.normal()
    })
}

#[test]
fn chatter_is_told_from_the_teeth() {
    for (teeth, chatter) in [(250.0, 1180.0), (400.0, 2950.0), (166.7, 733.0)] {
        let sound = cutting(44_100.0, teeth, 3).tone(chatter, 0.08);
        let heard = heard(&sound);
        let off = |line: f64| error(&heard, line).expect("something");
        assert!(off(chatter) < 0.002 && off(teeth) < 0.005, "{heard:?}");
        for tone in &heard.tones {
            let on = crate::lines(tone.frequency, teeth / 2.0, 2, 0.01).expect("numbers");
            let is_chatter = (tone.frequency / chatter - 1.0).abs() < 0.01;
            assert_eq!(
                on.origin == crate::Origin::Off,
                is_chatter,
                "{tone:?} {on:?}"
            );
        }
    }
}

#[test]
fn what_is_not_steady_gives_nothing() {
    for rate in RATES {
        for seed in 0..2 {
            for seconds in [1.0, 5.0] {
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
                    (
                        "knocks",
                        room()
                            .tap(0.3, 900.0, 0.005, 0.5)
                            .tap(0.8, 900.0, 0.005, 0.5)
                            .white(0.001, seed),
                    ),
                ];
                for (what, sound) in sounds {
                    let heard = heard(&sound);
                    assert_eq!(heard.tones, [], "{what} {rate} {seconds} {seed}");
                    assert_eq!(heard.silent, what == "silence");
                    assert!(!heard.clipped, "{what}");
                }
            }
            let music = Sound::silence(rate, 3.0)
                .chords(0.5, seed)
                .white(0.0003, seed);
            assert_eq!(heard(&music).tones, [], "music {rate} {seed}");
        }
    }
}

#[test]
fn no_input_stops_it() {
    let odd = [f32::MAX, f32::MIN, f32::MIN_POSITIVE, -0.0, 1e-40, 0.5];
    let mut seed = Seed(1);
    for rate in [4000.0, 8000.0, 11_025.0, 192_000.0] {
        for length in [0, 1, 100, 9000, 200_000] {
            let mut draw = || odd[crate::math::whole(seed.even() * 6.0)];
            let samples: Vec<f32> = (0..length).map(|_| draw()).collect();
            if let Ok(heard) = tones(&samples, rate) {
                assert!(heard.tones.iter().all(|tone| tone.frequency.is_finite()));
            }
        }
    }
    assert!(matches!(
        tones(&[0.1; 9000], 48_000.0),
        Err(Unheard::TooShort { .. })
    ));
    assert!(tones(&[f32::NAN; 99_000], 48_000.0).is_err());
}
