//! How deep a step stays quiet: at any speed, or at its own where a tone is known.

use crate::case::Case;
use crate::quiet_book::{RATIO_STEP, UNIT_FORCE, UNIT_STIFFNESS};
use crate::vibration::{ANY, Axis, Scene, TipKnown, Voice, Whose, damping, tip_known};
use thinwright_chatter::floor::axial_quiet_depth;
use thinwright_chatter::floquet::Crossing;
use thinwright_chatter::{Cut, Mode, quiet_at_any_speed, quiet_depth};

/// Damping ratios that differ by less than half of this share are worked out as one, and set right in proportion.
const DAMPING_STEP: f64 = 0.04;
/// Vibrations between two teeth beyond which the error of a tone blurs the lobes: there only what is quiet at any speed counts.
pub(crate) const MOST_CYCLES: u32 = 8;

/// Depth that is quiet at any speed, m, at most the share of the linear limit that is used; none for drills.
pub(crate) fn quiet(case: &Case) -> Option<f64> {
    let scene = Scene::new(case, false)?;
    let tip = tip_alone(case, &scene);
    let work = scene.voices.iter().filter(|v| v.whose == Whose::Rib);
    let depth = work.fold(tip, |least, voice| least.min(scene.alone(voice)));
    let depth = depth * case.job.numbers.stability_share;
    (depth.is_finite() && depth > 0.0).then_some(depth)
}

/// Depth up to which cutter and machine are quiet at any speed, the work apart, m: the linear limit, without the share.
pub(crate) fn tip_alone(case: &Case, scene: &Scene) -> f64 {
    let mode = Mode {
        k: 1.0 / case.chain(),
        zeta: damping(case),
        // None is needed: the least depth over all speeds does not depend on it.
        omega_n: core::f64::consts::TAU * ANY,
    };
    let cut = &scene.cut;
    // Depth goes with stiffness over cutting force, and nearly with damping: worked out for steps of it.
    let step = libm::round(libm::log(mode.zeta) / DAMPING_STEP);
    let unit = Mode {
        k: UNIT_STIFFNESS,
        zeta: libm::exp(DAMPING_STEP * step),
        ..mode
    };
    let mut key = vec![u64::from(cut.z)];
    key.extend([unit.zeta, cut.phi_st, cut.phi_ex, cut.kr_ratio].map(f64::to_bits));
    let of_unit = scene.book.get(key, f64::MAX, |_| {
        let cut = Cut {
            kt: UNIT_FORCE,
            ..*cut
        };
        let depth = quiet_at_any_speed(&unit, &unit, &cut);
        let found = Crossing {
            depth,
            ..Crossing::default()
        };
        (f64::INFINITY, depth.is_finite().then_some(found))
    });
    let damped = |zeta: f64| zeta * (1.0 + zeta);
    let scale =
        mode.k / UNIT_STIFFNESS * (UNIT_FORCE / cut.kt) * damped(mode.zeta) / damped(unit.zeta);
    of_unit.map_or(f64::INFINITY, |c| c.depth) * scale
}

/// Depth that is quiet at the step's speed whatever the error of the frequencies and the direction of the feed, m, at most
/// the share of the linear limit that is used; none where no frequency is known.
pub(crate) fn quiet_here(case: &Case) -> Option<f64> {
    (tip_known(case) > TipKnown::Nothing).then(|| banded(case, case.choice.n))?
}

/// The same at any speed, 1/s.
pub(crate) fn banded(case: &Case, n: f64) -> Option<f64> {
    let share = case.job.numbers.stability_share;
    // Ratios that count as one err a little too.
    let spread = case.job.numbers.tap_spread + 0.5 * RATIO_STEP;
    let most = MARGIN * case.choice.ap / share;
    let mut least = most;
    let tones = case
        .cutter
        .ring
        .map(|ring| ring.frequency.0.min(ring.frequency.1))?;
    if tones > n * f64::from(case.cutter.z * MOST_CYCLES) {
        return quiet(case);
    }
    for scene in scenes(case) {
        let fast =
            (scene.voices.iter()).filter(|v| v.whose == Whose::Rib && !v.is_coupled(&scene.voices));
        least = fast.fold(least, |least, voice| least.min(scene.alone(voice)));
        for factor in WITHIN.map(|share| 1.0 + share * spread) {
            if let Some(found) = scene.tuned(factor).limit(n, most) {
                least = least.min(found.depth);
            }
        }
    }
    Some(share * least)
}

/// Where within the error of a tone it is looked: between the ends too, since a limit may dip there.
const WITHIN: [f64; 5] = [0.0, -1.0, -0.5, 0.5, 1.0];
/// How far above the step-down a limit still counts.
const MARGIN: f64 = 1.25;

/// The directions of feed that differ.
pub(crate) fn scenes(case: &Case) -> Vec<Scene> {
    let same = case
        .cutter
        .ring
        .is_none_or(|ring| ring.frequency.0.to_bits() == ring.frequency.1.to_bits());
    let turned = if same { &[false][..] } else { &[false, true] };
    turned
        .iter()
        .filter_map(|turned| Scene::new(case, *turned))
        .collect()
}

impl Scene {
    /// Depth up to which a vibration by itself is quiet at any speed, m.
    pub(crate) fn alone(&self, voice: &Voice) -> f64 {
        let still = Mode::rigid();
        match voice.axis {
            Axis::X => quiet_depth(&voice.mode, &still, &self.cut),
            Axis::Y => quiet_depth(&still, &voice.mode, &self.cut),
            Axis::Z => axial_quiet_depth(&voice.mode, &self.cut, &self.edge),
        }
    }
}
