//! What vibrates in a step, and what drives it.

use crate::case::{Case, cutting};
use crate::estimate::{Known, Unknown};
use crate::quiet_book::QuietBook;
use crate::task::TaskKind;
use thinwright_chatter::floquet::{Moving, System};
use thinwright_chatter::{Cut, Edge, Mode};
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
    /// Frequency and stiffness: it steers.
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
pub(crate) const ANY: f64 = 1.0e3;

/// A cut and what vibrates under it, in one world.
#[derive(Clone, Debug)]
pub(crate) struct Scene {
    pub(crate) voices: Vec<Voice>,
    pub(crate) cut: Cut,
    pub(crate) edge: Edge,
    /// Step-down, m.
    pub(crate) ap: f64,
    pub(crate) book: QuietBook,
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
pub(crate) fn damping(case: &Case) -> f64 {
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

    /// The coupled modes and the cut, ready for any spindle speed.
    pub(crate) fn system(&self) -> Option<System> {
        let moving: Vec<Moving> = coupled(&self.voices).iter().map(Voice::moving).collect();
        System::new(&moving, &self.cut, &Edge::sharp())
    }

    /// The same with the tip's frequencies so many times what they are.
    pub(crate) fn tuned(&self, factor: f64) -> Scene {
        let mut tuned = self.clone();
        for voice in &mut tuned.voices {
            if voice.of_tip() {
                voice.mode.omega_n *= factor;
            }
        }
        tuned
    }
}

/// A rib vibrates by itself where its tone is so many times the tip's highest: both are held alone then, and the tip's
/// lobes are not cut finer than they are.
const FAST: f64 = 3.0;

/// The vibrations that are reckoned with together: the tip's, and those of ribs that are not much faster. The web moves along
/// the cutter, where only a rounded corner drives it: it is held alone ([`crate::limits::LimitId::WebSong`]).
pub(crate) fn coupled(voices: &[Voice]) -> Vec<Voice> {
    let near = voices.iter().filter(|v| v.is_coupled(voices));
    near.copied().collect()
}

impl Voice {
    /// Whether it is cutter or machine.
    pub(crate) fn of_tip(&self) -> bool {
        matches!(self.whose, Whose::Cutter | Whose::Machine)
    }

    /// Whether it is reckoned with together with the tip.
    pub(crate) fn is_coupled(&self, all: &[Voice]) -> bool {
        let tip = all.iter().filter(|v| v.of_tip());
        let highest = tip.map(|v| v.mode.omega_n).fold(0.0, f64::max);
        self.of_tip() || (self.whose == Whose::Rib && self.mode.omega_n <= FAST * highest)
    }

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
            // It was the cutter that was tapped: cutter and machine as one.
            let one = 1.0 / case.chain();
            axes.map(|(axis, own)| voice(Whose::Cutter, axis, one, own))
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
