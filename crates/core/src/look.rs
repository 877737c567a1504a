//! A look at a candidate: how close every limit is that steers, and what that costs.

use crate::case::Load;
use crate::choice::Choice;
use crate::job::{Cutter, Job};
use crate::judge::Scene;
use crate::limits::{LIMITS, Limit, Move, Moves, Needs, Severity, utilisation};
use crate::methods::Method;
use crate::pass::Pass;

/// How many limits there are.
const COUNT: usize = LIMITS.len();

/// Seconds as whole milliseconds.
pub(crate) fn ms(seconds: f64) -> i64 {
    #[allow(
        clippy::cast_possible_truncation,
        reason = "far inside i64; saturating"
    )]
    let ms = (seconds * 1.0e3) as i64;
    ms
}

/// What a warning of this utilisation is reckoned to cost, s.
pub(crate) fn warning_price(job: &Job, utilisation: f64) -> f64 {
    if utilisation > 1.0 {
        job.numbers.warning_least_s + job.numbers.warning_price_s * (utilisation - 1.0).min(1.0)
    } else {
        0.0
    }
}

/// The utilisation of each limit; 0 where it does not apply or was not worked out.
#[derive(Clone)]
pub(crate) struct Look(pub(crate) [f64; COUNT]);

impl Look {
    /// The first limit that refuses.
    pub(crate) fn broken(&self) -> Option<usize> {
        let refuses =
            |i: &usize| LIMITS[*i].id.spec().severity <= Severity::Quality && self.0[*i] > 1.0;
        (0..COUNT).find(refuses)
    }

    /// Every limit that refuses, a bit for each.
    pub(crate) fn all_broken(&self) -> u64 {
        let refuses =
            |i: &usize| LIMITS[*i].id.spec().severity <= Severity::Quality && self.0[*i] > 1.0;
        (0..COUNT).filter(refuses).map(|i| 1 << i).sum()
    }

    /// The price of the warnings, s.
    pub(crate) fn penalty(&self, job: &Job) -> f64 {
        let advice = |i: &usize| LIMITS[*i].id.spec().severity == Severity::Advice;
        (0..COUNT)
            .filter(advice)
            .map(|i| warning_price(job, self.0[i]))
            .sum()
    }

    /// The closest limit, in millionths.
    pub(crate) fn closest(&self) -> i64 {
        let most = self.0.iter().copied().fold(0.0, f64::max);
        ms(most.min(1.0e6) * 1.0e3)
    }

    /// What every candidate between two looks reaches at least: `a` at the least numbers, `b` at the greatest.
    pub(crate) fn least(a: &Look, b: &Look, way: impl Fn(&Moves) -> Move) -> Look {
        Look(std::array::from_fn(|i| {
            let (a, b) = (a.0[i], b.0[i]);
            match way(&LIMITS[i].moves) {
                Move::Still => a.max(b),
                Move::Harder => a,
                Move::Easier => b,
                Move::OneWay => a.min(b),
                Move::Unknown => 0.0,
            }
        }))
    }
}

/// A candidate where it stands.
#[derive(Clone, Copy)]
pub(crate) struct Candidate<'a> {
    pub(crate) scene: &'a Scene<'a>,
    pub(crate) method: &'a Method,
    pub(crate) cutter: &'a Cutter,
    pub(crate) choice: &'a Choice,
    pub(crate) pass: &'a Pass,
}

impl Candidate<'_> {
    /// The limits that need no loads.
    pub(crate) fn quick(&self) -> Look {
        self.scene.tally.count(|e| e.checks += 1);
        let mut look = Look([0.0; COUNT]);
        self.hold(Needs::Numbers, &Load::default(), &mut look);
        look
    }

    /// The limits that need no loads, and the others if none of these refuses.
    pub(crate) fn whole(&self) -> Look {
        let look = self.quick();
        if look.broken().is_some() {
            return look;
        }
        self.with_loads(look)
    }

    /// Every limit, broken or not.
    pub(crate) fn every_limit(&self) -> Look {
        self.with_loads(self.quick())
    }

    fn with_loads(&self, mut look: Look) -> Look {
        let scene = self.scene;
        let cut = (self.cutter, self.choice, self.pass);
        let load = scene.loads.get(scene.job, cut, scene.tally);
        self.hold(Needs::Load, &load, &mut look);
        look
    }

    fn hold(&self, needs: Needs, load: &Load, look: &mut Look) {
        let numbers = (self.choice, self.pass);
        let case = self.scene.case(self.method, self.cutter, numbers, load);
        let steers = |l: &Limit| l.needs == needs && l.id.spec().severity <= Severity::Advice;
        for (i, limit) in LIMITS.iter().enumerate().filter(|(_, l)| steers(l)) {
            look.0[i] = utilisation(limit, &case);
        }
    }
}
