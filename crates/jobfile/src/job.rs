//! The job file: what was answered, and what was run.

use crate::answers::{self, take_units, unit_word};
use crate::digest::digest;
use crate::error::JobFileError;
use crate::node::Node;
use crate::object::{Object, list, parse, text, whole};
use thinwright_core::answers::Answers;
use thinwright_core::field::Field;

/// Version of the format.
pub const VERSION: u32 = 1;
/// The engine that writes now.
pub const ENGINE: &str = concat!("thinwright ", env!("CARGO_PKG_VERSION"));
/// The key that says what the file is.
const KIND: &str = "thinwright_job";
/// Most records of what was run.
const MOST_RECORDS: usize = 500;
/// Most values of a record.
const MOST_VALUES: usize = 40;

/// A job file.
#[derive(Clone, Debug, PartialEq)]
pub struct JobFile {
    /// Title, for people; the part's name if empty.
    pub title: String,
    /// What was answered, exactly as typed.
    pub answers: Answers,
    /// The engine that wrote it.
    pub engine: String,
    /// Digest of the answers when it was written.
    pub digest: String,
    /// What was run, kept word for word.
    pub records: Vec<Record>,
}

/// What was really run.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Record {
    /// Date as written down.
    pub date: String,
    /// Number of the step on the sheet.
    pub step: u32,
    /// Values as written down with their units: (name, text), such as `n`, `18000 rpm`.
    pub values: Vec<(String, String)>,
    /// What happened.
    pub note: String,
}

impl JobFile {
    /// A new file of answers.
    pub fn new(title: impl Into<String>, answers: Answers) -> JobFile {
        let digest = digest(&answers);
        JobFile {
            title: title.into(),
            answers,
            engine: ENGINE.to_owned(),
            digest,
            records: Vec::new(),
        }
    }

    /// Reads a file.
    ///
    /// # Errors
    /// The first fault, with its place. No bytes make it panic.
    pub fn read(bytes: &[u8]) -> Result<JobFile, JobFileError> {
        JobFile::take(&parse(bytes)?)
    }

    /// The file as text: one answer a line, always the same for the same content.
    pub fn write(&self) -> String {
        self.put().lines()
    }

    /// Whether the answers are others than those that the digest was made of: edited by hand since.
    pub fn edited(&self) -> bool {
        !self.digest.is_empty() && self.digest != digest(&self.answers)
    }

    /// What to call it: its title, or the part's name.
    pub fn name(&self) -> &str {
        let title = self.title.trim();
        if title.is_empty() {
            self.answers.text(Field::Name.into()).trim()
        } else {
            title
        }
    }

    pub(crate) fn put(&self) -> Node {
        let mut fields = vec![
            (KIND, Node::Number(f64::from(VERSION))),
            ("title", Node::text(&self.title)),
            ("units", Node::text(unit_word(self.answers.units))),
            ("engine", Node::text(&self.engine)),
            ("digest", Node::text(digest(&self.answers))),
            ("answers", answers::put(&self.answers)),
        ];
        if !self.records.is_empty() {
            fields.push((
                "records",
                Node::List(self.records.iter().map(Record::put).collect()),
            ));
        }
        Node::object(fields)
    }

    pub(crate) fn take(node: &Node) -> Result<JobFile, JobFileError> {
        let mut object = Object::versioned(node, KIND, VERSION)?;
        let units = take_units(&mut object, "units")?;
        let typed = object.take("answers")?;
        let file = JobFile {
            title: object.text_or_nothing("title")?,
            answers: answers::take("answers", typed, units)?,
            engine: object.text_or_nothing("engine")?,
            digest: object.text_or_nothing("digest")?,
            records: match object.optional("records") {
                None => Vec::new(),
                Some(node) => {
                    let records = list("records", node, MOST_RECORDS)?;
                    records
                        .iter()
                        .map(|(place, node)| Record::take(place, node))
                        .collect::<Result<_, _>>()?
                }
            },
        };
        object.end()?;
        Ok(file)
    }
}

impl Record {
    fn put(&self) -> Node {
        let values = self
            .values
            .iter()
            .map(|(name, value)| (name.as_str(), Node::text(value)));
        Node::object([
            ("date", Node::text(&self.date)),
            ("step", Node::Number(f64::from(self.step))),
            ("values", Node::object(values)),
            ("note", Node::text(&self.note)),
        ])
    }

    fn take(place: &str, node: &Node) -> Result<Record, JobFileError> {
        let mut object = Object::new(place, node)?;
        let step = object.take("step")?;
        let record = Record {
            date: object.text_or_nothing("date")?,
            step: whole(&object.place("step"), step, 10_000)?,
            values: match object.optional("values") {
                None => Vec::new(),
                Some(node) => values(&object.place("values"), node)?,
            },
            note: object.text_or_nothing("note")?,
        };
        object.end()?;
        Ok(record)
    }
}

fn values(place: &str, node: &Node) -> Result<Vec<(String, String)>, JobFileError> {
    Object::new(place, node)?;
    let Node::Object(fields) = node else {
        return Ok(Vec::new());
    };
    if fields.len() > MOST_VALUES {
        return Err(JobFileError::TooMany {
            place: place.to_owned(),
            most: MOST_VALUES,
        });
    }
    let each = fields.iter();
    each.map(|(name, node)| {
        Ok((
            name.clone(),
            text(&crate::object::inside(place, name), node)?,
        ))
    })
    .collect()
}
