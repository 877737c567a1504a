//! Machines of one's own: pick one, save this one, forget one.

use crate::desk::use_desk;
use crate::state::Action;
use crate::text;
use std::rc::Rc;
use thinwright_jobfile::SavedMachine;
use web_sys::{HtmlInputElement, HtmlSelectElement};
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct MachinesProps {
    pub(crate) machines: Rc<Vec<SavedMachine>>,
}

/// Machines of one's own.
#[component]
pub(crate) fn Machines(props: &MachinesProps) -> Html {
    let desk = use_desk();
    let (list, name) = (use_node_ref(), use_node_ref());
    let picked = |action: fn(String) -> Action| {
        let list = list.clone();
        desk.on_some(move |_: MouseEvent| Some(action(list.cast::<HtmlSelectElement>()?.value())))
    };
    let save = {
        let name = name.clone();
        desk.on_some(move |_: MouseEvent| {
            Some(Action::SaveMachine(
                name.cast::<HtmlInputElement>()?.value(),
            ))
        })
    };
    let options = props
        .machines
        .iter()
        .map(|m| html! { <option value={m.name.clone()}>{ &m.name }</option> });
    html! {
        <details class="more machines">
            <summary class="more-name">{ text::own_machines(props.machines.len()) }</summary>
            if !props.machines.is_empty() {
                <label class="field-label" for="own-machine">{ text::own_machine() }</label>
                <div class="field-entry">
                    <select class="entry" id="own-machine" ref={list.clone()}>{ options.collect::<Html>() }</select>
                    <button type="button" class="button" onclick={picked(Action::UseMachine)}>{ text::use_machine() }</button>
                    <button type="button" class="button" onclick={picked(Action::ForgetMachine)}>
                        { text::forget_machine() }
                    </button>
                </div>
            }
            <label class="field-label" for="machine-name">{ text::machine_name() }</label>
            <div class="field-entry">
                <input class="entry" id="machine-name" type="text" ref={name} />
                <button type="button" class="button" onclick={save}>{ text::save_machine() }</button>
            </div>
        </details>
    }
}
