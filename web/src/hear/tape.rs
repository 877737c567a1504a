//! Sound as it comes: looks at the last half second put together without a seam.

/// So many samples of the end of what is there are looked for in what comes.
const MARK: usize = 512;
/// The clock of the browser is ahead of its samples, or behind them, by no more than this (s).
const CLOCK: f64 = 0.1;

/// The last seconds of a sound.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Tape {
    samples: Vec<f32>,
    /// [1/s]
    rate: f64,
    /// The most samples that are kept.
    most: usize,
    /// How many went before the first that is kept.
    gone: usize,
    /// When the last came, by the browser's clock (s).
    last: Option<f64>,
}

/// A count of samples in some seconds.
pub(super) fn samples_in(seconds: f64, rate: f64) -> usize {
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "clamped at nought; a cast of a huge float saturates"
    )]
    let count = (seconds * rate).round().max(0.0) as usize;
    count
}

impl Tape {
    /// An empty one for so many seconds at a rate.
    pub(crate) fn new(rate: f64, seconds: f64) -> Tape {
        Tape {
            samples: Vec::new(),
            rate,
            most: samples_in(seconds, rate),
            gone: 0,
            last: None,
        }
    }

    /// What is kept, full scale 1.
    pub(crate) fn samples(&self) -> &[f32] {
        &self.samples
    }

    /// Samples a second.
    pub(crate) fn rate(&self) -> f64 {
        self.rate
    }

    /// When the first sample that is kept came, from the start (s).
    #[allow(clippy::cast_precision_loss, reason = "hours of sound fit")]
    pub(crate) fn from(&self) -> f64 {
        self.gone as f64 / self.rate
    }

    /// How long it has listened, from the start (s).
    #[allow(clippy::cast_precision_loss, reason = "hours of sound fit")]
    pub(crate) fn until(&self) -> f64 {
        (self.gone + self.samples.len()) as f64 / self.rate
    }

    /// Adds what is new in the latest stretch of sound, looked at when the browser's clock said `now` (s).
    ///
    /// The clock tells about where the end of what is there lies in the stretch; the samples themselves tell where. Where it
    /// is not in it, sound was missed: then it starts anew, since a seam would sound like a tap.
    pub(crate) fn add(&mut self, stretch: &[f32], now: f64) {
        let Some(last) = self.last.replace(now) else {
            self.keep(stretch);
            return;
        };
        let new = samples_in(now - last, self.rate);
        if let Some(end) = self.end_in(stretch, new) {
            self.keep(&stretch[end..]);
        } else {
            self.gone += self.samples.len() + new.saturating_sub(stretch.len());
            self.samples.clear();
            self.keep(stretch);
        }
    }

    /// Where in a stretch what is there ends, nearest to where `new` samples would follow it.
    fn end_in(&self, stretch: &[f32], new: usize) -> Option<usize> {
        let mark = &self.samples[self.samples.len().checked_sub(MARK)?..];
        let guess = stretch.len().saturating_sub(new);
        let off = samples_in(CLOCK, self.rate);
        let ends = |end: usize| {
            let start = end.checked_sub(MARK);
            start.is_some_and(|start| stretch.get(start..end) == Some(mark))
        };
        (0..=off)
            .flat_map(|d| [guess.checked_sub(d), Some(guess + d)])
            .flatten()
            .find(|end| ends(*end))
    }

    fn keep(&mut self, new: &[f32]) {
        self.samples.extend_from_slice(new);
        let over = self.samples.len().saturating_sub(self.most);
        self.samples.drain(..over);
        self.gone += over;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const RATE: f64 = 48_000.0;
    const STRETCH: usize = 32_768;

    /// Noise that is the same in every run.
    fn sound(count: usize) -> Vec<f32> {
        let mut seed = 9_u32;
        let mut next = || {
            seed = seed.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
            f32::from(u16::try_from(seed >> 16).unwrap()) / 65_536.0 - 0.5
        };
        (0..count).map(|_| next()).collect()
    }

    /// Looks at a sound every quarter of a second with a clock that is off, and keeps `seconds` of it.
    fn heard(sound: &[f32], seconds: f64, off: impl Fn(usize) -> f64) -> Tape {
        let mut tape = Tape::new(RATE, seconds);
        for (look, end) in (STRETCH..=sound.len()).step_by(12_032).enumerate() {
            let now = end as f64 / RATE + off(look);
            tape.add(&sound[end - STRETCH..end], now);
        }
        tape
    }

    #[test]
    fn looks_are_joined_without_a_seam_though_the_clock_is_off() {
        let sound = sound(200_000);
        let tape = heard(&sound, 60.0, |look| [0.0, 0.03, -0.02, 0.011][look % 4]);
        let count = tape.samples().len();
        assert!(count > 180_000, "{count}");
        assert!(tape.samples() == &sound[..count], "a seam");
    }

    #[test]
    fn only_the_last_seconds_are_kept_and_times_go_on() {
        let sound = sound(300_000);
        let tape = heard(&sound, 2.0, |_| 0.0);
        assert_eq!(tape.samples().len(), 96_000);
        let until = samples_in(tape.until(), RATE);
        assert!(tape.samples() == &sound[until - 96_000..until]);
        assert!((tape.until() - tape.from() - 2.0).abs() < 1e-9);
    }

    #[test]
    fn what_was_missed_makes_no_seam() {
        let sound = sound(400_000);
        let mut tape = Tape::new(RATE, 60.0);
        tape.add(&sound[..STRETCH], 1.0);
        let later = 200_000;
        tape.add(&sound[later..later + STRETCH], 1.0 + later as f64 / RATE);
        assert!(tape.samples() == &sound[later..later + STRETCH]);
        let start = samples_in(tape.from(), RATE);
        assert_eq!(start, later, "the time that was missed counts");
    }

    #[test]
    fn silence_goes_by_the_clock() {
        let mut tape = Tape::new(RATE, 60.0);
        let silence = vec![0.0; STRETCH];
        tape.add(&silence, 0.0);
        tape.add(&silence, 0.25);
        assert_eq!(tape.samples().len(), STRETCH + 12_000);
    }
}
