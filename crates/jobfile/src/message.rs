//! What page and worker say to each other, as texts with a version and a generation that tells what is stale.

mod look;

use crate::answers;
use crate::error::{JobFileError, Wanted};
use crate::node::Node;
use crate::object::{Object, not, parse, whole};
use crate::wire::{Wire, at, wire_enum, wire_struct};
use thinwright_core::answers::Answers;
use thinwright_core::field::FieldId;
use thinwright_core::stability::{Lobes, StabilityReport};
use thinwright_core::strategy::Outcome;
use thinwright_core::{Sight, WebError, WebPicture};

/// The key that says what the text is.
const KIND: &str = "thinwright_message";
/// Version of the messages: page and worker must be of the same build.
pub const MESSAGE_VERSION: u32 = 4;

/// To the worker.
#[derive(Clone, Debug, PartialEq)]
pub struct ToWorker {
    /// Counts up; an answer to an older one is stale.
    pub generation: u32,
    /// What to do.
    pub order: Order,
}

/// What a worker is told.
#[derive(Clone, Debug, PartialEq)]
pub enum Order {
    /// Work on these answers, in place of all before.
    Work(Answers),
    /// Stop; what was found so far is good enough.
    Stop,
    /// Look at the web of the part that these answers make, first coarsely if a fine look is asked for.
    Look(Sight),
    /// Draw up the chart of stability of a step of the strategy.
    Chart(ChartOf),
}

/// A step, and what its chart of stability is made from.
#[derive(Clone, Debug, PartialEq)]
pub struct ChartOf {
    /// Number of the step on the sheet.
    pub step: u32,
    /// What there is to say of it.
    pub report: StabilityReport,
}

/// How much of the ground is covered.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Covered {
    /// Pieces of work done.
    pub done: u32,
    /// Pieces of work in all, as far as can be told.
    pub of: u32,
    /// Candidates that there were so far: cutters, methods and numbers.
    pub candidates: f64,
    /// How many of them had to be looked at; the others were ruled out in groups.
    pub looked_at: f64,
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
        /// How far it is.
        covered: Covered,
        /// The best so far, if it is better than what was told last.
        best: Option<Outcome>,
        /// Whether the strategy is final, and only what changes would bring is still to come.
        checked: bool,
    },
    /// It is done.
    Done {
        /// How much it went through.
        covered: Covered,
        /// What came of it.
        outcome: Outcome,
    },
    /// It was stopped.
    Stopped {
        /// How far it was.
        covered: Covered,
        /// The best so far; checked as it stands, but perhaps not the best there is.
        best: Option<Outcome>,
    },
    /// The answers have problems at these fields; reading them anew says which.
    Problems(Vec<FieldId>),
    /// It looked at the web.
    Look {
        /// What at, and how closely.
        sight: Sight,
        /// What it saw, in numbers good enough for a picture.
        seen: Box<Result<WebPicture, WebError>>,
    },
    /// It drew up a chart of stability.
    Chart {
        /// Of which step.
        step: u32,
        /// The chart; none where no frequency is known.
        lobes: Option<Lobes>,
    },
}

wire_enum!(Report {
    "working" Working { "covered" covered covered, "best" best best, "checked" checked checked, }
    "done" Done { "covered" covered covered, "outcome" outcome outcome, }
    "stopped" Stopped { "covered" covered covered, "best" best best, }
    "problems" Problems { "fields" 0 fields, }
    "look" Look { "sight" sight sight, "seen" seen seen, }
    "chart" Chart { "step" step step, "lobes" lobes lobes, }
});

wire_struct!(ChartOf { "step" step, "report" report, });

wire_struct!(Covered {
    "done" done,
    "of" of,
    "candidates" candidates,
    "looked_at" looked_at,
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
        let body = match &self.order {
            Order::Work(answers) => {
                let units = Node::text(answers::unit_word(answers.units));
                vec![("units", units), ("answers", answers::put(answers))]
            }
            Order::Stop => vec![("stop", Node::Flag(true))],
            Order::Look(sight) => vec![("look", sight.put())],
            Order::Chart(of) => vec![("chart", of.put())],
        };
        close(self.generation, body)
    }

    /// From a text.
    ///
    /// # Errors
    /// The first fault, with its place.
    pub fn decode(text: &str) -> Result<ToWorker, JobFileError> {
        let node = parse(text.as_bytes())?;
        let (mut object, generation) = open(&node)?;
        let order = if let Some(stop) = object.optional("stop") {
            if !bool::take("stop", stop)? {
                return Err(not("stop", Wanted::OneOf(&["true"])));
            }
            Order::Stop
        } else if let Some(sight) = object.optional("look") {
            Order::Look(Sight::take("look", sight)?)
        } else if let Some(of) = object.optional("chart") {
            Order::Chart(ChartOf::take("chart", of)?)
        } else {
            let units = answers::take_units(&mut object, "units")?;
            Order::Work(answers::take("answers", object.take("answers")?, units)?)
        };
        object.end()?;
        Ok(ToWorker { generation, order })
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
