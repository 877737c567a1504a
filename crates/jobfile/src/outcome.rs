//! An outcome as a text and back, to the last bit.

use crate::error::JobFileError;
use crate::node::Node;
use crate::object::Object;
use crate::wire::{Wire, at};
use thinwright_core::strategy::Outcome;

/// The key that says what the text is.
const KIND: &str = "thinwright_outcome";
/// Version of the format.
pub const OUTCOME_VERSION: u32 = 3;

/// An outcome as JSON, all numbers in SI with their units in their keys.
pub fn encode(outcome: &Outcome) -> String {
    let version = Node::Number(f64::from(OUTCOME_VERSION));
    Node::object([(KIND, version), ("outcome", outcome.put())]).line()
}

/// The outcome that [`encode`] wrote.
///
/// # Errors
/// The first fault, with its place.
pub fn decode(text: &str) -> Result<Outcome, JobFileError> {
    // No limit of size: this comes from the program itself.
    let node: Node = serde_json::from_str(text).map_err(|e| JobFileError::NotJson {
        line: e.line(),
        column: e.column(),
    })?;
    let mut object = Object::versioned(&node, KIND, OUTCOME_VERSION)?;
    let outcome = at(&mut object, "outcome")?;
    object.end()?;
    Ok(outcome)
}
