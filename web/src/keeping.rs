//! The page as it was left.

use crate::browser::{self, LocalShelf};
use crate::shelf::{self, Shelf};
use crate::shop::Begun;
use crate::state::{Action, Message, State, Theme};
use std::rc::Rc;
use thinwright_catalog::Catalog;
use yew::prelude::*;

/// The page as it was left, or with a sample; and what there is to tell.
pub(crate) fn first(begun: &Begun, news: Option<String>) -> State {
    let catalog = Rc::new(Catalog::builtin());
    let mut state = State::new(catalog, begun.job.clone(), Vec::new());
    state.begin(begun.stock.clone(), begun.id.as_deref(), begun.seed);
    let theme = match LocalShelf::new().get(shelf::THEME_KEY).as_deref() {
        Some("light") => Theme::Light,
        Some("dark") => Theme::Dark,
        _ => Theme::System,
    };
    state.apply(Action::Dress(theme));
    let news = news.map(|text| Message { text, alarm: true });
    for message in news.into_iter().chain(begun.news.iter().cloned()) {
        state.apply(Action::Tell(message));
    }
    state
}

/// Dresses the page, and keeps how.
#[hook]
pub(crate) fn use_theme(state: &State) {
    use_effect_with(state.theme, |theme| {
        let name = match theme {
            Theme::System => None,
            Theme::Light => Some("light"),
            Theme::Dark => Some("dark"),
        };
        browser::dress(name);
        LocalShelf::new().put(shelf::THEME_KEY, name.unwrap_or("system"));
    });
}
