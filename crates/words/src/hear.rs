//! Listening on the page: what to do, what was heard, and what it may mean.

mod told;

use crate::figures::bare;
use crate::language::{tr, tr_all};
use crate::say;
pub use told::{CutTone, count, damping_told, spectrum_said, taps_told, tone_is};

use thinwright_quantity::{Kind, Rounding, UnitSystem, format_bare};
use thinwright_sound::Unheard;

macro_rules! texts {
    ($($(#[$doc:meta])* $name:ident: $text:literal;)*) => {
        $($(#[$doc])* pub fn $name() -> &'static str {
            tr($text)
        })*
    };
}

texts! {
    /// Name of the panel.
    name: "By ear: tap and listen";
    /// What happens to the sound.
    kept_nowhere: "The sound stays in this page while it listens: nothing is stored, nothing is sent.";
    /// The choice of what to listen to.
    uses: "What to listen to";
    /// What is tapped.
    what: "What is tapped";
    /// Along which axis.
    axis: "Tapped along";
    /// The spindle as a thing to tap.
    spindle: "Spindle or holder, without a cutter of the rack";
    /// Whose web, or which cut.
    step: "Step";
    /// There is no step to choose.
    no_step: "There is no step to compare with yet: it needs a strategy with such a step.";
    /// Starts listening.
    listen: "Listen";
    /// Ends it.
    stop: "Stop";
    /// Opens a recording in place of the microphone.
    open: "Or open a sound file";
    /// While the browser asks.
    asking: "The browser asks whether this page may use the microphone.";
    /// While a file is read.
    reading: "Reading the sound file \u{2026}";
    /// While it listens to a cut.
    cut_on: "Listening to the cut \u{2026}";
    /// The meter.
    level_name: "Level at the microphone";
    /// Nothing arrives.
    silent: "No sound arrives. Is the right microphone chosen, and not muted?";
    /// Overdriven.
    clipped: "Too loud: the microphone is overdriven. Go further away, or tap softer. The tone holds, the damping does not.";
    /// Only part of a long file.
    first_minute: "Only the first minute of the file was listened to.";
    /// That loudness tells nothing.
    not_trusted: "How loud it is tells nothing, and the damping is rough: microphone, room and hand are in it. The frequency is \
        what counts.";
    /// The way without a microphone.
    by_hand: "Type the tone by hand";
    /// The same where there is no field for it: a tone that another instrument tells.
    known_tone: "Or type a tone that you know, Hz";
    /// The axis of frequencies.
    frequency_axis: "frequency f, Hz";
    /// The axis of levels.
    level_axis: "level, dB";
    /// The fold with figures.
    table: "The figures as a table";
    /// The line of the speed in the picture.
    of_turns: "thin line: n, its turns";
    /// The line of the teeth in the picture.
    of_teeth: "heavy line: z n, its teeth";
    /// What to do with one of several remedies.
    one_change: "One change at a time, then listen again.";
}

/// Columns of the table of taps.
pub fn tap_columns() -> [&'static str; 3] {
    tr_all(["tap", "tone", "damping"])
}
/// Columns of the table of tones.
pub fn tone_columns() -> [&'static str; 3] {
    tr_all(["tone", "level", "what it is"])
}

/// What is listened to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Use {
    /// Taps on a cutter, or on the spindle.
    Cutter,
    /// Taps on the web.
    Web,
    /// A cut.
    Cut,
}

impl Use {
    /// Name of the choice.
    pub fn name(self) -> &'static str {
        tr(match self {
            Use::Cutter => "Tap the cutter",
            Use::Web => "Tap the web",
            Use::Cut => "Listen to a cut",
        })
    }

    /// How to go about it, one line each, and what not to do.
    pub fn how(self) -> [&'static str; 2] {
        tr_all(match self {
            Use::Cutter => [
                "Spindle at rest, and unplugged or locked. Cutter clamped as it will cut.",
                "Hold the microphone a hand's breadth from the cutter; tap it at the tip, along X or Y, with something small and \
                 hard, about once a second. Let each tap ring out.",
            ],
            Use::Web => [
                "Spindle at rest, and unplugged or locked; the cutter clear of the part. The part stays held as in the step.",
                "Hold the microphone a hand's breadth over the softest place of the web; tap there with a fingernail or a small \
                 wooden stick, about once a second. Let each tap ring out.",
            ],
            Use::Cut => [
                "Doors shut, ears protected. Microphone and hands stay out of the machine while it cuts.",
                "Run it at the step's speed, and listen while the cut is steady: four seconds of the same sound.",
            ],
        })
    }
}

/// Why there is nothing to listen to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Deaf {
    /// The page was not opened over a safe connection.
    Unsafe,
    /// The browser has no such thing.
    NoInterface,
    /// The person, or a rule of the browser, said no.
    Refused,
    /// There is no microphone.
    NoMicrophone,
    /// It is there and does not answer: another program may have it.
    Busy,
    /// A file that is no sound, or one that this browser cannot read.
    NoSound,
    /// A file that is too large.
    TooLarge,
    /// The recording cannot be judged.
    Unheard(Unheard),
}

/// What to say of it.
pub fn deaf(why: Deaf) -> String {
    let said = tr(match why {
        Deaf::Unsafe => {
            "The browser gives a microphone only to a page that comes over a safe connection. Open a sound file, or type the tone."
        }
        Deaf::NoInterface => {
            "This browser gives the page no microphone: where the page is opened from a file, that is usual. Open a sound file, or \
             type the tone."
        }
        Deaf::Refused => {
            "The microphone was refused. Allow it for this page in the browser, open a sound file, or type the tone."
        }
        Deaf::NoMicrophone => {
            "There is no microphone on this device. Open a sound file, or type the tone."
        }
        Deaf::Busy => {
            "The microphone does not answer; another program may be using it. Open a sound file, or type the tone."
        }
        Deaf::NoSound => {
            "This browser cannot read that file as sound. Save the recording as WAV, or type the tone."
        }
        Deaf::TooLarge => {
            "That file is too large: a few seconds are enough. Cut it shorter, or type the tone."
        }
        Deaf::Unheard(why) => return unheard(why),
    });
    said.to_owned()
}

fn unheard(why: Unheard) -> String {
    match why {
        Unheard::TooShort { least, .. } => say!(
            "Too short to judge: at least {least} s are needed.",
            least = plain(least)
        ),
        Unheard::TooLong { .. } => tr("Too long: a few seconds are enough.").to_owned(),
        Unheard::Rate(rate) => say!(
            "A sound of {rate} samples a second cannot be judged.",
            rate = plain(rate)
        ),
        Unheard::Empty | Unheard::NotFinite(_) => tr("There is no sound in it.").to_owned(),
        // The list of the kernel may grow.
        _ => tr("It cannot be judged.").to_owned(),
    }
}

fn plain(value: f64) -> String {
    bare(Kind::Ratio, value, UnitSystem::Metric, Rounding::Nearest)
}

/// A share in per cent.
fn percent(share: f64) -> String {
    format!("{}\u{A0}%", plain((1000.0 * share).round() / 10.0))
}

/// A damping ratio as it is typed into its field.
pub fn damping(ratio: f64) -> String {
    let thousandths = (1000.0 * ratio).round() / 1000.0;
    format_bare(
        Kind::Ratio,
        thousandths,
        UnitSystem::Metric,
        Rounding::Nearest,
    )
}

/// A frequency as it is typed into its field.
pub fn typed(frequency: f64) -> String {
    format_bare(
        Kind::Frequency,
        frequency,
        UnitSystem::Metric,
        Rounding::Nearest,
    )
}

/// A figure on the axis of levels.
pub fn figure(decibels: f64) -> String {
    let text = format!("{decibels:.0}");
    if text == "-0" {
        "0".to_owned()
    } else {
        text.replace('-', "\u{2212}")
    }
}

/// A level as it stands in a table.
pub fn level(decibels: f64) -> String {
    format!("{}\u{A0}dB", figure(decibels))
}
