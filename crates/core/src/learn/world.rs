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
    /// How many times deeper it really stays quiet than is worked out where no tone is known: the same for all such steps.
    pub reach: f64,
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
            reach: 1.0,
        }
    }

    /// Whether every value can be one.
    pub(super) fn is_sound(&self) -> bool {
        let all = [self.stiffness, self.kc, self.damping, self.reach];
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

/// The middle of a cell among so many, as a share.
#[allow(clippy::cast_precision_loss, reason = "a few dozen cells")]
fn middle(cell: usize, cells: usize) -> f64 {
    (cell as f64 + 0.5) / cells as f64
}

/// Cells of the reach beyond what is worked out without a tone, where that plays a part.
const REACHES: usize = 15;

/// Reaches that are as likely each: a logistic distribution of their logarithm, of this scale.
pub(super) fn reaches(scale: f64) -> Vec<f64> {
    let reach = |share: f64| libm::exp(scale * libm::log(share / (1.0 - share)));
    (0..REACHES).map(|c| reach(middle(c, REACHES))).collect()
}

/// The worlds inside the ranges, in fixed order: reach fastest, then damping, stiffness slowest.
pub(super) fn grid(ranges: &[Estimate; 3], reaches: &[f64]) -> Vec<World> {
    let middles = |range: &Estimate| -> Vec<f64> {
        (0..CELLS)
            .map(|c| quantile(range, middle(c, CELLS)))
            .collect()
    };
    let [stiffness, kc, damping] = ranges.each_ref().map(middles);
    let mut worlds = Vec::with_capacity(CELLS * CELLS * CELLS * reaches.len());
    for k in &stiffness {
        for force in &kc {
            for zeta in &damping {
                let world = World::of([*k, *force, *zeta]);
                worlds.extend(reaches.iter().map(|&reach| World { reach, ..world }));
            }
        }
    }
    worlds
}
