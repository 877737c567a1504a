//! The texts of tables and samples that people read: names of rows, cautions, and what samples are called.

use thinwright_catalog::Catalog;
use thinwright_core::Field;
use thinwright_jobfile::samples;

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
    for job in samples().iter().map(|sample| sample.job()) {
        out.push(job.answers.text(Field::Name.into()).to_owned());
        out.push(job.title);
    }
    out
}
