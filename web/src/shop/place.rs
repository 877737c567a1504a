//! Where the shop is kept: in the browser's database, or in its small store, or nowhere.

use super::{database, small};
use crate::browser::LocalShelf;
use indexed_db_futures::database::Database;
use thinwright_jobfile::shop::{Settled, TakenAway, Thing};

/// Why something was not kept or read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Fault {
    /// There is no room left.
    Full,
    /// The database belongs to a newer version of the page.
    Newer,
    /// A newer version of the page has taken the database over while this one was open.
    TakenOver,
    /// There is no database, in the browser's words.
    Missing(String),
    /// It does not answer.
    Silent,
    /// Something else, in the browser's words.
    Broken(String),
}

/// Where the shop is kept.
pub(crate) enum Place {
    Database(Database),
    Small,
    Nowhere,
}

impl Place {
    /// Everything: keys and texts.
    pub(super) async fn all(&self) -> Result<Vec<(String, String)>, Fault> {
        match self {
            Place::Database(database) => database::all(database).await,
            Place::Small => Ok(small::all(&LocalShelf::new())),
            Place::Nowhere => Ok(Vec::new()),
        }
    }

    /// Keeps a thing; `spare` is an id that nothing has, `taken` the names of its kind.
    pub(super) async fn keep(
        &self,
        mine: &Thing,
        spare: &str,
        taken: &[String],
    ) -> Result<Settled, Fault> {
        match self {
            Place::Database(database) => database::keep(database, mine, spare, taken).await,
            Place::Small => small::keep(&LocalShelf::new(), mine, spare, taken).ok_or(Fault::Full),
            Place::Nowhere => Err(Fault::Missing(String::new())),
        }
    }

    /// Takes a thing out.
    pub(super) async fn out(&self, known: &Thing) -> Result<TakenAway, Fault> {
        match self {
            Place::Database(database) => database::out(database, known).await,
            Place::Small => Ok(small::out(&LocalShelf::new(), known)),
            Place::Nowhere => Ok(TakenAway::Gone),
        }
    }

    /// Takes out what cannot be read, if it is still the same.
    pub(super) async fn drop_unread(&self, key: &str, text: &str) -> Result<(), Fault> {
        match self {
            Place::Database(database) => database::drop_unread(database, key, text).await,
            Place::Small => {
                small::drop_unread(&LocalShelf::new(), key, text);
                Ok(())
            }
            Place::Nowhere => Ok(()),
        }
    }
}
