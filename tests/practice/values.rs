//! The advised values of a step, by the names that the ranges use.

use thinwright_core::job::Job;
use thinwright_core::limits::LimitId;
use thinwright_core::strategy::{Entry, Setup, Step};
use thinwright_core::task::{Face, TaskKind};

/// A step where it stands.
pub(crate) struct Cut<'a> {
    pub(crate) job: &'a Job,
    pub(crate) setup: &'a Setup,
    pub(crate) first: bool,
    pub(crate) step: &'a Step,
}

/// The thinner chip, mm, from which work per volume counts double.
const THIN_CHIP: f64 = 0.03;
/// Tolerance of a slot's width, m, below which one pass of a cutter as wide as the slot is not trusted.
const CLOSE_SLOT: f64 = 0.05e-3;
/// Utilisation of a feed that cannot be raised by a typed step any more.
const FULL_FEED: f64 = 0.95;

impl Cut<'_> {
    /// Cutter diameter, mm.
    pub(crate) fn d(&self) -> f64 {
        self.job.rack[usize::from(self.step.cutter)].d * 1.0e3
    }

    /// Stepover over diameter.
    pub(crate) fn stepover(&self) -> f64 {
        self.step.ae.si() * 1.0e3 / self.d()
    }

    /// What it is, for people: material, machine, task, method, numbers and the closest limits.
    pub(crate) fn told(&self) -> String {
        let (step, job) = (self.step, self.job);
        let limits: Vec<String> = step
            .findings
            .iter()
            .take(3)
            .map(|f| format!("{} {:.2}", f.limit.spec().key, f.utilisation()))
            .collect();
        format!(
            "{} {} {:?} {} d {:.1} n {:.0} vf {:.0} fz {:.4} ae {:.2} ap {:.2} levels {} chip {:.4}: {}",
            job.material.id,
            job.machine.class.id,
            step.task,
            step.method.key(),
            self.d(),
            step.n.si() * 60.0,
            step.vf.si() * 60.0e3,
            step.fz.si() * 1.0e3,
            step.ae.si() * 1.0e3,
            step.ap.si() * 1.0e3,
            step.levels,
            step.loads.chip.0.si() * 1.0e3,
            limits.join(", ")
        )
    }

    pub(crate) fn cutter(&self) -> &'static str {
        if self.job.rack[usize::from(self.step.cutter)].carbide {
            "carbide"
        } else {
            "hss"
        }
    }

    /// Whether slots are held to a width that a cutter as wide as the slot cannot be trusted with.
    pub(crate) fn close_slots(&self) -> bool {
        let slots = matches!(
            self.step.task,
            TaskKind::SlotsThrough | TaskKind::SlotsBlind
        );
        slots && self.job.wanted.slot.is_some_and(|w| w < CLOSE_SLOT)
    }

    /// How far the cut goes past the web, mm: heights count from the face that the part lies on.
    fn beyond_web(&self) -> f64 {
        let part = &self.job.part;
        let below = self.setup.face_up.other();
        let floor = part.recesses.iter().find(|r| r.face == below);
        let (raw_b, raw_a) = (part.blank_heights.0.m(), part.blank_heights.1.m());
        let web = match below {
            Face::B => floor.map_or(0.0, |r| r.floor.m()),
            Face::A => part.thickness - floor.map_or(part.thickness, |r| r.floor.m()),
        };
        let raw = match below {
            _ if !self.first => 0.0,
            Face::B => -raw_b,
            Face::A => raw_a - part.thickness,
        };
        (web + raw - self.step.z.1.si()) * 1.0e3
    }

    /// Work per volume of a sharp cutter, W s/mm3; halved where the chip is so thin that it counts double.
    fn energy(&self) -> f64 {
        let step = self.step;
        let removal = step.ae.si() * step.ap.si() * step.vf.si() * 1.0e9;
        let energy = step.loads.power.si() / removal / self.job.material.wear_factor;
        let thin = step.loads.chip.0.si() * 1.0e3 < THIN_CHIP;
        if thin { energy / 2.0 } else { energy }
    }

    fn entry(&self, name: &str) -> Option<f64> {
        let (d, vf) = (self.d(), self.step.vf.si());
        match (name, self.step.entry) {
            ("slope", Entry::Helix { angle, .. } | Entry::Zigzag { angle, .. }) => {
                Some(angle.si().to_degrees())
            }
            ("hole_over_d", Entry::Helix { hole, .. }) => Some(hole.si() * 1.0e3 / d),
            // At the wall of the hole.
            (
                "entry_feed",
                Entry::Helix {
                    hole,
                    centre_circle,
                    centre_feed,
                    ..
                },
            ) => Some(centre_feed.si() * hole.si() / centre_circle.si() / vf),
            ("entry_feed", Entry::Zigzag { feed, .. }) => Some(feed.si() / vf),
            ("peck_over_d", Entry::Drilled { hole, peck, .. }) => Some(peck.si() / hole.si()),
            ("hole_over_slot", Entry::Drilled { hole, .. }) => {
                Some(hole.si() / self.job.part.slots.first()?.width)
            }
            _ => None,
        }
    }

    /// A value by its name, in the unit of the table; nothing where the step has none.
    pub(crate) fn value(&self, name: &str) -> Option<f64> {
        let step = self.step;
        let (d, mm) = (self.d(), 1.0e3);
        let (ae, ap) = (step.ae.si() * mm, step.ap.si() * mm);
        Some(match name {
            "vc" => step.vc.si() * 60.0,
            "fz" => step.fz.si() * mm,
            "fz_over_d" => step.fz.si() * mm / d,
            "ae" => ae,
            "ap" => ap,
            "ae_over_d" => self.stepover(),
            "ap_over_d" => ap / d,
            "section" => ae * ap / (d * d),
            "leave_wall" => step.leave.0.si() * mm,
            "leave_floor" => step.leave.1.si() * mm,
            "cutter_over_slot" => d / (self.job.part.slots.first()?.width * mm),
            "corner_feed" => step.corner_feed?.si() / step.vf.si(),
            "energy" => self.energy(),
            "beyond_web" => self.beyond_web(),
            _ => return self.entry(name),
        })
    }

    /// Whether the machine, not the search, ends the value: the spindle's top or bottom, or the feed it cuts true at.
    pub(crate) fn at_machines_end(&self, name: &str, below: bool) -> bool {
        let machine = &self.job.machine;
        let n = self.step.n.si();
        let grid = self.job.grid.n;
        match (name, below) {
            ("vc", true) => n >= machine.n.1 - grid,
            ("vc", false) => n <= machine.n.0 + grid,
            ("fz" | "fz_over_d", true) => self.step.findings.iter().any(|finding| {
                finding.limit == LimitId::FeedReliable && finding.utilisation() >= FULL_FEED
            }),
            _ => false,
        }
    }
}
