//! The search beside the page: in a worker, or in slices on the page where no worker starts.

pub(crate) mod inside;
mod page;
mod runner;
mod viewer;

use crate::desk::Desk;
use crate::state::State;
use page::Engine;
use thinwright_jobfile::{Order, ToWorker};
use yew::prelude::*;

/// Sets the search on the answers whenever they are read anew without a problem, stops it when it is told to, and has the
/// web looked at, and charts drawn up, wherever the page wants to see them.
#[hook]
pub(crate) fn use_engine(desk: &Desk, state: &UseReducerHandle<State>) {
    let engine = use_memo((), |()| Engine::new(desk.clone()));
    let (answers, stopper) = (state.answers.clone(), engine.clone());
    let (viewer, drawer) = (engine.clone(), engine.clone());
    let asked = (state.generation, state.problems.is_empty());
    use_effect_with(asked, move |(generation, readable)| {
        if *readable {
            engine.ask(ToWorker {
                generation: *generation,
                order: Order::Work((*answers).clone()),
            });
        }
    });
    use_effect_with(state.stopped, move |stopped| {
        if let Some(generation) = *stopped {
            stopper.stop(generation);
        }
    });
    let wanted = (state.generation, state.wanted());
    use_effect_with(wanted, move |(generation, wanted)| {
        wanted
            .iter()
            .for_each(|sight| viewer.look(*generation, sight));
    });
    let chart = (state.generation, state.wanted_chart());
    use_effect_with(chart, move |(generation, chart)| {
        chart.iter().for_each(|of| drawer.draw_up(*generation, of));
    });
}
