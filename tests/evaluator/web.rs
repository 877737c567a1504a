//! The web under the cutter, from plate formulas on the drawing.

use super::drawing::Outline;
use super::scene::Scene;
use super::stock;
use core::f64::consts::PI;
use thinwright_core::estimate::Unknown;
use thinwright_core::task::TaskKind;
use thinwright_mechanics::rib as aside;
use thinwright_plate::annulus::{self, Annulus, InnerEdge};
use thinwright_plate::ritz::{Panel, Ritz};
use thinwright_plate::strip::{self, Strip};
use thinwright_plate::{PlateError, Sheet, bed, disc, stress};

/// The web where it hangs free between rim and boss.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Web {
    pub(crate) thickness: f64,
    /// Give at the softest place with nothing under it, m/N.
    pub(crate) bare: f64,
    /// First tone with nothing under it, Hz.
    pub(crate) tone: f64,
    /// Bending stress per force on a patch as wide as the cutter at hand, and as the thinnest mill of the rack, Pa/N.
    pub(crate) stress: (f64, f64),
    /// Free span, m.
    pub(crate) span: f64,
    /// What the middle of a rib between open slots gives more than the floor, m/N, and its width, m.
    rib: (f64, f64),
    sheet: Sheet,
}

/// Roundness 4 pi A / P2 from which a plan is reckoned as a disc.
const ROUND: f64 = 0.97;

impl Web {
    /// Give when pushed down on a bed of springs, m/N: a web that has both rim and bed gives no more than with either
    /// alone; between open slots the rib gives on top of that, held by its ends or by its own bed.
    pub(crate) fn pushed(&self, bed: f64) -> f64 {
        if bed <= 0.0 {
            return self.bare;
        }
        let on_bed = bed::compliance(&self.sheet, bed).unwrap_or(f64::INFINITY);
        self.bare.min(on_bed + self.rib.0.min(self.rib_on_bed(bed)))
    }

    /// Give of a long rib on a bed, m/N: b / (2 k) with k per length and b4 = k / (4 E I); Hetenyi's infinite beam, from
    /// memory.
    fn rib_on_bed(&self, bed: f64) -> f64 {
        let width = self.rib.1;
        let inertia = width * self.thickness * self.thickness * self.thickness / 12.0;
        let k = bed * width;
        let b = (k / (4.0 * self.sheet.e_mod * inertia)).sqrt().sqrt();
        let give = b / (2.0 * k);
        if give.is_finite() { give } else { 0.0 }
    }
}

/// The web under a step, if it is one that works on it and nothing solid carries it.
pub(crate) fn under(scene: &Scene) -> Option<Web> {
    let on_web = matches!(
        scene.step.task,
        TaskKind::Clearing | TaskKind::FloorSkim | TaskKind::SlotsThrough | TaskKind::SlotsBlind
    );
    // With its uncut or only recess-free back on a table it is carried; between jaws it never is.
    let lies_flat = !(scene.stand.second && scene.drawing.two_sided());
    if !on_web || (lies_flat && !scene.hold.squeezes) {
        return None;
    }
    let columns = match scene.step.task {
        TaskKind::SlotsBlind => &scene.stand.before,
        _ => &scene.stand.after,
    };
    let thickness = stock::web(columns);
    (thickness > 0.0).then(|| plate(scene, thickness, stock::slots_open(columns)).ok())?
}

/// The smaller recess: there the part is thin all through.
fn floor(scene: &Scene) -> Option<Outline> {
    let boss = 0.25 * PI * scene.drawing.boss * scene.drawing.boss;
    let hollows = scene.drawing.hollows.iter().flatten();
    let plans = hollows.map(|h| h.plan);
    plans.min_by(|a, b| (a.area() - boss).total_cmp(&(b.area() - boss)))
}

fn plate(scene: &Scene, thickness: f64, open: bool) -> Result<Web, PlateError> {
    let material = &scene.job.material;
    let sheet = Sheet {
        e_mod: material.e_mod.si(),
        nu: material.nu,
        rho: material.density.si(),
        t: thickness,
    };
    let Some(plan) = floor(scene) else {
        return Err(PlateError::NotSettled);
    };
    let mills = scene.job.rack.iter().filter(|c| !c.drill).map(|c| c.d);
    let thinnest = mills.fold(f64::INFINITY, f64::min);
    let (area, edge) = (plan.area(), plan.edge());
    let round = 4.0 * PI * area / (edge * edge) > ROUND;
    let radius = match plan {
        _ if round => (area / PI).sqrt(),
        _ => 0.5 * plan.across(),
    };
    let boss = 0.5 * scene.drawing.boss;
    let bolted = scene.stand.setup.boss_bolted;
    let (bare, tone, span) = if round && boss > 0.0 {
        let ring = Annulus {
            inner: boss,
            outer: radius,
            inner_edge: if bolted {
                InnerEdge::Clamped
            } else {
                InnerEdge::RigidFloating
            },
        };
        let span = if bolted { radius - boss } else { 2.0 * radius };
        (
            annulus::softest(&sheet, &ring)?.1,
            annulus::first_frequency(&sheet, &ring)?,
            span,
        )
    } else if round {
        (
            disc::compliance(&sheet, radius, 0.0)?,
            disc::first_frequency(&sheet, radius)?,
            2.0 * radius,
        )
    } else {
        panel(&sheet, &plan)?
    };
    let patch = |d: f64| stress::disc_centre(&sheet, radius, 0.5 * d);
    let rib = if open {
        rib(scene, &sheet)?
    } else {
        (0.0, 0.0)
    };
    Ok(Web {
        thickness,
        bare: bare + rib.0,
        tone,
        stress: (patch(scene.cutter.d)?, patch(thinnest)?),
        span,
        rib,
        sheet,
    })
}

/// What a rib between open slots gives in its middle, held at its ends, m/N, and its width, m.
fn rib(scene: &Scene, sheet: &Sheet) -> Result<(f64, f64), PlateError> {
    let Some(width) = scene.drawing.rib.filter(|w| *w > 0.0) else {
        return Ok((0.0, 0.0));
    };
    let length = longest(scene);
    let strip = Strip { width, length };
    let give = strip::compliance(sheet, &strip, 0.5 * length)?;
    Ok((give, width))
}

/// A rectangle clamped all around: give in the middle, first tone, short side.
fn panel(sheet: &Sheet, plan: &Outline) -> Result<(f64, f64, f64), PlateError> {
    let (long, short) = match *plan {
        Outline::Round { radius } => (2.0 * radius, 2.0 * radius),
        Outline::Box { length, width, .. } => (length.max(width), length.min(width)),
    };
    let panel = Ritz::new(sheet, &Panel::floor(long, short))?;
    let tones = panel.frequencies(sheet, 1)?;
    let middle = panel.compliance(0.5 * long, 0.5 * short)?;
    Ok((middle, tones.first().copied().unwrap_or(0.0), short))
}

fn longest(scene: &Scene) -> f64 {
    let lengths = scene.drawing.slits.iter().map(|s| s.length);
    lengths.fold(0.0, f64::max)
}

/// Sideways give of the rib beside the slot that is cut, its neighbour open: a strip held at the slot's ends, m/N.
pub(crate) fn rib_aside(scene: &Scene) -> Option<f64> {
    let width = scene.drawing.rib.filter(|w| *w > 0.0)?;
    let height = stock::web(&scene.stand.before);
    let e_mod = scene.job.material.e_mod.si();
    (height > 0.0 && scene.slots())
        .then(|| aside::clamped_strip_compliance(e_mod, width, height, longest(scene)))
}

/// The softest bed that the backing may be, N/m3.
pub(crate) fn softest_bed(scene: &Scene) -> f64 {
    scene.backing.bed.low
}

/// The stiffest that the machine may be, N/m.
pub(crate) fn stiffest_machine(scene: &Scene) -> f64 {
    scene.estimate(Unknown::MachineStiffness).high
}
