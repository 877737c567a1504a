//! Knocks on a part or a cutter, and how what was struck rings.

use crate::math::{TURN, decibels, energy, exp, hann, power_of_two, quantile, ratio, whole};
use crate::onset::{Knock, knocks};
use crate::peaks::{floor, is_top, top};
use crate::recording::{Recording, Unheard};
use crate::ring::{Ring, Stretch};
use crate::transform::Transform;

/// Frequencies of interest [1/s]: below is a machine rocking, above a telephone hears nothing.
pub(crate) const LOWEST: f64 = 100.0;
pub(crate) const HIGHEST: f64 = 12_000.0;
/// Nothing closer to half the rate is believed: filters of the recorder cut there.
pub(crate) const OF_RATE: f64 = 0.45;
/// A frame for the ring (s), and its rise before the blow (s).
const FRAME: f64 = 0.04;
const RISE: f64 = 0.001;
/// The longest ring that is followed (s), and the shortest that is looked at.
const LONGEST: f64 = 0.8;
const SHORTEST: f64 = 0.01;
/// Time before the next blow that is left out (s).
const BEFORE_NEXT: f64 = 0.003;
/// At most so many frames are looked at for what is always there: the mean of noise whose lower quarter is known is the
/// quarter over `QUARTER` (power of noise is spread exponentially).
const LOOKED_AT: usize = 400;
const QUARTER: f64 = 0.2877;
/// How far a ring must stand above what is always there, and above what is beside it (dB). Measured on sounds drawn by
/// lot: at 11 a tenth of all thuds of mere noise pass for a ring, at 13 one in a hundred; at 15 many rings of 3 % damping
/// are lost.
const OVER_ALWAYS: f64 = 12.0;
const OVER_BESIDE: f64 = 13.0;
/// What is beside it, as a share of its frequency: wide, because a ring of 4 % damping is broad itself.
const BESIDE: f64 = 0.6;
/// Mean square of what sixteen bits add to any recording: the last of them, and it is not always evenly spread.
const STEPS: f64 = 1e-9;
/// A tone that could not be followed, or in no straight line, must be down to this share of its power, or to `GONE_OVER`
/// times what is always there, this much later (s).
const LATER: f64 = 0.06;
const GONE: f64 = 0.1;
const GONE_OVER: f64 = 12.0;
/// One that was followed must not be stronger then than this many times what its decay leaves (6 dB: tones beat).
const MORE: f64 = 4.0;
/// The frequency by phase lies so many bins from the spectrum's, or that share of it; else another tone was followed.
const NEAR_BINS: f64 = 1.0;
const NEAR_SHARE: f64 = 0.015;
/// So many of the strongest are tried.
const TRIED: usize = 3;
/// A tone that falls by less than this (6 dB, in logarithms of the height) while it is heard was not struck.
const LEAST_FALL: f64 = 0.7;
/// Damping is told from a fall of this or more (9 dB), of points this close to a straight line.
const TELLING_FALL: f64 = 1.0;
const STRAIGHT: f64 = 0.2;
/// A fall whose straight line has less than this share of it was sudden: a tone that was switched off.
const STEADY_SHARE: f64 = 0.6;
/// Clipping within this time (s) after a blow counts against it.
const CLIPPED_WITHIN: f64 = 0.1;

/// One knock that rang.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tap {
    /// When it was struck (s) from the start.
    pub at: f64,
    /// Frequency of the strongest tone of its ring [1/s].
    pub frequency: f64,
    /// Damping ratio from the fall of the height; nothing where it is buried, or falls in no straight line.
    pub damping: Option<f64>,
    /// How far the tone stands above what is always there (dB).
    pub above: f64,
    /// Whether the recorder was overdriven: the frequency holds, the damping reads too low.
    pub clipped: bool,
}

/// What was struck in a recording.
#[derive(Debug, Clone, PartialEq)]
pub struct Taps {
    /// Knocks that rang, in order of time.
    pub taps: Vec<Tap>,
    /// Knocks of which no ring could be told from the rest.
    pub dull: usize,
    /// Whether the recorder was overdriven anywhere.
    pub clipped: bool,
    /// Whether there is no sound at all.
    pub silent: bool,
}

/// What is always there, bin by bin, under the window for rings.
struct Always {
    power: Vec<f64>,
    step: f64,
    energy: f64,
}

/// Rises just before the blow, then falls slowly: a ring is loudest at its start.
fn window(size: usize, rate: f64) -> Vec<f64> {
    let rise = whole(RISE * rate).max(1);
    let up = hann(2 * rise);
    let down = hann(2 * (size - rise));
    let (up, down) = (up.iter().take(rise), down.iter().skip(size - rise));
    up.chain(down).copied().collect()
}

impl Always {
    fn new(recording: &Recording, transform: &mut Transform, energy: f64) -> Self {
        let (size, length) = (transform.size(), recording.samples.len());
        let starts = length.saturating_sub(size) / (size / 2) + 1;
        let mut seen = vec![Vec::new(); transform.bins()];
        for frame in (0..starts).step_by(starts.div_ceil(LOOKED_AT)) {
            let power = transform.power(&recording.samples, (frame * size / 2).cast_signed());
            seen.iter_mut().zip(power).for_each(|(bin, p)| bin.push(p));
        }
        let mean = |bin: &mut Vec<f64>| quantile(bin, 0.25) / QUARTER;
        Self {
            power: seen.iter_mut().map(mean).collect(),
            step: recording.rate / size as f64,
            energy,
        }
    }

    /// Mean over the band of a window of `seconds` about a frequency, per unit of the window's energy.
    fn noise(&self, frequency: f64, seconds: f64) -> f64 {
        let (low, high) = (frequency - 1.0 / seconds, frequency + 1.0 / seconds);
        let last = self.power.len() - 1;
        let first = whole(low / self.step).min(last);
        let end = (whole(high / self.step) + 1).clamp(first + 1, last + 1);
        let band = &self.power[first..end];
        (band.iter().sum::<f64>() / (band.len() as f64 * self.energy)).max(STEPS)
    }
}

/// Places (bins) of tones that came with the blow, strongest first, each with its power over what is always there.
fn came(power: &[f64], always: &Always, highest: f64) -> Vec<(f64, f64)> {
    let least = ratio(OVER_ALWAYS);
    let bins = whole(LOWEST / always.step).max(1)..whole(highest / always.step);
    let mut found: Vec<(f64, f64, f64)> = bins
        .filter(|at| is_top(power, *at) && power[*at] > least * always.power[*at])
        .filter(|at| power[*at] > ratio(OVER_BESIDE) * floor(power, *at, BESIDE))
        .map(|at| {
            let behind = always.power[at].max(f64::MIN_POSITIVE);
            (top(power, at).0, power[at] / behind, power[at])
        })
        .collect();
    found.sort_by(|a, b| b.2.total_cmp(&a.2));
    found.truncate(TRIED);
    found.iter().map(|(at, over, _)| (*at, *over)).collect()
}

/// Whether a tone dies away as what was struck does.
fn dies_away(ring: &Ring) -> bool {
    ring.fall >= LEAST_FALL && ring.fall_of_line > STEADY_SHARE * ring.fall
}

/// Damping ratio of a ring: sigma over the natural angular frequency.
fn damping(ring: &Ring) -> Option<f64> {
    let told = ring.fall_of_line >= TELLING_FALL && ring.scatter <= STRAIGHT;
    let omega = TURN * ring.frequency;
    told.then(|| ring.sigma / (omega * omega + ring.sigma * ring.sigma).sqrt())
}

/// The tap that a knock makes, its ring cut off at `end`; nothing where no ring can be told from the rest.
fn tap(
    recording: &Recording,
    knock: Knock,
    end: usize,
    transform: &mut Transform,
    always: &Always,
) -> Option<Tap> {
    let rate = recording.rate;
    if end < knock.last + whole(SHORTEST * rate) {
        return None;
    }
    // What lies behind the end is left out: it belongs to the next blow.
    let until = &recording.samples[..end];
    let start = knock.last.cast_signed() - whole(RISE * rate).max(1).cast_signed();
    let power: Vec<f64> = transform.power(until, start).collect();
    let later = start + whole(LATER * rate).cast_signed();
    let later: Vec<f64> = transform.power(until, later).collect();
    let stretch = Stretch {
        samples: &until[knock.last..],
        rate,
    };
    let highest = HIGHEST.min(OF_RATE * rate);
    for (at, over) in came(&power, always, highest) {
        let guess = at * always.step;
        let near = NEAR_BINS.max(NEAR_SHARE * at) * always.step;
        let ring = stretch
            .follow(guess, &|f, seconds| always.noise(f, seconds))
            .filter(|ring| (ring.frequency - guess).abs() <= near);
        let bin = whole(at + 0.5);
        let left = later[bin] - GONE_OVER * always.power[bin];
        let gone = left <= 0.0 || later[bin] <= GONE * power[bin];
        let dies = match &ring {
            Some(ring) if dies_away(ring) => {
                left <= MORE * power[bin] * exp(-2.0 * ring.sigma * LATER)
            }
            Some(ring) => ring.buried && gone,
            None => gone,
        };
        if !dies {
            continue;
        }
        let frequency = ring.map_or(guess, |ring| ring.frequency);
        if !(LOWEST..=highest).contains(&frequency) {
            continue;
        }
        return Some(Tap {
            at: knock.first as f64 / rate,
            frequency,
            damping: ring.as_ref().and_then(damping),
            above: decibels(over),
            clipped: recording
                .clipped_within(knock.first..knock.last + whole(CLIPPED_WITHIN * rate)),
        });
    }
    None
}

/// Finds the separate knocks in a recording, and how what was struck rings after each.
///
/// A knock is a jump of the loudness over what is always there within 7 ms; further ones within 0.15 s are the same
/// knock's bounces. Of its ring the strongest tone that was not there before is followed: its phase gives the frequency, the
/// logarithm of its height the damping (log decrement). Hum, fans and other steady tones are always there; what starts and
/// does not die away was not struck.
///
/// Units: samples with full scale 1; rate [1/s]. At least a quarter of the recording must be between the rings.
/// Valid for: 100 Hz to 12 kHz, never above 0.45 of the rate; damping ratios up to some 5 %.
/// Source: log decrement: any handbook of vibration, from memory; the rest is our own.
/// # Errors
/// [`Unheard`] says what is wrong with the recording.
pub fn taps(samples: &[f32], rate: f64) -> Result<Taps, Unheard> {
    let recording = Recording::new(samples, rate)?;
    let mut heard = Taps {
        taps: Vec::new(),
        dull: 0,
        clipped: recording.clipped(),
        silent: recording.silent,
    };
    if recording.silent {
        return Ok(heard);
    }
    let window = window(power_of_two(FRAME * rate, 64), rate);
    let energy = energy(&window);
    let mut transform = Transform::new(window);
    let always = Always::new(&recording, &mut transform, energy);
    let knocks = knocks(&recording, (LOWEST, HIGHEST.min(OF_RATE * rate)));
    for (i, knock) in knocks.iter().enumerate() {
        let next = knocks
            .get(i + 1)
            .map(|next| next.first.saturating_sub(whole(BEFORE_NEXT * rate)));
        let end = next
            .unwrap_or(samples.len())
            .min(knock.last + whole(LONGEST * rate));
        match tap(
            &recording,
            *knock,
            end.min(samples.len()),
            &mut transform,
            &always,
        ) {
            Some(tap) => heard.taps.push(tap),
            None => heard.dull += 1,
        }
    }
    Ok(heard)
}

#[cfg(test)]
mod tests;
