//! The orders that were worked out, and why one was taken.

use crate::desk::use_desk;
use crate::text;
use std::rc::Rc;
use thinwright_core::Answers;
use thinwright_core::strategy::OrderReport;
use thinwright_quantity::UnitSystem;
use thinwright_words::{Speaker, order_why};
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct OrdersProps {
    pub(crate) orders: Vec<OrderReport>,
    pub(crate) units: UnitSystem,
    pub(crate) answers: Rc<Answers>,
}

/// The orders, the chosen one in the open.
#[component]
pub(crate) fn Orders(props: &OrdersProps) -> Html {
    let desk = use_desk();
    let speaker = Speaker::new(props.units, &desk.catalog, &props.answers);
    let Some((chosen, others)) = props.orders.split_first() else {
        return html! {};
    };
    let other = |report: &OrderReport| {
        html! { <li><b>{ speaker.order(report) }</b>{ ": " }{ speaker.set_aside(report, chosen) }</li> }
    };
    html! {
        <section class="orders" aria-labelledby="orders-name">
            <h3 class="part-name" id="orders-name">{ text::ORDERS }</h3>
            <p class="part"><b>{ speaker.order(chosen) }</b>{ ": " }{ speaker.order_figures(chosen) }</p>
            <p class="part part-quiet">{ text::because(order_why(chosen.order)) }</p>
            if !others.is_empty() {
                <details class="more">
                    <summary class="more-name">{ text::other_orders(others.len()) }</summary>
                    <ul class="part part-list">{ others.iter().map(other).collect::<Html>() }</ul>
                </details>
            }
        </section>
    }
}
