//! Tells of a newer version, which is taken when the person loads the page again.

use super::standing::use_standing;
use crate::desk::use_desk;
use crate::text;
use yew::prelude::*;

/// The notice. Its place is always there, so that what comes into it is read out.
#[component]
pub(crate) fn Newer() -> Html {
    // The desk changes with the language.
    let _desk = use_desk();
    let standing = use_standing();
    let onclick = Callback::from(|_: MouseEvent| {
        if let Some(window) = web_sys::window() {
            // It fails only where pages may not be loaded, and then this one stays.
            drop(window.location().reload());
        }
    });
    html! {
        <div role="status" aria-label={text::about_page()}>
            if standing.newer {
                <p class="messages message newer">
                    <span>{ text::newer_ready() }</span>
                    <button type="button" class="button" {onclick}>{ text::reload() }</button>
                </p>
            }
        </div>
    }
}
