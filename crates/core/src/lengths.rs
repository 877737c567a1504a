//! Path lengths in a region: remembered, as they are the same for every order of the work.

use crate::plan::{Area, Profile, clearing, wall_pass_length};
use std::cell::{Cell, OnceCell, RefCell};
use std::collections::BTreeMap;

/// Which path.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Path {
    /// All passes of a level, with the innermost of them.
    Passes,
    /// Once along the walls.
    Walls,
    /// Once around the outside.
    Around,
}

/// Path, diameter and stepover, to the last bit.
type Key = (Path, u64, u64);

/// Path lengths by cutter diameter and stepover (m), and the profile that they are reckoned from before.
#[derive(Clone, Debug, Default)]
pub struct Lengths {
    known: RefCell<BTreeMap<Key, (f64, f64)>>,
    profile: OnceCell<Profile>,
    worked_out: Cell<u64>,
}

impl Lengths {
    /// All passes and the innermost of them, m: by real offsets where tips may be left between passes, by the profile
    /// where passes lie so close that there are many and none is left.
    pub(crate) fn passes(&self, area: &Area, widest: f64, (d, ae): (f64, f64)) -> (f64, f64) {
        self.get((Path::Passes, d, ae), || {
            if ae <= 0.5 * d {
                let (path, last) = self.profile(area, widest).passes(d * 500.0, ae * 1.0e3);
                return (path * 1.0e-3, last * 1.0e-3);
            }
            let rings = clearing(area, d * 500.0, ae * 1.0e3);
            let last = rings.rings.last().map_or(0.0, |r| r.length_mm);
            (rings.total_length_mm * 1.0e-3, last * 1.0e-3)
        })
    }

    /// Once along the walls, m.
    pub(crate) fn walls(&self, area: &Area, d: f64) -> f64 {
        let length = || (wall_pass_length(area, d * 500.0) * 1.0e-3, 0.0);
        self.get((Path::Walls, d, 0.0), length).0
    }

    /// Once around the outside, m.
    pub(crate) fn around(&self, area: &Area, d: f64) -> f64 {
        let length = || (area.offset(d * 500.0).perimeter_mm() * 1.0e-3, 0.0);
        self.get((Path::Around, d, 0.0), length).0
    }

    /// The profile of a region whose largest circle has a diameter of `widest`, m.
    pub(crate) fn profile(&self, area: &Area, widest: f64) -> &Profile {
        self.profile
            .get_or_init(|| Profile::new(area, widest * 500.0))
    }

    fn get(
        &self,
        (path, d, ae): (Path, f64, f64),
        work: impl FnOnce() -> (f64, f64),
    ) -> (f64, f64) {
        let key = (path, d.to_bits(), ae.to_bits());
        if let Some(known) = self.known.borrow().get(&key) {
            return *known;
        }
        let lengths = work();
        self.known.borrow_mut().insert(key, lengths);
        self.worked_out.set(self.worked_out.get() + 1);
        lengths
    }

    /// How many were worked out.
    pub(crate) fn worked_out(&self) -> u64 {
        self.worked_out.get() + u64::from(self.profile.get().is_some())
    }
}
