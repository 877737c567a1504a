//! Tests of the words: nothing is left without, nothing is said twice, and numbers stand where they should.

mod hear;
mod pins;
mod sentences;
mod stability;
mod strategy;
mod texts;

use crate::Speaker;
use thinwright_catalog::Catalog;
use thinwright_core::answers::Answers;
use thinwright_quantity::UnitSystem;

/// Calls `check` with a speaker over empty answers that `fill` has filled.
fn speak(units: UnitSystem, fill: impl FnOnce(&mut Answers), check: impl FnOnce(&Speaker<'_>)) {
    let catalog = Catalog::builtin();
    let mut answers = Answers::new(units);
    fill(&mut answers);
    check(&Speaker::new(units, &catalog, &answers));
}

/// No-break blanks as plain ones.
fn plain_blanks(text: &str) -> String {
    text.replace(['\u{A0}', '\u{202F}'], " ")
}
