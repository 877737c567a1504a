//! Steady tones: what sings while it cuts.

use crate::math::{decibels, hann, power_of_two, ratio, whole};
use crate::peaks::{floor, is_top, top};
use crate::recording::{Recording, Unheard};
use crate::spectrum::{FULL_SINE, averaged};
use crate::taps::{HIGHEST, LOWEST, OF_RATE};
use crate::transform::Transform;

/// Widest distance of two bins [1/s]: a quarter of a bin is under 1 % of the lowest tone without any refinement.
const STEP: f64 = 6.0;
/// Nothing shorter (s) is steady: notes and vowels last so long.
const LEAST_SECONDS: f64 = 1.0;
/// How far a tone stands above the median of what is beside it (dB): in the shortest recording noise reaches 8 by chance.
const OVER_BESIDE: f64 = 12.0;
/// What is beside it, as a share of its frequency.
const BESIDE: f64 = 0.33;
/// Steady: in this share of frames of half the length it stands so far above its surroundings (dB), is weaker than on the
/// whole by no more than this (dB), and its top lies within so many bins.
const SHARE: f64 = 0.85;
const OVER_IN_FRAME: f64 = 7.0;
const WEAKER: f64 = 10.0;
const WANDER: f64 = 0.5;
/// Of tones closer than this many bins only the strongest is told: its own skirt makes others.
const APART: f64 = 6.0;
/// Nothing weaker than the strongest by this much (dB) is told: the recorder's own distortion lies there.
const RANGE: f64 = 45.0;
/// At most so many are told.
const MOST: usize = 12;

/// One steady tone.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tone {
    /// [1/s]
    pub frequency: f64,
    /// Level (dB), 0 for a sine over the full scale.
    pub level: f64,
    /// How far it stands above the median of what is beside it (dB).
    pub above: f64,
    /// Share of the recording's frames in which it was there.
    pub steady: f64,
}

/// The steady tones of a recording.
#[derive(Debug, Clone, PartialEq)]
pub struct Tones {
    /// The strongest first, at most twelve.
    pub tones: Vec<Tone>,
    /// Whether the recorder was overdriven: then odd multiples of a tone may be its own work.
    pub clipped: bool,
    /// Whether there is no sound at all.
    pub silent: bool,
}

/// A tone that may be: its place (bins), power, the floor beside it, frames in which it was there.
struct Candidate {
    place: f64,
    power: f64,
    floor: f64,
    frames: usize,
}

impl Candidate {
    /// Whether it is there in one frame of half the length: a top near its place, as strong, and well above what is
    /// beside it. Both powers are mean squares.
    fn is_in(&self, power: &[f64]) -> bool {
        let place = 0.5 * self.place;
        let bin = whole(place + 0.5);
        let near = bin.saturating_sub(1)..(bin + 2).min(power.len());
        near.filter(|at| is_top(power, *at)).any(|at| {
            let (here, height) = top(power, at);
            (here - place).abs() <= WANDER
                && height > ratio(-WEAKER) * self.power
                && height > ratio(OVER_IN_FRAME) * floor(power, at, BESIDE)
        })
    }
}

fn candidates(power: &[f64], step: f64, highest: f64) -> Vec<Candidate> {
    let inside = |at: &usize| (LOWEST..=highest).contains(&(*at as f64 * step));
    let mut found: Vec<Candidate> = (0..power.len())
        .filter(inside)
        .filter(|at| is_top(power, *at))
        .map(|bin| {
            let (place, power_at) = top(power, bin);
            let floor = floor(power, bin, BESIDE);
            Candidate {
                place,
                power: power_at,
                floor,
                frames: 0,
            }
        })
        .filter(|c| c.power > ratio(OVER_BESIDE) * c.floor)
        .collect();
    found.sort_by(|a, b| b.power.total_cmp(&a.power));
    let strongest = found.first().map_or(0.0, |c| c.power);
    found.retain(|c| c.power >= strongest * ratio(-RANGE));
    let mut apart: Vec<Candidate> = Vec::new();
    for c in found {
        if apart
            .iter()
            .all(|other| (other.place - c.place).abs() >= APART)
        {
            apart.push(c);
        }
    }
    apart
}

/// Counts for each candidate the frames of `size` samples that it is in; gives how many frames there are.
fn count_frames(recording: &Recording, size: usize, found: &mut [Candidate]) -> usize {
    let window = hann(size);
    let sum: f64 = window.iter().sum();
    let mut transform = Transform::new(window);
    let starts = (0..recording.samples.len() - size + 1).step_by(size / 2);
    let frames = starts.len();
    for from in starts {
        let power: Vec<f64> = transform
            .power(&recording.samples, from.cast_signed())
            .map(|p| 2.0 * p / (sum * sum))
            .collect();
        let there = found.iter_mut().filter(|c| c.is_in(&power));
        there.for_each(|c| c.frames += 1);
    }
    frames
}

/// Finds the steady tones of a recording.
///
/// A tone stands above the median of what is beside it in the averaged spectrum and in nearly every frame of it, always
/// at the same place. Speech, a siren and music move; noise has no place. Give a stretch in which the cut is steady.
///
/// Units: samples with full scale 1; rate [1/s].
/// Valid for: 100 Hz to 12 kHz, never above 0.45 of the rate; at least 1 s. Tones closer than
/// six bins (some 35 Hz) count as the strongest of them.
/// Source: averaging after Welch 1967, from memory; the rest is our own.
/// # Errors
/// [`Unheard`] says what is wrong with the recording.
pub fn tones(samples: &[f32], rate: f64) -> Result<Tones, Unheard> {
    let recording = Recording::new(samples, rate)?;
    let (seconds, least) = (recording.seconds(), LEAST_SECONDS);
    if seconds < least {
        return Err(Unheard::TooShort { seconds, least });
    }
    let (clipped, silent) = (recording.clipped(), recording.silent);
    if silent {
        return Ok(Tones {
            tones: Vec::new(),
            clipped,
            silent,
        });
    }
    let size = power_of_two(rate / STEP, 128);
    let mean = averaged(&recording, size);
    let mut found = candidates(&mean.power, mean.step, HIGHEST.min(OF_RATE * rate));
    let frames = count_frames(&recording, size / 2, &mut found);
    let told = found.iter().map(|c| Tone {
        frequency: c.place * mean.step,
        level: decibels(c.power / FULL_SINE),
        above: decibels(c.power / c.floor.max(f64::MIN_POSITIVE)),
        steady: c.frames as f64 / frames as f64,
    });
    let tones = told
        .filter(|tone| tone.steady >= SHARE)
        .take(MOST)
        .collect();
    Ok(Tones {
        tones,
        clipped,
        silent,
    })
}

#[cfg(test)]
mod tests;
