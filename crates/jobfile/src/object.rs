//! An object while it is read: keys are taken one by one, none may stand twice, none may be left over.

use crate::error::{JobFileError, Wanted};
use crate::node::Node;
use std::ops::RangeInclusive;

/// Most bytes of a file, and of a text kept by the page.
pub(crate) const MOST_BYTES: usize = 1_000_000;
/// Most bytes of one text.
pub(crate) const MOST_TEXT: usize = 8_000;

/// The place of a key inside a place.
pub(crate) fn inside(place: &str, key: &str) -> String {
    if place.is_empty() {
        key.to_owned()
    } else {
        format!("{place}.{key}")
    }
}

/// An error that says what should stand at a place.
pub(crate) fn not(place: &str, wanted: Wanted) -> JobFileError {
    JobFileError::Not {
        place: if place.is_empty() {
            "the file".to_owned()
        } else {
            place.to_owned()
        },
        wanted,
    }
}

/// Bytes to a tree.
pub(crate) fn parse(bytes: &[u8]) -> Result<Node, JobFileError> {
    parse_up_to(bytes, MOST_BYTES)
}

/// At most so many bytes to a tree.
pub(crate) fn parse_up_to(bytes: &[u8], most: usize) -> Result<Node, JobFileError> {
    if bytes.len() > most {
        return Err(JobFileError::TooLarge {
            bytes: bytes.len(),
            most,
        });
    }
    let text = std::str::from_utf8(bytes).map_err(|e| JobFileError::NotText {
        at: e.valid_up_to(),
    })?;
    // Some editors put a mark before the first character.
    let text = text.strip_prefix('\u{FEFF}').unwrap_or(text);
    serde_json::from_str(text).map_err(|e| JobFileError::NotJson {
        line: e.line(),
        column: e.column(),
    })
}

/// An object of which keys are still to be taken.
pub(crate) struct Object<'n> {
    place: String,
    fields: Vec<(&'n str, &'n Node)>,
}

impl<'n> Object<'n> {
    /// The object at a place.
    pub(crate) fn new(place: &str, node: &'n Node) -> Result<Object<'n>, JobFileError> {
        let Node::Object(fields) = node else {
            return Err(not(place, Wanted::Object));
        };
        let mut seen: Vec<&str> = fields.iter().map(|(k, _)| k.as_str()).collect();
        seen.sort_unstable();
        if let Some(pair) = seen.windows(2).find(|pair| pair[0] == pair[1]) {
            return Err(JobFileError::Twice {
                place: inside(place, pair[0]),
            });
        }
        Ok(Object {
            place: place.to_owned(),
            fields: fields.iter().map(|(k, n)| (k.as_str(), n)).collect(),
        })
    }

    /// A file's object: of this kind and version, which is looked at before all else.
    pub(crate) fn versioned(
        node: &'n Node,
        kind: &'static str,
        version: u32,
    ) -> Result<Object<'n>, JobFileError> {
        Object::versions(node, kind, version..=version).map(|(_, object)| object)
    }

    /// A file's object of this kind, with its version, which must be one of these.
    pub(crate) fn versions(
        node: &'n Node,
        kind: &'static str,
        read: RangeInclusive<u32>,
    ) -> Result<(u32, Object<'n>), JobFileError> {
        let wrong = JobFileError::SomethingElse { wanted: kind };
        let Node::Object(fields) = node else {
            return Err(wrong);
        };
        let found = fields.iter().find(|(key, _)| key == kind).ok_or(wrong)?;
        match whole(kind, &found.1, u32::MAX)? {
            v if v > *read.end() => Err(JobFileError::Newer {
                version: v,
                newest: *read.end(),
            }),
            v if v < *read.start() => Err(JobFileError::Older {
                version: v,
                oldest: *read.start(),
            }),
            v => {
                let mut object = Object::new("", node)?;
                object.optional(kind);
                Ok((v, object))
            }
        }
    }

    /// The place of a key.
    pub(crate) fn place(&self, key: &str) -> String {
        inside(&self.place, key)
    }

    /// A value that may be missing; `null` counts as missing.
    pub(crate) fn optional(&mut self, key: &str) -> Option<&'n Node> {
        let at = self.fields.iter().position(|(k, _)| *k == key)?;
        Some(self.fields.swap_remove(at).1).filter(|n| **n != Node::Null)
    }

    /// A value that must be there.
    pub(crate) fn take(&mut self, key: &str) -> Result<&'n Node, JobFileError> {
        let at = self.fields.iter().position(|(k, _)| *k == key);
        let at = at.ok_or_else(|| JobFileError::Missing {
            place: self.place(key),
        })?;
        Ok(self.fields.swap_remove(at).1)
    }

    /// A text that must be there.
    pub(crate) fn text(&mut self, key: &str) -> Result<String, JobFileError> {
        let node = self.take(key)?;
        text(&self.place(key), node)
    }

    /// A text, empty if missing.
    pub(crate) fn text_or_nothing(&mut self, key: &str) -> Result<String, JobFileError> {
        match self.optional(key) {
            Some(node) => text(&self.place(key), node),
            None => Ok(String::new()),
        }
    }

    /// The first key that is left over, in the order of the alphabet, is an error.
    pub(crate) fn end(self) -> Result<(), JobFileError> {
        match self.fields.iter().map(|(k, _)| *k).min() {
            None => Ok(()),
            Some(key) => Err(JobFileError::UnknownKey {
                place: inside(&self.place, &short(key)),
            }),
        }
    }
}

/// A key as it is quoted in a message.
pub(crate) fn short(key: &str) -> String {
    const SHOWN: usize = 60;
    key.chars()
        .map(|c| if c.is_control() { ' ' } else { c })
        .take(SHOWN)
        .collect()
}

/// A text.
pub(crate) fn text(place: &str, node: &Node) -> Result<String, JobFileError> {
    match node {
        Node::Text(text) if text.len() > MOST_TEXT => Err(JobFileError::TooLong {
            place: place.to_owned(),
            most: MOST_TEXT,
        }),
        Node::Text(text) => Ok(text.clone()),
        _ => Err(not(place, Wanted::Text)),
    }
}

/// One of some words.
pub(crate) fn word<T: Copy>(
    place: &str,
    node: &Node,
    words: &'static [&'static str],
    values: &[T],
) -> Result<T, JobFileError> {
    let found = match node {
        Node::Text(text) => words.iter().position(|w| w == text),
        _ => None,
    };
    found
        .and_then(|at| values.get(at))
        .copied()
        .ok_or_else(|| not(place, Wanted::OneOf(words)))
}

/// A whole number.
pub(crate) fn whole(place: &str, node: &Node, most: u32) -> Result<u32, JobFileError> {
    match node {
        Node::Number(n) if n.fract() == 0.0 && *n >= 0.0 && *n <= f64::from(most) =>
        {
            #[allow(
                clippy::cast_possible_truncation,
                clippy::cast_sign_loss,
                reason = "whole and in bounds, just checked"
            )]
            Ok(*n as u32)
        }
        _ => Err(not(place, Wanted::WholeUpTo(most))),
    }
}

/// A list of at most so many entries, each with its place.
pub(crate) fn list<'n>(
    place: &str,
    node: &'n Node,
    most: usize,
) -> Result<Vec<(String, &'n Node)>, JobFileError> {
    let Node::List(items) = node else {
        return Err(not(place, Wanted::List));
    };
    if items.len() > most {
        return Err(JobFileError::TooMany {
            place: place.to_owned(),
            most,
        });
    }
    Ok(items
        .iter()
        .enumerate()
        .map(|(i, n)| (inside(place, &(i + 1).to_string()), n))
        .collect())
}

/// A number.
pub(crate) fn number(place: &str, node: &Node) -> Result<f64, JobFileError> {
    match node {
        Node::Number(number) => Ok(*number),
        _ => Err(not(place, Wanted::Number)),
    }
}

/// `true` or `false`.
pub(crate) fn flag(place: &str, node: &Node) -> Result<bool, JobFileError> {
    match node {
        Node::Flag(flag) => Ok(*flag),
        _ => Err(not(place, Wanted::Flag)),
    }
}
