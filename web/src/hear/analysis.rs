//! What the kernel hears in a stretch of sound, put into what the page shows.

use thinwright_sound::{
    Agreed, Column, Scale, Tap, Tones, Unheard, agreement, spectrum, taps, tones,
};

/// The picture goes from here [1/s] to there, or less where the rate ends before, in so many columns.
pub(super) const LOWEST: f64 = 100.0;
const HIGHEST: f64 = 12_000.0;
const OF_RATE: f64 = 0.45;
const COLUMNS: usize = 220;
/// Widest distance of two bins of the picture [1/s].
const RESOLUTION: f64 = 6.0;
/// A tap must have rung so long (s) before it counts.
const RINGS: f64 = 0.3;

/// Taps so far, and the picture.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct TapsHeard {
    /// Those that rang; their time counts from the start of listening.
    pub(crate) taps: Vec<Tap>,
    /// Knocks that did not ring, in the last stretch.
    pub(crate) dull: usize,
    pub(crate) agreed: Option<Agreed>,
    pub(crate) clipped: bool,
    pub(crate) silent: bool,
    pub(crate) columns: Vec<Column>,
}

/// What a cut sounds like.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct CutHeard {
    pub(crate) tones: Tones,
    pub(crate) columns: Vec<Column>,
}

/// A stretch of sound.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Stretch<'a> {
    pub(crate) samples: &'a [f32],
    /// [1/s]
    pub(crate) rate: f64,
    /// When it begins, from the start of listening (s).
    pub(crate) from: f64,
    /// Nothing will follow: the last tap has rung as long as it ever will.
    pub(crate) whole: bool,
}

impl Stretch<'_> {
    fn columns(&self) -> Result<Vec<Column>, Unheard> {
        let highest = HIGHEST.min(OF_RATE * self.rate);
        let seen = spectrum(self.samples, self.rate, RESOLUTION)?;
        Ok(seen.columns(COLUMNS, LOWEST, highest, Scale::Logarithmic))
    }

    #[allow(clippy::cast_precision_loss, reason = "minutes of sound fit")]
    fn until(&self) -> f64 {
        self.from + self.samples.len() as f64 / self.rate
    }
}

/// How taps must agree.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Wanted {
    /// How many.
    pub(crate) count: usize,
    /// Within which share.
    pub(crate) within: f64,
}

/// The latest taps that agree. Of no more than so many that those wanted are the most of them: of many that differ, some
/// agree by chance.
pub(crate) fn agreed(taps: &[Tap], wanted: Wanted) -> Option<Agreed> {
    let latest = (2 * wanted.count).saturating_sub(1);
    agreement(&taps[taps.len().saturating_sub(latest)..], wanted.within)
}

/// Hears taps, and keeps those of before that lie in front of the stretch.
pub(crate) fn hear_taps(
    stretch: &Stretch,
    before: &[Tap],
    wanted: Wanted,
) -> Result<TapsHeard, Unheard> {
    let heard = taps(stretch.samples, stretch.rate)?;
    // Whoever was cut in two at the start of the stretch was heard better before.
    let first = if stretch.from > 0.0 {
        stretch.from + RINGS
    } else {
        0.0
    };
    let last = stretch.until() - if stretch.whole { 0.0 } else { RINGS };
    let mut all: Vec<Tap> = before.iter().filter(|t| t.at < first).copied().collect();
    let new = heard.taps.iter().map(|tap| Tap {
        at: stretch.from + tap.at,
        ..*tap
    });
    all.extend(new.filter(|tap| tap.at >= first && tap.at <= last));
    Ok(TapsHeard {
        agreed: agreed(&all, wanted),
        taps: all,
        dull: heard.dull,
        clipped: heard.clipped,
        silent: heard.silent,
        columns: stretch.columns()?,
    })
}

/// Hears a cut.
pub(crate) fn hear_cut(stretch: &Stretch) -> Result<CutHeard, Unheard> {
    Ok(CutHeard {
        tones: tones(stretch.samples, stretch.rate)?,
        columns: stretch.columns()?,
    })
}

/// The highest sample of a stretch, full scale 1: for a meter only.
pub(crate) fn peak(samples: &[f32]) -> f64 {
    samples
        .iter()
        .fold(0.0, |peak, s| peak.max(f64::from(s.abs())))
}
