//! Limits that refuse against a tolerance.

use super::bites::{Place, finishes};
use super::limits::{Peak, Use, greatest};
use super::loads;
use super::loads::Loads;
use super::scene::Scene;
use super::web::{self, Reach};
use thinwright_core::estimate::Unknown;
use thinwright_core::limits::LimitId;
use thinwright_core::methods::MethodId;
use thinwright_core::task::TaskKind;
use thinwright_mechanics::surface;

const MM: f64 = 1.0e-3;

pub(crate) fn found(scene: &Scene, limit: LimitId) -> Option<Use> {
    let wanted = &scene.job.wanted;
    let task = scene.step.task;
    match limit {
        LimitId::Fillet => {
            let allowed = wanted.fillet.filter(|_| task == TaskKind::WallSkim)?;
            Some(Use::one(scene.cutter.corner, allowed))
        }
        LimitId::Roughness => {
            let allowed = wanted.finish.filter(|_| task == TaskKind::FloorSkim)?;
            // No corner is sharper than its wear.
            let radius = scene
                .cutter
                .corner
                .max(scene.job.numbers.sharp_corner_mm * MM);
            let feed = scene.step.vf.si() / scene.step.n.si();
            Some(Use::one(surface::floor_roughness(feed, radius), allowed))
        }
        LimitId::SlotWidth => slot_width(scene),
        LimitId::RibSoftness => rib(scene),
        LimitId::WebThickness => web_error(scene),
        _ => None,
    }
}

/// The greatest of something over the bites that leave the slot's sides.
fn on_the_sides(scene: &Scene, of: impl Fn(&Loads) -> f64) -> Peak {
    greatest(scene, |bite, loads| {
        if finishes(scene, bite) {
            of(loads)
        } else {
            0.0
        }
    })
}

/// Error of a slot's width: a cutter as wide as the slot cuts it too wide by its runout and by what its swing within a
/// turn adds; sides that are cut apart by what does not repeat of the deflection, and by where the axes stand.
fn slot_width(scene: &Scene) -> Option<Use> {
    let allowed = scene.job.wanted.slot.filter(|_| scene.slots())?;
    let runout = scene.estimate(Unknown::Runout).high;
    let numbers = &scene.job.numbers;
    let apart = scene.step.method == MethodId::Peeling
        || scene.bites.iter().any(|b| b.0.place == Place::Side);
    let error = if apart {
        let soft = scene.estimate(Unknown::MachineStiffness).low;
        let offset = on_the_sides(scene, |l| l.most(|f| f.mean_normal.abs()));
        let bent = offset.times(scene.hard() * loads::chain(scene, soft));
        let place = scene.job.machine.class.positioning.si();
        // A slot has two sides; the runout of half of each, the axes' error of the way from one to the other.
        more(bent.times(2.0 * numbers.deflection_scatter), place + runout)
    } else {
        let swing = on_the_sides(scene, |l| {
            l.most(|f| 0.5 * (f.peak_normal - f.least_normal))
        });
        more(swing.times(scene.hard() * loads::tip(scene)), runout)
    };
    Some(Use::of(error, allowed))
}

fn more(peak: Peak, by: f64) -> Peak {
    Peak {
        sure: peak.sure + by,
        most: peak.most + by,
        ..peak
    }
}

/// The rib beside the slot gives way.
fn rib(scene: &Scene) -> Option<Use> {
    let allowed = scene.job.wanted.slot.filter(|_| scene.slots())?;
    let give = web::rib_aside(scene)?;
    let force = on_the_sides(scene, |l| l.most(|f| f.mean_normal.abs()));
    Some(Use::of(force.times(scene.hard() * give), allowed))
}

/// Error of the web's thickness: it springs back by what the cutter pushed or pulled it, on top of the turn-over.
fn web_error(scene: &Scene) -> Option<Use> {
    let allowed = scene
        .job
        .wanted
        .web
        .filter(|_| scene.step.task == TaskKind::FloorSkim)?;
    let web = scene.web.as_ref()?;
    let bend = |load: &Loads, of: fn(&Reach) -> f64| {
        load.most(|f| {
            let push = f.mean_axial * scene.hard();
            // What pulls is held by no backing that only lies there.
            let backed = push > 0.0 || scene.backing.pulls_up;
            push.abs() * of(if backed { &web.pushed } else { &web.bare })
        })
    };
    let bent = greatest(scene, |_, loads| bend(loads, |r| r.least));
    let most = greatest(scene, |_, loads| bend(loads, |r| r.most)).most;
    let bent = Peak { most, ..bent };
    let numbers = &scene.job.numbers;
    let turned = scene.stand.second && scene.drawing.two_sided();
    let seat = if turned { numbers.seat_error_um } else { 0.0 };
    let datum = libm::hypot(seat, numbers.touch_error_um) * 1.0e-6;
    let error = Peak {
        sure: libm::hypot(bent.sure, datum),
        most: libm::hypot(bent.most, datum),
        ..bent
    };
    Some(Use::of(error, allowed))
}
