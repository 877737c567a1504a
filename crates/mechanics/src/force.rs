//! Forces through one revolution: every tooth, helix, runout, rounded corners.

mod corner;
mod runout;
mod table;

use crate::engagement::Immersion;
use crate::kienzle::Cutting;
use crate::math::{TAU, ceil, hypot, tan};
use corner::Corner;
use table::{Nodes, Parts, Table};

/// An end mill as forces see it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mill {
    /// Diameter, m.
    pub d: f64,
    /// Teeth.
    pub z: u32,
    /// Helix angle, rad; positive pulls the work up (right-hand cutter, right-hand helix).
    pub helix: f64,
    /// Offset of the cutter's axis from the spindle's, m: half the total indicated runout.
    pub runout: f64,
    /// Corner radius, m.
    pub corner_radius: f64,
}

/// A cut: feed per tooth, engagement, depth.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bite {
    /// Feed per tooth, m.
    pub fz: f64,
    /// Entry and exit.
    pub immersion: Immersion,
    /// Step-down, m.
    pub ap: f64,
}

/// Forces of the cutter on the work over one revolution, N and N m.
///
/// The frame follows the cutter: feed is where it moves, normal is to the left of that (where the immersion angle is 0),
/// axial is positive where the tool presses the work down, negative where it lifts it. The work pushes back on the
/// cutter with the opposite.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Forces {
    /// Greatest sideways force.
    pub peak_lateral: f64,
    /// Mean along the feed.
    pub mean_feed: f64,
    /// Mean normal to the feed.
    pub mean_normal: f64,
    /// Length of the mean sideways force.
    pub mean_lateral: f64,
    /// Greatest normal force, signed.
    pub peak_normal: f64,
    /// Least normal force, signed.
    pub least_normal: f64,
    /// Axial force of the greatest size, signed.
    pub peak_axial: f64,
    /// Mean axial force.
    pub mean_axial: f64,
    /// Greatest torque.
    pub peak_torque: f64,
    /// Mean torque.
    pub mean_torque: f64,
}

/// Tangent of the helix that `axial_ratio` is stated for, 30 degrees: part of the ratio's definition.
const RATIO_TANGENT: f64 = 0.577_350_269_189_625_8;
/// Positions over one turn of the cutter, at least; and between two teeth, at least.
const POSITIONS: f64 = 32.0;
const POSITIONS_PER_TOOTH: f64 = 8.0;
/// Lag below which the edge counts as straight, rad: far above rounding, far below any piece of the table.
const STRAIGHT: f64 = 1.0e-6;
/// So far inside the contact the edges of a jump are looked at, rad.
const INSIDE: f64 = 1.0e-9;
/// Greatest number of teeth, and lag in turns, that are worked out; beyond is no end mill.
const MOST_TEETH: u32 = 64;
const MOST_TURNS: f64 = 64.0;

/// Forces over one revolution.
///
/// Each slice of each tooth cuts a chip h = fz sin(phi), changed by runout: a tooth that reaches further takes what its
/// forerunners left (the offset lies where two neighbours differ most). Tangential force is kc(h) h per depth after
/// Kienzle, radial force `radial_ratio` times that; along the helix the slices lag by 2 s tan(helix) / d at height s.
/// Axially the straight edge lifts the work by `axial_ratio` times the tangential force at 30 degrees of helix, and as
/// the tangent of the helix otherwise; the rounded corner presses it down by the downward part of its normal force. A
/// corner radius below one feed per tooth counts as one feed per tooth (common practice, no source).
///
/// Units: SI. Valid for: equal pitch, up to 64 teeth, circular tooth path, no deflection fed back, lag and diameter in
/// the corner as on the straight edge, all of the corner's parts at its own middle. Nothing in the cut gives zeros.
/// Source: altintas1995 (frame, helix), kienzle1952 (force), kline1983 (runout).
/// # Example
/// One straight tooth, slot, kc 1000 N/mm2 for any chip, fz 0.1 mm, ap 1 mm: the greatest tangential force is 100 N.
pub fn forces(mill: &Mill, cutting: &Cutting, bite: &Bite) -> Forces {
    let Immersion { phi_st, phi_ex } = bite.immersion;
    let cuts = mill.z > 0 && mill.d > 0.0 && bite.fz > 0.0 && bite.ap > 0.0;
    if !cuts || phi_st < -TAU || phi_st >= phi_ex || phi_ex > 2.0 * TAU {
        return Forces::default();
    }
    let cut = Cut::new(mill, cutting, bite);
    let mut out = cut.means();
    (out.peak_normal, out.least_normal) = (f64::NEG_INFINITY, f64::INFINITY);
    // Without runout one tooth's pitch shows all; with it, every tooth has its own.
    let pitches = if cut.tables.len() > 1 { cut.teeth } else { 1 };
    let per_pitch = ceil(POSITIONS * cut.pitch / TAU).max(POSITIONS_PER_TOOTH);
    for tooth in 0..pitches {
        let turn = cut.pitch * f64::from(tooth);
        let mut along = 0.0;
        while along < per_pitch {
            out.peak(&cut.at(turn + cut.pitch * along / per_pitch));
            along += 1.0;
        }
        // Between two positions a thin cut could hide: corner in, all in, halfway, just before it leaves, corner out.
        let (full, last) = (cut.start + cut.lag + INSIDE, cut.end - INSIDE);
        let corner = (cut.start + cut.corner_lag + INSIDE, last + cut.corner_lag);
        for phi in [corner.0, full, 0.5 * (full + last), last, corner.1] {
            out.peak(&cut.at(turn + phi));
        }
    }
    out
}

/// All that the forces at one position depend on.
struct Cut {
    teeth: u32,
    pitch: f64,
    start: f64,
    end: f64,
    nodes: Nodes,
    /// One for all teeth, or one each.
    tables: Vec<Table>,
    corner: Corner,
    /// Angle by which the top of the edge, and the top of its corner, lag behind the tip.
    lag: f64,
    corner_lag: f64,
    depth_per_lag: f64,
    ap: f64,
    radial: f64,
    pull: f64,
    arm: f64,
}

impl Cut {
    fn new(mill: &Mill, cutting: &Cutting, bite: &Bite) -> Cut {
        let teeth = mill.z.min(MOST_TEETH);
        let nodes = Nodes::new(&bite.immersion);
        let tables = if mill.runout > 0.0 && teeth > 1 {
            let reaches = runout::reaches(mill, teeth);
            let of = |j| {
                let steps = runout::steps(&reaches, j);
                Table::new(&nodes, cutting, bite.fz, |h| runout::chip(&steps, h))
            };
            (0..reaches.len()).map(of).collect()
        } else {
            vec![Table::new(&nodes, cutting, bite.fz, |h| h)]
        };
        let corner = Corner::new(mill, cutting, bite);
        let lag = 2.0 * bite.ap * tan(mill.helix).abs() / mill.d;
        let lag = lag.min(MOST_TURNS * TAU);
        Cut {
            teeth,
            pitch: TAU / f64::from(teeth),
            start: bite.immersion.phi_st,
            end: bite.immersion.phi_ex,
            nodes,
            tables,
            lag,
            corner_lag: lag * corner.depth / bite.ap,
            depth_per_lag: bite.ap / lag,
            ap: bite.ap,
            corner,
            radial: cutting.radial_ratio,
            pull: cutting.axial_ratio * tan(mill.helix) / RATIO_TANGENT,
            arm: 0.5 * mill.d,
        }
    }

    /// Adds what the straight edge and the corner give, each as if it were straight, N.
    fn add(&self, sum: &mut At, straight: Parts, corner: Parts) {
        let (t, s) = (self.corner.tangential, self.corner.sideways);
        let tangential = |k: usize| straight[k] + t * corner[k];
        let sideways = |k: usize| straight[k] + s * corner[k];
        sum.feed += tangential(0) + self.radial * sideways(1);
        sum.normal += self.radial * sideways(0) - tangential(1);
        sum.axial += self.radial * self.corner.down * corner[2] - self.pull * sideways(2);
        sum.torque += tangential(2) * self.arm;
    }

    /// Means over a turn: each slice passes the whole immersion once, whatever its lag.
    fn means(&self) -> Forces {
        let mut sum = At::default();
        for table in &self.tables {
            let whole = table.whole();
            let (straight, corner) = (self.ap - self.corner.depth, self.corner.depth);
            self.add(&mut sum, times(straight, whole), times(corner, whole));
        }
        // One table stands for every tooth.
        let alike = self.teeth as usize / self.tables.len();
        #[allow(clippy::cast_precision_loss, reason = "at most 64")]
        let share = alike as f64 / TAU;
        Forces {
            mean_feed: sum.feed * share,
            mean_normal: sum.normal * share,
            mean_lateral: hypot(sum.feed * share, sum.normal * share),
            mean_axial: sum.axial * share,
            mean_torque: sum.torque * share,
            ..Forces::default()
        }
    }

    /// Forces with the tip of the first tooth at angle `turn`; the others follow behind it.
    fn at(&self, turn: f64) -> At {
        let mut sum = At::default();
        for (tooth, j) in (0..self.teeth).zip(0_usize..) {
            let table = self.tables.get(j).unwrap_or(&self.tables[0]);
            let mut tip = turn - self.pitch * f64::from(tooth);
            while tip < self.start {
                tip += TAU;
            }
            while tip >= self.start + TAU {
                tip -= TAU;
            }
            // The upper slices of an edge may still be in the cut a turn after its tip was.
            while tip - self.lag <= self.end {
                self.edge(&mut sum, table, tip);
                tip += TAU;
            }
        }
        sum
    }

    /// One edge with its tip at angle `tip`.
    fn edge(&self, sum: &mut At, table: &Table, tip: f64) {
        if self.lag < STRAIGHT {
            let here = table.at(&self.nodes, tip);
            let (straight, corner) = (self.ap - self.corner.depth, self.corner.depth);
            return self.add(sum, times(straight, here), times(corner, here));
        }
        let to = |phi: f64| table.to(&self.nodes, phi);
        let (low, high) = (to(tip), to(tip - self.lag));
        let middle = to(tip - self.corner_lag);
        let between =
            |a: Parts, b: Parts| times(self.depth_per_lag, [a[0] - b[0], a[1] - b[1], a[2] - b[2]]);
        self.add(sum, between(middle, high), between(low, middle));
    }
}

fn times(factor: f64, parts: Parts) -> Parts {
    [factor * parts[0], factor * parts[1], factor * parts[2]]
}

/// Feed, normal and axial force, N, and torque, N m, at one position.
#[derive(Default)]
struct At {
    feed: f64,
    normal: f64,
    axial: f64,
    torque: f64,
}

impl Forces {
    fn peak(&mut self, at: &At) {
        let lateral = (at.feed * at.feed + at.normal * at.normal).sqrt();
        self.peak_lateral = self.peak_lateral.max(lateral);
        self.peak_normal = self.peak_normal.max(at.normal);
        self.least_normal = self.least_normal.min(at.normal);
        self.peak_torque = self.peak_torque.max(at.torque);
        if at.axial.abs() > self.peak_axial.abs() {
            self.peak_axial = at.axial;
        }
    }
}

#[cfg(test)]
mod tests;
