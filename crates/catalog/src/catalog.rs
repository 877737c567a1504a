//! All tables together, and the way to look a row up.

use crate::builtin;
use crate::caution::CautionRow;
use crate::cutter::{CutterMaterial, CutterRow};
use crate::cutter_material::CutterMaterialRow;
use crate::error::CatalogError;
use crate::hold::{BackingRow, ClearingRow, HoldRow};
use crate::literature::{self, LiteratureEntry};
use crate::machine::MachineRow;
use crate::material::MaterialRow;
use crate::numbers::{NumberRow, Numbers};
use crate::row::{self, Row};
use crate::trouble::TroubleRow;

/// A data file: a name for messages, and its text.
#[derive(Clone, Copy, Debug)]
pub struct DataFile<'a> {
    /// Name, as messages give it.
    pub name: &'a str,
    /// JSON.
    pub text: &'a str,
}

/// All tables.
#[derive(Clone, Debug, PartialEq)]
pub struct Catalog {
    /// Materials, by group of ISO 513.
    pub materials: Vec<MaterialRow>,
    /// Classes of machines, from the softest.
    pub machines: Vec<MachineRow>,
    /// Starter racks.
    pub cutters: Vec<CutterRow>,
    /// Carbide and high-speed steel.
    pub cutter_materials: Vec<CutterMaterialRow>,
    /// Ways of holding.
    pub holds: Vec<HoldRow>,
    /// Ways of backing the web.
    pub backings: Vec<BackingRow>,
    /// Ways of clearing chips.
    pub clearings: Vec<ClearingRow>,
    /// Margins and defaults.
    pub numbers: Numbers,
    /// The rows behind `numbers`, with source and purpose.
    pub number_rows: Vec<NumberRow>,
    /// Cautions.
    pub cautions: Vec<CautionRow>,
    /// Signs of trouble with their causes.
    pub troubles: Vec<TroubleRow>,
    /// What the rows name as their sources.
    pub literature: Vec<LiteratureEntry>,
}

/// The tables while they fill.
#[derive(Default)]
struct Tables {
    materials: Vec<MaterialRow>,
    machines: Vec<MachineRow>,
    cutters: Vec<CutterRow>,
    cutter_materials: Vec<CutterMaterialRow>,
    holds: Vec<HoldRow>,
    backings: Vec<BackingRow>,
    clearings: Vec<ClearingRow>,
    number_rows: Vec<NumberRow>,
    cautions: Vec<CautionRow>,
    troubles: Vec<TroubleRow>,
}

impl Catalog {
    /// The tables that are built in.
    ///
    /// # Panics
    /// Never in a build that passed its tests: `the_tables_built_in_are_sound` reads them all.
    pub fn builtin() -> Catalog {
        Catalog::read(builtin::FILES, builtin::LITERATURE).expect("the_tables_built_in_are_sound")
    }

    /// Reads tables from files; the `table` field of each file says which table its rows belong to.
    ///
    /// A table may be spread over several files; ids are unique in a table.
    /// # Errors
    /// The first fault that is found, with file, row and field; [`CatalogError::NoSuchRow`] for a number or a cutter
    /// material that the program cannot do without.
    pub fn read(files: &[DataFile<'_>], literature: &str) -> Result<Catalog, CatalogError> {
        let mut tables = Tables::default();
        for file in files {
            let table = row::split(file.name, file.text)?;
            for row in table.rows {
                tables.add(&table.name, file.name, row)?;
            }
        }
        for (id, wanted) in [
            ("carbide", CutterMaterial::Carbide),
            ("hss", CutterMaterial::Hss),
        ] {
            if !tables
                .cutter_materials
                .iter()
                .any(|row| row.material == wanted)
            {
                return Err(CatalogError::NoSuchRow {
                    table: "cutter materials",
                    row: id.to_owned(),
                });
            }
        }
        Ok(Catalog {
            numbers: Numbers::gather(&tables.number_rows)?,
            materials: tables.materials,
            machines: tables.machines,
            cutters: tables.cutters,
            cutter_materials: tables.cutter_materials,
            holds: tables.holds,
            backings: tables.backings,
            clearings: tables.clearings,
            number_rows: tables.number_rows,
            cautions: tables.cautions,
            troubles: tables.troubles,
            literature: literature::entries(literature),
        })
    }

    /// The material of an id.
    pub fn material(&self, id: &str) -> Option<&MaterialRow> {
        self.materials.iter().find(|row| row.id == id)
    }

    /// The class of machine of an id.
    pub fn machine(&self, id: &str) -> Option<&MachineRow> {
        self.machines.iter().find(|row| row.id == id)
    }

    /// The cutter of an id.
    pub fn cutter(&self, id: &str) -> Option<&CutterRow> {
        self.cutters.iter().find(|row| row.id == id)
    }

    /// The row of a cutter material; reading made sure that carbide and high-speed steel are there.
    pub fn cutter_material(&self, material: CutterMaterial) -> Option<&CutterMaterialRow> {
        self.cutter_materials
            .iter()
            .find(|row| row.material == material)
    }

    /// The way of holding of an id.
    pub fn hold(&self, id: &str) -> Option<&HoldRow> {
        self.holds.iter().find(|row| row.id == id)
    }

    /// The backing of an id.
    pub fn backing(&self, id: &str) -> Option<&BackingRow> {
        self.backings.iter().find(|row| row.id == id)
    }

    /// The way of clearing chips of an id.
    pub fn clearing(&self, id: &str) -> Option<&ClearingRow> {
        self.clearings.iter().find(|row| row.id == id)
    }

    /// The row behind a number.
    pub fn number_row(&self, id: &str) -> Option<&NumberRow> {
        self.number_rows.iter().find(|row| row.id == id)
    }

    /// The caution of an id.
    pub fn caution(&self, id: &str) -> Option<&CautionRow> {
        self.cautions.iter().find(|row| row.id == id)
    }

    /// The entry of the literature list behind a key.
    pub fn source(&self, key: &str) -> Option<&LiteratureEntry> {
        self.literature.iter().find(|entry| entry.key == key)
    }
}

impl Tables {
    fn add(&mut self, table: &str, file: &str, row: Row) -> Result<(), CatalogError> {
        match table {
            "materials" => push(&mut self.materials, row, MaterialRow::read, |r| &r.id),
            "machines" => push(&mut self.machines, row, MachineRow::read, |r| &r.id),
            "cutters" => push(&mut self.cutters, row, CutterRow::read, |r| &r.id),
            "cutter materials" => push(
                &mut self.cutter_materials,
                row,
                CutterMaterialRow::read,
                |r| &r.id,
            ),
            "holds" => push(&mut self.holds, row, HoldRow::read, |r| &r.id),
            "backings" => push(&mut self.backings, row, BackingRow::read, |r| &r.id),
            "clearings" => push(&mut self.clearings, row, ClearingRow::read, |r| &r.id),
            "numbers" => push(&mut self.number_rows, row, NumberRow::read, |r| &r.id),
            "cautions" => push(&mut self.cautions, row, CautionRow::read, |r| &r.id),
            "trouble" => push(&mut self.troubles, row, TroubleRow::read, |r| &r.id),
            _ => Err(CatalogError::NotATable {
                file: file.to_owned(),
            }),
        }
    }
}

/// Reads a row to the end of its table, unless its id is taken.
fn push<T>(
    table: &mut Vec<T>,
    row: Row,
    read: impl Fn(Row) -> Result<T, CatalogError>,
    id: impl Fn(&T) -> &String,
) -> Result<(), CatalogError> {
    let name = row.id();
    if table.iter().any(|old| *id(old) == name) {
        return Err(row.twice());
    }
    table.push(read(row)?);
    Ok(())
}
