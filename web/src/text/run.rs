//! What is told of notes of what was run.

use thinwright_words::language::tr;
use thinwright_words::say;

/// The file could not hold one more.
pub(crate) fn not_noted(error: &str) -> String {
    say!("This was not noted: {error}", error)
}

/// Learning needs answers without faults.
pub(crate) fn answers_first() -> &'static str {
    tr("Set the answers right first: what was run is weighed against them.")
}

/// Notes that do not agree any more, by their places from 0.
pub(crate) fn at_odds_now(places: &[usize]) -> String {
    let numbers: Vec<usize> = places.iter().map(|at| at + 1).collect();
    thinwright_words::run::at_odds(&numbers)
}
