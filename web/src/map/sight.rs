//! What of the web is looked at in a step.

use crate::drawing::moment;
use thinwright_core::strategy::{Step, Strategy};
use thinwright_core::task::TaskKind;
use thinwright_core::{Detail, Job, Sight};
use thinwright_quantity::Length;

/// The steps of a strategy in order, over all setups.
pub(crate) fn steps(strategy: &Strategy) -> impl Iterator<Item = &Step> {
    strategy.setups.iter().flat_map(|s| &s.steps)
}

/// The step that works on the softest web, counted from 0 over all setups.
pub(crate) fn softest_step(strategy: &Strategy) -> Option<usize> {
    let webs = steps(strategy).enumerate();
    let webs = webs.filter_map(|(at, step)| Some((at, step.web.as_ref()?.stiffness.si())));
    webs.min_by(|a, b| a.1.total_cmp(&b.1)).map(|(at, _)| at)
}

/// What is looked at in a step that works on a web, as closely as can be: the web at its weakest during the step.
pub(crate) fn sight(job: &Job, strategy: &Strategy, step: usize) -> Option<Sight> {
    let moment = moment(job, strategy, step)?;
    moment.step.web.as_ref()?;
    let backings = &job.holding.backings;
    let thins = matches!(
        moment.step.task,
        TaskKind::Clearing | TaskKind::FloorSkim | TaskKind::SlotsThrough
    );
    // The patch that the route card's figures are of: that of the thinnest mill at hand.
    let mills = job.rack.iter().filter(|c| !c.drill).map(|c| 0.5 * c.d);
    let patch = mills
        .reduce(f64::min)
        .or(moment.cutter.map(|c| 0.5 * c.d))?;
    Some(Sight {
        up: moment.setup.face_up,
        second: moment.setup_index > 0,
        bolted: moment.setup.boss_bolted,
        backing: backings
            .iter()
            .position(|b| b.id == moment.setup.backing)
            .unwrap_or(0),
        patch: Length::m(patch),
        detail: Detail::Fine,
        state: if thins { moment.after } else { moment.before },
    })
}
