//! The search beside the page: in a worker, or in slices on the page where no worker starts.

pub(crate) mod inside;
mod page;
mod runner;

use crate::desk::Desk;
use page::Engine;
use std::rc::Rc;
use thinwright_core::Answers;
use thinwright_jobfile::{Order, ToWorker};
use yew::prelude::*;

/// Sets the search on the answers whenever they are read anew without a problem.
#[hook]
pub(crate) fn use_engine(desk: &Desk, generation: u32, readable: bool, answers: &Rc<Answers>) {
    let engine = use_memo((), |()| Engine::new(desk.clone()));
    let answers = answers.clone();
    use_effect_with((generation, readable), move |(generation, readable)| {
        if *readable {
            engine.ask(ToWorker {
                generation: *generation,
                order: Order::Work((*answers).clone()),
            });
        }
    });
}
