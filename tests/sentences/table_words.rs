//! The texts of the tables that people read: names of rows, and cautions.

use thinwright_catalog::Catalog;

/// All of them.
pub(crate) fn texts() -> Vec<String> {
    let catalog = Catalog::builtin();
    let mut out: Vec<String> = Vec::new();
    out.extend(catalog.materials.into_iter().map(|row| row.name));
    out.extend(catalog.machines.into_iter().map(|row| row.name));
    out.extend(catalog.holds.into_iter().map(|row| row.name));
    out.extend(catalog.backings.into_iter().map(|row| row.name));
    out.extend(catalog.clearings.into_iter().map(|row| row.name));
    out.extend(catalog.cautions.into_iter().map(|row| row.text));
    out
}
