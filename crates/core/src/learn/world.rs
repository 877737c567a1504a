//! Worlds: a value each for what learning is about, and the coarse grid of them inside the ranges.

use crate::estimate::{Estimate, Estimates, Unknown};

/// Cells of the grid along each range. Each holds the same plausibility at first.
pub(super) const CELLS: usize = 16;

/// What is learned.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Quantity {
    /// Stiffness of the machine at the cutter, sideways, N/m.
    Stiffness,
    /// Specific cutting force kc1.1, Pa.
    Kc,
    /// Damping ratio at the cutter's tip.
    Damping,
}

impl Quantity {
    /// All of them, in order.
    pub const ALL: [Quantity; 3] = [Quantity::Stiffness, Quantity::Kc, Quantity::Damping];

    /// The unknown of the job that it is.
    pub fn unknown(self) -> Unknown {
        match self {
            Quantity::Stiffness => Unknown::MachineStiffness,
            Quantity::Kc => Unknown::Kc,
            Quantity::Damping => Unknown::Damping,
        }
    }
}

/// One world, SI.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct World {
    /// Stiffness of the machine at the cutter, sideways, N/m.
    pub stiffness: f64,
    /// Specific cutting force kc1.1, Pa.
    pub kc: f64,
    /// Damping ratio at the cutter's tip.
    pub damping: f64,
}

impl World {
    /// The likely one.
    pub fn likely(estimates: &Estimates) -> World {
        World::of(Quantity::ALL.map(|q| estimates[q.unknown() as usize].likely))
    }

    pub(super) fn of([stiffness, kc, damping]: [f64; 3]) -> World {
        World {
            stiffness,
            kc,
            damping,
        }
    }

    /// Whether every value can be one.
    pub(super) fn is_sound(&self) -> bool {
        let all = [self.stiffness, self.kc, self.damping];
        all.iter().all(|v| v.is_finite() && *v > 0.0)
    }
}

/// The value below which a share of a range lies: half of it lies below the likely value, half above, evenly by ratio.
pub(super) fn quantile(range: &Estimate, share: f64) -> f64 {
    let (from, to, within) = match share < 0.5 {
        true => (range.low, range.likely, 2.0 * share),
        false => (range.likely, range.high, 2.0 * share - 1.0),
    };
    if !(from > 0.0 && to > from) {
        return to;
    }
    from * libm::pow(to / from, within)
}

/// The worlds inside the ranges, in fixed order: damping fastest, stiffness slowest.
pub(super) fn grid(ranges: &[Estimate; 3]) -> Vec<World> {
    #[allow(clippy::cast_precision_loss, reason = "a few dozen cells")]
    let middles = |range: &Estimate| -> Vec<f64> {
        let middle = |cell: usize| (cell as f64 + 0.5) / CELLS as f64;
        (0..CELLS).map(|c| quantile(range, middle(c))).collect()
    };
    let [stiffness, kc, damping] = ranges.each_ref().map(middles);
    let mut worlds = Vec::with_capacity(CELLS * CELLS * CELLS);
    for k in &stiffness {
        for force in &kc {
            worlds.extend(damping.iter().map(|zeta| World::of([*k, *force, *zeta])));
        }
    }
    worlds
}
