//! What was heard, told.

use super::{damping, of_teeth, of_turns, one_change, percent, plain, typed};
use crate::Speaker;
use crate::figures::marked;
use crate::language::tr;
use crate::say;
use crate::tasks::task_name;
use crate::text::plural;
use thinwright_core::heard::Chatter;
use thinwright_core::strategy::Step;
use thinwright_core::vibration::Whose;
use thinwright_quantity::{Frequency, SpindleSpeed};
use thinwright_sound::{Agreed, Origin};

/// No closer than this is told that taps agree: it would be chance.
const CLOSEST: f64 = 0.001;

/// How many taps are heard while it listens.
pub fn count(agreeing: usize, wanted: usize, heard: usize) -> String {
    match heard.saturating_sub(agreeing) {
        0 => say!("{agreeing} of {wanted} taps that agree", agreeing, wanted),
        more => say!(
            "{agreeing} of {wanted} taps that agree; {more} beside them",
            agreeing,
            wanted,
            more
        ),
    }
}

/// What taps told, once it no longer listens: the frequency, if any two agree, how well, and what is still wanting.
pub fn taps_told(agreed: Option<&Agreed>, (rang, dull): (usize, usize), wanted: usize) -> String {
    let heard = |n: usize| plural(u32::try_from(n).unwrap_or(u32::MAX), "tap", "taps");
    match agreed {
        None if rang + dull == 0 => tr("Nothing found: no tap was heard.").to_owned(),
        None if rang == 0 => say!(
            "Nothing found: {taps} heard, but none of them rang.",
            taps = heard(dull)
        ),
        None => say!(
            "Nothing found: {taps} rang, and no two agree. Tap nearer to the microphone, in a quieter room.",
            taps = heard(rang)
        ),
        Some(a) if a.count < wanted => say!(
            "Only {taps} agree of {wanted} that are wanted, near {frequency}\u{A0}Hz: not enough to rely on. Listen again.",
            wanted,
            taps = heard(a.count),
            frequency = marked(&typed(a.frequency))
        ),
        Some(a) => say!(
            "{frequency}\u{A0}Hz: {taps} agree within {spread}.",
            frequency = marked(&typed(a.frequency)),
            taps = heard(a.count),
            spread = percent(a.spread.max(CLOSEST))
        ),
    }
}

/// The rough damping that taps told.
pub fn damping_told(ratio: Option<f64>, factor: f64) -> String {
    match ratio {
        Some(ratio) => say!(
            "Damping ratio near {ratio}; it may be {factor} times more or less.",
            ratio = marked(&damping(ratio)),
            factor = plain(factor)
        ),
        None => tr("The damping could not be told.").to_owned(),
    }
}

/// The spectrum, to those who cannot see it.
pub fn spectrum_said(from: f64, to: f64, peak: Option<f64>) -> String {
    let hertz = |f: f64| marked(&typed(f));
    match peak {
        Some(peak) => say!(
            "Spectrum of what was heard, {from} to {to}\u{A0}Hz; marked at {peak}\u{A0}Hz.",
            from = hertz(from),
            to = hertz(to),
            peak = hertz(peak)
        ),
        None => say!(
            "Spectrum of what was heard, {from} to {to}\u{A0}Hz.",
            from = hertz(from),
            to = hertz(to)
        ),
    }
}

/// What a tone of a cut is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CutTone {
    /// [1/s]
    pub frequency: f64,
    /// Where it stands beside the lines of the spindle, and which multiple of the nearer line it is.
    pub origin: Origin,
    /// Which multiple of the line.
    pub multiple: f64,
    /// Whether it is strong enough to matter.
    pub strong: bool,
}

/// What a tone of a cut is, in a few words.
pub fn tone_is(tone: &CutTone) -> String {
    let times = plain(tone.multiple);
    let said = match tone.origin {
        Origin::Teeth => say!("forced: {times} times the rate of the teeth", times),
        Origin::Revolution => say!(
            "forced: {times} times the turns; runout or an uneven tooth",
            times
        ),
        Origin::Off => tr("on no line: chatter").to_owned(),
        Origin::NotTeeth => tr("unclear: not the teeth; runout or chatter").to_owned(),
        Origin::Unclear => tr("unclear: the lines lie too close here").to_owned(),
    };
    if tone.strong {
        said
    } else {
        say!("{said} (weak)", said)
    }
}

/// The tone of what vibrates.
fn tone_of(whose: Whose) -> &'static str {
    tr(match whose {
        Whose::Cutter => "that of the cutter",
        Whose::Machine => "that of the spindle",
        Whose::Web => "that of the web",
        Whose::Rib => "that of a rib",
    })
}

impl Speaker<'_> {
    /// A cutter of the rack as a thing to tap.
    pub fn tapped_cutter(&self, row: u8) -> String {
        format!("{}: {}", u32::from(row) + 1, self.cutter(row))
    }

    /// A button that takes a tone over into its field; `x` along X, else along Y; the spindle where there is no row.
    pub fn take_tone(&self, row: Option<u8>, x: bool) -> String {
        let axis = if x { "X" } else { "Y" };
        row.map_or_else(
            || tr("Take over as the spindle's tone").to_owned(),
            |row| {
                say!(
                    "Take over as tone {axis} of cutter {cutter}",
                    axis,
                    cutter = u32::from(row) + 1
                )
            },
        )
    }

    /// A button that takes the damping over.
    pub fn take_damping(&self, row: u8) -> String {
        say!(
            "Take over the damping of cutter {cutter}",
            cutter = u32::from(row) + 1
        )
    }

    /// That a field has the value now.
    pub fn taken(&self, text: &str, place: &str) -> String {
        say!(
            "Taken over as measured: {place} {text}. Type over it to change it.",
            place,
            text
        )
    }

    /// A step to choose from.
    pub fn step_to_hear(&self, step: &Step) -> String {
        format!(
            "{}: {}, {}",
            step.number,
            task_name(step.task),
            self.spindle_speed(step.n)
        )
    }

    /// The tone that the web rings with beside the one that was worked out.
    pub fn web_heard(&self, heard: Frequency, reckoned: Frequency) -> String {
        let share = heard.si() / reckoned.si() - 1.0;
        let (heard, reckoned) = (self.frequency(heard), self.frequency(reckoned));
        let near = self.catalog.numbers.heard_match;
        if share.abs() < near {
            return say!(
                "{heard}, where {reckoned} was worked out: {share} off. That is as near as thickness and seat are known.",
                heard,
                reckoned,
                share = percent(share.abs())
            );
        }
        if share < 0.0 {
            say!(
                "{heard}, where {reckoned} was worked out: {share} lower. The web is softer than reckoned: it may be thinner, its seat may \
                 give, or what should back it does not touch. Look after these before you cut it thinner.",
                heard,
                reckoned,
                share = percent(-share)
            )
        } else {
            say!(
                "{heard}, where {reckoned} was worked out: {share} higher. The web may be thicker than reckoned, backing or boss may hold it \
                 better, or it was not the lowest tone that rang: tap nearer to the middle of the web.",
                heard,
                reckoned,
                share = percent(share)
            )
        }
    }

    /// Which step a web is compared in, and how it stands there.
    pub fn web_to_tap(&self, step: &Step) -> Option<String> {
        let web = step.web.as_ref()?;
        Some(say!(
            "Compared with {frequency}, the first tone worked out for {thickness} of web as step {step} leaves it.",
            frequency = self.frequency(web.frequency),
            thickness = self.length(web.thickness),
            step = step.number
        ))
    }

    /// What a cut's tones say as a whole, the strongest first: a line each.
    pub fn cut_told(&self, tones: &[CutTone], advice: Option<&Chatter>) -> Vec<String> {
        let strong = |origin: Origin| tones.iter().find(|t| t.strong && t.origin == origin);
        let hz = |tone: &CutTone| self.frequency(Frequency::from_si(tone.frequency));
        if tones.is_empty() {
            return vec![tr("Nothing found: no steady tone stands out of this sound.").to_owned()];
        }
        let mut out = Vec::new();
        if let Some(tone) = strong(Origin::Off) {
            out.push(self.chatter(&hz(tone), advice));
        }
        for unclear in [Origin::NotTeeth, Origin::Unclear] {
            if let Some(tone) = strong(unclear) {
                out.push(say!("{tone}: unclear. At this speed the lines of the turns lie so close that one of them is near any tone. Change the speed \
                     a little: what is forced moves with it, chatter stays.", tone = hz(tone)));
            }
        }
        if let Some(tone) = strong(Origin::Revolution) {
            out.push(say!("{tone}: forced, once a turn or a multiple of it. Runout, a chipped tooth or a nick in the holder's seat: read the runout \
                 with a dial. It is no chatter.", tone = hz(tone)));
        }
        if let Some(tone) = strong(Origin::Teeth) {
            out.push(say!("{tone}: forced, the beat of the teeth. Any interrupted cut has it; it is no chatter.", tone = hz(tone)));
        }
        out
    }

    fn chatter(&self, tone: &str, advice: Option<&Chatter>) -> String {
        let mut out = vec![say!(
            "{tone}: on no line of the spindle, so it is chatter, unless it is there as well while the spindle runs free: then it is a \
             fan or a pump.",
            tone
        )];
        let Some(advice) = advice else {
            return out.concat();
        };
        out.push(match advice.whose {
            Some((whose, own)) => say!(
                "The nearest tone that is known is {that_of_whom}, {frequency}.",
                that_of_whom = tone_of(whose),
                frequency = self.frequency(own)
            ),
            None => tr("No tone that is known is near: tap cutter and web to find whose it is.")
                .to_owned(),
        });
        let depth = self.length(advice.depth);
        out.push(match advice.speed {
            Some(speed) => say!(
                "Try {speed} at the same feed per tooth; if it still sings, go back to the old speed and try a step-down of {depth}.",
                speed = self.spindle_speed(speed),
                depth
            ),
            None => say!(
                "The machine has no other speed that keeps step with it: try a step-down of {depth}.",
                depth
            ),
        });
        out.push(one_change().to_owned());
        out.join(" ")
    }

    /// The lines that the picture of a cut shows.
    pub fn lines_of(&self, n: SpindleSpeed, z: u32) -> String {
        say!(
            "Lines of {speed}: {of_turns}, {turns}; {of_teeth}, {teeth}. Where they would run together they are left out.",
            of_turns = of_turns(),
            of_teeth = of_teeth(),
            speed = self.spindle_speed(n),
            turns = self.frequency(Frequency::from_si(n.si())),
            teeth = self.frequency(Frequency::from_si(n.si() * f64::from(z)))
        )
    }
}
