//! What every part of the page has at hand: the tables, the language, and the way to say what happened.

use crate::state::{Action, State};
use std::rc::Rc;
use thinwright_catalog::Catalog;
use thinwright_words::language::Language;
use yew::prelude::*;

/// Tables and dispatcher, the same for as long as the page lives; and the language, so that whatever has the desk at hand is
/// drawn anew in another one.
#[derive(Clone)]
pub(crate) struct Desk {
    pub(crate) catalog: Rc<Catalog>,
    pub(crate) language: Language,
    dispatch: UseReducerDispatcher<State>,
}

impl PartialEq for Desk {
    fn eq(&self, other: &Desk) -> bool {
        Rc::ptr_eq(&self.catalog, &other.catalog) && self.language == other.language
    }
}

impl Desk {
    pub(crate) fn new(
        catalog: Rc<Catalog>,
        language: Language,
        dispatch: UseReducerDispatcher<State>,
    ) -> Desk {
        Desk {
            catalog,
            language,
            dispatch,
        }
    }

    /// Says what happened.
    pub(crate) fn say(&self, action: Action) {
        self.dispatch.dispatch(action);
    }

    /// A handler that says what happened.
    pub(crate) fn on<E: 'static>(&self, action: impl Fn(E) -> Action + 'static) -> Callback<E> {
        let desk = self.clone();
        Callback::from(move |event| desk.say(action(event)))
    }

    /// A handler that says what happened, if anything did.
    pub(crate) fn on_some<E: 'static>(
        &self,
        action: impl Fn(E) -> Option<Action> + 'static,
    ) -> Callback<E> {
        let desk = self.clone();
        Callback::from(move |event| {
            if let Some(action) = action(event) {
                desk.say(action);
            }
        })
    }
}

/// The desk of the page.
///
/// # Panics
/// Outside the page's provider, which is nowhere.
#[hook]
pub(crate) fn use_desk() -> Desk {
    use_context::<Desk>().expect("App puts the desk around everything")
}
