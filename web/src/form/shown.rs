//! Which fields have a meaning, as the answers stand.

use thinwright_core::Answers;
use thinwright_core::field::{Field, FieldId, Input, Shown};

/// Whether a field is asked, for a cutter in its row.
pub(crate) fn shown(answers: &Answers, id: FieldId) -> bool {
    let pattern = || chosen(answers, Field::SlotPattern.into());
    match id.field.spec().shown {
        Shown::Always => true,
        Shown::Round => chosen(answers, Field::Shape.into()) == "round",
        Shown::Rectangular => chosen(answers, Field::Shape.into()) == "rectangular",
        Shown::Slots => pattern() != "none",
        Shown::PolarSlots => pattern() == "polar",
        Shown::EndMill => {
            chosen(
                answers,
                FieldId {
                    field: Field::CutterKind,
                    row: id.row,
                },
            ) != "drill"
        }
    }
}

/// The key that stands at a choice: the first where nothing was chosen.
pub(crate) fn chosen(answers: &Answers, id: FieldId) -> &str {
    let text = answers.text(id).trim();
    match id.field.spec().input {
        Input::Choice(keys) if text.is_empty() => keys.first().copied().unwrap_or_default(),
        _ => text,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use thinwright_core::Known;
    use thinwright_quantity::UnitSystem;

    #[test]
    fn fields_follow_the_shape_and_the_slots() {
        let mut answers = Answers::new(UnitSystem::Metric);
        let asked = |answers: &Answers, field: Field| shown(answers, field.into());
        assert!(asked(&answers, Field::Diameter) && !asked(&answers, Field::Length));
        assert!(!asked(&answers, Field::SlotWidth));
        answers.set(Field::Shape, "rectangular", Known::Estimated);
        answers.set(Field::SlotPattern, "parallel", Known::Estimated);
        assert!(!asked(&answers, Field::Diameter) && asked(&answers, Field::Length));
        assert!(asked(&answers, Field::SlotWidth) && !asked(&answers, Field::SlotGroups));
    }

    #[test]
    fn a_drill_has_no_helix_to_ask_for() {
        let mut answers = Answers::new(UnitSystem::Metric);
        answers.set(
            FieldId::in_row(Field::CutterKind, 1),
            "drill",
            Known::Estimated,
        );
        assert!(shown(&answers, FieldId::in_row(Field::CutterHelix, 0)));
        assert!(!shown(&answers, FieldId::in_row(Field::CutterHelix, 1)));
    }
}
