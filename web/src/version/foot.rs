//! The foot of the page: its version, where it is kept, and the way to install it where the browser has one.

use super::standing::{Kept, build, install, use_standing};
use crate::desk::use_desk;
use crate::text;
use yew::prelude::*;

/// Digits of the build that people read: enough to tell two builds apart.
const BUILD_DIGITS: usize = 8;

/// The foot.
#[component]
pub(crate) fn Foot() -> Html {
    // The desk changes with the language.
    let _desk = use_desk();
    let standing = use_standing();
    let build = build();
    let build = build.as_deref().map(|b| b.get(..BUILD_DIGITS).unwrap_or(b));
    let kept = match standing.kept {
        Kept::Browser => text::kept_here(),
        Kept::File => text::kept_as_file(),
        Kept::Nowhere => text::kept_nowhere(),
    };
    let onclick = Callback::from(|_: MouseEvent| install());
    html! {
        <footer class="foot">
            <p>{ text::PRODUCT }{ " " }{ text::version(env!("CARGO_PKG_VERSION"), build) }{ " " }<span role="status">{ kept }</span></p>
            if standing.installable {
                <button type="button" class="button" aria-label={text::install_here()} {onclick}>{ text::install() }</button>
            }
        </footer>
    }
}
