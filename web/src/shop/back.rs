//! Taking back and doing again: two buttons, and the keys that everybody tries.

use crate::desk::{Desk, use_desk};
use crate::language::use_language;
use crate::state::{Action, Difference, State};
use crate::text::shop as text;
use thinwright_words::Speaker;
use wasm_bindgen::prelude::*;
use web_sys::{Element, KeyboardEvent};
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct BackProps {
    /// What taking back would change, and what doing again would.
    undo: Option<AttrValue>,
    redo: Option<AttrValue>,
}

impl BackProps {
    pub(crate) fn of(state: &State) -> BackProps {
        let speaker = Speaker::new(state.answers.units, &state.catalog, &state.answers);
        let place = |what: &Difference| match what {
            Difference::Field(id) => speaker.place(*id),
            Difference::Answers | Difference::Records | Difference::Job => String::new(),
        };
        let undo = state.undoable();
        let redo = state.redoable();
        BackProps {
            undo: undo.map(|what| text::undo_what(&what, &place(&what)).into()),
            redo: redo.map(|what| text::redo_what(&what, &place(&what)).into()),
        }
    }
}

/// The two buttons.
#[component]
pub(crate) fn Back(props: &BackProps) -> Html {
    use_language();
    let desk = use_desk();
    // They keep the focus when there is nothing more to do, so they are never switched off; their name is what they show.
    let button = |name: &'static str, what: &Option<AttrValue>, none: &'static str| {
        let idle = what.is_none().then_some("true");
        let label = what.clone().unwrap_or(none.into());
        (name, idle, label)
    };
    let (undo, undo_idle, undo_label) = button(text::undo(), &props.undo, text::nothing_to_undo());
    let (redo, redo_idle, redo_label) = button(text::redo(), &props.redo, text::nothing_to_redo());
    html! {
        <div class="title-cell" role="group" aria-label={text::back()}>
            <span class="title-label" aria-hidden="true">{ text::back() }</span>
            <div class="buttons">
                <button type="button" class="button" aria-disabled={undo_idle} title={undo_label} aria-label={props.undo.clone()}
                    onclick={desk.on(|_: MouseEvent| Action::Undo)}>{ undo }</button>
                <button type="button" class="button" aria-disabled={redo_idle} title={redo_label} aria-label={props.redo.clone()}
                    onclick={desk.on(|_: MouseEvent| Action::Redo)}>{ redo }</button>
            </div>
        </div>
    }
}

/// Hears Ctrl+Z, Ctrl+Shift+Z and Ctrl+Y, or the same with the command key. In an answer they take back the whole last
/// change; in any other line to type on they belong to that line.
#[hook]
pub(crate) fn use_back_keys(desk: &Desk) {
    let desk = desk.clone();
    use_effect_with((), move |()| {
        let heard = Closure::<dyn FnMut(KeyboardEvent)>::new(move |event: KeyboardEvent| {
            if let Some(action) = asked(&event) {
                event.prevent_default();
                desk.say(action);
            }
        });
        let document = web_sys::window().and_then(|window| window.document());
        if let Some(document) = &document {
            let heard = heard.as_ref().unchecked_ref();
            drop(document.add_event_listener_with_callback("keydown", heard));
        }
        move || {
            if let Some(document) = &document {
                let heard = heard.as_ref().unchecked_ref();
                drop(document.remove_event_listener_with_callback("keydown", heard));
            }
        }
    });
}

fn asked(event: &KeyboardEvent) -> Option<Action> {
    if !(event.ctrl_key() || event.meta_key()) || event.alt_key() {
        return None;
    }
    let action = match (event.key().to_lowercase().as_str(), event.shift_key()) {
        ("z", false) => Action::Undo,
        ("z", true) | ("y", false) => Action::Redo,
        _ => return None,
    };
    let at = event.target().and_then(|t| t.dyn_into::<Element>().ok());
    let elsewhere = at.is_some_and(|at| {
        let line = matches!(at.tag_name().as_str(), "INPUT" | "TEXTAREA");
        let panel = at.closest("dialog").is_ok_and(|panel| panel.is_some());
        (line && !at.id().starts_with("f-")) || panel
    });
    (!elsewhere).then_some(action)
}
