//! What came of the ways and orders that were worked out.

use crate::limits::LimitId;
use crate::methods::{MethodId, Rejection};
use crate::order::OrderId;
use crate::strategy::Measure;
use crate::task::{Face, TaskKind};
use thinwright_quantity::{Duration, Stiffness};

/// Another way that was worked out for a task.
#[derive(Clone, Debug, PartialEq)]
pub struct Considered {
    /// The method.
    pub method: MethodId,
    /// The cutter.
    pub cutter: u8,
    /// What came of it.
    pub verdict: Verdict,
}

/// What came of a way that was not taken.
#[derive(Clone, Debug, PartialEq)]
pub enum Verdict {
    /// It works and takes this long.
    Slower(Duration),
    /// It works, but leaves a warning that the chosen way does not.
    Warned {
        /// The warning.
        limit: LimitId,
        /// Its utilisation.
        utilisation: f64,
        /// The time.
        time: Duration,
    },
    /// It cannot be set up at all.
    Unfit(Rejection),
    /// Its best numbers still break this limit.
    Breaks {
        /// The limit.
        limit: LimitId,
        /// Demand and what is allowed.
        measure: Measure,
    },
}

/// One order of the work with one way of holding, as a whole.
#[derive(Clone, Debug, PartialEq)]
pub struct OrderReport {
    /// Which order.
    pub order: OrderId,
    /// Face cut first.
    pub first: Face,
    /// Row id of the backing of the last setup (`none` without one).
    pub backing: String,
    /// Whether the boss is bolted in the last setup.
    pub boss_bolted: bool,
    /// What came of it.
    pub verdict: OrderVerdict,
    /// What set it aside; none for the chosen one, and where it does not work at all.
    pub decided: Option<Decided>,
}

/// What set an order aside that works.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Decided {
    /// A warning that the chosen order does not leave, and its utilisation where it is the worst of its step.
    Warning {
        /// The step's task.
        task: TaskKind,
        /// The warning.
        limit: LimitId,
        /// Utilisation.
        utilisation: Option<f64>,
    },
    /// It takes so much longer.
    Time(Duration),
    /// It costs as much in the whole, and came later.
    Nothing,
}

/// What came of an order.
#[derive(Clone, Debug, PartialEq)]
pub enum OrderVerdict {
    /// It works.
    Works {
        /// Time in all.
        time: Duration,
        /// How many warnings it leaves above their limit.
        warnings: u32,
        /// The worst of them.
        worst: Option<(LimitId, f64)>,
        /// Softest web stiffness that a cut meets.
        softest_web: Option<Stiffness>,
    },
    /// A task has no way at all.
    Fails {
        /// The task.
        task: TaskKind,
        /// The limit that stands in the way.
        limit: Option<LimitId>,
    },
}
