//! Signs of trouble and what causes them: how well each sign fits each cause.

use crate::error::{CatalogError, Fault};
use crate::range::Origin;
use crate::row::Row;

/// A sign that points to a cause.
#[derive(Clone, Debug, PartialEq)]
pub struct TroubleRow {
    /// Id: sign and cause.
    pub id: String,
    /// Key of the sign.
    pub sign: String,
    /// Key of the cause.
    pub cause: String,
    /// How often the sign would be seen if this were the cause, from 0 to 1.
    pub fit: f64,
    /// Numbers of the rules of practice that say so.
    pub practice: Vec<String>,
    /// Keys of the literature list.
    pub sources: Vec<String>,
    /// How it is known.
    pub known: Origin,
    /// What a reader must know of the row.
    pub note: String,
}

impl TroubleRow {
    /// Reads a row.
    pub(crate) fn read(mut row: Row) -> Result<TroubleRow, CatalogError> {
        let standing = row.standing()?;
        let out = TroubleRow {
            id: row.id(),
            sign: row.text("sign")?,
            cause: row.text("cause")?,
            fit: row.positive("fit")?,
            practice: row.texts("practice")?,
            sources: standing.sources,
            known: standing.known,
            note: standing.note,
        };
        row.hold("fit", out.fit <= 1.0, Fault::OutOfOrder)?;
        row.end()?;
        Ok(out)
    }
}
