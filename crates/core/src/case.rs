//! One candidate under one concrete world: what every limit looks at.

use crate::choice::Choice;
use crate::estimate::{Draw, Estimates, Unknown};
use crate::job::{Cutter, Job};
use crate::methods::MethodId;
use crate::pass::{Engagement, Pass};
use crate::shape::TaskShape;
use crate::web::{Ribs, WebAnswer, WebError};
use thinwright_catalog::{BackingRow, HoldRow};
use thinwright_mechanics::force::{Bite, Forces, Mill, forces};
use thinwright_mechanics::kienzle::Cutting;
use thinwright_mechanics::tool_beam::{self, Beam};

/// What is looked up before candidates of a task are judged.
#[derive(Clone, Debug)]
pub struct Responses {
    /// The web at its weakest during the task.
    pub web: Option<WebAnswer>,
    /// The web where it is cleared in one level at full depth, from the inside outwards: uncut stock is always ahead.
    pub ahead: Option<WebAnswer>,
    /// Why there is no answer of a web that there is.
    pub web_error: Option<WebError>,
    /// The ribs beside slots, sideways.
    pub rib: Option<Ribs>,
    /// Error of the web's thickness from turning over, m: for tasks after it.
    pub turn_over: f64,
}

impl Responses {
    /// Tells answers apart, to the last bit.
    pub(crate) fn key(&self) -> [u64; 8] {
        let of = |web: &Option<WebAnswer>, get: fn(&WebAnswer) -> f64| {
            web.as_ref().map_or(0, |w| get(w).to_bits())
        };
        [
            of(&self.web, |w| w.bare),
            of(&self.web, |w| w.frequency),
            of(&self.web, |w| w.thickness),
            of(&self.web, |w| w.radius),
            of(&self.web, |w| w.bed.map_or(0.0, |on| on.low.1)),
            of(&self.ahead, |w| w.bare),
            self.rib.map_or(0, |ribs| ribs.open.to_bits()),
            self.turn_over.to_bits(),
        ]
    }
}

/// How a setup holds the part.
#[derive(Clone, Copy, Debug)]
pub struct Held<'a> {
    /// The hold.
    pub hold: &'a HoldRow,
    /// The backing.
    pub backing: &'a BackingRow,
    /// The boss is bolted down.
    pub bolted: bool,
}

/// One candidate in one world.
#[derive(Clone, Copy)]
pub struct Case<'a> {
    /// The job.
    pub job: &'a Job,
    /// The task.
    pub shape: &'a TaskShape,
    /// The cutter.
    pub cutter: &'a Cutter,
    /// The method.
    pub method: MethodId,
    /// The numbers.
    pub choice: &'a Choice,
    /// What the cutter meets.
    pub pass: &'a Pass,
    /// Its loads, with everything likely.
    pub load: &'a Load,
    /// What was looked up.
    pub known: &'a Responses,
    /// The hold.
    pub held: Held<'a>,
    /// What is not known for sure in this setup.
    pub estimates: &'a Estimates,
    /// The world.
    pub draw: Draw,
}

/// Loads of a candidate with everything at its likely value.
#[derive(Clone, Copy, Debug, Default)]
pub struct Load {
    /// Where it spends its time.
    pub usual: Forces,
    /// The greatest anywhere.
    pub worst: Forces,
    /// The greatest anywhere with the most runout that there may be.
    pub uneven: Forces,
    /// Where it leaves the finished wall.
    pub wall: Option<Forces>,
    /// Greatest mean push along the tool anywhere, and greatest mean pull, N.
    pub push_pull: (f64, f64),
    /// Compliance of the cutter's tip in its collet, m/N.
    pub tip: f64,
    /// Bending stress at the root of the cutter, Pa: likely, and with the most runout.
    pub bending: (f64, f64),
}

impl Load {
    /// The loads of a candidate.
    pub fn new(job: &Job, cutter: &Cutter, choice: &Choice, pass: &Pass) -> Load {
        let runout = &job.estimates[Unknown::Runout as usize];
        let cutting = cutting(job);
        let beam = beam(cutter);
        let under = |runout: f64, e: &Engagement| {
            let mill = Mill {
                d: cutter.d,
                z: cutter.z,
                helix: cutter.helix,
                runout: runout / 2.0,
                corner_radius: cutter.corner,
            };
            let bite = Bite {
                fz: choice.fz * e.feed_share,
                immersion: e.immersion,
                ap: e.ap,
            };
            forces(&mill, &cutting, &bite)
        };
        let usual = under(runout.likely, &pass.usual);
        let mut load = Load {
            usual,
            tip: tool_beam::tip_compliance(&beam),
            ..Load::default()
        };
        let places = std::iter::once(&pass.usual).chain(pass.hard.iter().flatten());
        for (i, place) in places.enumerate() {
            let likely = match i {
                0 => usual,
                _ => under(runout.likely, place),
            };
            // Runout may also even out what two teeth do together: the greater of both counts.
            let uneven = if cutter.z > 1 {
                envelope(&likely, &under(runout.high, place))
            } else {
                likely
            };
            let arm = tool_beam::root_stress(&beam, 1.0, 0.5 * place.ap);
            load.worst = envelope(&load.worst, &likely);
            load.uneven = envelope(&load.uneven, &uneven);
            load.bending.0 = load.bending.0.max(arm * likely.peak_lateral);
            load.bending.1 = load.bending.1.max(arm * uneven.peak_lateral);
            let axial = [likely.mean_axial, uneven.mean_axial];
            load.push_pull.0 = axial.into_iter().fold(load.push_pull.0, f64::max);
            load.push_pull.1 = axial.iter().map(|a| -a).fold(load.push_pull.1, f64::max);
        }
        // Where nothing but the usual cut meets the wall, it is worked out already.
        load.wall = pass.wall.as_ref().map(|wall| match *wall == pass.usual {
            true => usual,
            false => under(runout.likely, wall),
        });
        load
    }
}

/// The greater of two loads, each force by itself; signed ones by their size.
fn envelope(a: &Forces, b: &Forces) -> Forces {
    let sized = |a: f64, b: f64| if b.abs() > a.abs() { b } else { a };
    Forces {
        peak_lateral: a.peak_lateral.max(b.peak_lateral),
        mean_feed: sized(a.mean_feed, b.mean_feed),
        mean_normal: sized(a.mean_normal, b.mean_normal),
        mean_lateral: a.mean_lateral.max(b.mean_lateral),
        peak_normal: a.peak_normal.max(b.peak_normal),
        least_normal: a.least_normal.min(b.least_normal),
        peak_axial: sized(a.peak_axial, b.peak_axial),
        mean_axial: sized(a.mean_axial, b.mean_axial),
        peak_torque: a.peak_torque.max(b.peak_torque),
        mean_torque: a.mean_torque.max(b.mean_torque),
    }
}

/// The material's force model with a worn edge.
pub(crate) fn cutting(job: &Job) -> Cutting {
    let row = &job.material;
    Cutting {
        kc1_1: job.estimates[Unknown::Kc as usize].likely,
        mc: row.mc,
        h_ref: 1.0e-3,
        radial_ratio: row.radial_ratio.likely,
        axial_ratio: row.axial_ratio.likely,
        wear: row.wear_factor,
    }
}

/// The cutter as a beam.
pub(crate) fn beam(cutter: &Cutter) -> Beam {
    let neck = (cutter.reach - cutter.flute_length).max(0.0);
    let needs_neck = cutter.shank > cutter.d && neck > 0.0;
    Beam {
        e_mod: cutter.material.e_mod.si(),
        shank_d: cutter.shank,
        flute_d_eff: cutter.d * cutter.material.effective_diameter_ratio,
        flute_length: cutter.flute_length.min(cutter.stick_out),
        stick_out: cutter.stick_out,
        neck_d: if needs_neck { cutter.d } else { 0.0 },
        neck_length: if needs_neck {
            neck.min(cutter.stick_out - cutter.flute_length).max(0.0)
        } else {
            0.0
        },
    }
}

impl Case<'_> {
    /// The value of an unknown in this world.
    pub fn get(&self, unknown: Unknown) -> f64 {
        self.draw.get(unknown)
    }

    /// Cutting force in this world over the likely one.
    pub fn force_factor(&self) -> f64 {
        self.get(Unknown::Kc) / self.estimates[Unknown::Kc as usize].likely
    }

    /// Whether this world has more runout than the likely one.
    fn uneven(&self) -> bool {
        self.get(Unknown::Runout) > self.estimates[Unknown::Runout as usize].likely
    }

    /// Bending stress at the root of the cutter, Pa: with the most runout there may be, where this world has more than
    /// the likely one.
    pub fn bending(&self) -> f64 {
        if self.uneven() {
            self.load.bending.1
        } else {
            self.load.bending.0
        }
    }

    /// The greatest loads: with the most runout there may be, where this world has more than the likely one.
    pub fn hardest(&self) -> &Forces {
        if self.uneven() {
            &self.load.uneven
        } else {
            &self.load.worst
        }
    }

    /// Compliance of cutter and machine together, sideways, m/N.
    pub fn chain(&self) -> f64 {
        self.load.tip + 1.0 / self.get(Unknown::MachineStiffness)
    }

    /// The tolerance on slot width, if one is asked.
    pub fn slot_tolerance(&self) -> Option<f64> {
        self.job.wanted.slot
    }

    /// The web, when the task works on it.
    pub fn web(&self) -> Option<&WebAnswer> {
        let ahead = self
            .known
            .ahead
            .as_ref()
            .filter(|_| self.choice.levels == 1);
        ahead.or(self.known.web.as_ref())
    }

    /// Compliance of the web under the cutter with its backing, m/N, when pushed down.
    pub fn web_compliance(&self) -> Option<f64> {
        let bed = self.get(Unknown::BedStiffness);
        self.web().map(|w| w.backed(bed))
    }
}
