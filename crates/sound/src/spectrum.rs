//! The averaged spectrum of a sound, for looking at.

use crate::math::{decibels, exp, hann, ln, power_of_two, whole};
use crate::recording::{Recording, Unheard};
use crate::transform::Transform;

/// The shortest frame (samples).
const LEAST_FRAME: usize = 64;
/// Power of a sine from end to end of the scale.
pub(crate) const FULL_SINE: f64 = 0.5;

/// How much sound there is at which frequency.
#[derive(Debug, Clone, PartialEq)]
pub struct Spectrum {
    /// Distance of two bins [1/s]; the first bin is at 0.
    pub step: f64,
    /// Mean square of each bin, full scale 1: a sine of amplitude A on a bin gives A^2/2 there.
    pub power: Vec<f64>,
    /// How many frames were averaged.
    pub frames: usize,
}

/// How columns divide the frequencies.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Scale {
    /// Each column as wide as the next in 1/s.
    Even,
    /// Each column in the same ratio to the next.
    Logarithmic,
}

/// One column of a picture of a spectrum.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Column {
    /// Lower end [1/s].
    pub from: f64,
    /// Upper end [1/s].
    pub to: f64,
    /// The highest level within (dB), 0 for a sine over the full scale.
    pub level: f64,
}

/// The averaged spectrum of a recording.
///
/// Frames of a power of two samples, half overlapping, Hann's window, the mean square of each bin averaged.
/// Two tones closer than four bins are not told apart.
///
/// Units: samples with full scale 1; rate [1/s]; resolution [1/s], the widest distance of two bins that will do: a
/// recording that is shorter than such a frame gets wider ones, of at least 64 samples.
/// Valid for: 4 kHz to 400 kHz, 0.02 s to 2^24 samples.
/// Source: Welch 1967; window: Harris 1978; both from memory.
/// # Errors
/// [`Unheard`] says what is wrong with the recording.
pub fn spectrum(samples: &[f32], rate: f64, resolution: f64) -> Result<Spectrum, Unheard> {
    let recording = Recording::new(samples, rate)?;
    let length = recording.samples.len();
    let mut size = power_of_two(rate / resolution.max(f64::MIN_POSITIVE), LEAST_FRAME);
    while size > length {
        size /= 2;
    }
    Ok(averaged(&recording, size))
}

/// The same with frames of `size` samples, a power of two not above the recording's length.
pub(crate) fn averaged(recording: &Recording, size: usize) -> Spectrum {
    let window = hann(size);
    let sum: f64 = window.iter().sum();
    let mut transform = Transform::new(window);
    let mut power = vec![0.0; transform.bins()];
    let mut frames = 0;
    for from in (0..=recording.samples.len() - size).step_by(size / 2) {
        let frame = transform.power(&recording.samples, from.cast_signed());
        power.iter_mut().zip(frame).for_each(|(sum, p)| *sum += p);
        frames += 1;
    }
    let last = power.len() - 1;
    for (bin, p) in power.iter_mut().enumerate() {
        let sides = if bin == 0 || bin == last { 1.0 } else { 2.0 };
        *p *= sides / (sum * sum * f64::from(frames));
    }
    Spectrum {
        step: recording.rate / size as f64,
        power,
        frames: usize::try_from(frames).unwrap_or(0),
    }
}

impl Spectrum {
    /// Level of each bin (dB), 0 for a sine over the full scale.
    pub fn levels(&self) -> impl Iterator<Item = f64> + '_ {
        self.power.iter().map(|p| decibels(p / FULL_SINE))
    }

    /// Mean square at a frequency [1/s], straight between the bins.
    fn between(&self, frequency: f64) -> f64 {
        let place = (frequency / self.step).max(0.0);
        let below = whole(place).min(self.power.len() - 1);
        let above = (below + 1).min(self.power.len() - 1);
        let share = (place - below as f64).min(1.0);
        self.power[below] * (1.0 - share) + self.power[above] * share
    }

    /// So many columns from one frequency to another [1/s] for a picture.
    ///
    /// A column shows the highest bin within it, so that no peak is lost; one that is narrower than a bin shows the
    /// straight line between its bins. Nothing where the frequencies are not a range (above 0 for `Logarithmic`).
    #[must_use]
    pub fn columns(&self, count: usize, from: f64, to: f64, scale: Scale) -> Vec<Column> {
        let least = if scale == Scale::Logarithmic {
            f64::MIN_POSITIVE
        } else {
            0.0
        };
        if !(from >= least && from < to && to.is_finite()) || self.power.is_empty() {
            return Vec::new();
        }
        let edge = |i: usize| {
            let share = i as f64 / count as f64;
            match scale {
                Scale::Even => from + (to - from) * share,
                Scale::Logarithmic => from * exp(share * ln(to / from)),
            }
        };
        let column = |i: usize| {
            let (from, to) = (edge(i), edge(i + 1));
            let first = whole(libm::ceil(from / self.step));
            let last = whole(libm::ceil(to / self.step)).min(self.power.len());
            let inside = self.power.get(first..last).unwrap_or_default();
            let middle = self.between(0.5 * (from + to));
            let highest = inside
                .iter()
                .fold(middle, |highest: f64, p| highest.max(*p));
            Column {
                from,
                to,
                level: decibels(highest / FULL_SINE),
            }
        };
        (0..count).map(column).collect()
    }
}

#[cfg(test)]
mod tests;
