//! Classes of machines.

use crate::error::{CatalogError, Fault};
use crate::range::{Origin, Range};
use crate::row::Row;
use thinwright_quantity::{
    Acceleration, Duration, Force, Length, Power, Speed, SpindleSpeed, Stiffness,
};

/// A class of machines, with the ranges that its members fall in.
#[derive(Clone, Debug, PartialEq)]
pub struct MachineRow {
    /// Id.
    pub id: String,
    /// Name in the trade.
    pub name: String,
    /// Static stiffness at the spindle nose, sideways, tool left out.
    pub stiffness: Range<Stiffness>,
    /// Total indicated runout at the cutter.
    pub runout: Range<Length>,
    /// Motor power over spindle speed, speeds increasing; linear between the points.
    pub curve: Vec<(SpindleSpeed, Power)>,
    /// Power at the cutter over power of the motor.
    pub efficiency: Range<f64>,
    /// Least spindle speed.
    pub n_min: SpindleSpeed,
    /// Greatest spindle speed.
    pub n_max: SpindleSpeed,
    /// Rapid feed.
    pub feed_max: Speed,
    /// Feed at which it still cuts and keeps its path.
    pub feed_reliable: Speed,
    /// Acceleration of the axes in the plane.
    pub acceleration: Acceleration,
    /// Thrust of an axis at cutting feeds before it stalls or loses steps.
    pub axis_thrust: Range<Force>,
    /// Diameter of collet nut or holder nose just above the cutter.
    pub nut_diameter: Length,
    /// Damping ratio of the mode felt at the cutter.
    pub damping: Range<f64>,
    /// What is run on such machines in aluminium with carbide: `ap ae / D^2`, from cautious to bold.
    pub practice: (f64, f64),
    /// Time for a cutter change with its Z reset.
    pub change: Duration,
    /// Whether cutters are changed by hand.
    pub change_by_hand: bool,
    /// Scatter of a position or of a Z reset from one cut to the next.
    pub positioning: Length,
    /// Backlash of the axes in the plane.
    pub backlash: Length,
    /// Keys of the literature list.
    pub sources: Vec<String>,
    /// How the row is known: by the weakest of its numbers.
    pub known: Origin,
    /// What a reader must know of the row.
    pub note: String,
}

impl MachineRow {
    /// Reads a row.
    pub(crate) fn read(mut row: Row) -> Result<MachineRow, CatalogError> {
        let standing = row.standing()?;
        let curve = row.ladder::<2>("curve_rpm_kw")?;
        let out = MachineRow {
            id: row.id(),
            name: row.text("name")?,
            stiffness: row.range("stiffness_n_per_um")?.map(Stiffness::n_per_um),
            runout: row.range("runout_mm")?.map(Length::mm),
            curve: curve
                .iter()
                .map(|[n, p]| (SpindleSpeed::rpm(*n), Power::kw(*p)))
                .collect(),
            efficiency: row.range("efficiency")?,
            n_min: SpindleSpeed::rpm(row.positive("n_min_rpm")?),
            n_max: SpindleSpeed::rpm(row.positive("n_max_rpm")?),
            feed_max: Speed::mm_per_min(row.positive("feed_max_mm_per_min")?),
            feed_reliable: Speed::mm_per_min(row.positive("feed_reliable_mm_per_min")?),
            acceleration: Acceleration::mm_per_s2(row.positive("acceleration_mm_per_s2")?),
            axis_thrust: row.range("axis_thrust_n")?.map(Force::n),
            nut_diameter: Length::mm(row.positive("nut_diameter_mm")?),
            damping: row.range("damping")?,
            practice: row.pair("practice_ap_ae_over_d2")?,
            change: Duration::s(row.positive("change_s")?),
            change_by_hand: row.flag("change_by_hand")?,
            positioning: Length::mm(row.positive("positioning_mm")?),
            backlash: Length::mm(row.zero_or_more("backlash_mm")?),
            sources: standing.sources,
            known: standing.known,
            note: standing.note,
        };
        row.hold(
            "stiffness_n_per_um",
            out.stiffness.low.si() > 0.0,
            Fault::NotPositive,
        )?;
        row.hold(
            "n_max_rpm",
            out.n_min.si() < out.n_max.si(),
            Fault::OutOfOrder,
        )?;
        row.hold(
            "feed_reliable_mm_per_min",
            out.feed_reliable.si() <= out.feed_max.si(),
            Fault::OutOfOrder,
        )?;
        row.hold(
            "efficiency",
            out.efficiency.low > 0.0 && out.efficiency.high <= 1.0,
            Fault::OutOfBounds,
        )?;
        row.hold(
            "damping",
            out.damping.low > 0.0 && out.damping.high < 1.0,
            Fault::OutOfBounds,
        )?;
        row.end()?;
        Ok(out)
    }
}
