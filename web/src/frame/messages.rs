//! What there is to tell, until it is put away.

use crate::desk::use_desk;
use crate::state::{Action, Message};
use crate::text;
use std::rc::Rc;
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct MessagesProps {
    pub(crate) messages: Rc<Vec<Message>>,
}

/// The messages. The list is always there, so that what comes into it is read out.
#[component]
pub(crate) fn Messages(props: &MessagesProps) -> Html {
    let desk = use_desk();
    let line = |(at, message): (usize, &Message)| {
        let onclick = desk.on(move |_: MouseEvent| Action::PutAway(at));
        html! {
            <li class={classes!("message", message.alarm.then_some("message-alarm"))}>
                <span>
                    if message.alarm { <span class="mark" aria-hidden="true">{ text::MARK }</span> }
                    { &message.text }
                </span>
                <button type="button" class="button" {onclick}>{ text::put_away() }</button>
            </li>
        }
    };
    html! {
        <div role="status" aria-label={text::messages()}>
            if !props.messages.is_empty() {
                <ul class="messages">{ props.messages.iter().enumerate().map(line).collect::<Html>() }</ul>
            }
        </div>
    }
}
