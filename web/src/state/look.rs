//! What was seen of the web, and what is still to be looked at.

use super::State;
use crate::map::{sight, softest_step};
use std::rc::Rc;
use thinwright_core::strategy::Strategy;
use thinwright_core::{Answers, Detail, Outcome, Sight, WebError, WebPicture};

/// A picture of the web, or why there is none.
pub(crate) type Seen = Result<Rc<WebPicture>, WebError>;

/// Pictures of the web of some answers, by what was looked at.
#[derive(Clone, Default)]
pub(crate) struct Looks {
    of: Option<Rc<Answers>>,
    seen: Rc<Vec<(Sight, Seen)>>,
}

impl PartialEq for Looks {
    fn eq(&self, other: &Looks) -> bool {
        Rc::ptr_eq(&self.seen, &other.seen)
    }
}

/// Whether two look at the same, whatever the detail.
fn same(a: &Sight, b: &Sight) -> bool {
    let plain = |s: &Sight| (s.up, s.second, s.bolted, s.backing, s.patch);
    plain(a) == plain(b) && a.state == b.state
}

impl Looks {
    /// Keeps what was seen of the web of these answers: the fine in place of the coarse, never the other way round.
    pub(super) fn put(&mut self, answers: &Rc<Answers>, sight: Sight, seen: Seen) {
        if !self.of.as_ref().is_some_and(|of| Rc::ptr_eq(of, answers)) {
            *self = Looks {
                of: Some(answers.clone()),
                seen: Rc::default(),
            };
        }
        let all = Rc::make_mut(&mut self.seen);
        match all.iter_mut().find(|(at, _)| same(at, &sight)) {
            Some(old) if old.0.detail <= sight.detail => *old = (sight, seen),
            Some(_) => {}
            None => all.push((sight, seen)),
        }
    }

    /// What was seen of the web of these answers, and how closely.
    pub(crate) fn at(&self, answers: &Rc<Answers>, sight: &Sight) -> Option<(&Seen, Detail)> {
        let of = self.of.as_ref()?;
        let (at, seen) = self.seen.iter().find(|(at, _)| same(at, sight))?;
        Rc::ptr_eq(of, answers).then_some((seen, at.detail))
    }
}

impl State {
    /// What the page wants to see of the web and has not seen finely: the step in hand, and where the web is softest.
    pub(crate) fn wanted(&self) -> Vec<Sight> {
        let Some(shown) = self.shown.as_ref().filter(|_| !self.stale()) else {
            return Vec::new();
        };
        let Outcome::Feasible(strategy) = &*shown.outcome else {
            return Vec::new();
        };
        let softest = softest_step(strategy);
        let mut steps = vec![softest];
        if self.step.is_some() {
            steps.push(self.step);
        }
        let sights = steps.into_iter().flatten();
        let sights = sights.filter_map(|at| sight(&shown.job, strategy, at));
        let fine = |s: &Sight| {
            let seen = self.looks.at(&shown.answers, s);
            seen.is_some_and(|(_, detail)| detail == Detail::Fine)
        };
        let mut wanted: Vec<Sight> = Vec::new();
        for sight in sights.filter(|s| !fine(s)) {
            if !wanted.contains(&sight) {
                wanted.push(sight);
            }
        }
        wanted
    }

    /// The picture of the web in the step in hand, if it was seen and belongs to the answers that stand there.
    pub(crate) fn web_in_hand(&self) -> Option<Rc<WebPicture>> {
        self.web_in(|_| self.step)
    }

    /// The same of the step in which the web is softest.
    pub(crate) fn softest_web(&self) -> Option<Rc<WebPicture>> {
        self.web_in(softest_step)
    }

    fn web_in(&self, step: impl Fn(&Strategy) -> Option<usize>) -> Option<Rc<WebPicture>> {
        let shown = self.shown.as_ref().filter(|_| !self.stale())?;
        let Outcome::Feasible(strategy) = &*shown.outcome else {
            return None;
        };
        let sight = sight(&shown.job, strategy, step(strategy)?)?;
        self.looks.at(&shown.answers, &sight)?.0.clone().ok()
    }
}
