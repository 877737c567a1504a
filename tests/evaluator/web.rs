//! The web under the cutter, by plate elements on the drawing: the one place here that knows plates.

mod ask;
mod plan;

use super::Complaints;
use super::drawing::Outline;
use super::limits::Use;
use super::scene::Scene;
use super::stock;
use ask::{Asked, State};
use core::f64::consts::PI;
use thinwright_core::estimate::Unknown;
use thinwright_core::limits::LimitId;
use thinwright_core::task::TaskKind;
use thinwright_mechanics::rib;

/// How far meshes may differ in the give of the softest place. Against one two and a half times as
/// fine, on 120 jobs, the mesh here is 1.3 % too stiff in the middle, 3.5 % in one of twenty, 5.4 % at worst (7.5 % on a bed).
const GIVE_AGREES: f64 = 0.06;
/// The same in tones: within 1.1 % there, and as much again for what is told, which two meshes set right.
const TONE_AGREES: f64 = 0.03;
/// The same in stress, from moments that are even over a triangle: 7 % too much to 11 % too little there.
const STRESS_AGREES: f64 = 0.12;
/// The same where both sides have a closed form.
const RIB_AGREES: f64 = 0.01;

/// What is found, and the most that a cautious reader may reckon with.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Reach {
    pub(crate) least: f64,
    pub(crate) most: f64,
}

impl Reach {
    fn around((least, most): (f64, f64), share: f64) -> Reach {
        Reach {
            least: least * (1.0 - share),
            most: most * (1.0 + share),
        }
    }

    /// The use that comes of it, per unit of this.
    pub(crate) fn over(&self, allowed: f64) -> Use {
        Use {
            most: Use::one(self.most, allowed).most,
            ..Use::one(self.least, allowed)
        }
    }
}

/// The web where nothing solid carries it.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Web {
    pub(crate) thickness: f64,
    /// Give at the softest place with nothing under it, m/N.
    pub(crate) bare: Reach,
    /// The same on the softest bed that the backing may be, and on the likely one.
    pub(crate) pushed: Reach,
    likely: Reach,
    /// First tone with nothing under it, Hz.
    pub(crate) tone: Reach,
    /// Bending stress per force under the cutter at hand, Pa/N.
    pub(crate) stress: Reach,
    /// Free span, m.
    pub(crate) span: f64,
}

/// Roundness 4 pi A / P2 from which a plan is reckoned as a disc.
const ROUND: f64 = 0.97;

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
    let span = span(scene).filter(|_| thickness > 0.0)?;
    let state = State::of(scene, columns);
    let whole = ask::asked(scene, &state)?;
    let met = if in_one_level(scene) {
        behind_front(scene, &state, whole)
    } else {
        whole
    };
    let bed = &scene.backing.bed;
    Some(Web {
        thickness,
        bare: Reach::around(met.give, GIVE_AGREES),
        pushed: backed(scene, &state, met, bed.low),
        likely: backed(scene, &state, met, bed.likely),
        tone: Reach::around((whole.tone, whole.tone), TONE_AGREES),
        stress: Reach {
            least: met.stress.0 * (1.0 - STRESS_AGREES),
            most: met.stress.1.max(whole.stress.1) * (1.0 + STRESS_AGREES),
        },
        span,
    })
}

/// In one level the cutter has uncut stock ahead of it all the way.
fn in_one_level(scene: &Scene) -> bool {
    scene.step.task == TaskKind::Clearing && scene.step.levels == 1
}

/// The give of a web on a backing: no more than with either alone.
fn backed(scene: &Scene, state: &State, met: Asked, modulus: f64) -> Reach {
    let on_bed = ask::asked(scene, &state.on(modulus)).filter(|_| modulus > 0.0);
    let most = on_bed.map_or(f64::INFINITY, |a| a.give.1);
    Reach::around((met.give.0.min(most), met.give.1.min(most)), GIVE_AGREES)
}

/// How far from the wall the cut has come, as shares of the widest way.
const FRONTS: [f64; 6] = [0.85, 0.7, 0.5, 0.35, 0.2, 0.08];

/// The softest that the cutter meets behind a front that moves outwards.
fn behind_front(scene: &Scene, cut: &State, whole: Asked) -> Asked {
    let fronts = FRONTS.iter().filter_map(|share| {
        let state = cut.behind(&scene.stand.before, *share);
        ask::asked(scene, &state)
    });
    let softest = fronts.reduce(|a, b| Asked {
        give: (a.give.0.max(b.give.0), a.give.1.max(b.give.1)),
        stress: if a.give.1 < b.give.1 {
            b.stress
        } else {
            a.stress
        },
        ..a
    });
    softest.map_or(whole, |met| Asked {
        give: (met.give.0.min(whole.give.0), met.give.1.min(whole.give.1)),
        ..met
    })
}

/// Free span of the smaller recess, where the part is thin all through, m.
fn span(scene: &Scene) -> Option<f64> {
    let boss = 0.5 * scene.drawing.boss;
    let hollows = scene.drawing.hollows.iter().flatten();
    let plans = hollows.map(|h| h.plan);
    let plan: Outline = plans.min_by(|a, b| a.area().total_cmp(&b.area()))?;
    let (area, edge) = (plan.area(), plan.edge());
    if 4.0 * PI * area / (edge * edge) <= ROUND {
        return Some(plan.across());
    }
    let radius = (area / PI).sqrt();
    let held = scene.stand.setup.boss_bolted && boss > 0.0;
    Some(if held { radius - boss } else { 2.0 * radius })
}

/// Sideways give of the rib beside the slot that is cut, its neighbour open, m/N.
pub(crate) fn rib_aside(scene: &Scene) -> Option<f64> {
    let width = scene.drawing.rib.filter(|w| *w > 0.0)?;
    let height = stock::web(&scene.stand.before);
    let material = (scene.job.material.e_mod.si(), scene.job.material.nu);
    let lengths = scene.drawing.slits.iter().map(|s| s.length);
    let slot = (lengths.fold(0.0, f64::max), scene.slot_width());
    (height > 0.0 && scene.slots()).then(|| rib::beside_slot(material, slot, (width, height)))
}

/// The stiffest that the machine may be, N/m.
pub(crate) fn stiffest_machine(scene: &Scene) -> f64 {
    scene.estimate(Unknown::MachineStiffness).high
}

/// What is told of the web is what is found.
///
/// What clearing the other way would meet takes a plate for every front: only a thorough look asks for all of them.
pub(crate) fn check(scene: &Scene, thorough: bool, out: &mut Complaints) {
    ribs(scene, out);
    let number = scene.step.number;
    let (web, told) = match (&scene.web, &scene.step.web) {
        (Some(web), Some(told)) => (web, told),
        (None, None) => return,
        (found, _) => {
            let figures = format!("found: {found:?}");
            let rule = match found {
                Some(_) => "web that is not told",
                None => "web told where there is none",
            };
            return out.add(rule, number, 0.0, figures);
        }
    };
    let thickness = (web.thickness, told.thickness.si());
    out.same("web: thickness", number, thickness, 1.0e-6);
    let mut give = |rule: &str, told: f64, found: &Reach| {
        out.between((rule, number), told, (found.least, found.most), 0.0);
    };
    give("web: give", 1.0 / told.unbacked.si(), &web.bare);
    let rule = "web: give on its backing";
    give(rule, 1.0 / told.stiffness.si(), &web.likely);
    give("web: tone", told.frequency.si(), &web.tone);
    let asked = told.other_way.filter(|_| thorough || in_one_level(scene));
    if let Some((told, other)) = asked.and_then(|told| Some((told, other_way(scene)?))) {
        give("web: give the other way", 1.0 / told.si(), &other);
    }
}

/// The give on the likely backing in clearing the other way, level by level or behind a front.
fn other_way(scene: &Scene) -> Option<Reach> {
    let state = State::of(scene, &scene.stand.after);
    let whole = ask::asked(scene, &state)?;
    let met = if in_one_level(scene) {
        whole
    } else {
        behind_front(scene, &state, whole)
    };
    Some(backed(scene, &state, met, scene.backing.bed.likely))
}

/// What is told of the ribs beside slots.
fn ribs(scene: &Scene, out: &mut Complaints) {
    let number = scene.step.number;
    let told = scene.step.rib.map(|told| (told.open.si(), told.solid.si()));
    match (rib_aside(scene), told) {
        (Some(found), Some((open, solid))) => {
            let height = stock::web(&scene.stand.before);
            let whole = rib::beside_solid(scene.job.material.e_mod.si(), height);
            let rule = "rib between open slots";
            out.same(rule, number, (found, 1.0 / open), RIB_AGREES);
            let rule = "rib beside a slot that is not cut";
            out.same(rule, number, (whole, 1.0 / solid), RIB_AGREES);
        }
        (None, None) => {}
        (found, told) => {
            let figures = format!("{found:?} found, {told:?} told");
            out.add(
                "rib that is told and not there, or there and not told",
                number,
                0.0,
                figures,
            );
        }
    }
}

/// Whether a limit follows from figures of the web rather than from where the cutter bites: those of stress, which are not
/// told, and those of its give where that is told wrong.
pub(crate) fn decides(scene: &Scene, limit: LimitId) -> bool {
    let (Some(web), Some(told)) = (&scene.web, &scene.step.web) else {
        return false;
    };
    let off = |found: &Reach, told: f64| told < found.least || told > found.most;
    let bare = off(&web.bare, 1.0 / told.unbacked.si());
    match limit {
        LimitId::WebStress => true,
        LimitId::WebLift => bare,
        LimitId::WebThickness => bare || off(&web.likely, 1.0 / told.stiffness.si()),
        _ => false,
    }
}
