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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::row::split;

    fn read(fit: &str) -> Result<TroubleRow, CatalogError> {
        let text = format!(
            r#"{{"table": "trouble", "rows": [{{"id": "a_b", "sign": "a", "cause": "b", "fit": {fit},
                "practice": ["1"], "sources": ["s"], "known": "read"}}]}}"#
        );
        let mut rows = split("trouble.json", &text)?.rows;
        TroubleRow::read(rows.remove(0))
    }

    #[test]
    fn a_fit_is_a_share() {
        let row = read("0.7").unwrap();
        assert_eq!((row.sign.as_str(), row.cause.as_str()), ("a", "b"));
        assert_eq!(row.practice, ["1"]);
        assert!((row.fit - 0.7).abs() < f64::EPSILON);
        for wrong in ["1.1", "0", "-0.2", "\"often\"", "null"] {
            assert!(read(wrong).is_err(), "{wrong}");
        }
    }
}
