//! Charts of stability: what was drawn up, and what is still to be.

use super::{Shown, State};
use std::rc::Rc;
use thinwright_core::stability::Lobes;
use thinwright_core::strategy::Step;
use thinwright_core::vibration::TipKnown;
use thinwright_core::{Answers, Outcome};
use thinwright_jobfile::ChartOf;

/// A chart; none where no frequency is known.
pub(crate) type Drawn = Option<Rc<Lobes>>;

/// Charts of the strategies of some answers, by step and by what they were drawn from.
#[derive(Clone, Default)]
pub(crate) struct Charts {
    of: Option<Rc<Answers>>,
    drawn: Rc<Vec<(ChartOf, Drawn)>>,
}

impl PartialEq for Charts {
    fn eq(&self, other: &Charts) -> bool {
        Rc::ptr_eq(&self.drawn, &other.drawn)
    }
}

impl Charts {
    /// Keeps a chart of these answers; what was drawn up for others goes.
    pub(super) fn put(&mut self, answers: &Rc<Answers>, of: ChartOf, drawn: Drawn) {
        if !self.of.as_ref().is_some_and(|of| Rc::ptr_eq(of, answers)) {
            *self = Charts {
                of: Some(answers.clone()),
                drawn: Rc::default(),
            };
        }
        let all = Rc::make_mut(&mut self.drawn);
        // A better strategy has another chart for the same step: the older one is of no use any more.
        all.retain(|(old, _)| old.step != of.step);
        all.push((of, drawn));
    }

    /// The chart of a step as it is shown, if it is there.
    pub(crate) fn at(&self, shown: &Shown, step: &Step) -> Option<&Drawn> {
        let of = self.of.as_ref()?;
        let own = |(of, _): &&(ChartOf, Drawn)| {
            of.step == step.number && step.stability.as_ref() == Some(&of.report)
        };
        let (_, drawn) = self.drawn.iter().find(own)?;
        Rc::ptr_eq(of, &shown.answers).then_some(drawn)
    }
}

impl State {
    /// The chart that the page wants and has not got: of the step in hand, if a frequency is known there.
    pub(crate) fn wanted_chart(&self) -> Option<ChartOf> {
        let shown = self.shown.as_ref().filter(|_| !self.stale())?;
        let Outcome::Feasible(strategy) = &*shown.outcome else {
            return None;
        };
        let step = crate::map::steps(strategy).nth(self.step?)?;
        let report = step.stability.as_ref()?;
        let wanted = report.known > TipKnown::Nothing && self.charts.at(shown, step).is_none();
        wanted.then(|| ChartOf {
            step: step.number,
            report: report.clone(),
        })
    }
}
