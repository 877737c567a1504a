//! The web under the cutter, in the state that the part is in: the one place that knows plates.
//!
//! Closed forms and series of thin plates stand behind it; a solver on the real outline will take their place
//! without anything else changing. What they leave out is said in [`web`].

use crate::job::Job;
use crate::part::{Part, State};
use crate::plan::Contour;
use thinwright_mechanics::rib;
use thinwright_plate::annulus::{self, Annulus, InnerEdge};
use thinwright_plate::ritz::{Panel, Ritz};
use thinwright_plate::strip::{self, Strip};
use thinwright_plate::{PlateError, Sheet, bed, disc, stress};

/// The web's answer to a force of the cutter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WebAnswer {
    /// Thickness that is left, m.
    pub thickness: f64,
    /// Compliance at the softest place without backing, m/N.
    pub bare: f64,
    /// Where the softest place is, from the middle, m.
    pub softest: f64,
    /// First frequency without backing, Hz.
    pub frequency: f64,
    /// Radius of the clamped disc that bending stress is taken from, m.
    pub radius: f64,
    /// Free span, m: between rim and rim, or rim and bolted boss.
    pub span: f64,
    /// The plate that it is, for the bed under it.
    pub sheet: Sheet,
    /// Whether open slots soften it.
    pub slotted: bool,
}

impl WebAnswer {
    /// Bending stress under a force of 1 N on a patch of this radius (m), Pa/N; infinite where there is no answer.
    pub fn stress(&self, patch: f64) -> f64 {
        stress::disc_centre(&self.sheet, self.radius, patch).unwrap_or(f64::INFINITY)
    }

    /// Compliance when pushed down on a bed of Winkler modulus `bed` (N/m3; 0 = none), m/N.
    ///
    /// The softer of the two alone bounds a web that has both; the stiffer of the two is taken, which is safe.
    pub fn backed(&self, bed: f64) -> f64 {
        if bed <= 0.0 {
            return self.bare;
        }
        bed::compliance(&self.sheet, bed).map_or(self.bare, |backed| self.bare.min(backed))
    }
}

/// Roundness 4 pi A / P2 above which an outline counts as a disc.
const ROUND: f64 = 0.97;

/// The floor's plan, as the closed forms know it.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Floor {
    Disc { radius: f64, boss: Option<f64> },
    Rectangle { long: f64, short: f64 },
}

/// The floor between rim and boss, from the regions alone.
fn floor(part: &Part) -> Option<Floor> {
    let recess = part
        .recesses
        .iter()
        .min_by(|a, b| a.area.area_mm2().total_cmp(&b.area.area_mm2()))?;
    let outer = &recess.region.outer;
    let boss = recess
        .region
        .holes
        .iter()
        .map(round_radius)
        .fold(None, |most: Option<f64>, r| {
            Some(most.map_or(r, |m| m.max(r)))
        });
    let (area, length) = (outer.area().abs(), outer.length());
    if 4.0 * core::f64::consts::PI * area / (length * length) > ROUND {
        let radius = round_radius(outer);
        return Some(Floor::Disc { radius, boss });
    }
    let bounds = outer.bounds()?;
    let (a, b) = (bounds.width() * 1.0e-3, bounds.height() * 1.0e-3);
    Some(Floor::Rectangle {
        long: a.max(b),
        short: a.min(b),
    })
}

/// Radius of the disc of a contour's area, m.
fn round_radius(contour: &Contour) -> f64 {
    (contour.area().abs() / core::f64::consts::PI).sqrt() * 1.0e-3
}

/// What the web is like in a state, under a patch of radius `patch` (m), the boss bolted or floating.
///
/// `Ok(None)` where there is no web to speak of: no recess, or nothing thinner than the part.
///
/// Left out: the give of rim and boss (taken as rigid), the stiffness that stock beside the thinnest place still
/// gives (the whole web is taken at its least thickness), shear (thin-plate theory: 12 to 32 % too stiff on narrow
/// ribs), and what slots do to the frequency (6 % on one slotted floor). A boss on a rectangular floor is left out
/// unless it is bolted, where the free span is the way from rim to boss.
///
/// # Errors
/// The plate's error when the geometry is none that its closed forms take.
pub fn web(job: &Job, state: &State, bolted: bool) -> Result<Option<WebAnswer>, PlateError> {
    let part = &job.part;
    let thickness = part.web_now(state);
    let Some(floor) = floor(part).filter(|_| thickness > 0.0) else {
        return Ok(None);
    };
    let material = &job.material;
    let sheet = Sheet {
        e_mod: material.e_mod.si(),
        nu: material.nu,
        rho: material.density.si(),
        t: thickness,
    };
    let mut answer = match floor {
        Floor::Disc {
            radius,
            boss: Some(inner),
        } => {
            let inner_edge = if bolted {
                InnerEdge::Clamped
            } else {
                InnerEdge::RigidFloating
            };
            let plate = Annulus {
                inner,
                outer: radius,
                inner_edge,
            };
            let (softest, bare) = annulus::softest(&sheet, &plate)?;
            let frequency = annulus::first_frequency(&sheet, &plate)?;
            let span = if bolted { radius - inner } else { 2.0 * radius };
            WebAnswer {
                bare,
                softest,
                frequency,
                span,
                ..whole(&sheet, radius)?
            }
        }
        Floor::Disc { radius, boss: None } => whole(&sheet, radius)?,
        Floor::Rectangle { long, short } => {
            let panel = Ritz::new(&sheet, &Panel::floor(long, short))?;
            let bare = panel.compliance(long / 2.0, short / 2.0)?;
            let frequency = panel
                .frequencies(&sheet, 1)?
                .first()
                .copied()
                .unwrap_or(0.0);
            WebAnswer {
                bare,
                frequency,
                span: short,
                ..whole(&sheet, short / 2.0)?
            }
        }
    };
    if part.slots_open(state) {
        answer.bare += rib_give(&sheet, part)?;
        answer.slotted = true;
    }
    Ok(Some(answer))
}

/// A clamped disc without boss.
fn whole(sheet: &Sheet, radius: f64) -> Result<WebAnswer, PlateError> {
    Ok(WebAnswer {
        thickness: sheet.t,
        bare: disc::compliance(sheet, radius, 0.0)?,
        softest: 0.0,
        frequency: disc::first_frequency(sheet, radius)?,
        radius,
        span: 2.0 * radius,
        sheet: *sheet,
        slotted: false,
    })
}

/// What the middle of a rib between two open slots gives on top of the floor, m/N: a clamped strip.
fn rib_give(sheet: &Sheet, part: &Part) -> Result<f64, PlateError> {
    let longest = part.slots.iter().map(|s| s.length).fold(0.0, f64::max);
    match part.rib {
        Some(width) if width > 0.0 => strip::compliance(
            sheet,
            &Strip {
                width,
                length: longest,
            },
            longest / 2.0,
        ),
        _ => Ok(0.0),
    }
}

/// Sideways compliance of a rib beside a slot while it is cut, m/N: a strip clamped at the slot's two ends.
pub fn rib(job: &Job, state: &State) -> Option<f64> {
    let part = &job.part;
    let width = part.rib?;
    let height = part.web_now(state);
    let longest = part.slots.iter().map(|s| s.length).fold(0.0, f64::max);
    (height > 0.0 && width > 0.0)
        .then(|| rib::clamped_strip_compliance(job.material.e_mod.si(), width, height, longest))
}

/// Everything that an answer depends on, as bits: two equal keys have the same answer.
pub(crate) fn key(job: &Job, state: &State, bolted: bool) -> Vec<u64> {
    let part = &job.part;
    let plan = match floor(part) {
        None => [0.0, 0.0, 0.0],
        Some(Floor::Disc { radius, boss }) => [1.0, radius, boss.unwrap_or(0.0)],
        Some(Floor::Rectangle { long, short }) => [2.0, long, short],
    };
    let material = &job.material;
    let longest = part.slots.iter().map(|s| s.length).fold(0.0, f64::max);
    let numbers = [
        part.web_now(state),
        material.e_mod.si(),
        material.nu,
        material.density.si(),
        part.rib.unwrap_or(0.0),
        longest,
    ];
    let flags = [u64::from(bolted), u64::from(part.slots_open(state))];
    plan.iter()
        .chain(&numbers)
        .map(|v| v.to_bits())
        .chain(flags)
        .collect()
}
