//! The page.
use yew::prelude::*;

/// The whole page.
#[component]
fn Page() -> Html {
    html! { <main><h1>{ "Thinwright" }</h1></main> }
}

fn main() {
    yew::Renderer::<Page>::new().render();
}
