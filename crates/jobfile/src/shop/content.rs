//! What a thing of the shop holds: a whole job, or the answers of one group under a name.

use crate::answers::{self, take_units, unit_word};
use crate::error::JobFileError;
use crate::job::JobFile;
use crate::node::Node;
use crate::object::{Object, inside, word};
use thinwright_core::answers::Answers;
use thinwright_core::field::{FIELDS, Field, FieldId, Group};
use thinwright_core::learn::is_machines;

/// What there is in a shop.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Kind {
    /// A job.
    Job,
    /// A machine: the answers of its group, and what it has taught.
    Machine,
    /// A rack of cutters.
    Rack,
    /// A material.
    Material,
    /// A way of holding, backing and clearing.
    Holding,
}

impl Kind {
    /// All of them, in the order in which they are shown.
    pub const ALL: [Kind; 5] = [
        Kind::Job,
        Kind::Machine,
        Kind::Rack,
        Kind::Material,
        Kind::Holding,
    ];
    const WORDS: [&'static str; 5] = ["job", "machine", "rack", "material", "holding"];

    /// Its word in files: the same in every language.
    pub fn key(self) -> &'static str {
        match self {
            Kind::Job => Kind::WORDS[0],
            Kind::Machine => Kind::WORDS[1],
            Kind::Rack => Kind::WORDS[2],
            Kind::Material => Kind::WORDS[3],
            Kind::Holding => Kind::WORDS[4],
        }
    }

    /// Whether a field's answer belongs to it. A machine has what it has taught of itself; what was learned of the cutting
    /// force is the material's.
    pub fn holds(self, field: Field) -> bool {
        let group = field.spec().group;
        match self {
            Kind::Job => true,
            Kind::Machine => is_machines(field),
            Kind::Rack => group == Group::Cutters,
            Kind::Material => group == Group::Material,
            Kind::Holding => group == Group::Holding,
        }
    }

    pub(super) fn take(place: &str, node: &Node) -> Result<Kind, JobFileError> {
        word(place, node, &Kind::WORDS, &Kind::ALL)
    }
}

/// What a thing holds.
#[derive(Clone, Debug, PartialEq)]
pub enum Content {
    /// A job with what was run.
    Job(Box<JobFile>),
    /// Something of one's own.
    Own(Own),
}

/// A machine, a rack, a material or a way of holding of one's own: its answers under a name.
#[derive(Clone, Debug, PartialEq)]
pub struct Own {
    kind: Kind,
    /// Name.
    pub name: String,
    answers: Answers,
}

impl Own {
    /// What a job's answers say of a kind; nothing of a job, which is kept whole.
    pub fn of(kind: Kind, name: impl Into<String>, answers: &Answers) -> Option<Own> {
        if kind == Kind::Job {
            return None;
        }
        let mut own = Answers::new(answers.units);
        for (id, answer) in answers.iter().filter(|(id, _)| holds(kind, **id)) {
            own.set(*id, answer.text.clone(), answer.known);
        }
        Some(Own {
            kind,
            name: name.into(),
            answers: own,
        })
    }

    /// Its kind.
    pub fn kind(&self) -> Kind {
        self.kind
    }

    /// Its answers.
    pub fn answers(&self) -> &Answers {
        &self.answers
    }

    /// The same with its answers put into other units by whoever knows how.
    pub fn restated(&self, how: impl FnOnce(&Answers) -> Answers) -> Own {
        Own {
            answers: how(&self.answers),
            ..self.clone()
        }
    }

    /// Puts its answers in place of a job's. A bare number keeps its meaning: where the unit systems differ, nothing is
    /// put and `false` comes back. What was pinned to a cutter goes with the rack that it stood in.
    pub fn put_into(&self, answers: &mut Answers) -> bool {
        if answers.units != self.answers.units {
            return false;
        }
        for row in (0..answers.rack_rows())
            .rev()
            .filter(|_| self.kind == Kind::Rack)
        {
            answers.remove_cutter(row);
        }
        let once = FIELDS.iter().filter(|s| !s.group.repeats());
        for spec in once.filter(|s| self.kind.holds(s.field)) {
            answers.clear(spec.field);
        }
        for (id, answer) in self.answers.iter() {
            answers.set(*id, answer.text.clone(), answer.known);
        }
        true
    }
}

fn holds(kind: Kind, id: FieldId) -> bool {
    kind.holds(id.field)
}

impl From<JobFile> for Content {
    fn from(job: JobFile) -> Content {
        Content::Job(Box::new(job))
    }
}

impl Content {
    /// Its kind.
    pub fn kind(&self) -> Kind {
        match self {
            Content::Job(_) => Kind::Job,
            Content::Own(own) => own.kind,
        }
    }

    /// Its name.
    pub fn name(&self) -> &str {
        match self {
            Content::Job(job) => job.name(),
            Content::Own(own) => own.name.trim(),
        }
    }

    /// The same under another name.
    #[must_use]
    pub fn renamed(&self, name: impl Into<String>) -> Content {
        let mut renamed = self.clone();
        match &mut renamed {
            Content::Job(job) => job.title = name.into(),
            Content::Own(own) => own.name = name.into(),
        }
        renamed
    }

    /// Whether the two would be written alike, whatever program has written them.
    pub fn same(&self, other: &Content) -> bool {
        self.essence() == other.essence()
    }

    fn essence(&self) -> String {
        let mut bare = self.clone();
        if let Content::Job(job) = &mut bare {
            job.engine.clear();
        }
        let (key, node) = bare.put();
        format!("{} {key} {}", bare.kind().key(), node.line())
    }

    /// The key it stands at, and its tree.
    pub(super) fn put(&self) -> (&'static str, Node) {
        match self {
            Content::Job(job) => ("job", job.put()),
            Content::Own(own) => (
                "own",
                Node::object([
                    ("name", Node::text(&own.name)),
                    ("units", Node::text(unit_word(own.answers.units))),
                    ("answers", answers::put(&own.answers)),
                ]),
            ),
        }
    }

    pub(super) fn take(kind: Kind, object: &mut Object<'_>) -> Result<Content, JobFileError> {
        if kind == Kind::Job {
            return Ok(JobFile::take(object.take("job")?)?.into());
        }
        let at = object.place("own");
        let mut own = Object::new(&at, object.take("own")?)?;
        let units = take_units(&mut own, "units")?;
        let name = own.text("name")?;
        let at = own.place("answers");
        let answers = answers::take(&at, own.take("answers")?, units)?;
        own.end()?;
        let strange = answers.iter().find(|(id, _)| !holds(kind, **id));
        if let Some((id, _)) = strange {
            return Err(JobFileError::UnknownKey {
                place: inside(&at, &id.key()),
            });
        }
        Ok(Content::Own(Own {
            kind,
            name,
            answers,
        }))
    }
}
