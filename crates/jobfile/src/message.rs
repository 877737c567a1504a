//! What page and worker say to each other, as texts with a version and a generation that tells what is stale.

use crate::answers;
use crate::error::JobFileError;
use crate::node::Node;
use crate::object::{Object, parse, whole};
use crate::wire::{Wire, at, wire_enum};
use thinwright_core::answers::Answers;
use thinwright_core::field::FieldId;
use thinwright_core::strategy::Outcome;

/// The key that says what the text is.
const KIND: &str = "thinwright_message";
/// Version of the messages: page and worker must be of the same build.
pub const MESSAGE_VERSION: u32 = 1;

/// To the worker: answers to work on, in place of all before.
#[derive(Clone, Debug, PartialEq)]
pub struct ToWorker {
    /// Counts up; an answer to an older one is stale.
    pub generation: u32,
    /// The answers.
    pub answers: Answers,
}

/// From the worker.
#[derive(Clone, Debug, PartialEq)]
pub struct FromWorker {
    /// The generation that this is about.
    pub generation: u32,
    /// What there is to say.
    pub report: Report,
}

/// What a worker says.
#[derive(Clone, Debug, PartialEq)]
pub enum Report {
    /// It is on it.
    Working {
        /// Plans worked out.
        done: u32,
        /// Plans in all.
        of: u32,
        /// The best so far.
        best: Option<Outcome>,
    },
    /// It is done.
    Done(Outcome),
    /// The answers have problems at these fields; reading them anew says which.
    Problems(Vec<FieldId>),
}

wire_enum!(Report {
    "working" Working { "done" done done, "of" of of, "best" best best, }
    "done" Done { "outcome" 0 outcome, }
    "problems" Problems { "fields" 0 fields, }
});

fn open(node: &Node) -> Result<(Object<'_>, u32), JobFileError> {
    let mut object = Object::versioned(node, KIND, MESSAGE_VERSION)?;
    let generation = object.take("generation")?;
    Ok((object, whole("generation", generation, u32::MAX)?))
}

fn close(generation: u32, body: Vec<(&str, Node)>) -> String {
    let mut fields = vec![
        (KIND, MESSAGE_VERSION.put()),
        ("generation", generation.put()),
    ];
    fields.extend(body);
    Node::object(fields).line()
}

impl ToWorker {
    /// As a text.
    pub fn encode(&self) -> String {
        let units = Node::text(answers::unit_word(self.answers.units));
        close(
            self.generation,
            vec![("units", units), ("answers", answers::put(&self.answers))],
        )
    }

    /// From a text.
    ///
    /// # Errors
    /// The first fault, with its place.
    pub fn decode(text: &str) -> Result<ToWorker, JobFileError> {
        let node = parse(text.as_bytes())?;
        let (mut object, generation) = open(&node)?;
        let units = answers::take_units(&mut object, "units")?;
        let answers = answers::take("answers", object.take("answers")?, units)?;
        object.end()?;
        Ok(ToWorker {
            generation,
            answers,
        })
    }
}

impl FromWorker {
    /// As a text.
    pub fn encode(&self) -> String {
        close(self.generation, vec![("report", self.report.put())])
    }

    /// From a text.
    ///
    /// # Errors
    /// The first fault, with its place.
    pub fn decode(text: &str) -> Result<FromWorker, JobFileError> {
        let node: Node = serde_json::from_str(text).map_err(|e| JobFileError::NotJson {
            line: e.line(),
            column: e.column(),
        })?;
        let (mut object, generation) = open(&node)?;
        let report = at(&mut object, "report")?;
        object.end()?;
        Ok(FromWorker { generation, report })
    }
}
