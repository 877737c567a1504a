//! What was measured of jobs.

/// One job, times in ms from its start.
pub(crate) struct Measured {
    pub(crate) name: String,
    /// Until the strategy was final.
    pub(crate) checked: f64,
    /// Until all was told.
    pub(crate) done: f64,
    /// Checks of candidates.
    pub(crate) checks: f64,
    pub(crate) feasible: bool,
}

/// All jobs of one place, and the most memory they took.
pub(crate) struct Jobs {
    pub(crate) jobs: Vec<Measured>,
    /// Bytes; of the process, or of the program's own memory.
    pub(crate) memory: f64,
}
