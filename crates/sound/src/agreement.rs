//! Which taps say the same.

use crate::taps::Tap;

/// What several taps agree on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Agreed {
    /// The middle one of their frequencies [1/s].
    pub frequency: f64,
    /// Highest frequency over lowest, less 1.
    pub spread: f64,
    /// The middle one of their damping ratios; nothing where most of them have none.
    pub damping: Option<f64>,
    /// How many agree.
    pub count: usize,
}

/// The middle of sorted values, or the mean of the two in the middle.
fn middle(sorted: &[f64]) -> Option<f64> {
    let last = sorted.len().checked_sub(1)?;
    Some(0.5 * (sorted[last / 2] + sorted[last - last / 2]))
}

/// The largest group of taps whose frequencies lie within the share `within` of each other; the closest among equals.
///
/// How many there must be is the caller's affair. Nothing where no two agree, or `within` is not a share.
#[must_use]
pub fn agreement(taps: &[Tap], within: f64) -> Option<Agreed> {
    if within.is_nan() || within < 0.0 {
        return None;
    }
    let mut sorted: Vec<&Tap> = taps.iter().filter(|tap| tap.frequency > 0.0).collect();
    sorted.sort_by(|a, b| a.frequency.total_cmp(&b.frequency));
    let spread = |group: &[&Tap]| match group {
        [first, .., last] => last.frequency / first.frequency - 1.0,
        _ => 0.0,
    };
    let mut best: &[&Tap] = &[];
    let mut first = 0;
    for end in 1..=sorted.len() {
        while spread(&sorted[first..end]) > within {
            first += 1;
        }
        let group = &sorted[first..end];
        let closer = group.len() == best.len() && spread(group) < spread(best);
        if group.len() > best.len() || closer {
            best = group;
        }
    }
    let frequencies: Vec<f64> = best.iter().map(|tap| tap.frequency).collect();
    let mut dampings: Vec<f64> = best.iter().filter_map(|tap| tap.damping).collect();
    dampings.sort_by(f64::total_cmp);
    let most = 2 * dampings.len() > best.len();
    (best.len() > 1).then_some(Agreed {
        frequency: middle(&frequencies)?,
        spread: spread(best),
        damping: middle(&dampings).filter(|_| most),
        count: best.len(),
    })
}

#[cfg(test)]
mod tests;
