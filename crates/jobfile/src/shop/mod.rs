//! A person's shop: jobs, and machines, racks, materials and ways of holding of their own.
//!
//! Each thing is one versioned text under an id. What to do with a text is decided here, from what is there and what
//! comes; whoever holds the store only carries it out, and need not understand it:
//! [`Shop::sort`] reads all that is there, [`settle`] keeps a thing, [`take_away`] takes one out, [`merge`] brings in
//! what came from elsewhere, and [`ShopFile`] is everything in one file. Nothing that is there is ever written over
//! unless it was known.

mod content;
mod file;
mod merge;
mod names;
mod settle;
#[cfg(test)]
mod tests;
mod thing;

pub use content::{Content, Kind, Own};
pub use file::{Left, ShopFile};
pub use merge::{Merged, from_store, merge};
pub use names::free_name;
pub use settle::{Settled, TakenAway, Told, settle, take_away};
pub use thing::{THING_VERSION, Thing};

use crate::error::JobFileError;

/// All that a store holds.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Shop {
    /// What can be read: by kind, then by name.
    pub things: Vec<Thing>,
    /// What cannot, left where it is.
    pub unread: Vec<Unread>,
}

/// A text of a store that cannot be read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unread {
    /// Where it is kept.
    pub key: String,
    /// The text, untouched.
    pub text: String,
    /// What is wrong with it.
    pub error: JobFileError,
}

impl Shop {
    /// Reads all that a store holds: keys and texts. A thing under a key that is not its own cannot be read.
    pub fn sort(texts: impl IntoIterator<Item = (String, String)>) -> Shop {
        let mut shop = Shop::default();
        for (key, text) in texts {
            match Thing::read_at(&key, &text) {
                Ok(thing) => shop.things.push(thing),
                Err(error) => shop.unread.push(Unread { key, text, error }),
            }
        }
        shop.order();
        shop
    }

    /// The thing of an id.
    pub fn get(&self, id: &str) -> Option<&Thing> {
        self.things.iter().find(|thing| thing.id == id)
    }

    /// The things of a kind.
    pub fn of(&self, kind: Kind) -> impl Iterator<Item = &Thing> {
        self.things.iter().filter(move |t| t.content.kind() == kind)
    }

    /// The names of a kind.
    pub fn names(&self, kind: Kind) -> Vec<String> {
        self.of(kind).map(|t| t.content.name().to_owned()).collect()
    }

    /// Puts a thing in place of the one with its id.
    pub fn put(&mut self, thing: Thing) {
        self.take(&thing.id);
        self.things.push(thing);
        self.order();
    }

    /// Takes out the thing of an id, and what could not be read there.
    pub fn take(&mut self, id: &str) -> Option<Thing> {
        self.unread.retain(|unread| unread.key != id);
        let at = self.things.iter().position(|thing| thing.id == id)?;
        Some(self.things.remove(at))
    }

    /// Jobs that were changed last stand first; the others by name.
    fn order(&mut self) {
        let key = |t: &Thing| {
            (
                t.content.kind(),
                t.content.name().to_lowercase(),
                t.id.clone(),
            )
        };
        self.things.sort_by_cached_key(key);
        self.things
            .sort_by(|a, b| match (a.content.kind(), b.content.kind()) {
                (Kind::Job, Kind::Job) => b.changed.cmp(&a.changed),
                (a, b) => a.cmp(&b),
            });
    }
}
