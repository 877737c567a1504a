//! A step with everything that is known around it.

use super::bites::{self, Bite};
use super::drawing::{Drawing, Hollow, Outline};
use super::heights::Stand;
use super::loads::Loads;
use super::stock::side;
use super::web::{self, Web};
use thinwright_catalog::{BackingRow, HoldRow};
use thinwright_core::Job;
use thinwright_core::estimate::{Estimate, Unknown};
use thinwright_core::job::Cutter;
use thinwright_core::strategy::{Entry, Step};
use thinwright_core::task::TaskKind;
use thinwright_mechanics::kienzle::Cutting;

/// A step with its cutter, what the cutter meets and what that weighs.
pub(crate) struct Scene<'a> {
    pub(crate) job: &'a Job,
    pub(crate) drawing: &'a Drawing,
    pub(crate) stand: &'a Stand<'a>,
    pub(crate) step: &'a Step,
    pub(crate) cutter: &'a Cutter,
    pub(crate) hold: &'a HoldRow,
    pub(crate) backing: &'a BackingRow,
    /// Everything that the cutter meets.
    pub(crate) bites: Vec<(Bite, Loads)>,
    /// The web under the cut, where it is carried by nothing.
    pub(crate) web: Option<Web>,
}

impl<'a> Scene<'a> {
    pub(crate) fn new(
        job: &'a Job,
        drawing: &'a Drawing,
        stand: &'a Stand<'a>,
        cutter: &'a Cutter,
    ) -> Scene<'a> {
        let hold = if stand.second {
            &job.holding.second
        } else {
            &job.holding.first
        };
        let backings = &job.holding.backings;
        let backing = backings
            .iter()
            .find(|b| b.id == stand.setup.backing)
            .unwrap_or(&backings[0]);
        let mut scene = Scene {
            job,
            drawing,
            stand,
            step: stand.step,
            cutter,
            hold,
            backing,
            bites: Vec::new(),
            web: None,
        };
        scene.bites = bites::of(&scene)
            .into_iter()
            .map(|bite| (bite, Loads::of(&scene, &bite)))
            .collect();
        scene.web = web::under(&scene);
        scene
    }

    /// The same step, to be looked at in another light.
    pub(crate) fn like(&self) -> Scene<'a> {
        Scene {
            bites: self.bites.clone(),
            web: self.web,
            ..*self
        }
    }

    pub(crate) fn estimate(&self, unknown: Unknown) -> &Estimate {
        &self.job.estimates[unknown as usize]
    }

    /// The greatest cutting force that the material may have over the likely one.
    pub(crate) fn hard(&self) -> f64 {
        let kc = self.estimate(Unknown::Kc);
        kc.high / kc.likely
    }

    /// The material as the kernels see it, with a worn edge.
    pub(crate) fn cutting(&self) -> Cutting {
        let row = &self.job.material;
        Cutting {
            kc1_1: self.estimate(Unknown::Kc).likely,
            mc: row.mc,
            h_ref: 1.0e-3,
            radial_ratio: row.radial_ratio.likely,
            axial_ratio: row.axial_ratio.likely,
            wear: row.wear_factor,
        }
    }

    /// Kc after Kienzle at a chip thickness, Pa.
    pub(crate) fn kc(&self, chip: f64) -> f64 {
        let cutting = self.cutting();
        cutting.kc1_1 * cutting.wear * libm::pow(chip / cutting.h_ref, -cutting.mc)
    }

    /// The recess on the side that is cut.
    pub(crate) fn hollow(&self) -> Option<Hollow> {
        self.drawing.hollows[side(self.stand.face)]
    }

    /// Whether the task cuts slots.
    pub(crate) fn slots(&self) -> bool {
        let task = self.step.task;
        let slots = matches!(task, TaskKind::SlotsThrough | TaskKind::SlotsBlind);
        slots && !self.drawing.slits.is_empty()
    }

    /// Width of the slots, m.
    pub(crate) fn slot_width(&self) -> f64 {
        let widths = self.drawing.slits.iter().map(|s| s.width);
        widths.fold(f64::INFINITY, f64::min)
    }

    /// Inside radius of the recess corners along which the cutter goes in this task, m.
    pub(crate) fn corner(&self) -> Option<f64> {
        let left = match self.step.task {
            TaskKind::Clearing | TaskKind::FloorSkim => self.step.leave.0.si(),
            TaskKind::WallSkim => 0.0,
            _ => return None,
        };
        match self.hollow()?.plan {
            Outline::Box { corner, .. } => Some(corner - left),
            Outline::Round { .. } => None,
        }
    }

    /// Diameter of the hole that the entry opens, m.
    pub(crate) fn entry_hole(&self) -> Option<f64> {
        match self.step.entry {
            Entry::Helix { hole, .. } => Some(hole.si()),
            _ => None,
        }
    }

    /// Depth that is engaged in turn `level` of a level, m: what is typed.
    pub(crate) fn ap(&self) -> f64 {
        self.step.ap.si()
    }

    pub(crate) fn ae(&self) -> f64 {
        self.step.ae.si()
    }

    /// Share of the feed in ramps and helices.
    pub(crate) fn ramp(&self) -> f64 {
        self.job.numbers.ramp_feed
    }

    /// Cuts against the feed, as backlash would snatch.
    pub(crate) fn loose(&self) -> bool {
        self.job.machine.backlash > self.job.numbers.backlash_climb_um * 1.0e-6
    }
}
