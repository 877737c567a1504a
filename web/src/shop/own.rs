//! Machines, racks, materials and ways of holding of one's own; and the way to them from the form.

use super::asked::{self, local_date};
use super::keeper::{fresh_id, use_keeper};
use super::row::Row;
use crate::desk::use_desk;
use crate::language::use_language;
use crate::state::{Action, Message, Stock};
use crate::text::shop as text;
use std::rc::Rc;
use thinwright_core::Answers;
use thinwright_jobfile::shop::{Content, Kind, Own, Thing};
use web_sys::HtmlInputElement;
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(super) struct OwnProps {
    pub(super) kind: Kind,
    pub(super) stock: Rc<Stock>,
    pub(super) answers: Rc<Answers>,
}

/// The list of a kind, and the line to keep what the answers say now.
#[component]
pub(super) fn OwnThings(props: &OwnProps) -> Html {
    let (desk, keeper) = (use_desk(), use_keeper());
    let (kind, shop) = (props.kind, &props.stock.shop);
    let names = shop.names(kind);
    let line = use_node_ref();
    let wrong = use_state(|| false);
    let onsubmit = {
        let (props, line, wrong, names) =
            (props.clone(), line.clone(), wrong.clone(), names.clone());
        let desk = desk.clone();
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            let Some(line) = line.cast::<HtmlInputElement>() else {
                return;
            };
            let typed = line.value();
            let own = Own::of(kind, typed.trim(), &props.answers);
            let Some(own) = own.filter(|_| !typed.trim().is_empty()) else {
                wrong.set(true);
                return;
            };
            wrong.set(false);
            line.set_value("");
            let text = text::kept_as(&own.name);
            let mut things = props.stock.shop.of(kind);
            let there = things.find(|thing| thing.content.name() == own.name);
            // Under a name that is there already, it takes that one's place, which can be put back.
            let (id, revision) =
                there.map_or_else(|| (fresh_id(), 0), |t| (t.id.clone(), t.revision));
            let mut thing = Thing::new(id, asked::date(0.0), Content::Own(own));
            thing.revision = revision;
            let message = Message { text, alarm: false };
            keeper.keep(&desk, thing, names.clone(), Some(message));
        })
    };
    let row = |thing: &Thing| {
        let about = text::changed_on(&local_date(&thing.changed, desk.language.tag()));
        html! { <Row key={thing.id.clone()} thing={thing.clone()} {about} names={names.clone()} /> }
    };
    html! {
        <section aria-label={text::kind(kind)}>
            <form class="shop-new" {onsubmit} autocomplete="off" novalidate=true>
                <label class="field-label" for="shop-save">{ text::save_as(kind) }</label>
                <div class="field-entry">
                    <input class="entry" id="shop-save" type="text" ref={line} aria-describedby="shop-save-wrong"
                        aria-invalid={wrong.then_some("true")} />
                    <button type="submit" class="button">{ text::save() }</button>
                </div>
                <p class="field-problem" id="shop-save-wrong" role="status">if *wrong { { text::needs_name() } }</p>
            </form>
            if names.is_empty() { <p>{ text::none_yet(kind) }</p> }
            <ul class="shop-list">{ shop.of(kind).map(row).collect::<Html>() }</ul>
        </section>
    }
}

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct ToShopProps {
    pub(crate) kind: Kind,
}

/// The way from a group of the form to what the shop has of its kind.
#[component]
pub(crate) fn ToShop(props: &ToShopProps) -> Html {
    use_language();
    let desk = use_desk();
    let kind = props.kind;
    html! {
        <button type="button" class="button to-shop" onclick={desk.on(move |_: MouseEvent| Action::Browse(Some(kind)))}>
            { text::own_things(kind) }
        </button>
    }
}
