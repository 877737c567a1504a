//! The page as it was left: fetched at the start, kept after every change.

use crate::browser::{self, LocalShelf};
use crate::desk::Desk;
use crate::shelf::{self, Shelf};
use crate::state::{Action, Message, State, Theme};
use crate::text;
use std::rc::Rc;
use thinwright_catalog::Catalog;
use yew::prelude::*;

/// The page as it was left, or with a sample; and what there is to tell.
pub(crate) fn first(writable: &mut bool, news: Option<String>) -> State {
    let shelf = LocalShelf::new();
    let found = shelf::fetch(&shelf);
    *writable = found.writable;
    let sample = || text::sample_job(&thinwright_jobfile::samples()[0]);
    let job = found.job.unwrap_or_else(sample);
    let mut state = State::new(Rc::new(Catalog::builtin()), job, found.machines);
    let theme = match shelf.get(shelf::THEME_KEY).as_deref() {
        Some("light") => Theme::Light,
        Some("dark") => Theme::Dark,
        _ => Theme::System,
    };
    state.apply(Action::Dress(theme));
    for text in news.into_iter().chain(found.news) {
        state.apply(Action::Tell(Message { text, alarm: true }));
    }
    state
}

/// Keeps what was typed, and dresses the page.
#[hook]
pub(crate) fn use_keeping(desk: &Desk, state: &UseReducerHandle<State>, writable: bool) {
    let (job, machines) = (state.file(), (*state.machines).clone());
    let desk = desk.clone();
    use_effect_with((state.answers.clone(), state.machines.clone()), move |_| {
        if writable && !shelf::keep(&LocalShelf::new(), job, machines) {
            desk.say(Action::Tell(Message {
                text: text::not_kept().to_owned(),
                alarm: true,
            }));
        }
    });
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
