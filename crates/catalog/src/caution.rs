//! Cautions: what can hurt a person, in plain words, and where it applies.

use crate::error::CatalogError;
use crate::range::Origin;
use crate::row::Row;

/// Where a caution applies of itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum CautionScope {
    /// On every sheet.
    Always,
    /// Where a material row names it.
    Material,
    /// Where a hold, a backing or a way of clearing chips names it.
    Setup,
    /// At every step that cuts through.
    BreakThrough,
    /// At a cutter whose rim runs fast, or whose speed limit is not known.
    FastCutter,
    /// At a step that runs its cutter above the speed marked on it.
    OverSpeed,
    /// When the part is turned over or taken out.
    Handling,
}

const SCOPES: &[(&str, CautionScope)] = &[
    ("always", CautionScope::Always),
    ("material", CautionScope::Material),
    ("setup", CautionScope::Setup),
    ("break-through", CautionScope::BreakThrough),
    ("fast cutter", CautionScope::FastCutter),
    ("over speed", CautionScope::OverSpeed),
    ("handling", CautionScope::Handling),
];

/// A caution.
#[derive(Clone, Debug, PartialEq)]
pub struct CautionRow {
    /// Id.
    pub id: String,
    /// The caution, in English.
    pub text: String,
    /// Where it applies.
    pub scope: CautionScope,
    /// Whether a person has to confirm it before the sheet is printed without a mark.
    pub confirm: bool,
    /// Keys of the literature list.
    pub sources: Vec<String>,
    /// How it is known.
    pub known: Origin,
    /// What a reader must know of the row.
    pub note: String,
}

impl CautionRow {
    /// Reads a row.
    pub(crate) fn read(mut row: Row) -> Result<CautionRow, CatalogError> {
        let standing = row.standing()?;
        let out = CautionRow {
            id: row.id(),
            text: row.text("text")?,
            scope: row.choice("scope", SCOPES)?,
            confirm: row.flag_or_no("confirm")?,
            sources: standing.sources,
            known: standing.known,
            note: standing.note,
        };
        row.end()?;
        Ok(out)
    }
}
