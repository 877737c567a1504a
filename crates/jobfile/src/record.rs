//! A record of what was really run, and what it has taught of the machine.

use crate::error::{JobFileError, Wanted};
use crate::node::Node;
use crate::object::{Object, flag, inside, list, not, number, text, whole, word};
use thinwright_core::answers::Answers;
use thinwright_core::field::FieldId;

/// Most values of a record, and most numbers that it is judged by.
const MOST_VALUES: usize = 40;
/// Most answers that a record has changed.
const MOST_LEARNED: usize = 20;
/// Highest number of a step.
const MOST_STEPS: u32 = 10_000;

const RAN: &[&str] = &["held", "sang", "bent", "broke", "other"];
const RAN_VALUES: &[Ran] = &[Ran::Held, Ran::Sang, Ran::Bent, Ran::Broke, Ran::Other];

/// How a step went.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ran {
    /// Well: quiet, to size, nothing broke.
    Held,
    /// It sang: cutter or web rang by itself.
    Sang,
    /// Something gave way by an amount that was measured.
    Bent,
    /// The cutter broke.
    Broke,
    /// Something else, which the note says.
    Other,
}

/// An answer that a record has changed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Learned {
    /// Which.
    pub field: FieldId,
    /// Its text before; empty where nothing stood there.
    pub before: String,
    /// Its text since.
    pub after: String,
}

/// What was really run. Its place in the file's list is its number; records are added and taken back, never removed.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Record {
    /// Date as written down.
    pub date: String,
    /// Number of the step on the sheet.
    pub step: u32,
    /// What the step was, in words: the task. Empty in files of version 1.
    pub task: String,
    /// What the step was, in words: the method and its cutter. Empty in files of version 1.
    pub method: String,
    /// How it went, if that was said.
    pub outcome: Option<Ran>,
    /// Values as written down with their units: (name, text), such as `n`, `18000 rpm`.
    pub values: Vec<(String, String)>,
    /// What happened, in the person's words.
    pub note: String,
    /// The numbers that it is judged by, as they were when it was written: (name, value in SI units). A record goes on
    /// teaching the same when the job changes.
    pub judged: Vec<(String, f64)>,
    /// What it has taught.
    pub learned: Vec<Learned>,
    /// Whether the person has taken it back: it stays in the history and teaches nothing.
    pub taken_back: bool,
    /// Whether it was run on a machine that the job has left since: it stays in the history, and what it taught is the
    /// other machine's.
    pub elsewhere: bool,
}

/// The answers as they were before anything that counts was learned.
///
/// What a field held before the first record that changed it is what an earlier job, or nobody, had taught.
pub fn untaught(records: &[Record], answers: &Answers) -> Answers {
    let mut before = answers.clone();
    let mut seen: Vec<FieldId> = Vec::new();
    for learned in records
        .iter()
        .filter(|r| !r.elsewhere)
        .flat_map(|r| &r.learned)
    {
        if seen.contains(&learned.field) {
            continue;
        }
        seen.push(learned.field);
        match learned.before.is_empty() {
            true => before.clear(learned.field),
            false => before.set_text(learned.field, learned.before.clone()),
        }
    }
    before
}

impl Record {
    /// Whether it teaches.
    pub fn counts(&self) -> bool {
        !self.taken_back && !self.elsewhere && !self.judged.is_empty()
    }

    pub(crate) fn put(&self) -> Node {
        let mut fields = vec![
            ("date", Node::text(&self.date)),
            ("step", Node::Number(f64::from(self.step))),
        ];
        for (key, said) in [("task", &self.task), ("method", &self.method)] {
            if !said.is_empty() {
                fields.push((key, Node::text(said)));
            }
        }
        let at = |ran| RAN_VALUES.iter().position(|r| *r == ran);
        if let Some(at) = self.outcome.and_then(at) {
            fields.push(("outcome", Node::text(RAN[at])));
        }
        let values = self.values.iter();
        let values = values.map(|(name, value)| (name.as_str(), Node::text(value)));
        fields.push(("values", Node::object(values)));
        fields.push(("note", Node::text(&self.note)));
        // JSON has no way to write what is no number.
        let judged = self.judged.iter().filter(|(_, v)| v.is_finite());
        let judged: Vec<(&str, Node)> = judged
            .map(|(name, value)| (name.as_str(), Node::Number(*value)))
            .collect();
        if !judged.is_empty() {
            fields.push(("judged", Node::object(judged)));
        }
        if !self.learned.is_empty() {
            let learned = self.learned.iter().map(Learned::put).collect();
            fields.push(("learned", Node::List(learned)));
        }
        for (key, so) in [
            ("taken_back", self.taken_back),
            ("elsewhere", self.elsewhere),
        ] {
            if so {
                fields.push((key, Node::Flag(true)));
            }
        }
        Node::object(fields)
    }

    /// The record of a file of this version.
    pub(crate) fn take(place: &str, node: &Node, version: u32) -> Result<Record, JobFileError> {
        let mut object = Object::new(place, node)?;
        let step = object.take("step")?;
        let mut record = Record {
            date: object.text_or_nothing("date")?,
            step: whole(&object.place("step"), step, MOST_STEPS)?,
            values: match object.optional("values") {
                None => Vec::new(),
                Some(node) => named(&object.place("values"), node, text)?,
            },
            note: object.text_or_nothing("note")?,
            ..Record::default()
        };
        if version >= 2 {
            record.take_second(&mut object)?;
        }
        object.end()?;
        Ok(record)
    }

    /// What version 2 has added.
    fn take_second(&mut self, object: &mut Object<'_>) -> Result<(), JobFileError> {
        self.task = object.text_or_nothing("task")?;
        self.method = object.text_or_nothing("method")?;
        if let Some(node) = object.optional("outcome") {
            self.outcome = Some(word(&object.place("outcome"), node, RAN, RAN_VALUES)?);
        }
        if let Some(node) = object.optional("judged") {
            self.judged = named(&object.place("judged"), node, number)?;
        }
        if let Some(node) = object.optional("learned") {
            let learned = list(&object.place("learned"), node, MOST_LEARNED)?;
            let learned = learned.iter().map(|(place, n)| Learned::take(place, n));
            self.learned = learned.collect::<Result<_, _>>()?;
        }
        for (key, so) in [
            ("taken_back", &mut self.taken_back),
            ("elsewhere", &mut self.elsewhere),
        ] {
            if let Some(node) = object.optional(key) {
                *so = flag(&object.place(key), node)?;
            }
        }
        Ok(())
    }
}

impl Learned {
    fn put(&self) -> Node {
        Node::object([
            ("field", Node::text(self.field.key())),
            ("before", Node::text(&self.before)),
            ("after", Node::text(&self.after)),
        ])
    }

    fn take(place: &str, node: &Node) -> Result<Learned, JobFileError> {
        let mut object = Object::new(place, node)?;
        let key = object.text("field")?;
        let field = FieldId::by_key(&key);
        let learned = Learned {
            field: field.ok_or_else(|| not(&object.place("field"), Wanted::KnownName))?,
            before: object.text_or_nothing("before")?,
            after: object.text_or_nothing("after")?,
        };
        object.end()?;
        Ok(learned)
    }
}

/// An object as a list of names and what stands beside them.
fn named<T>(
    place: &str,
    node: &Node,
    read: impl Fn(&str, &Node) -> Result<T, JobFileError>,
) -> Result<Vec<(String, T)>, JobFileError> {
    // Says which key is there twice.
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
    each.map(|(name, node)| Ok((name.clone(), read(&inside(place, name), node)?)))
        .collect()
}
