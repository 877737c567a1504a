//! After a step: what to measure, and the ways to say how it went.

use super::address::Way;
use super::body::lines;
use crate::desk::use_desk;
use crate::state::Action;
use thinwright_words::lectern::Line;
use thinwright_words::{run, trouble};
use yew::prelude::*;

/// Where the page takes in how a step went, and where it looks for causes.
const RAN: &str = "ran-how";
const TROUBLE: &str = "trouble-stop";

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct AfterProps {
    pub(crate) said: Vec<Line>,
    /// From 0 over all setups.
    pub(crate) step: usize,
    pub(crate) go: Callback<Way>,
}

/// After a step.
#[component]
pub(crate) fn After(props: &AfterProps) -> Html {
    let desk = use_desk();
    let way = |id: &'static str| {
        let (go, step) = (props.go.clone(), props.step);
        let open = desk.on(move |()| Action::OpenStep(Some(step)));
        Callback::from(move |_: MouseEvent| {
            open.emit(());
            go.emit(Way::OutTo(id));
        })
    };
    html! {
        <>
            { lines(&props.said) }
            <div class="lectern-ways">
                <button type="button" class="button" onclick={way(RAN)}>{ run::section() }</button>
                <button type="button" class="button" onclick={way(TROUBLE)}>{ trouble::name() }</button>
            </div>
        </>
    }
}
