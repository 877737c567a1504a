//! What cutters are made of.

use crate::cutter::{CUTTER_MATERIALS, CutterMaterial};
use crate::error::{CatalogError, Fault};
use crate::range::{Origin, Range};
use crate::row::Row;
use thinwright_quantity::{Density, Length, Stress};

/// A cutter material.
#[derive(Clone, Debug, PartialEq)]
pub struct CutterMaterialRow {
    /// Id: `carbide` or `hss`.
    pub id: String,
    /// Which one it is.
    pub material: CutterMaterial,
    /// Name in the trade.
    pub name: String,
    /// Young's modulus.
    pub e_mod: Stress,
    /// Its spread over grades.
    pub e_mod_range: Range<Stress>,
    /// Density.
    pub density: Density,
    /// Bending stress at which it breaks (transverse rupture strength).
    pub rupture_strength: Range<Stress>,
    /// Diameter that bends like the fluted part, over the cutting diameter.
    pub effective_diameter_ratio: f64,
    /// Edge radius of a new cutter.
    pub edge_radius_new: Range<Length>,
    /// Edge radius of a cutter that has done some work.
    pub edge_radius_used: Range<Length>,
    /// Keys of the literature list.
    pub sources: Vec<String>,
    /// How the row is known: by the weakest of its numbers.
    pub known: Origin,
    /// What a reader must know of the row.
    pub note: String,
}

impl CutterMaterialRow {
    /// Reads a row.
    pub(crate) fn read(mut row: Row) -> Result<CutterMaterialRow, CatalogError> {
        let standing = row.standing()?;
        let e_mod_range = row
            .range("e_mod_gpa")?
            .map(|gpa| Stress::n_per_mm2(gpa * 1000.0));
        let out = CutterMaterialRow {
            id: row.id(),
            material: row.choice("material", CUTTER_MATERIALS)?,
            name: row.text("name")?,
            e_mod: e_mod_range.likely,
            e_mod_range,
            density: Density::kg_per_m3(row.positive("density_kg_per_m3")?),
            rupture_strength: row
                .range("rupture_strength_n_per_mm2")?
                .map(Stress::n_per_mm2),
            effective_diameter_ratio: row.positive("effective_diameter_ratio")?,
            edge_radius_new: row
                .range("edge_radius_new_um")?
                .map(|um| Length::mm(um / 1000.0)),
            edge_radius_used: row
                .range("edge_radius_used_um")?
                .map(|um| Length::mm(um / 1000.0)),
            sources: standing.sources,
            known: standing.known,
            note: standing.note,
        };
        row.hold(
            "effective_diameter_ratio",
            out.effective_diameter_ratio <= 1.0,
            Fault::OutOfBounds,
        )?;
        row.hold(
            "e_mod_gpa",
            out.e_mod_range.low.si() > 0.0,
            Fault::NotPositive,
        )?;
        row.end()?;
        Ok(out)
    }
}
