//! The panel of the shop: what there is, kind by kind, and everything in one file.

use super::jobs::Jobs;
use super::keeper::{fresh_id, use_keeper};
use super::own::OwnThings;
use super::{asked, whole::Whole};
use crate::browser;
use crate::desk::use_desk;
use crate::frame::Messages;
use crate::state::{Action, Message, State, Stock};
use crate::text::shop as text;
use std::rc::Rc;
use thinwright_core::Answers;
use thinwright_jobfile::shop::{Kind, Thing, Unread};
use web_sys::HtmlDialogElement;
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct ShopProps {
    stock: Rc<Stock>,
    answers: Rc<Answers>,
    /// The job in hand.
    id: Rc<str>,
    /// The kind that is looked at, while the panel is open.
    kind: Option<Kind>,
    messages: Rc<Vec<Message>>,
}

impl ShopProps {
    pub(crate) fn of(state: &State) -> ShopProps {
        ShopProps {
            stock: state.stock.clone(),
            answers: state.answers.clone(),
            id: state.id.clone(),
            kind: state.browse,
            messages: state.messages.clone(),
        }
    }
}

/// The heading, which takes the focus when what had it is gone.
pub(super) const HEADING: &str = "shop-name";

/// The button, and what it opens.
#[component]
pub(crate) fn Shop(props: &ShopProps) -> Html {
    let desk = use_desk();
    let dialog = use_node_ref();
    {
        let dialog = dialog.clone();
        use_effect_with(props.kind.is_some(), move |open| {
            if let Some(dialog) = dialog.cast::<HtmlDialogElement>() {
                match (*open, dialog.open()) {
                    (true, false) => drop(dialog.show_modal()),
                    (false, true) => dialog.close(),
                    _ => {}
                }
            }
        });
    }
    html! {
        <div class="title-cell" role="group" aria-label={text::my_shop()}>
            <span class="title-label" aria-hidden="true">{ text::my_shop() }</span>
            <button type="button" class="button" onclick={desk.on(|_: MouseEvent| Action::Browse(Some(Kind::Job)))}>
                { text::open_shop() }
            </button>
            <dialog class="shop" ref={dialog} aria-labelledby={HEADING} onclose={desk.on(|_: Event| Action::Browse(None))}>
                if let Some(kind) = props.kind { <Inside {kind} shop={props.clone()} /> }
            </dialog>
        </div>
    }
}

#[derive(Clone, PartialEq, Properties)]
struct InsideProps {
    kind: Kind,
    shop: ShopProps,
}

/// What stands on the open panel.
#[component]
fn Inside(props: &InsideProps) -> Html {
    let desk = use_desk();
    let (kind, stock) = (props.kind, &props.shop.stock);
    let tab = |of: Kind| {
        let onclick = desk.on(move |_: MouseEvent| Action::Browse(Some(of)));
        let pressed = (of == kind).to_string();
        html! {
            <button type="button" class="button" aria-pressed={pressed} {onclick}>
                { text::kind(of) }{ " " }<span class="shop-count">{ stock.shop.of(of).count() }</span>
            </button>
        }
    };
    html! {
        <>
            <h2 class="section-name" id={HEADING} tabindex="-1">{ text::my_shop() }</h2>
            <Messages messages={props.shop.messages.clone()} />
            <div class="buttons" role="group" aria-labelledby={HEADING}>{ Kind::ALL.map(tab).into_iter().collect::<Html>() }</div>
            if kind == Kind::Job {
                <Jobs stock={stock.clone()} id={props.shop.id.clone()} />
            } else {
                <OwnThings key={kind.key()} {kind} stock={stock.clone()} answers={props.shop.answers.clone()} />
            }
            if !stock.gone.is_empty() { <Gone stock={stock.clone()} /> }
            if !stock.shop.unread.is_empty() { <Unreadable unread={stock.shop.unread.clone()} /> }
            <Whole stock={stock.clone()} />
            <p class="shop-place">{ text::place(stock.place, stock.lasting) }</p>
            <button type="button" class="button button-strong" onclick={desk.on(|_: MouseEvent| Action::Browse(None))}>
                { text::close() }
            </button>
        </>
    }
}

#[derive(Clone, PartialEq, Properties)]
struct GoneProps {
    stock: Rc<Stock>,
}

/// What was taken out or replaced, the latest first, to be put back.
#[component]
fn Gone(props: &GoneProps) -> Html {
    let (desk, keeper) = (use_desk(), use_keeper());
    let row = |thing: &Thing| {
        let (desk, keeper, stock, thing) = (
            desk.clone(),
            keeper.clone(),
            props.stock.clone(),
            thing.clone(),
        );
        let name = super::named(&thing);
        let label = text::of_thing(text::put_back(), &name);
        let onclick = Callback::from(move |_: MouseEvent| {
            let taken = stock.shop.get(&thing.id).is_some();
            let id = if taken { fresh_id() } else { thing.id.clone() };
            let names = stock.shop.names(thing.content.kind());
            keeper.keep(&desk, thing.copied(id, None), names, None);
            browser::focus(HEADING);
        });
        html! {
            <li class="shop-row">
                <span class="shop-thing">{ name }</span>
                <button type="button" class="button" aria-label={label} {onclick}>{ text::put_back() }</button>
            </li>
        }
    };
    html! {
        <section aria-labelledby="shop-gone">
            <h3 class="shop-name" id="shop-gone">{ text::taken_out() }</h3>
            <ul class="shop-list">{ props.stock.gone.iter().rev().map(row).collect::<Html>() }</ul>
        </section>
    }
}

#[derive(Clone, PartialEq, Properties)]
struct UnreadableProps {
    unread: Vec<Unread>,
}

/// What cannot be read: it can be saved as a file, and then deleted.
#[component]
fn Unreadable(props: &UnreadableProps) -> Html {
    let (desk, keeper) = (use_desk(), use_keeper());
    let row = |unread: &Unread| {
        let (desk, keeper) = (desk.clone(), keeper.clone());
        let (own, name) = (unread.clone(), unread.key.clone());
        let save = Callback::from(move |_: MouseEvent| {
            let name = format!("{}.txt", own.key.replace(['/', '.'], "-"));
            browser::download(&name, &own.text);
        });
        let own = unread.clone();
        let delete = Callback::from(move |_: MouseEvent| {
            keeper.drop_unread(&desk, own.key.clone(), own.text.clone());
            browser::focus(HEADING);
        });
        html! {
            <li class="shop-row">
                <span class="shop-thing">{ &unread.key }<span class="shop-about">{ crate::text::fault(&unread.error) }</span></span>
                <span class="buttons">
                    <button type="button" class="button" aria-label={text::of_thing(text::as_file(), &name)} onclick={save}>
                        { text::as_file() }
                    </button>
                    <button type="button" class="button" aria-label={text::of_thing(text::delete(), &name)} onclick={delete}>
                        { text::delete() }
                    </button>
                </span>
            </li>
        }
    };
    html! {
        <section aria-labelledby="shop-unread">
            <h3 class="shop-name" id="shop-unread">{ text::unreadable() }</h3>
            <ul class="shop-list">{ props.unread.iter().map(row).collect::<Html>() }</ul>
        </section>
    }
}

/// The date of a file of today.
pub(super) fn today() -> String {
    asked::date(0.0).chars().take("2000-01-01".len()).collect()
}
