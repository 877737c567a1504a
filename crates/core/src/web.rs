//! The web under the cutter, in the state that the part is in: the one place that knows plates.
//!
//! A mesh on the part's real outline, boss, rim and slots included (`plan`), takes the thickness and the support of each
//! state (`standing`) and is asked for its softest place (`asked`). What is left out is said in `reckon`.

mod ahead;
mod asked;
mod book;
mod plan;
mod standing;
mod trust;

pub(crate) use asked::{plate, softest};
pub(crate) use book::WebBook;
pub(crate) use plan::place;
pub(crate) use standing::{Standing, layout};

pub use crate::picture::WebError;

use crate::job::Job;
use crate::part::{Part, State};
use crate::plan::{Contour, Point};
use plan::WebPlan;
use thinwright_mechanics::rib;
use thinwright_plate::fem::Plate;
use thinwright_plate::{Sheet, stress};
use trust::Trust;

/// The web's answer to a force of the cutter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WebAnswer {
    /// Thickness that is left, m.
    pub thickness: f64,
    /// Compliance at the softest place without backing, m/N: the mean of the patch under the thinnest mill at hand.
    pub bare: f64,
    /// Where the softest place is, mm.
    pub at: Point,
    /// First frequency without backing, Hz.
    pub frequency: f64,
    /// Radius of the clamped disc that bending stress is taken from, m.
    pub radius: f64,
    /// Free span, m: between rim and rim, or rim and bolted boss.
    pub span: f64,
    /// The plate that it is.
    pub sheet: Sheet,
    /// Whether open slots soften it.
    pub slotted: bool,
    /// Its compliance on the backing, if it has one.
    pub bed: Option<OnBed>,
    /// By how much the mesh came out too stiff, as a share: it is set right in all of the above.
    pub error: f64,
}

/// Compliance on a bed at two of its moduli.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OnBed {
    /// Winkler modulus, N/m3, and compliance, m/N: at the low end.
    pub low: (f64, f64),
    /// The same at the likely value.
    pub likely: (f64, f64),
}

impl OnBed {
    /// Compliance on a bed of this modulus: a power of it, as for a wide plate, through the two that are known.
    fn at(&self, bed: f64) -> f64 {
        let ((k, c), (k_likely, c_likely)) = (self.low, self.likely);
        let power = libm::log(c_likely / c) / libm::log(k_likely / k);
        let power = if power.is_finite() { power } else { 0.0 };
        c * libm::pow(bed / k, power)
    }
}

impl WebAnswer {
    /// Bending stress under a force of 1 N on a patch of this radius (m), Pa/N; infinite where there is no answer.
    pub fn stress(&self, patch: f64) -> f64 {
        // A patch wider than the plate beneath it strains it no more than one as wide.
        let patch = patch.min(self.radius);
        stress::disc_centre(&self.sheet, self.radius, patch).unwrap_or(f64::INFINITY)
    }

    /// Compliance when pushed down on a bed of Winkler modulus `bed` (N/m3; 0 = none), m/N.
    pub fn backed(&self, bed: f64) -> f64 {
        match &self.bed {
            Some(on) if bed > 0.0 => on.at(bed).min(self.bare),
            _ => self.bare,
        }
    }

    /// Compliance with the backing as it likely is, m/N.
    pub(crate) fn likely(&self) -> f64 {
        self.backed(self.bed.map_or(0.0, |on| on.likely.0))
    }

    /// Where the softest place is, from the middle, m.
    pub fn softest(&self) -> f64 {
        self.at.distance(Point::new(0.0, 0.0)) * 1.0e-3
    }

    /// The moduli of its bed.
    fn bed_key(&self) -> (f64, f64) {
        self.bed.map_or((0.0, 0.0), |on| (on.low.0, on.likely.0))
    }

    /// The same web at another thickness: stiffness with the cube, on a bed with the power of one and a half; tone with
    /// the first power; stress follows from the sheet.
    pub(crate) fn at_thickness(self, thickness: f64) -> WebAnswer {
        let ratio = thickness / self.thickness;
        let softer = |(k, c): (f64, f64)| (k, c / (ratio * ratio.sqrt()));
        WebAnswer {
            thickness,
            bare: self.bare / ratio.powi(3),
            frequency: self.frequency * ratio,
            sheet: Sheet {
                t: thickness,
                ..self.sheet
            },
            bed: self.bed.map(|on| OnBed {
                low: softer(on.low),
                likely: softer(on.likely),
            }),
            ..self
        }
    }
}

/// Roundness 4 pi A / P2 above which an outline counts as a disc.
const ROUND: f64 = 0.97;

/// Free span of the floor, m: the way from rim to rim, or from rim to bolted boss.
fn span(part: &Part, bolted: bool) -> Option<f64> {
    let recess = part
        .recesses
        .iter()
        .min_by(|a, b| a.area.area_mm2().total_cmp(&b.area.area_mm2()))?;
    let outer = &recess.region.outer;
    let (area, length) = (outer.area().abs(), outer.length());
    if 4.0 * core::f64::consts::PI * area / (length * length) > ROUND {
        let bosses = recess.region.holes.iter().map(round_radius);
        let boss = bosses.fold(0.0, f64::max);
        let radius = round_radius(outer);
        let held = bolted && boss > 0.0;
        return Some(if held { radius - boss } else { 2.0 * radius });
    }
    let bounds = outer.bounds()?;
    Some(bounds.width().min(bounds.height()) * 1.0e-3)
}

/// Radius of the disc of a contour's area, m.
fn round_radius(contour: &Contour) -> f64 {
    (contour.area().abs() / core::f64::consts::PI).sqrt() * 1.0e-3
}

/// A place of the part's plan (mm) in the mesh, m.
pub(crate) fn place_back(at: Point) -> [f64; 2] {
    [at.x * 1.0e-3, at.y * 1.0e-3]
}

/// What the web is like as the part stands, under a patch as wide as the thinnest mill at hand, and on a bed whose
/// modulus (N/m3) is at least and likely so much.
///
/// `Ok(None)` where there is no web to speak of: no recess, or nothing thinner than the part.
///
/// Left out: the blank around the outline; a boss that merely touches the table (it may not); friction at the rim, which
/// rests on the table as on a bed that pulls as well as it pushes; the step of the middle plane at rim and boss (1.3 %).
///
/// # Errors
/// Why the plate gives no answer.
pub(crate) fn reckon(
    job: &Job,
    (plan, trust): (&WebPlan, Trust),
    standing: &Standing,
    bed: (f64, f64),
) -> Result<Option<WebAnswer>, WebError> {
    let part = &job.part;
    let thickness = part.web_now(standing.state);
    let Some(span) = span(part, standing.bolted).filter(|_| thickness > 0.0) else {
        return Ok(None);
    };
    let cells = standing.cells(part);
    let radius = asked::patch_radius(job);
    let on = |bed: f64| -> Result<(Plate, Vec<bool>), WebError> {
        let layout = layout(plan, standing, &cells, bed);
        let floor = (0..plan.of.len())
            .map(|t| layout.thickness[t] > 0.0 && plan.depth(standing.up, t) >= 0.0)
            .collect();
        Ok((asked::plate(job, plan, layout)?, floor))
    };
    let (mut plate, floor) = on(0.0)?;
    let Some(bare) = asked::ask(&mut plate, plan, radius, |t| floor[t]) else {
        return Ok(None);
    };
    let mut answer = WebAnswer {
        thickness,
        bare: trust.softer(bare.most),
        at: bare.at,
        frequency: trust.lower(asked::first_tone(&plate)),
        radius: bare.radius,
        span,
        sheet: Sheet {
            e_mod: job.material.e_mod.si(),
            nu: job.material.nu,
            rho: job.material.density.si(),
            t: thickness,
        },
        slotted: part.slots_open(standing.state),
        bed: None,
        error: trust.compliance,
    };
    if bed.0 > 0.0 {
        let give = |bed: f64| -> Result<Option<(f64, f64)>, WebError> {
            let (mut plate, floor) = on(bed)?;
            let softest = asked::softest(&mut plate, plan, radius, |t| floor[t]);
            Ok(softest.map(|(_, most)| (bed, trust.softer(most))))
        };
        let (low, likely) = (give(bed.0)?, give(bed.1)?);
        answer.bed = low.zip(likely).map(|(low, likely)| OnBed { low, likely });
    }
    Ok(Some(answer))
}

/// The ribs beside a slot while it is cut, sideways, m/N.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ribs {
    /// Compliance of the rib between two open slots: what the last slots of a row meet.
    pub open: f64,
    /// Compliance while the neighbour is not cut yet: what the first slot meets.
    pub solid: f64,
    /// First tone of the rib between two open slots, sideways, Hz.
    pub tone: f64,
}

/// The ribs of a part in a state; none where slots have no neighbours.
pub(crate) fn ribs(job: &Job, state: &State) -> Option<Ribs> {
    let part = &job.part;
    let (width, height) = (part.rib?, part.web_now(state));
    let longest = part.slots.iter().map(|s| s.length).fold(0.0, f64::max);
    let widths = part.slots.iter().map(|s| s.width);
    let narrowest = widths.fold(f64::INFINITY, f64::min);
    let (e_mod, nu) = (job.material.e_mod.si(), job.material.nu);
    (height > 0.0 && width > 0.0).then(|| Ribs {
        open: rib::beside_slot((e_mod, nu), (longest, narrowest), (width, height)),
        solid: rib::beside_solid(e_mod, height),
        tone: rib::beside_slot_tone(
            (e_mod, job.material.density.si()),
            (longest, narrowest),
            width,
        ),
    })
}
