//! The list to tick: each risk with its caution and the steps at which it arises.

use super::asked;
use crate::desk::use_desk;
use crate::state::{Action, Shown, State};
use crate::text::confirm as text;
use std::rc::Rc;
use thinwright_core::confirm::Confirmation;
use thinwright_words::Speaker;
use web_sys::HtmlInputElement;
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct ConfirmProps {
    /// The strategy that asks.
    pub(crate) shown: Shown,
    /// What the person has confirmed.
    pub(crate) confirmed: Rc<Vec<String>>,
}

impl ConfirmProps {
    pub(crate) fn of(shown: &Shown, state: &State) -> ConfirmProps {
        ConfirmProps {
            shown: shown.clone(),
            confirmed: state.confirmed.clone(),
        }
    }
}

/// What has to be confirmed; nothing where nothing has to be.
#[component]
pub(crate) fn Confirm(props: &ConfirmProps) -> Html {
    let desk = use_desk();
    let all = asked(&props.shown);
    if all.is_empty() {
        return html! {};
    }
    let speaker = Speaker::new(props.shown.job.units, &desk.catalog, &props.shown.answers);
    let line = |(at, risk): (usize, &Confirmation)| {
        let id = format!("confirm-{at}");
        let key = risk.key.clone();
        let onchange = desk.on(move |event: Event| {
            let box_ = event.target_unchecked_into::<HtmlInputElement>();
            Action::Confirm(key.clone(), box_.checked())
        });
        let holds = props.confirmed.contains(&risk.key);
        html! {
            <li key={risk.key.clone()} class="confirm-line">
                <label class="confirm-label" for={id.clone()}>
                    <input type="checkbox" {id} checked={holds} {onchange} />
                    <span>
                        <strong>{ text::name(risk) }</strong>
                        { " " }{ speaker.caution(&risk.caution).to_owned() }
                        if let Some(steps) = text::steps(&risk.steps) { { " " }{ steps } }
                    </span>
                </label>
            </li>
        }
    };
    html! {
        <section class="confirm" aria-labelledby="confirm-name">
            <h3 class="confirm-name" id="confirm-name">{ text::heading() }</h3>
            <p>{ text::why() }</p>
            <ul>{ all.iter().enumerate().map(line).collect::<Html>() }</ul>
        </section>
    }
}
