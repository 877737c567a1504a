//! Sounds made for the tests, each the same in every run.

use crate::math::{TURN, cos, exp, ln};

/// A small generator with a seed.
///
/// Source: Steele, Lea, Flood 2014 (splitmix), from memory.
pub(crate) struct Seed(pub(crate) u64);

impl Seed {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// From 0 to 1, evenly.
    pub(crate) fn even(&mut self) -> f64 {
        (self.next() >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// From `low` to `high`, evenly.
    pub(crate) fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.even()
    }

    /// Normally spread, mean square 1.
    pub(crate) fn normal(&mut self) -> f64 {
        let (u, v) = (1.0 - self.even(), self.even());
        (-2.0 * ln(u)).sqrt() * cos(TURN * v)
    }
}

/// A sound under construction.
pub(crate) struct Sound {
    pub(crate) rate: f64,
    pub(crate) samples: Vec<f64>,
}

impl Sound {
    pub(crate) fn silence(rate: f64, seconds: f64) -> Self {
        let count = crate::math::whole(rate * seconds);
        Self {
            rate,
            samples: vec![0.0; count],
        }
    }

    /// Adds a function of time (s).
    pub(crate) fn with(mut self, mut value: impl FnMut(f64) -> f64) -> Self {
        for (i, sample) in self.samples.iter_mut().enumerate() {
            *sample += value(i as f64 / self.rate);
        }
        self
    }

    /// White noise of a root mean square.
    pub(crate) fn white(self, rms: f64, seed: u64) -> Self {
        let mut seed = Seed(seed);
        self.with(|_| rms * seed.normal())
    }

    /// Pink noise of about a root mean square: noises that hold their value twice as long, one more each octave.
    pub(crate) fn pink(self, rms: f64, seed: u64) -> Self {
        let mut seed = Seed(seed);
        let mut held = [0.0; 12];
        let mut count = 0_u32;
        self.with(|_| {
            count = count.wrapping_add(1);
            let octave = (count.trailing_zeros() as usize).min(11);
            held[octave] = seed.normal();
            let all = held.iter().sum::<f64>() + seed.normal();
            rms * all / 13.0_f64.sqrt()
        })
    }

    /// A tone of an amplitude.
    pub(crate) fn tone(self, frequency: f64, amplitude: f64) -> Self {
        self.with(|t| amplitude * cos(TURN * frequency * t + 0.7))
    }

    /// Mains hum and eleven multiples, of an amplitude in all.
    pub(crate) fn hum(self, mains: f64, amplitude: f64) -> Self {
        self.with(|t| {
            let part = |k: i32| cos(TURN * mains * f64::from(k) * t + f64::from(k)) / f64::from(k);
            0.4 * amplitude * (1..=12).map(part).sum::<f64>()
        })
    }

    /// A blow at a time: a click of 0.4 ms, and a ring that dies away.
    pub(crate) fn tap(self, at: f64, frequency: f64, zeta: f64, amplitude: f64) -> Self {
        let omega = TURN * frequency;
        let damped = omega * (1.0 - zeta * zeta).sqrt();
        self.with(|t| {
            let t = t - at;
            if t < 0.0 || zeta * omega * t > 20.0 {
                return 0.0;
            }
            let click = if t < 0.0004 {
                0.3 * cos(TURN * 1250.0 * t)
            } else {
                0.0
            };
            amplitude * (click + exp(-zeta * omega * t) * libm::sin(damped * t))
        })
    }

    /// Cuts off what is beyond a share of the peak.
    pub(crate) fn clipped(mut self, share: f64) -> Self {
        let peak = self.samples.iter().fold(0.0, |p: f64, s| p.max(s.abs()));
        let most = share * peak;
        for sample in &mut self.samples {
            *sample = sample.clamp(-most, most);
        }
        self
    }

    /// Something like speech: a drifting voice of 100 to 200 Hz through three formants, in syllables, with hissing between.
    pub(crate) fn speech(self, amplitude: f64, seed: u64) -> Self {
        let mut seed = Seed(seed);
        let (rate, mut left, mut length) = (self.rate, 0.0, 1.0);
        let (mut voiced, mut pitch, mut glide, mut phase) = (true, 130.0, 0.0, 0.0);
        let mut formants = [500.0, 1500.0, 2500.0];
        self.with(|_| {
            if left <= 0.0 {
                length = seed.between(0.08, 0.28);
                left = length;
                voiced = seed.even() < 0.7;
                pitch = seed.between(100.0, 190.0);
                glide = seed.between(-120.0, 120.0);
                formants = [
                    seed.between(300.0, 800.0),
                    seed.between(900.0, 2200.0),
                    seed.between(2300.0, 3200.0),
                ];
            }
            left -= 1.0 / rate;
            let place = 1.0 - left / length;
            let swell = libm::sin(0.5 * TURN * place).max(0.0);
            pitch = (pitch + glide / rate).clamp(90.0, 220.0);
            phase += TURN * pitch / rate;
            if !voiced {
                return 0.3 * amplitude * swell * seed.normal();
            }
            let gain = |f: f64| -> f64 {
                let of = |f0: &f64| {
                    let x = (f - f0) / 90.0;
                    1.0 / (1.0 + x * x)
                };
                0.05 + formants.iter().map(of).sum::<f64>()
            };
            // cos((k+1) x) = 2 cos(x) cos(k x) - cos((k-1) x)
            let first = cos(phase);
            let (mut before, mut here, mut sum) = (1.0, first, 0.0);
            for k in 1..=24 {
                sum += gain(f64::from(k) * pitch) * here;
                (before, here) = (here, 2.0 * first * here - before);
            }
            0.5 * amplitude * swell * sum + 0.002 * amplitude * seed.normal()
        })
    }

    /// A siren that rises from one frequency to another over the whole recording.
    pub(crate) fn siren(self, from: f64, to: f64, amplitude: f64) -> Self {
        let (rate, all) = (self.rate, self.samples.len() as f64 / self.rate);
        let mut phase = 0.0;
        self.with(|t| {
            phase += TURN * (from + (to - from) * t / all) / rate;
            amplitude * cos(phase)
        })
    }

    /// Chords of four notes with two overtones each, another every 0.2 s.
    pub(crate) fn chords(self, amplitude: f64, seed: u64) -> Self {
        let mut seed = Seed(seed);
        let (mut until, mut notes) = (0.0, [0.0; 4]);
        self.with(|t| {
            if t >= until {
                until += 0.2;
                notes = core::array::from_fn(|_| {
                    220.0 * libm::exp2(libm::floor(seed.between(0.0, 30.0)) / 12.0)
                });
            }
            let note = |f: &f64| {
                let c = cos(TURN * f * t);
                c + (2.0 * c * c - 1.0) / 2.0 + (4.0 * c * c - 3.0) * c / 3.0
            };
            0.15 * amplitude * notes.iter().map(note).sum::<f64>()
        })
    }

    /// As it is, to 32 bits.
    pub(crate) fn exact(&self) -> Vec<f32> {
        #[allow(clippy::cast_possible_truncation, reason = "what samples come as")]
        let narrow = |s: &f64| *s as f32;
        self.samples.iter().map(narrow).collect()
    }

    /// As a recorder gives it: sixteen bits.
    pub(crate) fn heard(&self) -> Vec<f32> {
        let step = 32_767.0;
        let bits = |s: &f64| libm::round(s.clamp(-1.0, 1.0) * step) / step;
        #[allow(clippy::cast_possible_truncation, reason = "sixteen bits fit")]
        let narrow = |s: f64| s as f32;
        self.samples.iter().map(|s| narrow(bits(s))).collect()
    }
}
