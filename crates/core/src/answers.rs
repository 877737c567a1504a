//! What the person typed, exactly as typed.

use crate::estimate::Known;
use crate::field::{Field, FieldId, Group};
use std::collections::BTreeMap;
use thinwright_quantity::UnitSystem;

/// One answer: the text as typed and how it is known.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Answer {
    /// The text, untouched.
    pub text: String,
    /// Measured, from the data sheet, or estimated.
    pub known: Known,
}

/// All answers of a job. An empty or missing text means the default.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Answers {
    /// The unit system that a bare number is read in.
    pub units: UnitSystem,
    values: BTreeMap<FieldId, Answer>,
}

impl Answers {
    /// No answers: everything at its default.
    pub fn new(units: UnitSystem) -> Answers {
        Answers {
            units,
            values: BTreeMap::new(),
        }
    }

    /// The text typed at a place; empty when nothing was.
    pub fn text(&self, id: FieldId) -> &str {
        self.values.get(&id).map_or("", |a| a.text.as_str())
    }

    /// How the answer at a place is known; estimated when nothing was said.
    pub fn known(&self, id: FieldId) -> Known {
        self.values.get(&id).map_or(Known::Estimated, |a| a.known)
    }

    /// Puts an answer at a place.
    pub fn set(&mut self, id: impl Into<FieldId>, text: impl Into<String>, known: Known) {
        let text = text.into();
        self.values.insert(id.into(), Answer { text, known });
    }

    /// Puts a text at a place and leaves how it is known.
    pub fn set_text(&mut self, id: impl Into<FieldId>, text: impl Into<String>) {
        let id = id.into();
        let known = self.known(id);
        self.set(id, text, known);
    }

    /// All answers, by place.
    pub fn iter(&self) -> impl Iterator<Item = (&FieldId, &Answer)> {
        self.values.iter()
    }

    /// How many rows the rack has: one more than the last row with any answer.
    pub fn rack_rows(&self) -> u8 {
        let rows = self.values.keys().filter_map(|id| id.row);
        rows.max().map_or(0, |row| row.saturating_add(1))
    }

    /// Adds an empty cutter to the rack and gives its row; nothing when the rack is full.
    pub fn add_cutter(&mut self) -> Option<u8> {
        let row = self.rack_rows();
        if row == u8::MAX {
            return None;
        }
        self.set(
            FieldId::in_row(Field::CutterKind, row),
            "end-mill",
            Known::DataSheet,
        );
        Some(row)
    }

    /// Takes a cutter out of the rack; the rows behind it move up.
    pub fn remove_cutter(&mut self, row: u8) {
        let moved = std::mem::take(&mut self.values).into_iter();
        self.values = moved
            .filter(|(id, _)| id.row != Some(row))
            .map(|(mut id, answer)| {
                debug_assert!(id.row.is_none() || id.field.spec().group == Group::Cutters);
                id.row = id.row.map(|r| if r > row { r - 1 } else { r });
                (id, answer)
            })
            .collect();
    }
}
