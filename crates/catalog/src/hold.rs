//! Holding the part, backing its web, clearing its chips.

use crate::error::{CatalogError, Fault};
use crate::range::{Origin, Range};
use crate::row::Row;
use thinwright_quantity::{Duration, Force, Stress};

/// What a hold presses or sticks with.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Grip {
    /// A clamping force, of the whole hold or of each screw (`HoldRow::each`).
    Force(Range<Force>),
    /// A pressure on the area held: vacuum, or the strength of a bond with its margin.
    Pressure(Range<Stress>),
}

/// A way of holding the part.
#[derive(Clone, Debug, PartialEq)]
pub struct HoldRow {
    /// Id.
    pub id: String,
    /// Name in the trade.
    pub name: String,
    /// Friction between part and hold; for a bond, shear strength over the strength used as pressure.
    pub friction: Range<f64>,
    /// What it presses with.
    pub grip: Grip,
    /// Whether `grip` is that of one screw or clamp of several.
    pub each: bool,
    /// How many screws or clamps are assumed when nobody says.
    pub usual_count: u32,
    /// Faces that the clamping force loads in friction: 2 for jaws, 1 for what presses the part down.
    pub friction_faces: u32,
    /// Whether screws, pins or stops take side load by shear, not by friction alone.
    pub positive: bool,
    /// Side load that one screw or stop takes by shear, where `positive`.
    pub shear_each: Option<Force>,
    /// Whether it holds the part down against an upward pull by more than friction.
    pub holds_down: bool,
    /// Whether it can hold the part once the outline has been cut through.
    pub keeps_after_outline: bool,
    /// Whether the whole face stays free of clamps.
    pub face_free: bool,
    /// Whether it squeezes the rim sideways, and so can bow the web.
    pub squeezes: bool,
    /// Pressure under the part over how far it sinks into what it lies on, N/m3: lets the rim rock.
    pub seat: f64,
    /// Whether a cut through the web or into the bed breaks the hold.
    pub lost_by_cutting_through: bool,
    /// Whether it suits a round outline.
    pub suits_round: bool,
    /// Whether it suits a rectangular outline.
    pub suits_rectangular: bool,
    /// Whether it needs the boss to be bored and bolted.
    pub needs_boss: bool,
    /// Materials (ids) that it fails on.
    pub fails_on: Vec<String>,
    /// Time to set up.
    pub setup: Duration,
    /// Ids of cautions.
    pub cautions: Vec<String>,
    /// Keys of the literature list.
    pub sources: Vec<String>,
    /// How the row is known.
    pub known: Origin,
    /// What a reader must know of the row.
    pub note: String,
}

/// A way of backing the web when the second face is cut.
#[derive(Clone, Debug, PartialEq)]
pub struct BackingRow {
    /// Id.
    pub id: String,
    /// Name in the trade.
    pub name: String,
    /// Winkler modulus of the bed, pressure over deflection, N/m3; all 0 for none.
    pub bed: Range<f64>,
    /// Whether it is bonded to the web and so resists a pull away from it.
    pub pulls_up: bool,
    /// Gap that must be expected under the web, m, before it bears.
    pub gap: Range<f64>,
    /// Time to make and remove it.
    pub setup: Duration,
    /// Ids of cautions.
    pub cautions: Vec<String>,
    /// Materials (ids) that it fails on.
    pub fails_on: Vec<String>,
    /// Keys of the literature list.
    pub sources: Vec<String>,
    /// How the row is known.
    pub known: Origin,
    /// What a reader must know of the row.
    pub note: String,
}

/// A way of getting chips out of the cut.
#[derive(Clone, Debug, PartialEq)]
pub struct ClearingRow {
    /// Id.
    pub id: String,
    /// Name in the trade.
    pub name: String,
    /// Factor on the depth at which a slot packs with chips; 1 for compressed air.
    pub depth_factor: f64,
    /// Whether it also wets the cut.
    pub wet: bool,
    /// Whether it also cools.
    pub cools: bool,
    /// Materials (ids) that it must not be used on.
    pub fails_on: Vec<String>,
    /// Ids of cautions.
    pub cautions: Vec<String>,
    /// Keys of the literature list.
    pub sources: Vec<String>,
    /// How the row is known.
    pub known: Origin,
    /// What a reader must know of the row.
    pub note: String,
}

impl HoldRow {
    /// Reads a row.
    pub(crate) fn read(mut row: Row) -> Result<HoldRow, CatalogError> {
        let standing = row.standing()?;
        let grip = match row.choice("grip", &[("force", true), ("pressure", false)])? {
            true => Grip::Force(row.range("force_n")?.map(Force::n)),
            false => Grip::Pressure(row.range("pressure_n_per_mm2")?.map(Stress::n_per_mm2)),
        };
        let out = HoldRow {
            id: row.id(),
            name: row.text("name")?,
            friction: row.range("friction")?,
            grip,
            each: row.flag("each")?,
            usual_count: row.count("usual_count")?,
            friction_faces: row.count("friction_faces")?,
            positive: row.flag("positive")?,
            shear_each: row.optional("shear_each_n")?.map(Force::n),
            holds_down: row.flag("holds_down")?,
            keeps_after_outline: row.flag("keeps_after_outline")?,
            face_free: row.flag("face_free")?,
            squeezes: row.flag("squeezes")?,
            seat: row.positive("seat_n_per_mm3")? * 1.0e9,
            lost_by_cutting_through: row.flag("lost_by_cutting_through")?,
            suits_round: row.flag("suits_round")?,
            suits_rectangular: row.flag("suits_rectangular")?,
            needs_boss: row.flag("needs_boss")?,
            fails_on: row.texts("fails_on")?,
            setup: Duration::s(row.positive("setup_s")?),
            cautions: row.texts("cautions")?,
            sources: standing.sources,
            known: standing.known,
            note: standing.note,
        };
        row.hold("friction", out.friction.low > 0.0, Fault::NotPositive)?;
        row.hold("usual_count", out.usual_count >= 1, Fault::OutOfBounds)?;
        row.hold(
            "friction_faces",
            (1..=2).contains(&out.friction_faces),
            Fault::OutOfBounds,
        )?;
        row.hold(
            "shear_each_n",
            out.positive == out.shear_each.is_some(),
            Fault::OutOfBounds,
        )?;
        row.hold(
            "suits_round",
            out.suits_round || out.suits_rectangular,
            Fault::OutOfBounds,
        )?;
        row.end()?;
        Ok(out)
    }
}

impl BackingRow {
    /// Reads a row.
    pub(crate) fn read(mut row: Row) -> Result<BackingRow, CatalogError> {
        let standing = row.standing()?;
        let out = BackingRow {
            id: row.id(),
            name: row.text("name")?,
            bed: row.range("bed_n_per_m3")?,
            pulls_up: row.flag("pulls_up")?,
            gap: row.range("gap_mm")?.map(|mm| mm * 1.0e-3),
            setup: Duration::s(row.zero_or_more("setup_s")?),
            cautions: row.texts("cautions")?,
            fails_on: row.texts("fails_on")?,
            sources: standing.sources,
            known: standing.known,
            note: standing.note,
        };
        row.end()?;
        Ok(out)
    }
}

impl ClearingRow {
    /// Reads a row.
    pub(crate) fn read(mut row: Row) -> Result<ClearingRow, CatalogError> {
        let standing = row.standing()?;
        let out = ClearingRow {
            id: row.id(),
            name: row.text("name")?,
            depth_factor: row.positive("depth_factor")?,
            wet: row.flag("wet")?,
            cools: row.flag("cools")?,
            fails_on: row.texts("fails_on")?,
            cautions: row.texts("cautions")?,
            sources: standing.sources,
            known: standing.known,
            note: standing.note,
        };
        row.end()?;
        Ok(out)
    }
}
