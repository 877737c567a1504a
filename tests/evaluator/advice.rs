//! Limits that advise or tell what to listen for.

use super::bites::Place;
use super::limits::{Peak, Use, greatest};
use super::scene::Scene;
use super::{loads, stops, web};
use core::f64::consts::{FRAC_PI_2, PI, TAU};
use thinwright_chatter::{Cut, Mode, quiet_at_any_speed, quiet_depth};
use thinwright_core::estimate::Unknown;
use thinwright_core::limits::LimitId;
use thinwright_core::task::TaskKind;
use thinwright_mechanics::{chip, tool_beam};

const MM: f64 = 1.0e-3;
/// Multiples of the tooth rate that can wake the web.
const MULTIPLES: [f64; 3] = [1.0, 2.0, 3.0];
/// Pieces that a corner is summed over.
const CORNER_PIECES: u32 = 400;
/// Tones that are tried within what meshes tell apart.
const TONES: u32 = 9;

pub(crate) fn found(scene: &Scene, limit: LimitId) -> Option<Use> {
    let (job, cutter, step) = (scene.job, scene.cutter, scene.step);
    let numbers = &job.numbers;
    match limit {
        LimitId::SurfaceSpeed => Some(Use::one(PI * cutter.d * step.n.si(), surface_speed(scene))),
        LimitId::Rubbing => {
            let edge = cutter.material.edge_radius_used.likely.si();
            let least = job.material.least_chip_ratio.likely * edge;
            let ae = scene.ae().min(cutter.d);
            let thickest = chip::greatest_chip_thickness(step.fz.si(), ae, cutter.d, FRAC_PI_2);
            Some(Use::one(least, thickest))
        }
        LimitId::Heat => {
            let least = job.material.heat?;
            Some(Use::one(least.si(), step.fz.si()))
        }
        LimitId::ToolLength => Some(slender(scene)),
        LimitId::DepthToWidth => scene.slots().then(|| {
            let ratio = scene.stand.depth() / scene.slot_width();
            Use::one(ratio, numbers.slot_depth_over_width_care)
        }),
        LimitId::RunoutShare => (cutter.z > 1).then(|| {
            let runout = scene.estimate(Unknown::Runout).high;
            Use::one(runout, step.fz.si() * numbers.runout_to_feed)
        }),
        LimitId::Practice => practice(scene),
        LimitId::RoughDeflection => roughing(scene),
        LimitId::WallLean => lean(scene),
        LimitId::WebSoftness => {
            let web = scene.web.as_ref()?;
            let machine = web::stiffest_machine(scene);
            let chain = loads::chain(scene, machine);
            Some(web.pushed.over(chain))
        }
        LimitId::WebTone => tone(scene),
        LimitId::WebSlenderness => {
            let web = scene.web.as_ref()?;
            let allowed = if scene.backing.bed.likely > 0.0 {
                numbers.span_over_web_full
            } else {
                numbers.span_over_web_backing
            };
            Some(Use::one(web.span / web.thickness, allowed))
        }
        LimitId::WebLift => lift(scene),
        LimitId::WebSong => web_song(scene),
        LimitId::Chatter => {
            let quiet = quiet(scene)?;
            Some(Use::one(scene.ap(), quiet))
        }
        _ => None,
    }
}

/// The top of the material's speeds, or their middle where nothing keeps the cutter wet, m/s.
fn surface_speed(scene: &Scene) -> f64 {
    let material = &scene.job.material;
    let (low, high) = if scene.cutter.carbide {
        material.vc_carbide
    } else {
        material.vc_hss
    };
    if scene.job.holding.chips.wet {
        high.si()
    } else {
        (low.si() * high.si()).sqrt()
    }
}

/// Length of the thin part over its diameter.
fn slender(scene: &Scene) -> Use {
    let (cutter, numbers) = (scene.cutter, &scene.job.numbers);
    let thin = if cutter.shank > cutter.d {
        cutter.reach.min(cutter.stick_out)
    } else {
        cutter.stick_out
    };
    let plain = if cutter.carbide {
        numbers.reach_over_d_plain
    } else {
        numbers.reach_over_d_plain_hss
    };
    Use::one(thin / cutter.d, plain)
}

/// Section of the cut over the diameter's square against what such machines do every day, by cutting energy.
fn practice(scene: &Scene) -> Option<Use> {
    let (job, d) = (scene.job, scene.cutter.d);
    if scene.step.task == TaskKind::FloorSkim || scene.cutter.drill {
        return None;
    }
    let mean = |fz: f64, ae: f64, d: f64| chip::mean_chip_thickness(fz, ae, d, FRAC_PI_2);
    let here = mean(scene.step.fz.si(), scene.ae(), d);
    let sharp = |chip: f64| scene.kc(chip) / job.material.wear_factor;
    let numbers = &job.numbers;
    let reference =
        numbers.reference_kc_n_per_mm2 * 1.0e6 * libm::pow(here / MM, -numbers.reference_mc);
    let ladder = job.machine.class.practice.1 * reference / sharp(here);
    let own = job.good_cut.map_or(0.0, |good| {
        let chip = mean(good.vf / (good.n * f64::from(good.z)), good.ae, good.d);
        good.ae * good.ap / (good.d * good.d) * sharp(chip) / sharp(here)
    });
    Some(Use::one(scene.ap() * scene.ae() / (d * d), ladder.max(own)))
}

/// What roughing bends the cutter by must leave a skin to cut.
fn roughing(scene: &Scene) -> Option<Use> {
    if scene.step.task != TaskKind::Clearing {
        return None;
    }
    let soft = scene.estimate(Unknown::MachineStiffness).low;
    let (_, usual) = stops::usual(scene)?;
    let bend = usual.likely.mean_normal.abs() * scene.hard() * loads::chain(scene, soft);
    let left = scene.step.leave.0.si() - scene.job.numbers.safe_skin_mm * MM;
    Some(Use::one(bend, left.max(0.0)))
}

/// The tip gives more than the edge at the top of the level: the wall leans.
fn lean(scene: &Scene) -> Option<Use> {
    if scene.step.task != TaskKind::WallSkim {
        return None;
    }
    let beam = loads::beam(scene.cutter);
    let middle = 0.5 * scene.ap();
    let at = |up: f64| tool_beam::compliance_at(&beam, middle, up);
    let (_, usual) = stops::usual(scene)?;
    let force = usual.likely.mean_normal.abs() * scene.hard();
    let lean = force * (at(0.0) - at(scene.ap().min(beam.stick_out))).max(0.0);
    Some(Use::one(lean, scene.job.numbers.wall_lean_mm * MM))
}

/// Tooth rate, its double and triple, near the first tone of a web with nothing under it.
fn tone(scene: &Scene) -> Option<Use> {
    let web = scene.web.as_ref()?;
    if scene.backing.bed.likely > 0.0 {
        return None;
    }
    let teeth = scene.step.n.si() * f64::from(scene.cutter.z);
    let factor = scene.estimate(Unknown::WebTone);
    // Both ends of the range are looked at for sure; a multiple between them may be met exactly.
    let at = |tone: f64| {
        let away = |k: f64, factor: f64| k * teeth / (tone * factor) - 1.0;
        let ends = MULTIPLES.map(|k| [away(k, factor.low), away(k, factor.high)]);
        let nearest = ends.iter().flatten();
        let nearest = nearest.fold(f64::INFINITY, |n, a| n.min(a.abs()));
        (nearest, ends.iter().any(|[a, b]| a * b <= 0.0))
    };
    let share = scene.job.numbers.web_tone_share;
    let step = (web.tone.most - web.tone.least) / f64::from(TONES - 1);
    let tones = (0..TONES).map(|k| at(web.tone.least + f64::from(k) * step));
    let (mut far, mut near) = (0.0, f64::INFINITY);
    for (nearest, between) in tones {
        far = f64::max(far, nearest);
        near = f64::min(near, if between { 0.0 } else { nearest });
    }
    Some(Use {
        most: Use::one(share, near).most,
        ..Use::one(share, far)
    })
}

/// The helix pulls a web up that nothing holds down.
fn lift(scene: &Scene) -> Option<Use> {
    let web = scene.web.as_ref()?;
    let pull = greatest(scene, |_, l| (-l.likely.mean_axial).max(0.0) * scene.hard());
    if scene.backing.pulls_up || pull.most <= 0.0 {
        return None;
    }
    Some(Use::of(
        Peak {
            sure: pull.sure * web.bare.least,
            most: pull.most * web.bare.most,
            ..pull
        },
        scene.job.numbers.web_lift_mm * MM,
    ))
}

/// Depth up to which the rib beside the slot is quiet, m.
fn rib(scene: &Scene, cut: &Cut) -> f64 {
    let Some(give) = web::rib_aside(scene) else {
        return f64::INFINITY;
    };
    let mode = Mode {
        k: 1.0 / give,
        zeta: scene.job.numbers.web_damping,
        omega_n: TAU * 1.0e4,
    };
    quiet_depth(&Mode::rigid(), &mode, cut)
}

/// The cut where the step spends its time.
fn cut(scene: &Scene) -> Option<Cut> {
    let (usual, _) = stops::usual(scene)?;
    let (job, cutter) = (scene.job, scene.cutter);
    let half = 0.5 * scene.step.fz.si();
    (usual.place != Place::Entry && !cutter.drill).then(|| Cut {
        z: cutter.z,
        phi_st: usual.immersion.phi_st,
        phi_ex: usual.immersion.phi_ex,
        // What a wave in the chip brings back: the slope of the force over the chip.
        kt: (1.0 - job.material.mc) * scene.kc(half) * scene.hard(),
        kr_ratio: job.material.radial_ratio.likely,
    })
}

/// A bare web under a rounded corner: the push along the cutter grows with the chip that the web's rise makes, summed over
/// the corner from the floor up.
fn web_song(scene: &Scene) -> Option<Use> {
    let web = scene.web.as_ref()?;
    let (corner, ap, job) = (scene.cutter.corner, scene.ap(), scene.job);
    let floor = matches!(
        scene.step.task,
        TaskKind::Clearing | TaskKind::FloorSkim | TaskKind::SlotsBlind
    );
    if !floor || corner <= 0.0 || scene.backing.bed.likely > 0.0 || web.tone.most <= 0.0 {
        return None;
    }
    let cut = cut(scene)?;
    let end = libm::acos(1.0 - (ap / corner).min(1.0));
    let pieces = (0..CORNER_PIECES).map(|i| {
        let kappa = end * (f64::from(i) + 0.5) / f64::from(CORNER_PIECES);
        libm::cos(kappa).powi(2) * corner * end / f64::from(CORNER_PIECES)
    });
    let teeth = f64::from(cut.z) * (cut.phi_ex - cut.phi_st) / TAU;
    let gain = cut.kt * cut.kr_ratio * teeth * pieces.sum::<f64>();
    let zeta = job.numbers.web_damping;
    let give = job.numbers.stability_share * 2.0 * zeta * (1.0 + zeta) / gain;
    Some(web.bare.over(give))
}

/// Depth that is quiet at any speed, m.
fn quiet(scene: &Scene) -> Option<f64> {
    let cut = cut(scene)?;
    let soft = scene.estimate(Unknown::MachineStiffness).low;
    let mode = Mode {
        k: 1.0 / loads::chain(scene, soft),
        zeta: scene.estimate(Unknown::Damping).low,
        // The least depth over all speeds does not depend on the tone.
        omega_n: TAU * 1.0e3,
    };
    let depth = quiet_at_any_speed(&mode, &mode, &cut).min(rib(scene, &cut));
    let depth = depth * scene.job.numbers.stability_share;
    (depth.is_finite() && depth > 0.0).then_some(depth)
}
