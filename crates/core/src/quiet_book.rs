//! Depths at which cuts begin to sing, looked up by what they depend on, worked out once.

use crate::vibration::{Scene, coupled};
use std::cell::RefCell;
use std::collections::BTreeMap;
use std::rc::Rc;
use thinwright_chatter::Edge;
use thinwright_chatter::floquet::Crossing;

/// Stiffness, N/m, and cutting coefficient, Pa, that depths are kept for.
pub(crate) const UNIT_STIFFNESS: f64 = 1.0e6;
pub(crate) const UNIT_FORCE: f64 = 1.0e9;
/// Ratios of tone and speed that differ by less than half of this count as one: a small part of what a tap errs by.
const RATIO_STEP: f64 = 0.005;
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
    /// The depth of a key, worked out if it is not known.
    pub(crate) fn get(
        &self,
        key: Vec<u64>,
        work: impl FnOnce() -> Option<Crossing>,
    ) -> Option<Crossing> {
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
