//! Candidates: the numbers worth trying for a task, already on the grid that a person types.

use crate::job::{Cutter, Job};
use crate::methods::Method;
use crate::pin::StepPin;
use crate::shape::TaskShape;
use crate::stability::in_step;
use thinwright_catalog::ChipLoad;
use thinwright_mechanics::{chip, kinematics};

/// The numbers of one candidate, SI, on the grid.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
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

/// Spindle speeds worth trying, the fastest first, from end to end of the material's range on this machine.
fn speeds(job: &Job, cutter: &Cutter, share: f64) -> Vec<f64> {
    let (low, high) = surface_speeds(job, cutter);
    let (least, most) = job.speeds_of(cutter);
    let n = |vc: f64| kinematics::spindle_speed(vc, cutter.d).clamp(least, most);
    let high = n(share * greatest_surface_speed(job, cutter).min(high));
    let mut speeds: Vec<f64> = between(n(low).min(high), high, SPEEDS)
        .map(|n| down(n, job.grid.n).max(up(least, job.grid.n)))
        .collect();
    // Where a tone was tapped, the speeds that keep step with it are worth trying too.
    if let Some(ring) = cutter.ring {
        let (low, high) = (n(low).min(high).max(least), high);
        for tone in [ring.frequency.0, ring.frequency.1] {
            speeds.extend(in_step(tone, cutter.z, job.grid.n, (low, high)));
        }
        speeds.sort_by(f64::total_cmp);
    }
    speeds.reverse();
    speeds.dedup_by(|a, b| (*a - *b).abs() < job.grid.n / 2.0);
    speeds
}

/// So many values from `low` to `high`, each the same times the one before; one where the ends meet.
fn between(low: f64, high: f64, count: u32) -> impl Iterator<Item = f64> {
    let same = high <= low * (1.0 + 1.0e-9);
    let last = if same { 0 } else { count - 1 };
    let ratio = if same { 1.0 } else { high / low };
    (0..=last).map(move |k| {
        if k == last {
            high
        } else {
            low * libm::pow(ratio, f64::from(k) / f64::from(last))
        }
    })
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
/// Spindle speeds tried between the ends of the material's range.
const SPEEDS: u32 = 8;
/// Stepovers tried between the ends of what a method takes.
const STEPOVERS: u32 = 6;

/// One stepover with the speeds and feeds per tooth that go with it.
#[derive(Clone, Debug, PartialEq)]
pub struct Net {
    /// Stepover, m.
    pub ae: f64,
    /// Spindle speeds, 1/s, the fastest first.
    pub speeds: Vec<f64>,
    /// Least and greatest feed per tooth, m.
    pub fz: (f64, f64),
}

/// Everything that is tried for a method with a cutter: each step-down with each stepover, its speeds and all feeds of
/// the typed grid within its range.
#[derive(Clone, Debug, PartialEq)]
pub struct Axes {
    /// Stepovers.
    pub nets: Vec<Net>,
    /// Step-downs, m, the deepest first, with the levels that they take.
    pub depths: Vec<(f64, u32)>,
    pinned_feed: Option<f64>,
}

impl Axes {
    /// What is tried; what the person has fixed has one value only.
    pub fn new(job: &Job, shape: &TaskShape, cutter: &Cutter, method: &Method) -> Axes {
        let pin = job.pins.at(&shape.task);
        let depth = shape.task.depth();
        let step_downs = match pin.ap {
            Some(ap) => vec![ap],
            None => step_downs(job, depth, (method.deepest)(job, shape, cutter)),
        };
        Axes {
            nets: nets(job, cutter, (method.stepovers)(job, shape, cutter), &pin),
            depths: step_downs
                .into_iter()
                .map(|ap| (ap, levels(depth, ap)))
                .collect(),
            pinned_feed: pin.vf,
        }
    }

    /// How many candidates there are.
    pub fn candidates(&self, job: &Job, cutter: &Cutter) -> u64 {
        let feeds = |net: &Net| -> u64 {
            let counts = net.speeds.iter().map(|n| {
                let feeds = self.feeds(job, cutter, net, *n);
                u64::from(feeds.last) + 1
            });
            counts.sum()
        };
        let nets = self.nets.iter().map(feeds);
        nets.sum::<u64>() * self.depths.len() as u64
    }

    /// The feeds of a net at a speed.
    pub fn feeds(&self, job: &Job, cutter: &Cutter, net: &Net, n: f64) -> Feeds {
        if let Some(vf) = self.pinned_feed {
            return Feeds::new((1, 1), vf);
        }
        let step = job.grid.vf;
        let feed = |fz: f64| kinematics::feed_speed(fz, cutter.z, n).min(job.machine.feed);
        let last = whole(feed(net.fz.1) / step + 1.0e-9);
        let first = whole(libm::ceil(feed(net.fz.0) / step - 1.0e-9)).min(last);
        Feeds::new((first, last), step)
    }
}

/// A whole number of steps, 1 at least.
fn whole(value: f64) -> u32 {
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "feeds are bounded far below; saturating"
    )]
    let whole = value.clamp(1.0, 1.0e9) as u32;
    whole
}

/// Each feed is so many times the one before, where the typed grid is finer: finer than that no machine shows.
const FEED_RATIO: f64 = 1.02;

/// Feeds on the grid in which they are typed, from the least to the greatest.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Feeds {
    /// Least and greatest, as multiples of the step.
    ends: (u32, u32),
    /// The step, m/s.
    step: f64,
    /// The place of the greatest; the least has the place 0.
    pub last: u32,
}

impl Feeds {
    fn new(ends: (u32, u32), step: f64) -> Feeds {
        let steps = ends.1 - ends.0;
        let ratio = f64::from(ends.1) / f64::from(ends.0);
        let growing = libm::ceil(libm::log(ratio) / libm::log(FEED_RATIO));
        let last = if growing < 1.0 { 0 } else { whole(growing) };
        Feeds {
            ends,
            step,
            last: last.min(steps),
        }
    }

    /// The feed of a place, m/s: the least steps of the grid first, then growing ones.
    pub fn at(&self, place: u32) -> f64 {
        if place >= self.last {
            return f64::from(self.ends.1) * self.step;
        }
        let growing = f64::from(self.ends.0) * libm::pow(FEED_RATIO, f64::from(place));
        let multiple = whole(libm::round(growing)).max(self.ends.0 + place);
        f64::from(multiple.min(self.ends.1)) * self.step
    }
}

fn nets(job: &Job, cutter: &Cutter, shares: (f64, f64), pin: &StepPin) -> Vec<Net> {
    let (low, high) = chip_loads(job, cutter);
    let mut stepovers: Vec<f64> = match pin.ae {
        Some(ae) => vec![ae],
        None => between(shares.0, shares.1, STEPOVERS)
            .map(|share| match share < 1.0 {
                true => down(share * cutter.d, job.grid.depth).min(cutter.d),
                false => cutter.d,
            })
            .collect(),
    };
    stepovers.reverse();
    stepovers.dedup_by(|a, b| (*a - *b).abs() < job.grid.depth / 2.0);
    let net = |ae: f64| {
        let full = ae >= cutter.d * (1.0 - 1.0e-9);
        let thinning = chip::radial_thinning(ae, cutter.d);
        // At full width chips have nowhere to go: no more than the middle of the range.
        let top = if full { (low * high).sqrt() } else { high };
        let share = if full { job.numbers.slot_speed } else { 1.0 };
        Net {
            ae,
            speeds: match pin.n {
                Some(n) => vec![n],
                None => speeds(job, cutter, share),
            },
            fz: (low * thinning, top * thinning),
        }
    };
    stepovers.into_iter().map(net).collect()
}
