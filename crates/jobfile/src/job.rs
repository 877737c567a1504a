//! The job file: what was answered, and what was run.

use crate::answers::{self, take_units, unit_word};
use crate::digest::digest;
use crate::error::JobFileError;
use crate::node::Node;
use crate::object::{Object, list, parse, text};
use crate::record::Record;
use thinwright_core::answers::Answers;
use thinwright_core::field::Field;

/// Version of the format. Version 2 added how a step went and what it taught, and the cautions that were confirmed.
pub const VERSION: u32 = 2;
/// The oldest version that is read: what it lacks is empty.
const OLDEST: u32 = 1;
/// The engine that writes now.
pub const ENGINE: &str = concat!("thinwright ", env!("CARGO_PKG_VERSION"));
/// The key that says what the file is.
pub(crate) const KIND: &str = "thinwright_job";
/// Most records of what was run.
const MOST_RECORDS: usize = 500;
/// Most cautions that can be confirmed.
const MOST_CONFIRMED: usize = 200;

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
    /// Names of the cautions that the person has confirmed for this job.
    pub confirmed: Vec<String>,
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
            confirmed: Vec::new(),
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
        if !self.confirmed.is_empty() {
            let confirmed = self.confirmed.iter().map(Node::text).collect();
            fields.push(("confirmed", Node::List(confirmed)));
        }
        Node::object(fields)
    }

    pub(crate) fn take(node: &Node) -> Result<JobFile, JobFileError> {
        let (version, mut object) = Object::versions(node, KIND, OLDEST..=VERSION)?;
        let units = take_units(&mut object, "units")?;
        let typed = object.take("answers")?;
        let mut file = JobFile {
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
                        .map(|(place, node)| Record::take(place, node, version))
                        .collect::<Result<_, _>>()?
                }
            },
            confirmed: Vec::new(),
        };
        if version >= 2
            && let Some(node) = object.optional("confirmed")
        {
            let confirmed = list("confirmed", node, MOST_CONFIRMED)?;
            let confirmed = confirmed.iter().map(|(place, node)| text(place, node));
            file.confirmed = confirmed.collect::<Result<_, _>>()?;
        }
        object.end()?;
        Ok(file)
    }
}
