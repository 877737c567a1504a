//! Choices that the person keeps in their own hands.

use super::{Message, State};
use crate::text;
use thinwright_core::field::Group;
use thinwright_core::{Answers, FieldId};
use thinwright_words::Speaker;

/// Whether a field holds a choice that is kept.
pub(crate) fn is_pin(id: FieldId) -> bool {
    matches!(id.field.spec().group, Group::Pins | Group::StepPins)
}

/// Everything that is kept, as typed, in the order of the field table.
pub(crate) fn pins(answers: &Answers) -> impl Iterator<Item = (FieldId, &str)> {
    let pins = answers.iter().filter(|(id, _)| is_pin(**id));
    let pins = pins.map(|(id, answer)| (*id, answer.text.as_str()));
    pins.filter(|(_, text)| !text.trim().is_empty())
}

impl State {
    pub(super) fn keep(&mut self, choices: Vec<(FieldId, String)>) {
        self.change(None, |answers| {
            for (id, text) in choices {
                // Nothing kept is no answer, not an empty one.
                if is_pin(id) && text.trim().is_empty() {
                    answers.clear(id);
                } else {
                    answers.set_text(id, text);
                }
            }
        });
    }

    pub(super) fn let_go(&mut self, id: FieldId) {
        self.change(None, |answers| answers.clear(id));
    }

    /// Takes a cutter out of the rack; what was kept of it goes with it, and is told.
    pub(super) fn remove_cutter(&mut self, row: u8) {
        let before: Vec<(FieldId, String)> = pins(&self.answers)
            .map(|(id, text)| (id, text.to_owned()))
            .collect();
        let speaker = Speaker::new(self.answers.units, &self.catalog, &self.answers);
        let cutter = speaker.cutter(row);
        let mut after = (*self.answers).clone();
        after.remove_cutter(row);
        let gone = before
            .iter()
            .filter(|(id, _)| after.text(*id).trim().is_empty());
        let gone: Vec<String> = gone.map(|(id, _)| speaker.place(*id)).collect();
        self.change(None, |answers| *answers = after);
        if !gone.is_empty() {
            self.tell(Message {
                text: text::let_go_with(&cutter, &gone),
                alarm: false,
            });
        }
    }
}
