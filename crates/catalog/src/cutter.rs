//! Cutters of the starter racks.

use crate::error::{CatalogError, Fault};
use crate::range::Origin;
use crate::row::Row;
use thinwright_quantity::{Angle, Length};

/// What a cutter is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum CutterKind {
    /// End mill.
    EndMill,
    /// Twist drill.
    Drill,
}

/// What a cutter is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum CutterMaterial {
    /// Cemented carbide.
    Carbide,
    /// High-speed steel.
    Hss,
}

const KINDS: &[(&str, CutterKind)] = &[
    ("end mill", CutterKind::EndMill),
    ("drill", CutterKind::Drill),
];

/// The words for a cutter material in the files.
pub(crate) const CUTTER_MATERIALS: &[(&str, CutterMaterial)] = &[
    ("carbide", CutterMaterial::Carbide),
    ("hss", CutterMaterial::Hss),
];

/// A cutter, as it can be bought.
#[derive(Clone, Debug, PartialEq)]
pub struct CutterRow {
    /// Id.
    pub id: String,
    /// End mill or drill.
    pub kind: CutterKind,
    /// Cutting diameter, DC of ISO 13399.
    pub d: Length,
    /// Flutes, ZEFP.
    pub flutes: u32,
    /// Flute length, APMX.
    pub flute_length: Length,
    /// Usable length from the end to where the shank is wider than the cutter, LU; to the grip where it never is.
    pub reach: Length,
    /// Diameter of the relieved neck, if there is one.
    pub neck_d: Option<Length>,
    /// Shank diameter, DCON.
    pub shank_d: Length,
    /// Length over all, OAL.
    pub overall: Length,
    /// Corner radius, RE; 0 for a sharp corner.
    pub corner_radius: Length,
    /// Helix angle, FHA.
    pub helix: Angle,
    /// What it is made of.
    pub material: CutterMaterial,
    /// Whether it cuts to its centre, CCC.
    pub centre_cutting: bool,
    /// Rack: `metric` or `inch`.
    pub series: String,
    /// Keys of the literature list.
    pub sources: Vec<String>,
    /// How the row is known.
    pub known: Origin,
    /// What a reader must know of the row.
    pub note: String,
}

impl CutterRow {
    /// Reads a row.
    pub(crate) fn read(mut row: Row) -> Result<CutterRow, CatalogError> {
        let standing = row.standing()?;
        let out = CutterRow {
            id: row.id(),
            kind: row.choice("kind", KINDS)?,
            d: Length::mm(row.positive("d_mm")?),
            flutes: row.count("flutes")?,
            flute_length: Length::mm(row.positive("flute_length_mm")?),
            reach: Length::mm(row.positive("reach_mm")?),
            neck_d: row.optional("neck_d_mm")?.map(Length::mm),
            shank_d: Length::mm(row.positive("shank_d_mm")?),
            overall: Length::mm(row.positive("overall_mm")?),
            corner_radius: Length::mm(row.zero_or_more("corner_radius_mm")?),
            helix: Angle::deg(row.zero_or_more("helix_deg")?),
            material: row.choice("material", CUTTER_MATERIALS)?,
            centre_cutting: row.flag("centre_cutting")?,
            series: row.text("series")?,
            sources: standing.sources,
            known: standing.known,
            note: standing.note,
        };
        row.hold("flutes", out.flutes >= 1, Fault::OutOfBounds)?;
        row.hold(
            "reach_mm",
            out.flute_length.si() <= out.reach.si(),
            Fault::OutOfOrder,
        )?;
        row.hold(
            "overall_mm",
            out.reach.si() < out.overall.si(),
            Fault::OutOfOrder,
        )?;
        row.hold(
            "corner_radius_mm",
            2.0 * out.corner_radius.si() <= out.d.si(),
            Fault::OutOfBounds,
        )?;
        let slender = out.neck_d.is_none_or(|neck| neck.si() < out.d.si());
        row.hold("neck_d_mm", slender, Fault::OutOfBounds)?;
        row.end()?;
        Ok(out)
    }
}
