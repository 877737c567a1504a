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
        let cutters = |id: &&FieldId| id.field.spec().group == Group::Cutters;
        let rows = self.values.keys().filter(cutters).filter_map(|id| id.row);
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

    /// Takes a cutter out of the rack; the rows behind it move up, and pins go with their cutters.
    pub fn remove_cutter(&mut self, row: u8) {
        let number = u32::from(row) + 1;
        let moved = std::mem::take(&mut self.values).into_iter();
        let moved = moved.filter_map(|(mut id, mut answer)| {
            if id.field == Field::PinCutter
                && let Ok(pinned) = answer.text.trim().parse::<u32>()
            {
                if pinned == number {
                    return None;
                }
                if pinned > number {
                    answer.text = (pinned - 1).to_string();
                }
            }
            if id.field.spec().group == Group::Cutters {
                if id.row == Some(row) {
                    return None;
                }
                id.row = id.row.map(|r| if r > row { r - 1 } else { r });
            }
            Some((id, answer))
        });
        self.values = moved.collect();
    }

    /// Takes an answer away, as if nothing had been typed.
    pub fn clear(&mut self, id: impl Into<FieldId>) {
        self.values.remove(&id.into());
    }
}
