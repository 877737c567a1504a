//! What vibrates in a step, and how deep the step stays quiet: looked up by what it depends on, worked out once.

use crate::case::{Case, cutting};
use crate::estimate::{Known, Unknown};
use crate::task::TaskKind;
use std::cell::RefCell;
use std::collections::BTreeMap;
use std::rc::Rc;
use thinwright_chatter::floquet::{Crossing, Moving, System};
use thinwright_chatter::{Cut, Edge, Mode, quiet_at_any_speed, quiet_depth};
use thinwright_mechanics::kienzle::specific_cutting_force;

/// Who vibrates.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Whose {
    /// The cutter in its collet.
    Cutter,
    /// Spindle and machine.
    Machine,
    /// The web under the cutter.
    Web,
    /// The rib beside a slot.
    Rib,
}

/// A direction of vibration.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Axis {
    /// In feed.
    X,
    /// Across the feed.
    Y,
    /// Along the cutter.
    Z,
}

/// What is known of the cutter's tip.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum TipKnown {
    /// Nothing that was measured: no speed can be picked.
    Nothing,
    /// Its frequency: good speeds are known, depths are estimated.
    Frequency,
    /// Frequency and stiffness: it binds.
    Measured,
}

/// One vibration.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Voice {
    /// Whose.
    pub whose: Whose,
    /// In which direction.
    pub axis: Axis,
    /// Stiffness N/m, damping ratio, natural angular frequency rad/s.
    pub mode: Mode,
}

/// Frequency that stands for one that is not known, where it does not matter, Hz.
const ANY: f64 = 1.0e3;

/// Stiffness, N/m, and cutting coefficient, Pa, that depths are kept for.
const UNIT_STIFFNESS: f64 = 1.0e6;
const UNIT_FORCE: f64 = 1.0e9;
/// Ratios of tone and speed that differ by less than half of this count as one: a small part of what a tap errs by.
const RATIO_STEP: f64 = 0.005;
/// Vibrations between two teeth beyond which the error of a tone blurs the lobes: there only what is quiet at any speed counts.
pub(crate) const MOST_CYCLES: u32 = 10;

/// Depths worked out before, by what they depend on.
#[derive(Clone, Default)]
pub(crate) struct QuietBook(Rc<RefCell<BTreeMap<Vec<u64>, Option<Crossing>>>>);

/// Most depths that are kept.
const MOST: usize = 1 << 16;

impl PartialEq for QuietBook {
    /// What was worked out before changes no answer.
    fn eq(&self, _: &QuietBook) -> bool {
        true
    }
}

impl core::fmt::Debug for QuietBook {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        write!(f, "QuietBook({})", self.0.borrow().len())
    }
}

impl QuietBook {
    fn get(&self, key: Vec<u64>, work: impl FnOnce() -> Option<Crossing>) -> Option<Crossing> {
        if let Some(known) = self.0.borrow().get(&key) {
            return *known;
        }
        let found = work();
        let mut known = self.0.borrow_mut();
        if known.len() >= MOST {
            known.clear();
        }
        known.insert(key, found);
        found
    }
}

/// A cut and what vibrates under it, in one world.
#[derive(Clone, Debug)]
pub(crate) struct Scene {
    pub(crate) voices: Vec<Voice>,
    pub(crate) cut: Cut,
    pub(crate) edge: Edge,
    /// Step-down, m.
    pub(crate) ap: f64,
    book: QuietBook,
}

/// What is known of the cutter's tip in a case.
pub(crate) fn tip_known(case: &Case) -> TipKnown {
    let stiffness = case.estimates[Unknown::MachineStiffness as usize].known;
    match (&case.cutter.ring, stiffness) {
        (None, _) => TipKnown::Nothing,
        // What is taken as measured, to see what that would bring, does not bind.
        (Some(_), Known::Measured) if !case.job.settled[Unknown::MachineStiffness as usize] => {
            TipKnown::Measured
        }
        (Some(_), _) => TipKnown::Frequency,
    }
}

/// Damping ratio at the cutter's tip: as heard, within what hearing is worth, or the class's.
fn damping(case: &Case) -> f64 {
    let draw = case.get(Unknown::Damping);
    let Some(heard) = case.cutter.ring.and_then(|ring| ring.damping) else {
        return draw;
    };
    let factor = case.job.numbers.tap_damping_factor;
    let share = draw / case.estimates[Unknown::Damping as usize].likely;
    heard * share.clamp(1.0 / factor, factor)
}

impl Scene {
    /// The scene of a case; `turned` when the feed runs along Y. None for drills.
    pub(crate) fn new(case: &Case, turned: bool) -> Option<Scene> {
        if case.cutter.drill || case.cutter.z == 0 {
            return None;
        }
        let mut voices = tip(case, turned);
        voices.extend(work(case));
        let corner = case.cutter.corner;
        let ap = case.pass.usual.ap;
        Some(Scene {
            voices,
            cut: cut(case),
            edge: match floor(case) && corner > 0.0 {
                true => Edge::rounded(corner, ap),
                false => Edge::sharp(),
            },
            ap,
            book: case.job.quiet.clone(),
        })
    }

    /// The first depth that sings at a spindle speed, 1/s, up to a depth, m.
    ///
    /// Depth goes with stiffness over cutting force: worked out, and kept, for the tip's stiffness and a force that are always
    /// the same.
    pub(crate) fn limit(&self, n: f64, most: f64) -> Option<Crossing> {
        let tip = self.voices.first()?.mode;
        let scale = tip.k / UNIT_STIFFNESS * (UNIT_FORCE / self.cut.kt);
        let mut unit = self.unit(tip.k);
        // Only the ratio of tone and speed counts, and it is known to some per cent.
        let tone = self.voices.first()?.mode.omega_n;
        let ratio = libm::log(tone / n) / RATIO_STEP;
        let turn = tone / n / libm::exp(RATIO_STEP * libm::round(ratio));
        unit.voices.iter_mut().for_each(|v| v.mode.omega_n /= tone);
        let n = libm::exp(-RATIO_STEP * libm::round(ratio));
        let most = libm::exp2(0.5 * libm::ceil(2.0 * libm::log2(most / scale)));
        let mut key: Vec<u64> = vec![n.to_bits(), most.to_bits(), u64::from(self.cut.z)];
        let cut = &unit.cut;
        key.extend([cut.phi_st, cut.phi_ex, cut.kr_ratio].map(f64::to_bits));
        if self.edge != Edge::sharp() {
            key.push(self.ap.to_bits());
        }
        for voice in &unit.voices {
            key.push(voice.axis as u64);
            key.extend([voice.mode.k, voice.mode.zeta, voice.mode.omega_n].map(f64::to_bits));
        }
        let found = self.book.get(key, || unit.system()?.limit(n, most))?;
        Some(Crossing {
            depth: found.depth * scale,
            omega: found.omega * tone / turn,
            ..found
        })
    }

    /// The same with a tip of unit stiffness under a unit force; other stiffnesses in proportion, to nine digits.
    fn unit(&self, tip: f64) -> Scene {
        let mut unit = self.clone();
        unit.cut.kt = UNIT_FORCE;
        for voice in &mut unit.voices {
            let share = voice.mode.k / tip;
            voice.mode.k = UNIT_STIFFNESS * libm::round(share * 1.0e9) / 1.0e9;
        }
        unit
    }

    /// Modes and cut, ready for any spindle speed.
    pub(crate) fn system(&self) -> Option<System> {
        let moving: Vec<Moving> = self.voices.iter().map(Voice::moving).collect();
        System::new(&moving, &self.cut, &self.edge)
    }

    /// The same with the tip's frequencies so many times what they are.
    pub(crate) fn tuned(&self, factor: f64) -> Scene {
        let mut tuned = self.clone();
        for voice in &mut tuned.voices {
            if matches!(voice.whose, Whose::Cutter | Whose::Machine) {
                voice.mode.omega_n *= factor;
            }
        }
        tuned
    }
}

impl Voice {
    /// The mode with its direction.
    pub fn moving(&self) -> Moving {
        match self.axis {
            Axis::X => Moving::x(self.mode),
            Axis::Y => Moving::y(self.mode),
            Axis::Z => Moving::z(self.mode),
        }
    }
}

/// The cut where it spends its time.
fn cut(case: &Case) -> Cut {
    let chip = 0.5 * case.choice.fz;
    Cut {
        z: case.cutter.z,
        phi_st: case.pass.usual.immersion.phi_st,
        phi_ex: case.pass.usual.immersion.phi_ex,
        // The slope of force over chip thickness, which is what regenerates: (1 - mc) kc(h).
        kt: (1.0 - case.job.material.mc)
            * specific_cutting_force(&cutting(case.job), chip)
            * case.force_factor(),
        kr_ratio: case.job.material.radial_ratio.likely,
    }
}

/// Whether the corner of the cutter works on a floor.
fn floor(case: &Case) -> bool {
    matches!(
        case.shape.task.kind,
        TaskKind::Clearing | TaskKind::FloorSkim | TaskKind::SlotsBlind | TaskKind::Facing
    )
}

/// Cutter and machine, in feed and across.
fn tip(case: &Case, turned: bool) -> Vec<Voice> {
    let ring = case.cutter.ring;
    let (x, y) = ring.map_or((ANY, ANY), |ring| ring.frequency);
    let tones = if turned { [y, x] } else { [x, y] };
    let zeta = damping(case);
    let voice = |whose, axis, k, tone: f64| {
        let omega_n = core::f64::consts::TAU * tone;
        let mode = Mode { k, zeta, omega_n };
        Voice { whose, axis, mode }
    };
    let (cutter, machine) = (1.0 / case.load.tip, case.get(Unknown::MachineStiffness));
    let axes = [Axis::X, Axis::Y].into_iter().zip(tones);
    match case.job.machine.tone.filter(|_| ring.is_some()) {
        Some(tone) => axes
            .flat_map(|(axis, own)| {
                [
                    voice(Whose::Cutter, axis, cutter, own),
                    voice(Whose::Machine, axis, machine, tone),
                ]
            })
            .collect(),
        None => {
            let softer = if cutter < machine {
                Whose::Cutter
            } else {
                Whose::Machine
            };
            axes.map(|(axis, own)| voice(softer, axis, 1.0 / case.chain(), own))
                .collect()
        }
    }
}

/// What vibrates of the work: the web along the cutter where no bed carries it, the rib across.
fn work(case: &Case) -> Vec<Voice> {
    let zeta = case.job.numbers.web_damping;
    let mut found = Vec::new();
    if let Some(mode) = web_mode(case).filter(|_| floor(case) && case.cutter.corner > 0.0) {
        found.push(Voice {
            whose: Whose::Web,
            axis: Axis::Z,
            mode,
        });
    }
    let slots = matches!(
        case.shape.task.kind,
        TaskKind::SlotsThrough | TaskKind::SlotsBlind
    );
    if let Some(ribs) = case.known.rib.filter(|_| slots) {
        let omega_n = core::f64::consts::TAU * ribs.tone;
        let mode = Mode {
            k: 1.0 / ribs.open,
            zeta,
            omega_n,
        };
        found.push(Voice {
            whose: Whose::Rib,
            axis: Axis::Y,
            mode,
        });
    }
    found
}

/// The web's first mode under the cutter, where no bed takes it away.
pub(crate) fn web_mode(case: &Case) -> Option<Mode> {
    let web = case.web()?;
    let bare = case.held.backing.bed.likely <= 0.0 && web.frequency > 0.0;
    bare.then(|| Mode {
        k: 1.0 / web.bare,
        zeta: case.job.numbers.web_damping,
        omega_n: core::f64::consts::TAU * web.frequency * case.get(Unknown::WebTone),
    })
}

/// Depth that is quiet at any speed, m, at most the share of the linear limit that is used; none for drills.
pub(crate) fn quiet(case: &Case) -> Option<f64> {
    let scene = Scene::new(case, false)?;
    let mode = Mode {
        k: 1.0 / case.chain(),
        zeta: damping(case),
        // None is needed: the least depth over all speeds does not depend on it.
        omega_n: core::f64::consts::TAU * ANY,
    };
    let cut = &scene.cut;
    let mut key = vec![u64::from(cut.z)];
    key.extend([mode.zeta, cut.phi_st, cut.phi_ex, cut.kr_ratio].map(f64::to_bits));
    let unit = Mode {
        k: UNIT_STIFFNESS,
        ..mode
    };
    let of_unit = scene.book.get(key, || {
        let cut = Cut {
            kt: UNIT_FORCE,
            ..*cut
        };
        let depth = quiet_at_any_speed(&unit, &unit, &cut);
        depth.is_finite().then_some(Crossing {
            depth,
            ..Crossing::default()
        })
    });
    let scale = mode.k / UNIT_STIFFNESS * (UNIT_FORCE / cut.kt);
    let mut depth = of_unit.map_or(f64::INFINITY, |c| c.depth) * scale;
    for voice in scene.voices.iter().filter(|v| v.whose == Whose::Rib) {
        depth = depth.min(quiet_depth(&Mode::rigid(), &voice.mode, cut));
    }
    let depth = depth * case.job.numbers.stability_share;
    (depth.is_finite() && depth > 0.0).then_some(depth)
}

/// Depth that is quiet at the step's speed whatever the error of the frequencies and the direction of the feed, m, at most
/// the share of the linear limit that is used; none where no frequency is known.
pub(crate) fn quiet_here(case: &Case) -> Option<f64> {
    (tip_known(case) > TipKnown::Nothing).then(|| banded(case, case.choice.n))?
}

/// The same at any speed, 1/s.
pub(crate) fn banded(case: &Case, n: f64) -> Option<f64> {
    let (share, spread) = (
        case.job.numbers.stability_share,
        case.job.numbers.tap_spread,
    );
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
        for factor in [1.0, 1.0 - spread, 1.0 + spread] {
            if let Some(found) = scene.tuned(factor).limit(n, most) {
                least = least.min(found.depth);
            }
        }
    }
    Some(share * least)
}

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
