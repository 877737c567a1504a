//! What a page keeps between visits, as one text: the job in hand and machines of one's own.
//!
//! A text that cannot be read is handed back whole inside the error, so that whoever holds the store can keep it aside.

use crate::answers::{self, take_units, unit_word};
use crate::error::JobFileError;
use crate::job::JobFile;
use crate::node::Node;
use crate::object::{Object, inside, list, parse};
use std::fmt;
use thinwright_core::answers::Answers;
use thinwright_core::learn::is_machines;

/// The key that says what the text is.
const KIND: &str = "thinwright_store";
/// Version of the format.
const VERSION: u32 = 1;
/// Most machines that are kept.
const MOST_MACHINES: usize = 50;

/// What is kept.
#[derive(Clone, Debug, PartialEq)]
pub struct Store {
    /// The job in hand.
    pub job: JobFile,
    /// Machines that were saved under a name.
    pub machines: Vec<SavedMachine>,
}

/// A machine of one's own: its answers under a name.
#[derive(Clone, Debug, PartialEq)]
pub struct SavedMachine {
    /// Name.
    pub name: String,
    /// Answers about the machine with what it has taught of itself, and no others.
    pub answers: Answers,
}

/// A store that cannot be read, with its text untouched.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Damaged {
    /// What is wrong.
    pub error: JobFileError,
    /// The text as it was.
    pub text: String,
}

impl fmt::Display for Damaged {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "what was kept cannot be read: {}", self.error)
    }
}

impl std::error::Error for Damaged {}

impl SavedMachine {
    /// The machine of a job under a name.
    pub fn of(name: impl Into<String>, answers: &Answers) -> SavedMachine {
        let mut own = Answers::new(answers.units);
        for (id, answer) in answers.iter().filter(|(id, _)| is_machines(id.field)) {
            own.set(*id, answer.text.clone(), answer.known);
        }
        SavedMachine {
            name: name.into(),
            answers: own,
        }
    }

    /// Puts the machine's answers in place of a job's. A bare number keeps its meaning: where the unit systems differ,
    /// nothing is put and `false` comes back.
    pub fn put_into(&self, answers: &mut Answers) -> bool {
        if answers.units != self.answers.units {
            return false;
        }
        let machine = thinwright_core::field::FIELDS
            .iter()
            .filter(|s| is_machines(s.field));
        for field in machine.map(|s| s.field) {
            let id = field.into();
            answers.set(field, self.answers.text(id), self.answers.known(id));
        }
        true
    }

    fn put(&self) -> Node {
        Node::object([
            ("name", Node::text(&self.name)),
            ("units", Node::text(unit_word(self.answers.units))),
            ("answers", answers::put(&self.answers)),
        ])
    }

    fn take(place: &str, node: &Node) -> Result<SavedMachine, JobFileError> {
        let mut object = Object::new(place, node)?;
        let units = take_units(&mut object, "units")?;
        let name = object.text("name")?;
        let at = object.place("answers");
        let answers = answers::take(&at, object.take("answers")?, units)?;
        object.end()?;
        let strange = answers.iter().find(|(id, _)| !is_machines(id.field));
        if let Some((id, _)) = strange {
            return Err(JobFileError::UnknownKey {
                place: inside(&at, &id.key()),
            });
        }
        Ok(SavedMachine { name, answers })
    }
}

impl Store {
    /// Reads a kept text.
    ///
    /// # Errors
    /// The text itself with what is wrong with it.
    pub fn read(text: &str) -> Result<Store, Damaged> {
        let read = parse(text.as_bytes()).and_then(|node| {
            let mut object = Object::versioned(&node, KIND, VERSION)?;
            let job = JobFile::take(object.take("job")?)?;
            let machines = match object.optional("machines") {
                None => Vec::new(),
                Some(node) => {
                    let machines = list("machines", node, MOST_MACHINES)?;
                    machines
                        .iter()
                        .map(|(p, n)| SavedMachine::take(p, n))
                        .collect::<Result<_, _>>()?
                }
            };
            object.end()?;
            Ok(Store { job, machines })
        });
        read.map_err(|error| Damaged {
            error,
            text: text.to_owned(),
        })
    }

    /// The text to keep.
    pub fn write(&self) -> String {
        let machines = self.machines.iter().map(SavedMachine::put).collect();
        let version = Node::Number(f64::from(VERSION));
        Node::object([
            (KIND, version),
            ("job", self.job.put()),
            ("machines", Node::List(machines)),
        ])
        .lines()
    }
}
