//! A sound file in place of the microphone, decoded by the browser.

use super::tape::samples_in;
use thinwright_words::hear::Deaf;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
use web_sys::{AudioBuffer, File, OfflineAudioContext};

/// The largest file that is read (bytes): a minute of the widest usual recording, some times over.
const MOST_BYTES: f64 = 1.0e8;
/// What is listened to of it (s).
const MOST_SECONDS: f64 = 60.0;
/// It is brought to this rate [1/s].
const RATE: f32 = 48_000.0;

/// What a file holds.
pub(super) struct Recorded {
    /// All channels as one, full scale 1.
    pub(super) samples: Vec<f32>,
    /// [1/s]
    pub(super) rate: f64,
    /// There was more than is listened to.
    pub(super) cut_short: bool,
}

/// Reads a file as sound.
pub(super) async fn read(file: &File) -> Result<Recorded, Deaf> {
    if file.size() > MOST_BYTES {
        return Err(Deaf::TooLarge);
    }
    let bytes = JsFuture::from(file.array_buffer()).await;
    let bytes = bytes.map_err(|_| Deaf::NoSound)?;
    let decoder =
        OfflineAudioContext::new_with_number_of_channels_and_length_and_sample_rate(1, 1, RATE)
            .map_err(|_| Deaf::NoInterface)?;
    let decoded = decoder
        .decode_audio_data(bytes.unchecked_ref())
        .map_err(|_| Deaf::NoSound)?;
    let decoded: AudioBuffer = JsFuture::from(decoded)
        .await
        .map_err(|_| Deaf::NoSound)?
        .unchecked_into();
    Ok(mixed(&decoded))
}

fn mixed(sound: &AudioBuffer) -> Recorded {
    let rate = f64::from(sound.sample_rate());
    let most = samples_in(MOST_SECONDS, rate);
    let channels = (0..sound.number_of_channels()).filter_map(|c| sound.get_channel_data(c).ok());
    let mut channels: Vec<Vec<f32>> = channels.collect();
    let count = channels.len();
    let cut_short = channels.iter().any(|c| c.len() > most);
    let mut samples = channels.pop().unwrap_or_default();
    samples.truncate(most);
    for other in &channels {
        let both = samples.iter_mut().zip(other);
        both.for_each(|(sum, sample)| *sum += sample);
    }
    #[allow(clippy::cast_precision_loss, reason = "channels are few")]
    let share = 1.0 / count.max(1) as f32;
    samples.iter_mut().for_each(|s| *s *= share);
    Recorded {
        samples,
        rate,
        cut_short,
    }
}
