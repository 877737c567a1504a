//! Forces through one revolution: every tooth, helix, runout.

use crate::engagement::Immersion;
use crate::kienzle::{Cutting, specific_cutting_force};
use crate::math::{TAU, cos, pow, sin, tan};

/// An end mill as forces see it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mill {
    /// Diameter, m.
    pub d: f64,
    /// Teeth.
    pub z: u32,
    /// Helix angle, rad.
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

/// Forces of the cutter on the work's frame over one revolution, N and N m.
///
/// Feed and normal are in the plane; axial is positive where the tool presses the work down.
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

/// Nodes of the table over the engagement.
const NODES: usize = 48;
/// Positions over one turn of the cutter.
const POSITIONS: u32 = 120;
/// Feeds per tooth below this share of the mean are no cut.
const LEAST_SHARE: f64 = 1.0e-6;

/// Running integrals over the immersion angle of h^(1-mc) times (cos, sin, 1), for a feed per tooth of 1.
struct Table {
    st: f64,
    step: f64,
    sums: [[f64; 3]; NODES + 1],
}

impl Table {
    fn new(immersion: &Immersion, exponent: f64) -> Table {
        let step = (immersion.phi_ex - immersion.phi_st) / NODES as f64;
        let mut sums = [[0.0; 3]; NODES + 1];
        for i in 0..NODES {
            // Midpoint rule: the power of sin(phi) has no finite slope at 0.
            let phi = immersion.phi_st + (i as f64 + 0.5) * step;
            let chip = pow(sin(phi).max(0.0), exponent) * step;
            let part = [chip * cos(phi), chip * sin(phi), chip];
            for k in 0..3 {
                sums[i + 1][k] = sums[i][k] + part[k];
            }
        }
        Table {
            st: immersion.phi_st,
            step,
            sums,
        }
    }

    /// The integrals from entry to an angle.
    fn to(&self, phi: f64) -> [f64; 3] {
        let place = ((phi - self.st) / self.step).clamp(0.0, NODES as f64);
        #[allow(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "clamped to the table just above"
        )]
        let i = (place as usize).min(NODES - 1);
        let share = place - i as f64;
        core::array::from_fn(|k| self.sums[i][k] + share * (self.sums[i + 1][k] - self.sums[i][k]))
    }
}

/// Forces over one revolution.
///
/// Each slice of each tooth cuts a chip `h = fz_j sin(phi)` with Kienzle's force; along the helix the slices of a tooth
/// lag by 2 z tan(helix) / d, so that a tooth's force is an integral over an arc of the immersion. Runout shares the
/// feed unequally: tooth j gets `fz + r (cos(a_j) - cos(a_(j-1)))` with `a_j` its angle to the offset; a tooth that gets
/// less than nothing leaves its share to the next. Radial force is `radial_ratio` times the tangential one.
/// Axially, the helix pulls the work up by tan(helix) times the tangential force less what friction of the chip along
/// the edge takes back (radial ratio times the sine of the helix); the end edge and the corner press down by
/// `axial_ratio` times the tangential force of the lowest slice, as deep as the corner radius or one feed per tooth.
///
/// Units: SI. Valid for: sharp teeth, equal pitch, circular tooth path, no deflection fed back.
/// Source: altintas1995 (frame and helix), kienzle1952 (force law); the axial shares are an estimate of our own,
/// common practice, no source.
pub fn forces(mill: &Mill, cutting: &Cutting, bite: &Bite) -> Forces {
    if mill.z == 0 || bite.fz <= 0.0 || bite.ap <= 0.0 || bite.immersion.width() <= 0.0 {
        return Forces::default();
    }
    let table = Table::new(&bite.immersion, 1.0 - cutting.mc);
    let lag = 2.0 * bite.ap * tan(mill.helix) / mill.d;
    // Tangential force per depth for the mean feed: kc(fz) fz^1, so that the table's chip power multiplies it.
    let scale = specific_cutting_force(cutting, bite.fz) * bite.fz;
    let pull = tan(mill.helix) - cutting.radial_ratio * sin(mill.helix);
    let cut = Cut {
        mill,
        cutting,
        bite,
        table: &table,
        lag,
        pull,
        scale,
    };
    let arc = TAU / f64::from(POSITIONS);
    let mut out = Forces {
        peak_normal: f64::NEG_INFINITY,
        least_normal: f64::INFINITY,
        ..Forces::default()
    };
    for position in 0..POSITIONS {
        // Arcs as wide as the way to the next position: none falls between two, and the means are exact.
        let at = cut.at(arc * f64::from(position), arc);
        out.mean(&at);
        out.peak(&at);
    }
    // Where a thin cut jumps: just fully in, and just before it leaves.
    for turn in [
        bite.immersion.phi_st + lag.max(table.step),
        bite.immersion.phi_ex,
    ] {
        out.peak(&cut.at(turn, table.step));
    }
    let count = f64::from(POSITIONS);
    out.mean_feed /= count;
    out.mean_normal /= count;
    out.mean_axial /= count;
    out.mean_torque /= count;
    out.mean_lateral = libm::hypot(out.mean_feed, out.mean_normal);
    out
}

/// All that the forces at one position depend on.
struct Cut<'a> {
    mill: &'a Mill,
    cutting: &'a Cutting,
    bite: &'a Bite,
    table: &'a Table,
    lag: f64,
    pull: f64,
    scale: f64,
}

/// Feed, normal and axial force, N, and torque, N m, at one position.
struct At {
    feed: f64,
    normal: f64,
    axial: f64,
    torque: f64,
}

impl Cut<'_> {
    /// Forces with the first tooth's tip at angle `turn`; arcs of the helix no narrower than `least`.
    fn at(&self, turn: f64, least: f64) -> At {
        let ratio = self.cutting.radial_ratio;
        let low = (self.mill.corner_radius.max(self.bite.fz) / self.bite.ap).min(1.0);
        let pitch = TAU / f64::from(self.mill.z);
        let mut sum = At {
            feed: 0.0,
            normal: 0.0,
            axial: 0.0,
            torque: 0.0,
        };
        for tooth in 0..self.mill.z {
            let share = tooth_share(self.mill, self.bite.fz, tooth);
            if share <= 0.0 {
                continue;
            }
            let force = self.scale * self.bite.ap * pow(share, 1.0 - self.cutting.mc);
            let phi = (turn + pitch * f64::from(tooth)) % TAU;
            let [c, s, one] = slice(self.table, phi, self.lag.max(least));
            let [_, _, end] = slice(self.table, phi, (self.lag * low).max(least));
            sum.feed += force * (c + ratio * s);
            sum.normal += force * (s - ratio * c);
            sum.axial += force * (low * self.cutting.axial_ratio * end - self.pull * one);
            sum.torque += force * one * 0.5 * self.mill.d;
        }
        sum
    }
}

impl Forces {
    fn mean(&mut self, at: &At) {
        self.mean_feed += at.feed;
        self.mean_normal += at.normal;
        self.mean_axial += at.axial;
        self.mean_torque += at.torque;
    }

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

/// Mean over the helix of the table's integrand for a tooth whose tip is at `phi`: an arc of length `lag` behind it.
fn slice(table: &Table, phi: f64, lag: f64) -> [f64; 3] {
    let mut sum = [0.0; 3];
    // The tooth before the turn's start still has its upper slices in the cut.
    for tip in [phi, phi + TAU, phi - TAU] {
        let (a, b) = (table.to(tip - lag), table.to(tip));
        for k in 0..3 {
            sum[k] += (b[k] - a[k]) / lag;
        }
    }
    sum
}

/// Share of the mean feed that a tooth gets under runout.
fn tooth_share(mill: &Mill, fz: f64, tooth: u32) -> f64 {
    if mill.z < 2 || mill.runout <= 0.0 {
        return 1.0;
    }
    let pitch = TAU / f64::from(mill.z);
    let radius = |j: f64| mill.runout * cos(pitch * j);
    let share = |j: f64| 1.0 + (radius(j) - radius(j - 1.0)) / fz;
    // Teeth that are left without a chip pass theirs on: positive shares are scaled back to the sum.
    let sum: f64 = (0..mill.z).map(|j| share(f64::from(j)).max(0.0)).sum();
    let own = share(f64::from(tooth)).max(0.0);
    if own < LEAST_SHARE {
        0.0
    } else {
        own * f64::from(mill.z) / sum
    }
}

#[cfg(test)]
mod tests;
