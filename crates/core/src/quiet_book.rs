//! Depths at which cuts begin to sing, looked up by what they depend on, worked out once.

use crate::vibration::{Scene, coupled};
use std::cell::RefCell;
use std::collections::BTreeMap;
use std::rc::Rc;
use thinwright_chatter::floquet::Crossing;

/// Stiffness, N/m, and cutting coefficient, Pa, that depths are kept for.
pub(crate) const UNIT_STIFFNESS: f64 = 1.0e6;
pub(crate) const UNIT_FORCE: f64 = 1.0e9;
/// Ratios of tone and speed that differ by less than half of this count as one: a small part of what a tap errs by.
pub(crate) const RATIO_STEP: f64 = 0.005;
/// Depths worked out before, by what they depend on.
#[derive(Clone, Default)]
pub(crate) struct QuietBook(Rc<RefCell<BTreeMap<Vec<u64>, Known>>>);

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

/// How far a cut was looked into, and what was found.
#[derive(Clone, Copy, Debug, Default)]
struct Known {
    /// Rungs of the ladder of depths that were looked at.
    rungs: u32,
    /// Depth that they reach.
    to: f64,
    found: Option<Crossing>,
}

impl QuietBook {
    /// The first depth of a key that sings, up to `most`; `work` looks at one rung of the ladder of depths after the other and
    /// tells how far it reaches.
    pub(crate) fn get(
        &self,
        key: Vec<u64>,
        most: f64,
        mut work: impl FnMut(u32) -> (f64, Option<Crossing>),
    ) -> Option<Crossing> {
        let mut known = self.0.borrow().get(&key).copied().unwrap_or_default();
        let looked = known.rungs;
        while known.found.is_none() && known.to < most && known.rungs < MOST_RUNGS {
            (known.to, known.found) = work(known.rungs);
            known.rungs += 1;
        }
        if known.rungs > looked {
            let mut book = self.0.borrow_mut();
            if book.len() >= MOST {
                book.clear();
            }
            book.insert(key, known);
        }
        known.found.filter(|found| found.depth <= most)
    }
}

/// Most rungs that are looked at: far beyond the length of any flute.
const MOST_RUNGS: u32 = 24;

impl Scene {
    /// The first depth that sings at a spindle speed, 1/s, up to a depth, m.
    ///
    /// Depth goes with stiffness over cutting force: worked out, and kept, for the tip's stiffness and a force that are always
    /// the same.
    pub(crate) fn limit(&self, n: f64, most: f64) -> Option<Crossing> {
        let tip = self.voices.first()?.mode;
        let scale = tip.k / UNIT_STIFFNESS * (UNIT_FORCE / self.cut.kt);
        let mut unit = self.unit(tip.k);
        // Only the ratio of tone and speed counts, and it is known to some per cent.
        let tone = tip.omega_n;
        let ratio = libm::log(tone / n) / RATIO_STEP;
        unit.voices = coupled(&unit.voices);
        unit.voices.iter_mut().for_each(|v| v.mode.omega_n /= tone);
        let n = libm::exp(-RATIO_STEP * libm::round(ratio));
        let mut key: Vec<u64> = vec![n.to_bits(), u64::from(self.cut.z)];
        let cut = &unit.cut;
        key.extend([cut.phi_st, cut.phi_ex, cut.kr_ratio].map(f64::to_bits));
        for voice in &unit.voices {
            key.push(voice.axis as u64);
            key.extend([voice.mode.k, voice.mode.zeta, voice.mode.omega_n].map(f64::to_bits));
        }
        let mut system = None;
        let look = |rung| {
            let system = system.get_or_insert_with(|| unit.system());
            match system {
                Some(system) => (system.rung(rung), system.limit_on(n, rung)),
                None => (f64::INFINITY, None),
            }
        };
        let found = self.book.get(key, most / scale, look)?;
        let depth = found.depth * scale;
        Some(Crossing { depth, ..found })
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
}
