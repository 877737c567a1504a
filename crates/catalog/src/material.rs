//! What parts are made of.

use crate::error::{CatalogError, Fault};
use crate::range::{Origin, Range};
use crate::row::Row;
use thinwright_quantity::{Angle, Density, Length, Speed, Stress};

/// Application groups of ISO 513, and one for what it leaves out.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Iso513 {
    /// Steel, except stainless with an austenitic structure.
    P,
    /// Stainless austenitic and duplex steel.
    M,
    /// Cast iron.
    K,
    /// Non-ferrous metals.
    N,
    /// Heat-resistant alloys and titanium.
    S,
    /// Hardened steel.
    H,
    /// Not a group of the standard: plastics, fibre-filled plastics, wood.
    O,
}

const GROUPS: &[(&str, Iso513)] = &[
    ("P", Iso513::P),
    ("M", Iso513::M),
    ("K", Iso513::K),
    ("N", Iso513::N),
    ("S", Iso513::S),
    ("H", Iso513::H),
    ("O", Iso513::O),
];

/// A form in which a material is bought, as far as it says something about stress inside.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum StockForm {
    /// Rolled plate, sheet or bar.
    Rolled,
    /// Plate stretched after heat treatment, or otherwise relieved of stress.
    Stretched,
    /// Cast plate, block or bar.
    Cast,
    /// Extruded plate, bar or profile.
    Extruded,
    /// Cold drawn bar: much stress in its skin.
    Drawn,
    /// Forged.
    Forged,
    /// Pressed or laminated board.
    Board,
}

const FORMS: &[(&str, StockForm)] = &[
    ("rolled", StockForm::Rolled),
    ("stretched", StockForm::Stretched),
    ("cast", StockForm::Cast),
    ("extruded", StockForm::Extruded),
    ("drawn", StockForm::Drawn),
    ("forged", StockForm::Forged),
    ("board", StockForm::Board),
];

/// Feed per tooth that a cutter of one diameter is run at.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ChipLoad {
    /// Cutter diameter.
    pub d: Length,
    /// Least feed per tooth usual at that diameter.
    pub low: Length,
    /// Greatest feed per tooth usual at that diameter.
    pub high: Length,
}

/// A material, as it is milled.
#[derive(Clone, Debug, PartialEq)]
pub struct MaterialRow {
    /// Id.
    pub id: String,
    /// Name in the trade.
    pub name: String,
    /// Group of ISO 513.
    pub iso513: Iso513,
    /// Specific cutting force at 1 mm chip thickness, kc1.1, with its spread over sources at 0.1 mm brought back to 1 mm by `mc`.
    pub kc1_1: Range<Stress>,
    /// Exponent of kc = kc1.1 (h / 1 mm)^-mc.
    pub mc: f64,
    /// Whether a published kc stands behind `kc1_1`; else it is assumed from cutting energy.
    pub kc_published: bool,
    /// Radial over tangential force, edge forces included.
    pub radial_ratio: Range<f64>,
    /// Axial over tangential force at about 30 degrees of helix, edge forces included, as a magnitude.
    pub axial_ratio: Range<f64>,
    /// Work per volume removed by a sharp edge; 1 W s/mm3 is 1000 N/mm2.
    pub energy: (Stress, Stress),
    /// Factor on force for a worn edge.
    pub wear_factor: f64,
    /// Surface speed with carbide: to start with, and at most.
    pub vc_carbide: (Speed, Speed),
    /// Surface speed with high-speed steel: to start with, and at most.
    pub vc_hss: (Speed, Speed),
    /// Feed per tooth by diameter, diameters increasing.
    pub chip_load: Vec<ChipLoad>,
    /// Least chip that still cuts, over edge radius: low and high end of what is published.
    pub least_chip_ratio: Range<f64>,
    /// Least feed per tooth that carries the heat away, for what melts.
    pub heat: Option<Length>,
    /// Ramp angle: to start with, and at most.
    pub ramp: (Angle, Angle),
    /// Volume of loose chips over volume cut.
    pub bulk_factor: Range<f64>,
    /// Young's modulus.
    pub e_mod: Stress,
    /// Poisson's ratio.
    pub nu: f64,
    /// Density.
    pub density: Density,
    /// Yield strength, or what stands in for it where a material does not yield (the note says).
    pub yield_strength: Stress,
    /// Linear thermal expansion, 1/K.
    pub expansion_per_k: f64,
    /// Forms in which it is sold.
    pub forms: Vec<StockForm>,
    /// Ids of cautions that belong to it.
    pub cautions: Vec<String>,
    /// Keys of the literature list.
    pub sources: Vec<String>,
    /// How the row is known: by the weakest of its numbers.
    pub known: Origin,
    /// What a reader must know of the row.
    pub note: String,
}

impl MaterialRow {
    /// Reads a row.
    pub(crate) fn read(mut row: Row) -> Result<MaterialRow, CatalogError> {
        let standing = row.standing()?;
        let chip_load = row.ladder::<3>("chip_load_mm")?;
        for [_, low, high] in &chip_load {
            row.hold("chip_load_mm", *low > 0.0, Fault::NotPositive)?;
            row.hold("chip_load_mm", low <= high, Fault::OutOfOrder)?;
        }
        let (energy_low, energy_high) = row.pair("energy_w_s_per_mm3")?;
        let (carbide_low, carbide_high) = row.pair("vc_carbide_m_per_min")?;
        let (hss_low, hss_high) = row.pair("vc_hss_m_per_min")?;
        let (ramp_low, ramp_high) = row.pair("ramp_deg")?;
        let out = MaterialRow {
            id: row.id(),
            name: row.text("name")?,
            iso513: row.choice("iso513", GROUPS)?,
            kc1_1: row.range("kc1_1_n_per_mm2")?.map(Stress::n_per_mm2),
            mc: row.zero_or_more("mc")?,
            kc_published: row.flag("kc_published")?,
            radial_ratio: row.range("radial_ratio")?,
            axial_ratio: row.range("axial_ratio")?,
            energy: (
                Stress::n_per_mm2(energy_low * 1000.0),
                Stress::n_per_mm2(energy_high * 1000.0),
            ),
            wear_factor: row.positive("wear_factor")?,
            vc_carbide: (
                Speed::m_per_min(carbide_low),
                Speed::m_per_min(carbide_high),
            ),
            vc_hss: (Speed::m_per_min(hss_low), Speed::m_per_min(hss_high)),
            chip_load: chip_load.iter().map(|step| chip_load_step(*step)).collect(),
            least_chip_ratio: row.range("least_chip_ratio")?,
            heat: row.optional("heat_fz_mm")?.map(Length::mm),
            ramp: (Angle::deg(ramp_low), Angle::deg(ramp_high)),
            bulk_factor: row.range("bulk_factor")?,
            e_mod: Stress::n_per_mm2(row.positive("e_mod_gpa")? * 1000.0),
            nu: row.positive("nu")?,
            density: Density::kg_per_m3(row.positive("density_kg_per_m3")?),
            yield_strength: Stress::n_per_mm2(row.positive("yield_n_per_mm2")?),
            expansion_per_k: row.positive("expansion_um_per_m_k")? * 1.0e-6,
            forms: row.choices("forms", FORMS)?,
            cautions: row.texts("cautions")?,
            sources: standing.sources,
            known: standing.known,
            note: standing.note,
        };
        row.hold("mc", out.mc < 1.0, Fault::OutOfBounds)?;
        row.hold("nu", out.nu < 0.5, Fault::OutOfBounds)?;
        row.hold("wear_factor", out.wear_factor >= 1.0, Fault::OutOfBounds)?;
        row.hold(
            "bulk_factor",
            out.bulk_factor.low >= 1.0,
            Fault::OutOfBounds,
        )?;
        row.end()?;
        Ok(out)
    }
}

fn chip_load_step([d, low, high]: [f64; 3]) -> ChipLoad {
    ChipLoad {
        d: Length::mm(d),
        low: Length::mm(low),
        high: Length::mm(high),
    }
}
