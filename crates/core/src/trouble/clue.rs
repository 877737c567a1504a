//! What speaks for a cause and what against it, beside how well the signs fit.

use super::cause::Cause;
use super::rank::Said;
use super::sign::{Repeats, Sign, Spot};
use crate::heard::chatter;
use crate::job::{Form, Job};
use crate::limits::LimitId;
use crate::strategy::Step;
use crate::task::TaskKind;
use crate::vibration::Whose;
use thinwright_quantity::{Force, Frequency, Length};

/// Something that is known of a cause in a step.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Known {
    /// A sign that was told fits it so well, or hardly.
    Sign {
        /// The sign.
        sign: Sign,
        /// How well: from 0 to 1.
        fit: f64,
    },
    /// How near one of its limits comes in the step.
    Limit {
        /// The limit.
        limit: LimitId,
        /// How plausible it is that it was exceeded.
        plausible: f64,
    },
    /// None of the limits that watch it applies in this step.
    NoLimitHere,
    /// No limit watches it.
    Unwatched,
    /// Where it was.
    Spot(Spot),
    /// Whether it comes again.
    Repeats(Repeats),
    /// The tone that was heard is that of something known.
    Tone {
        /// The tone.
        heard: Frequency,
        /// Whose.
        whose: Whose,
        /// Its own.
        own: Frequency,
    },
    /// The cut pulls along the cutter; a badly kept collet was seen to hold so much.
    Pull {
        /// The pull of the cut; below 0 it pushes the cutter into the collet.
        cut: Force,
        /// What a badly kept collet held.
        held: Force,
    },
    /// The cutter is carbide, which bears hot chips.
    Carbide,
    /// How the blank was made.
    Form(Form),
    /// Backlash of the axes.
    Backlash(Length),
    /// Whether the step cuts something loose.
    CutsLoose(bool),
    /// A change was made against it, and it was better then, or not.
    Tried(bool),
}

/// Something that is known, whether it speaks for the cause, and the factor that it puts on it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Clue {
    /// What is known.
    pub known: Known,
    /// It speaks for the cause, not against it.
    pub speaks_for: bool,
    /// Factor on the cause's weight.
    pub factor: f64,
}

impl Clue {
    /// For it, or against it by a factor.
    fn by(known: Known, speaks_for: bool, against: f64) -> Clue {
        Clue {
            known,
            speaks_for,
            factor: if speaks_for { 1.0 } else { against },
        }
    }
}

/// Everything beside signs and limits that bears on a cause.
pub(super) fn clues(job: &Job, step: &Step, cause: Cause, said: &Said) -> Vec<Clue> {
    let off = job.numbers.trouble_elsewhere;
    let mut clues = Vec::new();
    if let Some(spot) = said.spot.filter(|_| !cause.home().is_empty()) {
        clues.push(Clue::by(
            Known::Spot(spot),
            cause.home().contains(&spot),
            off,
        ));
    }
    if let Some(repeats) = said.repeats {
        let fits = cause.steady() == (repeats == Repeats::Same);
        clues.push(Clue::by(Known::Repeats(repeats), fits, off));
    }
    let tried = said.tried.iter().filter(|(against, _)| *against == cause);
    clues.extend(tried.map(|(_, better)| Clue::by(Known::Tried(*better), *better, off)));
    clues.extend(tone(job, step, cause, said));
    clues.extend(own(job, step, cause, said));
    clues
}

/// Whose the tone is that was heard.
fn tone(job: &Job, step: &Step, cause: Cause, said: &Said) -> Option<Clue> {
    let heard = said.tone?;
    let (whose, own) = chatter(job, step, heard).whose?;
    let works = matches!(whose, Whose::Web | Whose::Rib);
    let fits = match cause {
        Cause::ToolSings => !works,
        Cause::WebSings => works,
        _ => return None,
    };
    let known = Known::Tone { heard, whose, own };
    Some(Clue::by(known, fits, job.numbers.trouble_tone_off))
}

/// What bears on this one cause alone.
fn own(job: &Job, step: &Step, cause: Cause, said: &Said) -> Option<Clue> {
    let off = job.numbers.trouble_elsewhere;
    let loose = matches!(
        step.task,
        TaskKind::SlotsThrough | TaskKind::OutlineFinish | TaskKind::Bore
    );
    let (known, fits) = match cause {
        Cause::HotEdge => {
            let cutter = job.rack.iter().find(|c| c.row == step.cutter)?;
            let blue = said.signs.iter().any(|(sign, _)| *sign == Sign::Blue);
            (cutter.carbide && blue).then_some((Known::Carbide, false))?
        }
        Cause::Stress => {
            let calm = matches!(job.form, Form::Stretched | Form::Cast);
            (Known::Form(job.form), !calm)
        }
        Cause::Backlash => (
            Known::Backlash(Length::from_si(job.machine.backlash)),
            job.loose(),
        ),
        Cause::PulledOut => {
            let cut = Force::from_si(-step.loads.mean_axial.si());
            let held = Force::from_si(job.numbers.trouble_pull_out_n);
            (Known::Pull { cut, held }, cut.si() > 0.0)
        }
        Cause::LooseSlug => (Known::CutsLoose(loose), loose),
        Cause::LooseSkin => {
            let skin = loose || step.task == TaskKind::Facing;
            (Known::CutsLoose(skin), skin)
        }
        _ => return None,
    };
    Some(Clue::by(known, fits, off))
}
