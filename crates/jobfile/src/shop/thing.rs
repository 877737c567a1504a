//! A thing of the shop: what it holds, and what a store has to know of it.

use super::content::{Content, Kind};
use crate::error::{JobFileError, Wanted};
use crate::node::Node;
use crate::object::{Object, not, parse_up_to, whole};

/// The key that says what a text is.
const KIND: &str = "thinwright_thing";
/// Version of the format.
pub const THING_VERSION: u32 = 1;
/// Most bytes of a text: a job file and what stands around it.
const MOST_BYTES: usize = 1_100_000;
/// Most bytes of an id, and of a date.
const MOST_SHORT: usize = 64;

/// A thing of the shop.
#[derive(Clone, Debug, PartialEq)]
pub struct Thing {
    /// Where it is kept: small letters, digits and hyphens.
    pub id: String,
    /// How often it was kept there; 0 before the first time.
    pub revision: u32,
    /// When it was last changed, as ISO 8601 writes it in universal time: later dates are greater texts.
    pub changed: String,
    /// What it is.
    pub content: Content,
}

impl Thing {
    /// A thing that was never kept.
    pub fn new(id: impl Into<String>, changed: impl Into<String>, content: Content) -> Thing {
        Thing {
            id: id.into(),
            revision: 0,
            changed: changed.into(),
            content,
        }
    }

    /// The same under another id, never kept there.
    #[must_use]
    pub fn copied(&self, id: impl Into<String>, name: Option<String>) -> Thing {
        let content = match name {
            Some(name) => self.content.renamed(name),
            None => self.content.clone(),
        };
        Thing::new(id, self.changed.clone(), content)
    }

    /// Reads a text.
    ///
    /// # Errors
    /// The first fault, with its place. No text makes it panic.
    pub fn read(text: &str) -> Result<Thing, JobFileError> {
        Thing::take(&parse_up_to(text.as_bytes(), MOST_BYTES)?)
    }

    /// Reads the text that is kept under a key, which must be the thing's id.
    ///
    /// # Errors
    /// The first fault, with its place.
    pub fn read_at(key: &str, text: &str) -> Result<Thing, JobFileError> {
        let thing = Thing::read(text)?;
        if thing.id == key {
            Ok(thing)
        } else {
            Err(not("id", Wanted::KnownName))
        }
    }

    /// The text to keep.
    pub fn write(&self) -> String {
        self.put().lines()
    }

    pub(super) fn put(&self) -> Node {
        let (key, content) = self.content.put();
        Node::object([
            (KIND, Node::Number(f64::from(THING_VERSION))),
            ("id", Node::text(&self.id)),
            ("kind", Node::text(self.content.kind().key())),
            ("revision", Node::Number(f64::from(self.revision))),
            ("changed", Node::text(&self.changed)),
            (key, content),
        ])
    }

    pub(super) fn take(node: &Node) -> Result<Thing, JobFileError> {
        let mut object = Object::versioned(node, KIND, THING_VERSION)?;
        let id = short(&mut object, "id")?;
        let plain = |b: u8| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'-';
        if id.is_empty() || !id.bytes().all(plain) {
            return Err(not("id", Wanted::KnownName));
        }
        let kind = Kind::take("kind", object.take("kind")?)?;
        let thing = Thing {
            id,
            revision: whole("revision", object.take("revision")?, u32::MAX)?,
            changed: short(&mut object, "changed")?,
            content: Content::take(kind, &mut object)?,
        };
        object.end()?;
        Ok(thing)
    }
}

fn short(object: &mut Object<'_>, key: &str) -> Result<String, JobFileError> {
    let text = object.text(key)?;
    if text.len() > MOST_SHORT {
        return Err(JobFileError::TooLong {
            place: key.to_owned(),
            most: MOST_SHORT,
        });
    }
    Ok(text)
}
