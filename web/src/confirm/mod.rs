//! Risks that have to be confirmed before the sheet is printed without a stop mark.

mod list;
mod mark;

pub(crate) use list::{Confirm, ConfirmProps};
pub(crate) use mark::{on_paper, on_screen};

use crate::state::Shown;
use thinwright_core::Outcome;
use thinwright_core::confirm::{Confirmation, confirmations};

/// Everything that a strategy asks to have confirmed.
pub(crate) fn asked(shown: &Shown) -> Vec<Confirmation> {
    match &*shown.outcome {
        Outcome::Feasible(strategy) => confirmations(&shown.job, strategy),
        Outcome::Refused(_) => Vec::new(),
    }
}

/// What of it the person has not confirmed.
pub(crate) fn open(shown: &Shown, confirmed: &[String]) -> Vec<Confirmation> {
    let mut all = asked(shown);
    all.retain(|c| !confirmed.contains(&c.key));
    all
}

/// The confirmed keys after one more is confirmed, or taken back.
pub(crate) fn ticked(confirmed: &[String], key: &str, holds: bool) -> Vec<String> {
    let mut all = confirmed.to_vec();
    all.retain(|there| there != key);
    if holds {
        all.push(key.to_owned());
    }
    all
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_tick_counts_once_and_can_be_taken_back() {
        let once = ticked(&[], "a", true);
        assert_eq!(ticked(&once, "a", true), ["a"]);
        assert_eq!(ticked(&ticked(&once, "b", true), "a", false), ["b"]);
    }
}
