//! From millimetres to inches and back: what was typed keeps its meaning.

use thinwright_core::Answers;
use thinwright_core::field::{FieldId, Input};
use thinwright_quantity::{Kind, UnitSystem, parse, unit_name};

/// Between a number and the unit that was put to it here: the no-break space tells it from what a person typed.
const GLUE: char = '\u{A0}';

/// The answers, to be read in another unit system: a bare number that would change its meaning gets its unit put to it, and
/// a unit that was put to it before is taken off again.
pub(crate) fn restate(answers: &Answers, units: UnitSystem) -> Answers {
    let mut out = Answers::new(units);
    for (id, answer) in answers.iter() {
        let text = text(*id, &answer.text, answers.units, units);
        out.set(*id, text, answer.known);
    }
    out
}

fn text(id: FieldId, text: &str, from: UnitSystem, to: UnitSystem) -> String {
    let Input::Quantity(kind) = id.field.spec().input else {
        return text.to_owned();
    };
    let Some(meant) = read(kind, text, from) else {
        return text.to_owned();
    };
    let bare = text
        .strip_suffix(unit_name(kind, to))
        .and_then(|t| t.strip_suffix(GLUE));
    let with_unit = format!("{text}{GLUE}{}", unit_name(kind, from));
    let candidates = [bare, Some(text), Some(&with_unit)];
    let kept = candidates
        .into_iter()
        .flatten()
        .find(|t| read(kind, t, to) == Some(meant));
    kept.unwrap_or(text).to_owned()
}

/// The value of a text, as bits: the same text in the same unit gives the same bits.
fn read(kind: Kind, text: &str, units: UnitSystem) -> Option<u64> {
    parse(kind, text, units).ok().map(f64::to_bits)
}

#[cfg(test)]
mod tests {
    use super::*;
    use thinwright_core::{Field, Known};

    fn there_and_back(field: Field, typed: &str, in_inches: &str) {
        let mut answers = Answers::new(UnitSystem::Metric);
        answers.set(field, typed, Known::Measured);
        let inch = restate(&answers, UnitSystem::Inch);
        assert_eq!(inch.text(field.into()), in_inches);
        assert_eq!(inch.known(field.into()), Known::Measured);
        assert_eq!(restate(&inch, UnitSystem::Metric), answers);
    }

    #[test]
    fn bare_numbers_keep_their_meaning() {
        there_and_back(Field::Thickness, "6", "6\u{A0}mm");
        there_and_back(Field::Thickness, "6,35", "6,35\u{A0}mm");
        there_and_back(Field::FeedReliable, "600", "600\u{A0}mm/min");
    }

    #[test]
    fn what_says_its_unit_is_left_alone() {
        there_and_back(Field::Thickness, "1/4 in", "1/4 in");
        there_and_back(Field::Thickness, "6 mm", "6 mm");
        there_and_back(Field::SpeedMax, "18000", "18000");
        there_and_back(Field::Thickness, "0", "0");
        there_and_back(Field::Name, "Plate 6", "Plate 6");
    }

    #[test]
    fn what_cannot_be_read_is_left_alone() {
        there_and_back(Field::Thickness, "six", "six");
        there_and_back(Field::Thickness, "", "");
    }
}
