//! The choice of a language, in the title block.

use super::{learn, use_language};
use crate::desk::use_desk;
use crate::state::{Action, Message};
use crate::text;
use thinwright_words::language::Language;
use wasm_bindgen_futures::spawn_local;
use web_sys::HtmlSelectElement;
use yew::prelude::*;

/// The languages, each by its own name.
#[component]
pub(crate) fn LanguageChoice() -> Html {
    let desk = use_desk();
    let spoken = use_language();
    let list = use_node_ref();
    {
        // What a person chose once no longer follows the attribute, only the property; and what could not be had is not
        // spoken.
        let list = list.clone();
        use_effect(move || show(&list, spoken));
    }
    let onchange = {
        let list = list.clone();
        Callback::from(move |event: Event| {
            let chosen = event.target_unchecked_into::<HtmlSelectElement>().value();
            let (desk, list) = (desk.clone(), list.clone());
            let Some(chosen) = Language::by_tag(&chosen) else {
                return;
            };
            spawn_local(async move {
                match learn(chosen).await {
                    Ok(()) => desk.say(Action::Speak(chosen)),
                    Err(text) => {
                        show(&list, spoken);
                        desk.say(Action::Tell(Message { text, alarm: true }));
                    }
                }
            });
        })
    };
    let option = |language: Language| {
        html! {
            <option value={language.tag()} lang={language.tag()} selected={language == spoken}>{ language.own_name() }</option>
        }
    };
    html! {
        <div class="title-cell title-language">
            <label class="title-label" for="language">{ text::language() }</label>
            <select ref={list} class="entry" id="language" {onchange}>
                { Language::ALL.map(option).into_iter().collect::<Html>() }
            </select>
        </div>
    }
}

fn show(list: &NodeRef, spoken: Language) {
    if let Some(list) = list.cast::<HtmlSelectElement>()
        && list.value() != spoken.tag()
    {
        list.set_value(spoken.tag());
    }
}
