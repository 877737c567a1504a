//! Width of a slot (or of a recess) at its top and at its bottom: how far the cutter leaned, and how far cutter and machine
//! gave way together.

use super::{Said, Unreadable, above_nothing, at_least, believed};
use crate::case::beam;
use crate::estimate::{Estimate, Unknown};
use crate::job::{Cutter, Job};
use thinwright_mechanics::tool_beam::{Beam, compliance_at, tip_compliance};

/// A slot that was measured, cut with side passes of a narrower cutter. SI.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SlotWidth {
    /// Width at the top.
    pub top: f64,
    /// Width at the bottom.
    pub bottom: f64,
    /// Width that the path was made for.
    pub asked: f64,
    /// Step-down of the last pass along the walls.
    pub ap: f64,
}

/// What it says.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Slot {
    /// Lean of each wall over the step-down, m.
    pub lean: f64,
    /// Sideways force that bends this cutter so, N; none where the lean is less than the error.
    pub force: Option<Said>,
    /// The same over what was reckoned.
    pub force_factor: Option<Said>,
    /// How far each wall stands inside of where it should at the bottom, m.
    pub short: f64,
    /// Stiffness of cutter and machine together at the tip, N/m; none where nothing is short by more than the error.
    pub chain: Option<Said>,
    /// Stiffness of the machine alone, N/m; its upper end is infinite where the cutter alone may explain it.
    pub machine: Option<Said>,
    /// Error of one wall, m.
    pub error: f64,
}

impl Slot {
    /// What the instrument leaves open of the shortfall, as a share, at most 1.
    pub fn short_share(&self) -> f64 {
        (self.error / self.short.max(f64::MIN_POSITIVE)).min(1.0)
    }
}

/// What the width of a slot says of a cutter that was pushed off its walls with this mean force at likely values, N.
///
/// The walls lean as the cutter bends: more at its tip than where it enters. What is short at the bottom is force times the
/// compliance of cutter and machine in series. That the spindle tilts with the machine is not in it: then it leans more.
/// Units: m, N, N/m. Source: derived.
///
/// # Errors
/// What cannot be: a slot narrower than its cutter, wider at the bottom than at the top by more than the error.
pub fn slot_width(
    read: SlotWidth,
    force: f64,
    cutter: &Cutter,
    job: &Job,
) -> Result<Slot, Unreadable> {
    let numbers = &job.numbers;
    let top = at_least(read.top, cutter.d)?;
    let bottom = at_least(read.bottom, cutter.d)?;
    let (asked, ap) = (above_nothing(read.asked)?, above_nothing(read.ap)?);
    for width in [top, bottom] {
        believed(width / asked, numbers.reading_odd)?;
    }
    let force = above_nothing(force).map_err(|_| Unreadable::NothingReckoned)?;
    // A wall is half of a width.
    let error = 0.5 * numbers.reading_width_um * 1.0e-6;
    let spread = core::f64::consts::SQRT_2 * error;
    let lean = 0.5 * (top - bottom);
    if lean < -spread {
        return Err(Unreadable::Above {
            value: bottom,
            whole: top,
        });
    }
    let beam = beam(cutter);
    let found = (lean > spread).then(|| bent_by(&beam, ap, Said::around(lean, spread)));
    let found = found.filter(|f| f.likely.is_finite());
    let factor = found.map(|f| f.over(force));
    let short = 0.5 * (asked - bottom);
    let chain = (short > error).then(|| chain(job, force, factor, Said::around(short, error)));
    Ok(Slot {
        lean,
        force: found,
        force_factor: factor,
        short,
        chain,
        machine: chain.map(|chain| without(chain, tip_compliance(&beam))),
        error,
    })
}

/// Force in the middle of the step-down that makes the wall lean so.
fn bent_by(beam: &Beam, ap: f64, lean: Said) -> Said {
    let half = 0.5 * ap;
    let tip = compliance_at(beam, half, 0.0);
    let top = compliance_at(beam, half, ap.min(beam.stick_out));
    lean.over(tip - top)
}

/// Stiffness at the tip: force over what is short. The force is what the lean says, within the range of kc; without a lean
/// it is that range.
fn chain(job: &Job, force: f64, factor: Option<Said>, short: Said) -> Said {
    let kc: &Estimate = &job.estimates[Unknown::Kc as usize];
    let (least, most) = (kc.low / kc.likely, kc.high / kc.likely);
    let within = |f: f64| f.clamp(least, most);
    let factor = factor.map_or(
        Said {
            low: least,
            likely: 1.0,
            high: most,
        },
        |f| Said {
            low: within(f.low),
            likely: within(f.likely),
            high: within(f.high),
        },
    );
    Said {
        low: force * factor.low / short.high,
        likely: force * factor.likely / short.likely,
        high: force * factor.high / short.low,
    }
}

/// What is left of a chain's compliance without the cutter's.
fn without(chain: Said, tip: f64) -> Said {
    let of = |k: f64| {
        let rest = 1.0 / k - tip;
        if rest > 0.0 {
            1.0 / rest
        } else {
            f64::INFINITY
        }
    };
    Said {
        low: of(chain.low),
        likely: of(chain.likely),
        high: of(chain.high),
    }
}
