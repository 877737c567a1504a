//! A recording that can be listened to: checked once, as f64 without its mean.

/// Rates that are believed [1/s]: a telephone's half rate up to a measuring card's.
const RATES: (f64, f64) = (4000.0, 400_000.0);
/// The longest recording (samples): five minutes at 48 kHz, some 250 MB while it is worked on.
const LONGEST: usize = 1 << 24;
/// The shortest (s): less has no spectrum worth the name at 100 Hz.
const SHORTEST: f64 = 0.02;
/// Below this root mean square (full scale 1) there is no sound: half of the last bit of sixteen.
const SILENCE: f64 = 1.5e-5;
/// Share of the peak from which a sample counts as at the top, and from which as near it.
const TOP: f64 = 0.998;
const NEAR: f64 = 0.9;
/// Of a sine that is whole 4 % of the samples are at the top and 25 % near it; clipped at 0.95 of its height it is 21 and 14.
const TOP_OVER_NEAR: f64 = 1.0;
/// So many samples at the top, some of them in a run of so many on one side, before clipping is believed: it is not
/// noticed above a ninth of the rate.
const TOPS: usize = 8;
const RUN: usize = 3;
/// A quieter peak is not clipping but coarse steps.
const LOUD: f64 = 0.01;

/// Why a recording cannot be listened to.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum Unheard {
    /// Not one sample.
    Empty,
    /// The rate [1/s] is not a number from 4 kHz to 400 kHz.
    Rate(f64),
    /// A sample is not a finite number; its place.
    NotFinite(usize),
    /// Shorter than can be judged: seconds that there are, and that are needed.
    TooShort {
        /// What there is (s).
        seconds: f64,
        /// What is needed (s).
        least: f64,
    },
    /// More samples than are taken at once: how many there are, and how many may be.
    TooLong {
        /// What there is.
        samples: usize,
        /// What may be.
        most: usize,
    },
}

impl core::fmt::Display for Unheard {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match self {
            Self::Empty => write!(f, "no sample"),
            Self::Rate(rate) => write!(f, "sampling rate {rate} 1/s"),
            Self::NotFinite(at) => write!(f, "sample {at} is not a number"),
            Self::TooShort { seconds, least } => write!(f, "{seconds} s, at least {least} s"),
            Self::TooLong { samples, most } => write!(f, "{samples} samples, at most {most}"),
        }
    }
}

impl core::error::Error for Unheard {}

/// Samples without their mean, and what is wrong with them.
pub(crate) struct Recording {
    pub(crate) samples: Vec<f64>,
    pub(crate) rate: f64,
    pub(crate) silent: bool,
    /// Whether each sample lies in a flat top; empty where nothing is clipped.
    flat: Vec<bool>,
}

impl Recording {
    pub(crate) fn new(samples: &[f32], rate: f64) -> Result<Self, Unheard> {
        if !(RATES.0..=RATES.1).contains(&rate) {
            return Err(Unheard::Rate(rate));
        }
        if samples.is_empty() {
            return Err(Unheard::Empty);
        }
        if samples.len() > LONGEST {
            let (samples, most) = (samples.len(), LONGEST);
            return Err(Unheard::TooLong { samples, most });
        }
        if let Some(at) = samples.iter().position(|s| !s.is_finite()) {
            return Err(Unheard::NotFinite(at));
        }
        let seconds = samples.len() as f64 / rate;
        if seconds < SHORTEST {
            let least = SHORTEST;
            return Err(Unheard::TooShort { seconds, least });
        }
        let flat = flat_tops(samples);
        let mean = samples.iter().copied().map(f64::from).sum::<f64>() / samples.len() as f64;
        let samples: Vec<f64> = samples.iter().map(|s| f64::from(*s) - mean).collect();
        let mean_square = samples.iter().map(|s| s * s).sum::<f64>() / samples.len() as f64;
        Ok(Self {
            samples,
            rate,
            silent: mean_square < SILENCE * SILENCE,
            flat,
        })
    }

    pub(crate) fn seconds(&self) -> f64 {
        self.samples.len() as f64 / self.rate
    }

    pub(crate) fn clipped(&self) -> bool {
        !self.flat.is_empty()
    }

    /// Whether a flat top lies in a stretch of samples.
    pub(crate) fn clipped_within(&self, stretch: core::ops::Range<usize>) -> bool {
        let end = stretch.end.min(self.flat.len());
        self.flat
            .get(stretch.start..end)
            .is_some_and(|flat| flat.contains(&true))
    }
}

/// Marks samples in runs at either end of the scale that the recording reaches; empty where that is not clipping.
fn flat_tops(samples: &[f32]) -> Vec<bool> {
    let peak = samples
        .iter()
        .fold(0.0, |peak: f64, s| peak.max(f64::from(s.abs())));
    if peak < LOUD {
        return Vec::new();
    }
    let count = |least: f64| {
        let high = samples
            .iter()
            .filter(|s| f64::from(s.abs()) >= least * peak);
        high.count()
    };
    let (top, near) = (count(TOP), count(NEAR));
    if top < TOPS || (top as f64) < TOP_OVER_NEAR * (near - top) as f64 {
        return Vec::new();
    }
    let mut flat = vec![false; samples.len()];
    let side = |s: &f32| match f64::from(*s) {
        s if s >= TOP * peak => 1,
        s if s <= -TOP * peak => -1,
        _ => 0,
    };
    let mut start = 0;
    for run in samples.chunk_by(|a, b| side(a) == side(b)) {
        if run.len() >= RUN && side(&run[0]) != 0 {
            flat[start..start + run.len()].fill(true);
        }
        start += run.len();
    }
    if flat.contains(&true) {
        flat
    } else {
        Vec::new()
    }
}

#[cfg(test)]
mod tests;
