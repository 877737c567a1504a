//! Where a page is fuller than was reckoned, its letters become smaller until nothing has to be scrolled.

use web_sys::Element;
use yew::prelude::*;

/// The steps down, as the style sheet has them.
const STEPS: [&str; 6] = ["0", "1", "2", "3", "4", "5"];
/// What a browser may add in rounding, px.
const HAIR: i32 = 1;

/// Makes what stands in an element fit into it, after every rendering.
#[hook]
pub(super) fn use_fit(node: &NodeRef) {
    let node = node.clone();
    use_effect(move || {
        if let Some(element) = node.cast::<Element>() {
            fit(&element);
        }
    });
}

fn fit(element: &Element) {
    for step in STEPS {
        drop(element.set_attribute("data-tight", step));
        if element.scroll_height() <= element.client_height() + HAIR {
            return;
        }
    }
}
