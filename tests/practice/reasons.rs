//! Why the advice leaves a range by more than the factor, and why a job is refused: `reasons.txt`.

use super::compare::{FACTOR, Group};

/// A line: what it is about, how far it goes, and why.
pub(crate) struct Reason {
    what: Vec<String>,
    /// The factor up to which the reason holds.
    pub(crate) factor: f64,
    pub(crate) why: String,
    used: bool,
}

/// How a reason begins that admits a fault.
const OPEN: &str = "not right yet";

/// The lines of the file.
pub(crate) fn read(text: &str) -> Vec<Reason> {
    let lines = text
        .lines()
        .filter(|l| !l.is_empty() && !l.starts_with('#'));
    lines
        .map(|line| {
            let (what, why) = line.split_once(": ").unwrap_or((line, ""));
            let (what, factor) = match what.rsplit_once(" up to ") {
                Some((what, factor)) => (what, factor.parse().unwrap()),
                None => (what, FACTOR),
            };
            Reason {
                what: what.split(' ').map(str::to_owned).collect(),
                factor,
                why: why.to_owned(),
                used: false,
            }
        })
        .collect()
}

impl Reason {
    /// Whether it admits that the advice is wrong.
    pub(crate) fn open(&self) -> bool {
        self.why.starts_with(OPEN)
    }

    /// What it is about, as in the file.
    pub(crate) fn name(&self) -> String {
        self.what.join(" ")
    }

    fn is_about(&self, words: &[&str]) -> bool {
        let same = |(ours, theirs): (&String, &&str)| ours == "*" || ours == theirs;
        self.what.len() == words.len() && self.what.iter().zip(words).all(same)
    }
}

/// The reason for a difference of a group on a side by a factor.
pub(crate) fn of<'r>(
    reasons: &'r mut [Reason],
    group: &Group,
    (side, by): (&str, f64),
) -> Option<&'r Reason> {
    let place = group.place.replace(' ', "-");
    let words = [group.row.id.as_str(), &group.quantity, &place, side];
    find(reasons, &words).filter(|reason| by <= reason.factor)
}

/// The first reason about these words, which is used by this.
pub(crate) fn find<'r>(reasons: &'r mut [Reason], words: &[&str]) -> Option<&'r Reason> {
    let reason = reasons.iter_mut().find(|reason| reason.is_about(words))?;
    reason.used = true;
    Some(reason)
}

/// Reasons without a difference, or that say nothing.
pub(crate) fn idle(reasons: &[Reason]) -> Vec<String> {
    let idle = |reason: &&Reason| !reason.used || reason.why.len() < 12;
    reasons.iter().filter(idle).map(Reason::name).collect()
}
