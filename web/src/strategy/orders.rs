//! The orders that were worked out, and why one was taken.

use crate::browser;
use crate::desk::{Desk, use_desk};
use crate::keep::KEPT;
use crate::state::Action;
use crate::text;
use std::rc::Rc;
use thinwright_core::field::Field;
use thinwright_core::order::OrderId;
use thinwright_core::strategy::{OrderReport, OrderVerdict};
use thinwright_core::task::Face;
use thinwright_core::{Answers, FieldId};
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
        let name = speaker.order(report);
        html! {
            <li class="gain">
                <p class="gain-words"><b>{ name.clone() }</b>{ ": " }{ speaker.set_aside(report) }</p>
                if matches!(report.verdict, OrderVerdict::Works { .. }) {
                    { keep(&desk, &name, choices(report, &props.orders)) }
                }
            </li>
        }
    };
    html! {
        <section class="orders" aria-labelledby="orders-name">
            <h3 class="part-name" id="orders-name">{ text::orders() }</h3>
            <p class="part"><b>{ speaker.order(chosen) }</b>{ ": " }{ speaker.order_figures(chosen) }</p>
            <p class="part part-quiet">{ text::because(order_why(chosen.order)) }</p>
            if !others.is_empty() {
                <details class="more">
                    <summary class="more-name">{ text::other_orders(others.len()) }</summary>
                    <ul class="gain-list">{ others.iter().map(other).collect::<Html>() }</ul>
                </details>
            }
        </section>
    }
}

/// The button that keeps an order.
fn keep(desk: &Desk, name: &str, choices: Vec<(FieldId, String)>) -> Html {
    let keep = desk.on(move |_: MouseEvent| Action::Keep(choices.clone()));
    let onclick = Callback::from(move |event: MouseEvent| {
        keep.emit(event);
        // The button goes away with the orders that are none any more.
        browser::focus(KEPT);
    });
    html! {
        <button type="button" class="button" {onclick} aria-label={text::keep_order_named(name)}>{ text::keep_order() }</button>
    }
}

/// What has to be kept for an order: that in which the orders differ at all.
fn choices(report: &OrderReport, all: &[OrderReport]) -> Vec<(FieldId, String)> {
    let yes_no = |yes: bool| Some(if yes { "yes" } else { "no" });
    let of = |field: Field, report: &OrderReport| match field {
        Field::PinOrder => match report.order {
            OrderId::SlotsIntoStock => Some("slots-into-stock"),
            OrderId::SlotsBeforeSkim => Some("slots-before-skim"),
            OrderId::SlotsLast => Some("slots-last"),
            OrderId::OneFace | OrderId::NoSlots => None,
        },
        Field::PinFirst => Some(if report.first == Face::A { "a" } else { "b" }),
        Field::PinBacked => yes_no(report.backing != "none"),
        _ => yes_no(report.boss_bolted),
    };
    let fields = [
        Field::PinOrder,
        Field::PinFirst,
        Field::PinBacked,
        Field::PinBolted,
    ];
    let choice = |field: Field| {
        let wanted = of(field, report)?;
        let differ = all.iter().any(|r| of(field, r) != Some(wanted));
        differ.then(|| (field.into(), wanted.to_owned()))
    };
    fields.into_iter().filter_map(choice).collect()
}
