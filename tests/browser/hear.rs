//! Listening: taps from a microphone that plays a file, taken over into their field; cuts from sound files; a microphone
//! that is refused.

use crate::devtools::devtools;
use crate::person::{ENTER, plain_blanks};
use crate::visit::{Visit, visit, visit_with};
use fantoccini::Locator;
use serde_json::json;
use std::f64::consts::TAU;
use std::path::PathBuf;
use std::time::{Duration, Instant};
use thinwright_words::hear::{self as words, Use};

/// How long listening may take on a machine that is busy with other tests.
const PATIENCE: Duration = Duration::from_secs(60);
const INTERVAL: Duration = Duration::from_millis(50);
/// Samples a second.
const RATE: u32 = 48_000;
/// The tone that the taps ring with [1/s].
const TONE: f64 = 1234.0;

/// Keeps what the microphone was asked for with, and what it gave.
const CATCH: &str = "
    const devices = navigator.mediaDevices;
    const ask = devices.getUserMedia.bind(devices);
    devices.getUserMedia = async wanted => {
        globalThis.asked = wanted.audio;
        globalThis.given = await ask(wanted);
        return globalThis.given;
    };";
/// What was caught.
const CAUGHT: &str = "
    const asked = globalThis.asked;
    return asked && [asked.echoCancellation, asked.noiseSuppression, asked.autoGainControl,
        globalThis.given.getTracks().map(t => t.readyState).join()];";

/// A sound of some seconds as a file on the disk: one channel of 16 bits.
fn sound(name: &str, seconds: u32, at: impl Fn(f64) -> f64) -> PathBuf {
    let count = seconds * RATE;
    let bytes = count * 2;
    let mut out = Vec::new();
    out.extend(b"RIFF");
    out.extend((36 + bytes).to_le_bytes());
    out.extend(b"WAVEfmt ");
    out.extend(16_u32.to_le_bytes());
    out.extend([1, 0, 1, 0]);
    out.extend(RATE.to_le_bytes());
    out.extend((RATE * 2).to_le_bytes());
    out.extend([2, 0, 16, 0]);
    out.extend(b"data");
    out.extend(bytes.to_le_bytes());
    for i in 0..count {
        let sample = at(f64::from(i) / f64::from(RATE)).clamp(-1.0, 1.0);
        #[allow(clippy::cast_possible_truncation, reason = "clamped")]
        out.extend(((sample * 32_000.0) as i16).to_le_bytes());
    }
    let folder = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join("sounds");
    std::fs::create_dir_all(&folder).unwrap();
    let file = folder.join(name);
    std::fs::write(&file, out).unwrap();
    file
}

/// Noise from the clock: the same in every run.
fn noise(t: f64) -> f64 {
    let wild = 43_758.545 * libm::sin(t * 91_234.567);
    wild - wild.floor() - 0.5
}

/// A tap each second, ringing with 2 % of damping.
fn taps(t: f64) -> f64 {
    let since = (t + 0.6).fract();
    let ring = libm::exp(-0.02 * TAU * TONE * since) * libm::sin(TAU * TONE * since);
    0.4 * ring + 4e-4 * noise(t)
}

impl Visit {
    /// Opens the panel on a use.
    async fn by_ear(&self, to: Use) {
        // From the rack, where its results are asked for.
        let way = self.by_role("link", words::name()).await;
        way.click().await.unwrap();
        let choice = self.by_role("radio", to.name()).await;
        choice.click().await.unwrap();
    }

    /// Waits for words in the panel.
    async fn hears(&self, css: &str, wanted: impl Fn(&str) -> bool) -> String {
        let start = Instant::now();
        loop {
            let said = plain_blanks(&self.texts(css).await.join(" "));
            if wanted(&said) {
                return said;
            }
            let all = self.texts(".hear-inside").await;
            assert!(start.elapsed() < PATIENCE, "waited for {css}: {all:?}");
            tokio::time::sleep(INTERVAL).await;
        }
    }

    /// Gives the panel a file.
    async fn give(&self, file: &std::path::Path) {
        let picker = self.client.find(Locator::Css(".hear-file input")).await;
        let picker = picker.unwrap();
        picker.send_keys(file.to_str().unwrap()).await.unwrap();
    }
}

/// Takes a tone over by keyboard, and changes it again.
async fn taken_over(visit: &Visit, heard: f64) {
    let take = visit
        .by_role("button", "Take over as tone X of cutter 1")
        .await;
    visit.run("arguments[0].focus()", json!(take)).await;
    visit.press([ENTER]).await;
    visit
        .hears(".hear-taken", |said| said.contains("measured"))
        .await;
    // The focus goes on from the button to what stands in its place.
    visit
        .hears(".hear-taken:focus", |said| !said.is_empty())
        .await;
    let typed: f64 = visit.typed("cutter.1.tone").await.parse().unwrap();
    assert!((typed - heard).abs() < 0.05, "{typed} for {heard}");
    visit.settled().await;
    // What was taken over is an answer like any other.
    visit.type_over("cutter.1.tone", "1300").await;
    visit
        .by_role("button", "Take over as tone X of cutter 1")
        .await;
}

#[tokio::test]
async fn taps_are_heard_and_taken_over() {
    let file = sound("taps.wav", 8, taps);
    let flags = [
        "--use-fake-ui-for-media-stream".to_owned(),
        "--use-fake-device-for-media-stream".to_owned(),
        format!("--use-file-for-fake-audio-capture={}", file.display()),
    ];
    visit_with("hear-taps", &flags, |visit| async move {
        visit.settled().await;
        visit.run(CATCH, json!(null)).await;
        visit.by_ear(Use::Cutter).await;
        assert_eq!(
            visit.run(CAUGHT, json!(null)).await,
            json!(null),
            "before anybody asked"
        );
        let listen = visit.by_role("button", words::listen()).await;
        visit.run("arguments[0].focus()", json!(listen)).await;
        visit.press([ENTER]).await;
        visit
            .hears(".hear-now", |said| said.contains("of 5 taps"))
            .await;
        visit.by_role("meter", words::level_name()).await;
        visit
            .hears(".hear-now", |said| said.starts_with("3 of 5"))
            .await;
        visit.no_barriers().await;
        let told = visit
            .hears(".hear-told", |said| said.contains("agree within"))
            .await;
        // It has let go of the microphone, which was asked for as it is.
        let caught = visit.run(CAUGHT, json!(null)).await;
        assert_eq!(caught, json!([false, false, false, "ended"]));
        let heard: f64 = told.split(' ').next().unwrap().parse().unwrap();
        assert!((heard / TONE - 1.0).abs() < 0.01, "{told}");
        let said = visit.run(
            "return document.querySelector('.ear').getAttribute('aria-label');",
            json!(null),
        );
        assert!(said.await.as_str().unwrap().contains("marked at"));
        visit.no_barriers().await;
        visit.picture("hear-taps").await;
        taken_over(&visit, heard).await;
    })
    .await;
}

#[tokio::test]
async fn a_recorded_cut_is_judged_by_the_lines_of_its_step() {
    visit("hear-cut", |visit| async move {
        visit.settled().await;
        visit.by_ear(Use::Cut).await;
        let chosen = "const s = document.querySelector('#hear-step'); return s.options[s.selectedIndex].textContent;";
        let step = visit.run(chosen, json!(null)).await;
        let step = step.as_str().unwrap().replace('\u{202F}', "").replace('\u{A0}', " ");
        let turns = step.split(' ').rev().nth(1).unwrap();
        let turns: f64 = turns.parse::<f64>().unwrap() / 60.0;
        // Between two lines, as far up as they can still be told apart.
        let tone = |multiple: f64| {
            move |t: f64| 0.2 * libm::sin(TAU * multiple * turns * t) + 1e-3 * noise(t)
        };
        visit.give(&sound("sings.wav", 3, tone(6.5))).await;
        let told = visit.hears(".hear-told", |said| said.contains("chatter")).await;
        assert!(told.contains("step-down of") && told.contains(words::one_change()), "{told}");
        visit.no_barriers().await;
        visit.picture("hear-cut").await;
        visit.give(&sound("forced.wav", 3, tone(12.0))).await;
        let told = visit.hears(".hear-told", |said| said.contains("forced")).await;
        assert!(told.contains("no chatter") && !told.contains("step-down"), "{told}");
        visit.give(&sound("noise.wav", 3, |t| 0.1 * noise(t))).await;
        let told = visit.hears(".hear-told", |said| said.contains("Nothing")).await;
        assert!(!told.contains(|c: char| c.is_ascii_digit()), "{told}");
        let broken = sound("broken.wav", 1, |_| 0.0);
        std::fs::write(&broken, "no sound at all").unwrap();
        visit.give(&broken).await;
        visit.hears(".hear-alarm", |said| said.contains("cannot read")).await;
        assert_eq!(visit.count(".hear-told").await, 0, "of the file before");
    })
    .await;
}

#[tokio::test]
async fn the_web_is_compared_and_a_tone_can_be_typed() {
    visit("hear-web", |visit| async move {
        visit.settled().await;
        visit.by_ear(Use::Web).await;
        visit.give(&sound("taps-on-web.wav", 8, taps)).await;
        let told = visit
            .hears(".hear-told", |said| said.contains("worked out"))
            .await;
        assert!(told.contains('%'), "{told}");
        // Another use forgets it; there a tone is typed in place of a sound.
        let cut = visit.by_role("radio", Use::Cut.name()).await;
        cut.click().await.unwrap();
        assert_eq!(visit.count(".hear-told").await, 0);
        let entry = visit.by_role("textbox", words::known_tone()).await;
        entry.send_keys("1234").await.unwrap();
        visit
            .hears(".hear-told", |said| said.contains("1234 Hz"))
            .await;
        visit.no_barriers().await;
    })
    .await;
}

#[tokio::test]
async fn a_refused_microphone_leads_to_the_field() {
    let flags = ["--use-fake-device-for-media-stream".to_owned()];
    visit_with("hear-refused", &flags, |visit| async move {
        visit.settled().await;
        let denied = json!({ "permission": { "name": "microphone" }, "setting": "denied" });
        devtools(&visit.client, "Browser.setPermission", denied).await;
        visit.by_ear(Use::Cutter).await;
        let listen = visit.by_role("button", words::listen()).await;
        listen.click().await.unwrap();
        visit
            .hears(".hear-alarm", |said| said.contains("refused"))
            .await;
        visit.no_barriers().await;
        let by_hand = visit.by_role("link", words::by_hand()).await;
        by_hand.click().await.unwrap();
        let focus = visit
            .run("return document.activeElement.id;", json!(null))
            .await;
        assert_eq!(focus, json!("f-cutter-1-tone"));
    })
    .await;
}
