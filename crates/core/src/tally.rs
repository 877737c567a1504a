//! What a search has done so far, counted: the same on every machine, unlike its time.

use std::cell::Cell;

/// Work done by a search.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Effort {
    /// Candidates that there were: cutters, methods, and numbers on the typed grid.
    pub candidates: u64,
    /// Candidates or groups of them that were looked at: times worked out, limits held.
    pub checks: u64,
    /// Cutting forces worked out over a revolution.
    pub loads: u64,
    /// Answers of the web that were worked out, not found in the cache.
    pub webs: u64,
    /// Path lengths worked out by offsets.
    pub lengths: u64,
}

/// Counts as it goes.
#[derive(Clone, Debug, Default)]
pub(crate) struct Tally(Cell<Effort>);

impl Tally {
    /// What was counted.
    pub(crate) fn effort(&self) -> Effort {
        self.0.get()
    }

    /// Counts one thing.
    pub(crate) fn count(&self, add: impl FnOnce(&mut Effort)) {
        let mut effort = self.0.get();
        add(&mut effort);
        self.0.set(effort);
    }
}
