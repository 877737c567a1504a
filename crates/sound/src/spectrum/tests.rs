use super::*;
use crate::math::{TURN, cos};
use crate::sounds::{Seed, Sound};

/// What the table's program prints to; twelve digits, and one rounding to 32 bits that may fall the other way.
const AS_PRINTED: f64 = 1e-9;

/// Seed, rate [1/s], seconds, tone [1/s], its amplitude, width of the noise, samples of a frame.
const SOUNDS: [(u64, f64, f64, f64, f64, f64, f64); 4] = [
    (1, 48_000.0, 0.5, 1000.0, 0.3, 0.2, 4096.0),
    (2, 44_100.0, 0.3, 3333.3, 0.05, 0.5, 2048.0),
    (3, 16_000.0, 0.2, 440.0, 0.9, 0.02, 1024.0),
    (4, 22_050.0, 0.1, 100.0, 0.01, 1.0, 64.0),
];

/// Seed, bin, mean square.
/// Source: scipy 1.17.1 (`signal.welch`) with numpy 2.4.6, by `tests/peers/sound.py`.
const OUTSIDE: &[(u64, usize, f64)] = &[
    (1, 1, 1.905405457639e-06),
    (1, 84, 3.217000399555e-03),
    (1, 85, 3.907207051474e-02),
    (1, 86, 2.492599794994e-02),
    (1, 1365, 2.741557063552e-06),
    (1, 2048, 4.310735293161e-07),
    (2, 1, 2.963476653803e-05),
    (2, 154, 5.822894949124e-04),
    (2, 155, 1.309263083425e-03),
    (2, 156, 1.988920370477e-04),
    (2, 682, 1.339068943068e-05),
    (2, 1024, 7.030508461324e-06),
    (3, 1, 2.702672032551e-07),
    (3, 27, 5.917834017177e-02),
    (3, 28, 3.914416157219e-01),
    (3, 29, 1.555593134543e-01),
    (3, 341, 1.470656559048e-07),
    (3, 512, 1.652470359171e-08),
    (4, 1, 4.033140603135e-03),
    (4, 21, 3.923271899303e-03),
    (4, 32, 2.190311216930e-03),
];

#[test]
fn an_independent_program_finds_the_same_spectrum() {
    let mut seen = 0;
    for (seed, rate, seconds, tone, height, width, size) in SOUNDS {
        let mut noise = Seed(seed);
        let sound = Sound::silence(rate, seconds)
            .with(|t| height * cos(TURN * tone * t + 0.7) + width * (noise.even() - 0.5));
        let found = spectrum(&sound.exact(), rate, rate / size).expect("a sound");
        assert_eq!(found.power.len(), whole(size) / 2 + 1);
        for (_, bin, power) in OUTSIDE.iter().filter(|row| row.0 == seed) {
            let off = found.power[*bin] / power - 1.0;
            assert!(off.abs() < AS_PRINTED, "sound {seed}, bin {bin}: {off:e}");
            seen += 1;
        }
    }
    assert_eq!(seen, OUTSIDE.len());
}

#[test]
fn a_sine_over_the_full_scale_is_nought_decibels() {
    for (frequency, amplitude, level) in [(1500.0, 1.0, 0.0), (6000.0, 0.1, -20.0)] {
        let sound = Sound::silence(48_000.0, 1.0).tone(frequency, amplitude);
        let found = spectrum(&sound.exact(), 48_000.0, 12.0).expect("a sound");
        let bin = whole(frequency / found.step);
        let levels: Vec<f64> = found.levels().collect();
        assert!((levels[bin] - level).abs() < 1e-3, "{}", levels[bin]);
        // Hann's window puts a quarter of the power on either side, and nothing further away.
        assert!((levels[bin + 1] - levels[bin] + 6.02).abs() < 0.01);
        assert!(levels[bin + 5] < level - 80.0);
    }
}

#[test]
fn all_power_is_there() {
    let rms = 0.1;
    let sound = Sound::silence(44_100.0, 4.0).white(rms, 9);
    let found = spectrum(&sound.exact(), 44_100.0, 50.0).expect("a sound");
    // Hann's window is 1.5 bins wide to noise.
    let sum = found.power.iter().sum::<f64>() / 1.5;
    assert!((sum / (rms * rms) - 1.0).abs() < 0.02, "{sum}");
}

#[test]
fn columns_lose_no_peak() {
    let sound = Sound::silence(48_000.0, 1.0)
        .tone(2345.0, 0.5)
        .white(0.001, 3);
    let found = spectrum(&sound.exact(), 48_000.0, 6.0).expect("a sound");
    let highest = found.levels().fold(-300.0, f64::max);
    for scale in [Scale::Even, Scale::Logarithmic] {
        for count in [10, 333, 4000] {
            let columns = found.columns(count, 100.0, 12_000.0, scale);
            assert_eq!(columns.len(), count);
            assert!((columns[0].from - 100.0).abs() < 1e-9);
            assert!((columns[count - 1].to - 12_000.0).abs() < 1e-6);
            let loudest = columns
                .iter()
                .max_by(|a, b| a.level.total_cmp(&b.level))
                .expect("columns");
            assert!((loudest.level - highest).abs() < 0.5, "{scale:?} {count}");
            assert!(loudest.from - 6.0 <= 2345.0 && 2345.0 <= loudest.to + 6.0);
        }
    }
}

#[test]
fn columns_of_nothing_are_none() {
    let sound = Sound::silence(48_000.0, 0.1);
    let found = spectrum(&sound.exact(), 48_000.0, 50.0).expect("silence");
    let ranges = [
        (100.0, 100.0),
        (f64::NAN, 1.0),
        (5.0, f64::INFINITY),
        (-1.0, 3.0),
        (9.0, 3.0),
    ];
    for (from, to) in ranges {
        assert_eq!(found.columns(5, from, to, Scale::Even), []);
    }
    assert_eq!(found.columns(5, 0.0, 100.0, Scale::Logarithmic), []);
    assert_eq!(found.columns(0, 1.0, 100.0, Scale::Even), []);
    let beyond = found.columns(3, 1e6, 2e6, Scale::Even);
    assert!(beyond.iter().all(|column| column.level < -200.0));
}

#[test]
fn a_short_recording_gets_wider_bins() {
    let sound = Sound::silence(8000.0, 0.03).white(0.1, 1);
    for resolution in [1.0, 0.0, -1.0, f64::NAN] {
        let found = spectrum(&sound.exact(), 8000.0, resolution).expect("long enough");
        assert!((found.step - 8000.0 / 128.0).abs() < 1e-9);
    }
    let widest = spectrum(&sound.exact(), 8000.0, f64::INFINITY).expect("long enough");
    assert!((widest.step - 125.0).abs() < 1e-9);
}
