//! Keeping a thing, and taking one out, where somebody else may have been in between.

use super::names::free_name;
use super::thing::Thing;
use crate::error::JobFileError;

/// What was done with a thing, to be told.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Told {
    /// It was kept in its place.
    Kept,
    /// The same stands there already.
    Same,
    /// It had been taken out elsewhere, and was kept again.
    Again,
    /// Something newer stands there: that stays, and this was kept beside it under this name.
    Both {
        /// The new name.
        name: String,
    },
    /// What stood there could not be read: it was put aside.
    Aside(JobFileError),
    /// What stands there was written by a newer program: that stays, and this was kept beside it.
    Newer(JobFileError),
}

/// What to do to keep a thing.
#[derive(Clone, Debug, PartialEq)]
pub struct Settled {
    /// The thing as it stands in the store afterwards.
    pub thing: Thing,
    /// Whether it has to be written.
    pub write: bool,
    /// A text to keep under a key of its own first, since the thing is written over it.
    pub aside: Option<String>,
    /// What to tell.
    pub told: Told,
}

/// Decides how a thing is kept where `there` stands now. The thing carries the revision that it was made from, 0 if it was
/// never kept; `spare` is an id that nothing has, `taken` the names of its kind.
pub fn settle(there: Option<&str>, mine: &Thing, spare: &str, taken: &[String]) -> Settled {
    let next = Thing {
        revision: mine.revision.saturating_add(1),
        ..mine.clone()
    };
    let put = |thing: Thing, told: Told| Settled {
        thing,
        write: true,
        aside: None,
        told,
    };
    let beside = |name: Option<String>| Thing {
        revision: 1,
        ..mine.copied(spare, name)
    };
    let Some(text) = there else {
        let told = if mine.revision == 0 {
            Told::Kept
        } else {
            Told::Again
        };
        return put(next, told);
    };
    match Thing::read_at(&mine.id, text) {
        Ok(there) if there.content.same(&mine.content) => Settled {
            thing: there,
            write: false,
            aside: None,
            told: Told::Same,
        },
        Ok(there) if there.revision == mine.revision => put(next, Told::Kept),
        Ok(there) => {
            let mut taken = taken.to_vec();
            taken.push(there.content.name().to_owned());
            let name = free_name(mine.content.name(), &taken);
            put(beside(Some(name.clone())), Told::Both { name })
        }
        Err(error @ JobFileError::Newer { .. }) => put(beside(None), Told::Newer(error)),
        Err(error) => Settled {
            aside: Some(text.to_owned()),
            ..put(next, Told::Aside(error))
        },
    }
}

/// What to do to take a thing out.
#[derive(Clone, Debug, PartialEq)]
pub enum TakenAway {
    /// It stands there as it is known: take it out.
    Out,
    /// It is gone already.
    Gone,
    /// Something else stands there: it is left.
    Left,
}

/// Decides how a thing is taken out where `there` stands now.
pub fn take_away(there: Option<&str>, known: &Thing) -> TakenAway {
    match there.map(|text| Thing::read_at(&known.id, text)) {
        None => TakenAway::Gone,
        Some(Ok(there)) if there.content.same(&known.content) => TakenAway::Out,
        Some(_) => TakenAway::Left,
    }
}
