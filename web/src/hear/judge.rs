//! Tones of a cut beside the lines of a step's spindle speed.

use super::chart::Rates;
use thinwright_core::Job;
use thinwright_core::heard::{Chatter, chatter};
use thinwright_core::strategy::Step;
use thinwright_quantity::Frequency;
use thinwright_sound::{Origin, Tone, lines};
use thinwright_words::hear::CutTone;

/// How far a line may be off, as a share: what a spindle's speed is known to, and a tone.
const LINE_ERROR: f64 = 0.01;
/// What is weaker than the strongest by more than this (dB) is not what one hears.
const STRONG: f64 = 20.0;

/// Teeth of the cutter of a step.
pub(super) fn teeth(job: &Job, step: &Step) -> Option<u32> {
    let cutter = job.rack.iter().find(|c| c.row == step.cutter)?;
    Some(cutter.z)
}

/// Rates of turns and teeth of a step.
pub(super) fn rates(job: &Job, step: &Step) -> Option<Rates> {
    let turns = step.n.si();
    Some(Rates {
        turns,
        teeth: turns * f64::from(teeth(job, step)?),
    })
}

/// What each tone is, in the order given.
pub(super) fn judged(job: &Job, step: &Step, tones: &[Tone]) -> Vec<CutTone> {
    let strongest = tones.iter().map(|t| t.level).fold(f64::MIN, f64::max);
    let one = |tone: &Tone| {
        let lines = lines(tone.frequency, step.n.si(), teeth(job, step)?, LINE_ERROR)?;
        let multiple = match lines.origin {
            Origin::Teeth => lines.teeth.multiple,
            _ => lines.revolution.multiple,
        };
        Some(CutTone {
            frequency: tone.frequency,
            origin: lines.origin,
            multiple,
            strong: tone.level >= strongest - STRONG,
        })
    };
    tones.iter().filter_map(one).collect()
}

/// The strongest tone of chatter, Hz.
pub(super) fn squeal(tones: &[CutTone]) -> Option<f64> {
    let off = |t: &&CutTone| t.strong && t.origin == Origin::Off;
    tones.iter().find(off).map(|tone| tone.frequency)
}

/// What to try against the strongest tone of chatter.
pub(super) fn advice(job: &Job, step: &Step, tones: &[CutTone]) -> Option<Chatter> {
    let tone = squeal(tones)?;
    Some(chatter(job, step, Frequency::from_si(tone)))
}
