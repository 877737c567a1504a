//! Where something is struck: loudness over what is always there, jumping up.

use crate::math::{hann, power_of_two, quantile, whole};
use crate::recording::Recording;
use crate::transform::Transform;
use core::ops::Range;

/// A frame (s) and the step from one to the next (s): short beside a syllable's rise, long enough to tell 200 Hz apart.
const FRAME: f64 = 0.004;
const HOP: f64 = 0.001;
/// At most so many frames, and at least every so many, are looked at for what is always there.
const LOOKED_AT: usize = 600;
/// What is there three quarters of the time counts as always there: knocks may ring for most of it.
const ALWAYS: f64 = 0.25;
/// No bin is taken as quieter than this share of the mean bin: files are cut off at high frequencies.
const QUIETEST: f64 = 1e-6;
/// How far the loudness must stand above its median. Noise makes its mean over some fifty bins waver by 15 %.
const ABOVE: f64 = 3.0;
/// A knock rises from `LOW` of its height to `HIGH` within `RISE` (s); a syllable takes 0.02 s and more.
const LOW: f64 = 0.15;
const HIGH: f64 = 0.5;
const RISE: f64 = 0.007;
/// The height is the highest within this time (s) of the rise.
const AHEAD: f64 = 0.06;
/// So long before a knock (s) all is below `LOW` of its height: hum and a voice come in pulses that look like knocks.
const CALM: f64 = 0.1;
/// At some time between these (s) after a knock it is down to this share of its height: a note goes on.
const AFTER: (f64, f64) = (0.1, 0.16);
const DOWN: f64 = 0.4;
/// Within this time (s) of the first a second blow is the hammer's bounce.
const BOUNCE: f64 = 0.15;
/// A bounce has at least this share of the first blow's loudness, and falls into its ring: that is at most this share of
/// the bounce's.
const OF_FIRST: f64 = 0.05;
const LOW_BOUNCE: f64 = 0.4;
/// A knock that comes sooner (s) than this after the start is not told from a recorder that is switched on.
const SOONEST: f64 = 0.03;
/// A block (s) in which the blow is placed, and the share of the strongest block from which it has begun.
const BLOCK: f64 = 0.00025;
const BEGUN: f64 = 0.05;

/// One knock, bounces included, in samples.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Knock {
    /// The first blow.
    pub(crate) first: usize,
    /// The last: from here on it rings freely.
    pub(crate) last: usize,
}

/// Mean over the bins of `band` of power over what is always there, for each frame.
fn loudness(recording: &Recording, band: (f64, f64), hop: usize) -> Vec<f64> {
    let size = power_of_two(FRAME * recording.rate, 16);
    let mut transform = Transform::new(hann(size));
    let step = recording.rate / size as f64;
    let bins = whole(band.0 / step).max(1)..(whole(band.1 / step) + 1).min(transform.bins());
    let starts = recording.samples.len().saturating_sub(size) / hop + 1;
    let mut power = |frame: usize, out: &mut Vec<f64>| {
        out.clear();
        let all = transform.power(&recording.samples, (frame * hop).cast_signed());
        out.extend(all.skip(bins.start).take(bins.len()));
    };
    let mut one = Vec::new();
    let mut seen = vec![Vec::new(); bins.len()];
    for frame in (0..starts).step_by(starts.div_ceil(LOOKED_AT)) {
        power(frame, &mut one);
        seen.iter_mut().zip(&one).for_each(|(bin, p)| bin.push(*p));
    }
    let count = seen.first().map_or(1, Vec::len).max(1) * seen.len().max(1);
    let mean = seen.iter().flatten().sum::<f64>() / count as f64;
    let least = (mean * QUIETEST).max(f64::MIN_POSITIVE);
    let always: Vec<f64> = seen
        .iter_mut()
        .map(|bin| quantile(bin, ALWAYS).max(least))
        .collect();
    let loud = |frame: usize| {
        power(frame, &mut one);
        let over: f64 = one.iter().zip(&always).map(|(p, a)| p / a).sum();
        over / one.len().max(1) as f64
    };
    (0..starts).map(loud).collect()
}

/// Frames at which a sudden rise is under way.
fn rises(loud: &[f64], hop_seconds: f64) -> Vec<usize> {
    let frames = |seconds: f64| whole(seconds / hop_seconds).max(1);
    let least = ABOVE * quantile(&mut loud.to_vec(), 0.5);
    let (rise, ahead, calm) = (frames(RISE), frames(AHEAD), frames(CALM));
    let highest = |stretch: Range<usize>| {
        let inside = loud.get(stretch).unwrap_or_default();
        inside.iter().fold(0.0, |top: f64, l| top.max(*l))
    };
    let goes_down = |at: usize, top: f64| {
        let end = loud.len().min(at + frames(AFTER.1));
        let after = loud.get(at + frames(AFTER.0)..end);
        after.is_none_or(|after| after.is_empty() || after.iter().any(|l| *l <= DOWN * top))
    };
    let (mut found, mut last): (Vec<usize>, usize) = Default::default();
    let mut knock: Option<(usize, f64)> = None;
    for at in rise + frames(SOONEST)..loud.len() {
        let top = highest(at..loud.len().min(at + ahead));
        let bounce = knock.filter(|(first, _)| at - first < frames(BOUNCE));
        let low = if bounce.is_some() { LOW_BOUNCE } else { LOW };
        let up = top >= least && loud[at] >= HIGH * top && loud[at - rise] <= low * top;
        if !up || (!found.is_empty() && at - last < rise) {
            continue;
        }
        let taken = match bounce {
            Some((_, height)) => top >= OF_FIRST * height,
            None => highest(at.saturating_sub(calm)..at - rise) <= LOW * top && goes_down(at, top),
        };
        if taken {
            knock = bounce.or(Some((at, top)));
            last = at;
            found.push(at);
        }
    }
    found
}

/// The sample at which the blow begins within a stretch: changes from sample to sample, because a blow is sharp.
fn begins(recording: &Recording, stretch: Range<usize>) -> usize {
    let block = whole(BLOCK * recording.rate).max(2);
    let inside = recording.samples.get(stretch.clone()).unwrap_or_default();
    let sharp: Vec<f64> = inside
        .chunks(block)
        .map(|chunk| {
            chunk
                .windows(2)
                .map(|w| (w[1] - w[0]) * (w[1] - w[0]))
                .sum()
        })
        .collect();
    let most = sharp.iter().fold(0.0, |most: f64, s| most.max(*s));
    let calm = sharp.iter().take(sharp.len() / 4).sum::<f64>() / (sharp.len() / 4).max(1) as f64;
    let least = (most * BEGUN).max(4.0 * calm).min(0.5 * most);
    let first = sharp.iter().position(|s| *s >= least && *s > 0.0);
    stretch.start + first.unwrap_or(0) * block
}

/// The knocks of a recording, in order of time; a bounce belongs to the blow before.
pub(crate) fn knocks(recording: &Recording, band: (f64, f64)) -> Vec<Knock> {
    let hop = whole(HOP * recording.rate).max(1);
    let size = power_of_two(FRAME * recording.rate, 16);
    let loud = loudness(recording, band, hop);
    let bounce = whole(BOUNCE * recording.rate);
    let mut knocks: Vec<Knock> = Vec::new();
    for frame in rises(&loud, hop as f64 / recording.rate) {
        // The frame in which the rise was seen holds the blow, or the next does.
        let start = (frame * hop).saturating_sub(size / 2);
        let end = (frame * hop + size + size / 2).min(recording.samples.len());
        let at = begins(recording, start..end);
        match knocks.last_mut() {
            Some(knock) if at < knock.first + bounce => knock.last = knock.last.max(at),
            _ => knocks.push(Knock {
                first: at,
                last: at,
            }),
        }
    }
    knocks
}
