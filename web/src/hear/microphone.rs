//! The microphone: asked for when the person says so, let go of when it is dropped.

use thinwright_words::hear::Deaf;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
use web_sys::{
    AnalyserNode, AudioContext, DomException, MediaDevices, MediaStream, MediaStreamConstraints,
    MediaStreamTrack, MediaTrackConstraints,
};

/// Samples in one look: the most that a browser keeps at hand, two thirds of a second.
pub(super) const LOOK: u32 = 32_768;

/// An open microphone.
pub(super) struct Microphone {
    context: AudioContext,
    stream: MediaStream,
    ear: AnalyserNode,
}

impl Microphone {
    /// Asks for one, as it is: without what makes speech clearer and tones go.
    pub(super) async fn open() -> Result<Microphone, Deaf> {
        let devices = devices()?;
        let plain = MediaTrackConstraints::new();
        plain.set_echo_cancellation_bool(false);
        plain.set_noise_suppression_bool(false);
        plain.set_auto_gain_control_bool(false);
        let wanted = MediaStreamConstraints::new();
        wanted.set_audio(&plain);
        let asked = devices.get_user_media_with_constraints(&wanted);
        let asked = asked.map_err(|e| refused(&e))?;
        let stream: MediaStream = JsFuture::from(asked)
            .await
            .map_err(|e| refused(&e))?
            .unchecked_into();
        let Some((context, ear)) = ear() else {
            let_go(&stream);
            return Err(Deaf::NoInterface);
        };
        // Never a clone of the stream: the browser has a clone of its own, which would leave this one open.
        let microphone = Microphone {
            context,
            stream,
            ear,
        };
        microphone.connect().map_err(|_| Deaf::Busy)?;
        Ok(microphone)
    }

    fn connect(&self) -> Result<(), JsValue> {
        let source = self.context.create_media_stream_source(&self.stream)?;
        source.connect_with_audio_node(&self.ear)?;
        // Opened after a click, but some browsers still start it asleep.
        drop(self.context.resume()?);
        Ok(())
    }

    /// Samples a second.
    pub(super) fn rate(&self) -> f64 {
        f64::from(self.context.sample_rate())
    }

    /// The clock of what comes (s).
    pub(super) fn now(&self) -> f64 {
        self.context.current_time()
    }

    /// The latest samples.
    pub(super) fn look(&self, into: &mut [f32]) {
        self.ear.get_float_time_domain_data(into);
    }
}

impl Drop for Microphone {
    fn drop(&mut self) {
        let_go(&self.stream);
        drop(self.context.close());
    }
}

/// Ends the stream: the browser's sign that it listens goes out.
fn let_go(stream: &MediaStream) {
    for track in stream.get_tracks() {
        track.unchecked_into::<MediaStreamTrack>().stop();
    }
}

/// What keeps the latest samples at hand.
fn ear() -> Option<(AudioContext, AnalyserNode)> {
    let context = AudioContext::new().ok()?;
    let ear = context.create_analyser().ok()?;
    ear.set_fft_size(LOOK);
    Some((context, ear))
}

fn devices() -> Result<MediaDevices, Deaf> {
    let window = web_sys::window().ok_or(Deaf::NoInterface)?;
    let navigator = window.navigator();
    let there = js_sys::Reflect::get(&navigator, &"mediaDevices".into());
    if there.is_ok_and(|devices| devices.is_object()) {
        return navigator.media_devices().map_err(|_| Deaf::NoInterface);
    }
    Err(if window.is_secure_context() {
        Deaf::NoInterface
    } else {
        Deaf::Unsafe
    })
}

/// Why the browser gives none; names of the standard.
fn refused(error: &JsValue) -> Deaf {
    let name = error.dyn_ref::<DomException>().map(DomException::name);
    match name.as_deref() {
        Some("NotAllowedError" | "SecurityError") => Deaf::Refused,
        Some("NotFoundError" | "OverconstrainedError") => Deaf::NoMicrophone,
        Some("NotReadableError" | "AbortError") => Deaf::Busy,
        _ => Deaf::NoInterface,
    }
}
