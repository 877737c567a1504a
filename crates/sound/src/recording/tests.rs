use super::*;
use crate::sounds::Sound;

#[test]
fn a_tone_is_clipped_only_where_it_is_flat() {
    for (frequency, rate) in [
        (100.0, 48_000.0),
        (440.0, 44_100.0),
        (1500.0, 16_000.0),
        (50.0, 96_000.0),
    ] {
        for amplitude in [0.03, 0.3, 0.99] {
            let sound = Sound::silence(rate, 1.0).tone(frequency, amplitude);
            let whole = Recording::new(&sound.heard(), rate).expect("a sound");
            assert!(!whole.clipped(), "{frequency} {amplitude}");
            let flat = Recording::new(&sound.clipped(0.5).heard(), rate).expect("a sound");
            assert!(flat.clipped(), "{frequency} {amplitude}");
        }
    }
}

#[test]
fn noise_speech_and_knocks_are_not_clipping() {
    let quiet = || Sound::silence(48_000.0, 2.0);
    let sounds = [
        quiet(),
        quiet().white(0.2, 1),
        quiet().pink(0.2, 2),
        quiet().speech(0.3, 3),
        quiet().hum(50.0, 0.5),
        // Every sample as high as the next.
        quiet().with(|t| 0.5 * libm::cos(core::f64::consts::FRAC_PI_4 * (1.0 + 96_000.0 * t))),
        quiet().tap(0.5, 400.0, 0.005, 0.9),
        quiet().tap(0.5, 6000.0, 0.04, 0.9),
    ];
    for (i, sound) in sounds.iter().enumerate() {
        let heard = Recording::new(&sound.heard(), 48_000.0).expect("a sound");
        assert!(!heard.clipped(), "sound {i}");
    }
}

#[test]
fn clipping_is_known_by_its_place() {
    let sound = Sound::silence(48_000.0, 2.0)
        .tap(0.5, 400.0, 0.005, 0.4)
        .tap(1.5, 400.0, 0.005, 1.0)
        .clipped(0.5);
    let heard = Recording::new(&sound.heard(), 48_000.0).expect("a sound");
    assert!(heard.clipped_within(72_000..80_000));
    assert!(!heard.clipped_within(24_000..48_000));
    assert!(!heard.clipped_within(usize::MAX - 1..usize::MAX));
}

#[test]
fn what_cannot_be_heard_is_refused() {
    let error = |samples: &[f32], rate: f64| Recording::new(samples, rate).err();
    let tone = Sound::silence(48_000.0, 0.1).tone(500.0, 0.1).heard();
    for rate in [0.0, -48_000.0, 3999.0, 1e9, f64::INFINITY] {
        assert_eq!(error(&tone, rate), Some(Unheard::Rate(rate)));
    }
    assert!(matches!(error(&tone, f64::NAN), Some(Unheard::Rate(_))));
    assert_eq!(error(&[], 48_000.0), Some(Unheard::Empty));
    assert!(matches!(
        error(&[0.5], 48_000.0),
        Some(Unheard::TooShort { .. })
    ));
    for bad in [f32::NAN, f32::INFINITY, f32::NEG_INFINITY] {
        let mut broken = tone.clone();
        broken[77] = bad;
        assert_eq!(error(&broken, 48_000.0), Some(Unheard::NotFinite(77)));
    }
    let endless = vec![0.0; (1 << 24) + 1];
    assert!(matches!(
        error(&endless, 48_000.0),
        Some(Unheard::TooLong { .. })
    ));
    assert_eq!(error(&tone, 48_000.0), None);
}
