//! A tone that was heard while cutting and is no multiple of the spindle's turns: whose it is, and what to try.

use crate::choice;
use crate::job::Job;
use crate::strategy::Step;
use crate::vibration::Whose;
use thinwright_chatter::speed::best_speed;
use thinwright_quantity::{Frequency, Length, SpindleSpeed};

/// What a tone of chatter says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Chatter {
    /// Whose vibration is nearest, with its own frequency; none where nothing known is near.
    pub whose: Option<(Whose, Frequency)>,
    /// The nearest other spindle speed at which the teeth keep step with the tone, if the machine has one.
    pub speed: Option<SpindleSpeed>,
    /// Step-down to try if that does not help: half of it, or what is quiet at any speed if that is more.
    pub depth: Length,
}

/// Vibrations between two teeth beyond which speeds that keep step lie too close to be told apart.
const MOST: u32 = 12;

/// What a tone of chatter in a step says.
pub fn chatter(job: &Job, step: &Step, tone: Frequency) -> Chatter {
    let half = 0.5 * step.ap.si();
    let quiet = step.stability.as_ref().map_or(0.0, |s| s.quiet.0.si());
    Chatter {
        whose: nearest(job, step, tone),
        speed: speed(job, step, tone),
        depth: Length::from_si(choice::down(
            half.max(quiet.min(step.ap.si())),
            job.grid.depth,
        )),
    }
}

/// The vibration whose frequency is nearest, within a share.
fn nearest(job: &Job, step: &Step, tone: Frequency) -> Option<(Whose, Frequency)> {
    let modes = step.stability.iter().flat_map(|s| &s.modes);
    let own = modes.filter_map(|m| Some((m.whose, m.frequency?)));
    let web = step.web.iter().map(|web| (Whose::Web, web.frequency));
    let off = |f: Frequency| libm::fabs(libm::log(tone.si() / f.si()));
    let known = own.chain(web).filter(|(_, f)| f.si() > 0.0);
    let nearest = known.min_by(|a, b| off(a.1).total_cmp(&off(b.1)))?;
    (off(nearest.1) <= libm::log1p(job.numbers.heard_match)).then_some(nearest)
}

/// The speed nearest to the step's at which so many whole vibrations fit between two teeth.
fn speed(job: &Job, step: &Step, tone: Frequency) -> Option<SpindleSpeed> {
    let cutter = job.rack.iter().find(|c| c.row == step.cutter)?;
    let (low, high) = step
        .stability
        .as_ref()
        .map(|s| (s.range.0.si(), s.range.1.si()))?;
    let now = step.n.si();
    let away = |n: f64| libm::fabs(n / now - 1.0);
    let speeds = (0..MOST).map(|k| choice::down(best_speed(tone.si(), cutter.z, k), job.grid.n));
    let others = speeds.filter(|n| *n >= low && *n <= high && away(*n) > job.numbers.tap_spread);
    others
        .min_by(|a, b| away(*a).total_cmp(&away(*b)))
        .map(SpindleSpeed::from_si)
}
