//! The stop mark: an octagon and words, on every page of the sheet and at the machine, until everything is confirmed.

use crate::text::confirm as text;
use thinwright_core::confirm::Confirmation;
use yew::prelude::*;

/// An octagon, upright.
const OCTAGON: &str = "30,2 70,2 98,30 98,70 70,98 30,98 2,70 2,30";

/// The sign: its letters full on a screen; outlined on paper, where text lies over it and a code is scanned beside it.
fn octagon(class: &'static str, full: bool) -> Html {
    let (fill, stroke) = if full {
        ("currentColor", "none")
    } else {
        ("none", "currentColor")
    };
    html! {
        <svg {class} viewBox="0 0 100 100" aria-hidden="true">
            <polygon points={OCTAGON} fill="none" stroke="currentColor" stroke-width="4" />
            <text x="50" y="60" text-anchor="middle" font-size="28" font-weight="700" {fill} {stroke}
                stroke-width="1.2">{ text::stop() }</text>
        </svg>
    }
}

/// The mark across each printed page, and in words under the head; nothing where nothing is open.
pub(crate) fn on_paper(open: &[Confirmation]) -> Html {
    if open.is_empty() {
        return html! {};
    }
    html! {
        <>
            <p class="stop-words">{ text::not_confirmed(open) }</p>
            <div class="stop-across">
                { octagon("stop-shape", false) }
                <p>{ text::not_confirmed(open) }</p>
            </div>
        </>
    }
}

/// The mark on the screen at the machine; nothing where nothing is open.
pub(crate) fn on_screen(open: &[Confirmation]) -> Html {
    if open.is_empty() {
        return html! {};
    }
    html! {
        <p class="stop-banner" role="alert">{ octagon("stop-sign", true) }<span>{ text::not_confirmed(open) }</span></p>
    }
}
