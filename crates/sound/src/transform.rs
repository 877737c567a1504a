//! The power spectrum of one windowed frame.

use crate::math::Complex;
use rustfft::algorithm::Radix4;
use rustfft::{Fft, FftDirection};

/// A transform of frames of one length under one window.
pub(crate) struct Transform {
    fft: Radix4<f64>,
    window: Vec<f64>,
    frame: Vec<Complex>,
    scratch: Vec<Complex>,
}

impl Transform {
    /// The window's length is a power of two, at least 2.
    pub(crate) fn new(window: Vec<f64>) -> Self {
        let fft = Radix4::new(window.len(), FftDirection::Forward);
        Self {
            frame: vec![Complex::default(); window.len()],
            scratch: vec![Complex::default(); fft.get_inplace_scratch_len()],
            window,
            fft,
        }
    }

    /// Samples of a frame.
    pub(crate) fn size(&self) -> usize {
        self.window.len()
    }

    /// Bins from 0 to half the rate, both included.
    pub(crate) fn bins(&self) -> usize {
        self.size() / 2 + 1
    }

    /// Squared absolute value of each bin for the frame that starts at `from`; beyond either end of the samples is silence.
    pub(crate) fn power(&mut self, samples: &[f64], from: isize) -> impl Iterator<Item = f64> + '_ {
        for (i, (slot, w)) in self.frame.iter_mut().zip(&self.window).enumerate() {
            let sample = from
                .checked_add_unsigned(i)
                .and_then(|at| usize::try_from(at).ok());
            let value = sample.and_then(|at| samples.get(at)).copied();
            *slot = Complex::new(value.unwrap_or(0.0) * w, 0.0);
        }
        self.fft
            .process_with_scratch(&mut self.frame, &mut self.scratch);
        self.frame[..self.size() / 2 + 1]
            .iter()
            .map(Complex::norm_sqr)
    }
}
