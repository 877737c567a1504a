//! Candidates: the numbers worth trying for a task, already on the grid that a person types.

use crate::job::{Cutter, Grid, Job};
use crate::methods::Method;
use crate::shape::TaskShape;
use thinwright_catalog::ChipLoad;
use thinwright_mechanics::{chip, kinematics};

/// The numbers of one candidate, SI, on the grid.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Choice {
    /// Spindle speed, 1/s.
    pub n: f64,
    /// Feed, m/s.
    pub vf: f64,
    /// Feed per tooth that follows, m.
    pub fz: f64,
    /// Stepover, m.
    pub ae: f64,
    /// Step-down, m.
    pub ap: f64,
    /// Levels.
    pub levels: u32,
}

/// The nearest point of a grid at or below a value, but never below one step.
pub(crate) fn down(value: f64, step: f64) -> f64 {
    // A hair of tolerance, so that 0.3 / 0.05 counts as 6 steps.
    (libm::floor(value / step + 1.0e-9)).max(1.0) * step
}

/// The nearest point of a grid at or above a value.
pub(crate) fn up(value: f64, step: f64) -> f64 {
    libm::ceil(value / step - 1.0e-9).max(1.0) * step
}

impl Choice {
    /// The same choice with another step-down: as many levels as it takes.
    pub(crate) fn with_ap(mut self, depth: f64, ap: f64) -> Choice {
        self.ap = ap;
        self.levels = levels(depth, ap);
        self
    }
}

fn levels(depth: f64, ap: f64) -> u32 {
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "between 1 and the cap"
    )]
    let count = libm::ceil(depth / ap - 1.0e-6).clamp(1.0, 10_000.0) as u32;
    count
}

/// Spindle speeds worth trying, the fastest first: the ends and the middle of the material's range on this machine.
fn speeds(job: &Job, cutter: &Cutter, share: f64) -> Vec<f64> {
    let (low, high) = surface_speeds(job, cutter);
    let (least, most) = job.machine.n;
    let n = |vc: f64| kinematics::spindle_speed(vc, cutter.d).clamp(least, most);
    let high = share * greatest_surface_speed(job, cutter).min(high);
    let mut speeds: Vec<f64> = [high, (low * high).sqrt(), low]
        .iter()
        .map(|vc| down(n(*vc), job.grid.n).max(up(least, job.grid.n)))
        .collect();
    speeds.dedup_by(|a, b| (*a - *b).abs() < job.grid.n / 2.0);
    speeds
}

/// The material's range of surface speed for what the cutter is made of, m/s.
pub(crate) fn surface_speeds(job: &Job, cutter: &Cutter) -> (f64, f64) {
    let (low, high) = if cutter.carbide {
        job.material.vc_carbide
    } else {
        job.material.vc_hss
    };
    (low.si(), high.si())
}

/// The upper end of the surface speed here, m/s: the table's where the cut is kept wet, the middle of its range dry.
pub(crate) fn greatest_surface_speed(job: &Job, cutter: &Cutter) -> f64 {
    let (low, high) = surface_speeds(job, cutter);
    if job.holding.chips.wet {
        high
    } else {
        (low * high).sqrt()
    }
}

/// The material's range of feed per tooth at a cutter's diameter, m; straight lines between the table's diameters.
pub(crate) fn chip_loads(job: &Job, cutter: &Cutter) -> (f64, f64) {
    let table = &job.material.chip_load;
    let at = |row: &ChipLoad| (row.d.si(), row.low.si(), row.high.si());
    let (Some(first), Some(last)) = (table.first().map(at), table.last().map(at)) else {
        return (0.0, 0.0);
    };
    let d = cutter.d;
    if d <= first.0 {
        let share = d / first.0;
        return (first.1 * share, first.2 * share);
    }
    for pair in table.windows(2) {
        let (a, b) = (at(&pair[0]), at(&pair[1]));
        if d <= b.0 {
            let share = (d - a.0) / (b.0 - a.0);
            return (a.1 + share * (b.1 - a.1), a.2 + share * (b.2 - a.2));
        }
    }
    (last.1, last.2)
}

/// Step-downs worth trying, deepest first, each dividing the depth into whole levels.
fn step_downs(job: &Job, depth: f64, deepest: f64) -> Vec<f64> {
    let step = job.grid.depth;
    let thinnest = job.numbers.least_step_down_mm * 1.0e-3;
    let mut count = levels(depth, deepest.max(thinnest));
    let mut depths: Vec<f64> = Vec::new();
    while depths.len() < MOST_STEP_DOWNS {
        let ap = up(depth / f64::from(count), step);
        if depths.last().is_none_or(|last| ap < last - step / 2.0) {
            depths.push(ap);
        }
        if ap <= thinnest + step / 2.0 {
            break;
        }
        // Every count at first, then in growing strides.
        count += 1 + count / LEVEL_STRIDE;
    }
    depths
}

/// No more step-downs than this are tried for one cutter and method.
const MOST_STEP_DOWNS: usize = 24;
/// One more level in so many is skipped as they grow many.
const LEVEL_STRIDE: u32 = 8;
/// Feeds per tooth tried between the ends of the material's range.
const FEEDS: u32 = 4;

/// All candidates of a method with a cutter, in no particular order.
pub(crate) fn choices(
    job: &Job,
    shape: &TaskShape,
    cutter: &Cutter,
    method: &Method,
) -> Vec<Choice> {
    let Grid {
        vf: feed_step,
        depth: depth_step,
        ..
    } = job.grid;
    let (open, slot) = (
        speeds(job, cutter, 1.0),
        speeds(job, cutter, job.numbers.slot_speed),
    );
    let (low, high) = chip_loads(job, cutter);
    let depth = shape.task.depth();
    let deepest = (method.deepest)(job, shape, cutter);
    let mut all = Vec::new();
    for share in (method.stepovers)(job, shape, cutter) {
        let full = share >= 1.0;
        let ae = if full {
            cutter.d
        } else {
            down(share * cutter.d, depth_step).min(cutter.d)
        };
        let thinning = chip::radial_thinning(ae, cutter.d);
        // At full width chips have nowhere to go: no more than the middle of the range.
        let top = if full { (low * high).sqrt() } else { high };
        for ap in step_downs(job, depth, deepest) {
            for n in if full { &slot } else { &open } {
                let mut last = 0.0;
                for k in 0..FEEDS {
                    let part = f64::from(k) / f64::from(FEEDS - 1);
                    let fz = (top + (low - top) * part) * thinning;
                    let asked = kinematics::feed_speed(fz, cutter.z, *n).min(job.machine.feed);
                    let vf = down(asked, feed_step);
                    if (vf - last).abs() < feed_step / 2.0 {
                        continue;
                    }
                    last = vf;
                    let fz = kinematics::feed_per_tooth(vf, cutter.z, *n);
                    let choice = Choice {
                        n: *n,
                        vf,
                        fz,
                        ae,
                        ap,
                        levels: 1,
                    };
                    all.push(choice.with_ap(depth, ap));
                }
            }
        }
    }
    all
}
