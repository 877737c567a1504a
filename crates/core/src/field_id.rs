//! The place of an answer, and its name in job files.

use crate::field::{Field, Group};
use crate::pin::Place;

/// The place of an answer: a field and, for a cutter, its row in the rack (from 0).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct FieldId {
    /// The field.
    pub field: Field,
    /// The row of the rack; `None` outside the rack.
    pub row: Option<u8>,
}

impl From<Field> for FieldId {
    fn from(field: Field) -> FieldId {
        FieldId { field, row: None }
    }
}

impl FieldId {
    /// The field `field` of row `row` of the rack.
    pub fn in_row(field: Field, row: u8) -> FieldId {
        FieldId {
            field,
            row: Some(row),
        }
    }

    /// Its name in job files: `part.diameter`, `cutter.2.diameter` (rows from 1).
    pub fn key(&self) -> String {
        let key = self.field.spec().key;
        match (self.row, key.split_once('.')) {
            (Some(row), Some((group, word))) => {
                if self.field.spec().group == Group::StepPins
                    && let Some(place) = Place::by_row(row)
                {
                    return format!("{group}.{}.{word}", place.key());
                }
                format!("{group}.{}.{word}", u16::from(row) + 1)
            }
            _ => key.to_owned(),
        }
    }

    /// The place that a job file's name means, if it means one.
    pub fn by_key(key: &str) -> Option<FieldId> {
        let mut parts = key.splitn(3, '.');
        let (group, second, third) = (parts.next()?, parts.next()?, parts.next());
        match third {
            None => {
                let field = Field::by_key(key)?;
                (!field.spec().group.repeats()).then_some(field.into())
            }
            Some(word) => {
                let field = Field::by_key(&format!("{group}.{word}"))?;
                if field.spec().group == Group::StepPins {
                    return Some(FieldId::in_row(field, Place::by_key(second)?.row()));
                }
                let row: u8 = second.parse().ok().filter(|r| *r >= 1)?;
                (field.spec().group == Group::Cutters && second == row.to_string())
                    .then(|| FieldId::in_row(field, row - 1))
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::field::{FIELDS, Shown};

    #[test]
    fn every_key_leads_back_to_its_field() {
        for spec in FIELDS {
            assert_eq!(spec.field.spec().key, spec.key);
            let id = if spec.group.repeats() {
                FieldId::in_row(spec.field, 11)
            } else {
                spec.field.into()
            };
            assert_eq!(FieldId::by_key(&id.key()), Some(id), "{}", spec.key);
        }
    }

    #[test]
    fn strange_keys_mean_nothing() {
        for key in [
            "",
            "part",
            "part.",
            "part.none",
            "cutter.diameter",
            "cutter.0.diameter",
            "cutter.01.diameter",
            "cutter.999.diameter",
            "part.1.diameter",
            "pin.cutter",
            "pin.1.cutter",
            "pin.nowhere.cutter",
            "pin.slots.order",
        ] {
            assert_eq!(FieldId::by_key(key), None, "{key}");
        }
    }

    #[test]
    fn few_answers_are_asked_first() {
        let first = |shape: Shown| {
            FIELDS
                .iter()
                .filter(|s| s.asked_first && !s.group.repeats())
                .filter(|s| s.shown == Shown::Always || s.shown == shape)
                .count()
        };
        assert!(first(Shown::Round) <= 15, "{}", first(Shown::Round));
    }
}
