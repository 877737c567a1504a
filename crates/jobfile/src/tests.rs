//! Tests of the files: nothing is lost, nothing breaks, every fault names its place.

mod charts;
mod damaged;
mod files;
mod gains;
mod outcomes;

use thinwright_core::answers::Answers;
use thinwright_core::estimate::Known;
use thinwright_core::field::{FIELDS, FieldId};
use thinwright_quantity::UnitSystem;

/// Answers at every place, with texts that JSON must escape.
pub(crate) fn full() -> Answers {
    let mut answers = Answers::new(UnitSystem::Inch);
    let known = [Known::Measured, Known::DataSheet, Known::Estimated];
    for (i, spec) in FIELDS.iter().enumerate() {
        let text = format!("1/{i}\" \u{D8} \\ \n\t\u{1F527}\u{0}");
        if spec.group.repeats() {
            for row in [0, 2] {
                answers.set(FieldId::in_row(spec.field, row), text.clone(), known[i % 3]);
            }
        } else {
            answers.set(spec.field, text, known[i % 3]);
        }
    }
    answers
}
