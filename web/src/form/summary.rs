//! All that is wrong, in one list; it takes the focus when it is asked for.

use super::element_id;
use crate::browser;
use crate::language::use_language;
use crate::text;
use thinwright_core::FieldId;
use yew::prelude::*;

/// The element that takes the focus.
pub(crate) const SUMMARY: &str = "problems";

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct SummaryProps {
    /// Place, its name, what is wrong there.
    pub(crate) problems: Vec<(FieldId, String, AttrValue)>,
}

/// The list.
#[component]
pub(crate) fn Summary(props: &SummaryProps) -> Html {
    use_language();
    let entry = |(id, place, problem): &(FieldId, String, AttrValue)| {
        let element = element_id(*id);
        let href = format!("#{element}");
        let onclick = Callback::from(move |event: MouseEvent| {
            event.prevent_default();
            browser::reveal(&element);
        });
        html! { <li><a {href} {onclick}>{ place }</a>{ ": " }{ problem.clone() }</li> }
    };
    html! {
        <section class="summary" id={SUMMARY} tabindex="-1" aria-labelledby="problems-name">
            <h2 class="summary-name" id="problems-name">
                <span class="mark" aria-hidden="true">{ text::MARK }</span>{ text::problems(props.problems.len()) }
            </h2>
            <ul class="summary-list">{ props.problems.iter().map(entry).collect::<Html>() }</ul>
        </section>
    }
}
