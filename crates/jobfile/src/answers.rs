//! Answers in a file: one entry a field, the text as typed and how it is known.

use crate::error::{JobFileError, Wanted};
use crate::node::Node;
use crate::object::{Object, inside, not, short, word};
use thinwright_core::answers::Answers;
use thinwright_core::estimate::Known;
use thinwright_core::field::FieldId;
use thinwright_quantity::UnitSystem;

/// Most cutters in a rack.
pub(crate) const MOST_CUTTERS: u8 = 60;

const KNOWN: &[&str] = &["measured", "data-sheet", "estimated"];
const KNOWN_VALUES: &[Known] = &[Known::Measured, Known::DataSheet, Known::Estimated];
/// Unit systems in a word.
pub(crate) const UNITS: &[&str] = &["mm", "in"];
/// The unit systems of the words.
pub(crate) const UNIT_VALUES: &[UnitSystem] = &[UnitSystem::Metric, UnitSystem::Inch];

/// How an answer is known, in a word.
pub(crate) fn known_word(known: Known) -> &'static str {
    match known {
        Known::Measured => KNOWN[0],
        Known::DataSheet => KNOWN[1],
        Known::Estimated => KNOWN[2],
    }
}

/// A unit system in a word.
pub(crate) fn unit_word(units: UnitSystem) -> &'static str {
    match units {
        UnitSystem::Metric => UNITS[0],
        UnitSystem::Inch => UNITS[1],
    }
}

/// The unit system at a key.
pub(crate) fn take_units(object: &mut Object<'_>, key: &str) -> Result<UnitSystem, JobFileError> {
    let node = object.take(key)?;
    word(&object.place(key), node, UNITS, UNIT_VALUES)
}

/// The answers as a tree, in the order of the questionnaire.
pub(crate) fn put(answers: &Answers) -> Node {
    let entry = |answer: &thinwright_core::answers::Answer| {
        Node::object([
            ("text", Node::text(&answer.text)),
            ("known", Node::text(known_word(answer.known))),
        ])
    };
    let all = answers.iter();
    // Empty texts say nothing that a missing one does not, but an empty row keeps its place in the rack.
    Node::object(
        all.filter(|(id, a)| !a.text.is_empty() || id.row.is_some())
            .map(|(id, a)| (id.key(), entry(a))),
    )
}

/// The answers of a tree.
pub(crate) fn take(place: &str, node: &Node, units: UnitSystem) -> Result<Answers, JobFileError> {
    // Says which key is there twice.
    Object::new(place, node)?;
    let Node::Object(fields) = node else {
        return Err(not(place, Wanted::Object));
    };
    let mut answers = Answers::new(units);
    for (key, node) in fields {
        let at = inside(place, &short(key));
        let id =
            FieldId::by_key(key).ok_or_else(|| JobFileError::UnknownKey { place: at.clone() })?;
        if id.row.is_some_and(|row| row >= MOST_CUTTERS) {
            return Err(JobFileError::TooMany {
                place: inside(place, "cutter"),
                most: usize::from(MOST_CUTTERS),
            });
        }
        let mut object = Object::new(&at, node)?;
        let text = object.text("text")?;
        let known = object.take("known")?;
        let known = word(&object.place("known"), known, KNOWN, KNOWN_VALUES)?;
        object.end()?;
        answers.set(id, text, known);
    }
    Ok(answers)
}
