//! One thing of a list: its name, what is said of it, and what can be done with it.

use super::keeper::use_keeper;
use super::panel::HEADING;
use crate::browser;
use crate::desk::use_desk;
use crate::state::Action;
use crate::text::shop as text;
use thinwright_jobfile::shop::{Content, Thing, free_name};
use web_sys::HtmlInputElement;
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(super) struct RowProps {
    pub(super) thing: Thing,
    /// What is said beside the name.
    pub(super) about: AttrValue,
    /// The names of its kind.
    pub(super) names: Vec<String>,
    /// Whether it is the job in hand.
    #[prop_or_default]
    pub(super) in_hand: bool,
}

/// The row.
#[component]
pub(super) fn Row(props: &RowProps) -> Html {
    let (desk, keeper) = (use_desk(), use_keeper());
    let renaming = use_state(|| false);
    let name = super::named(&props.thing);
    let job = matches!(props.thing.content, Content::Job(_));
    let id = props.thing.id.clone();
    let take = if job {
        let action = desk.on(move |_: MouseEvent| Action::OpenJob(id.clone()));
        (text::open(), action)
    } else {
        let action = desk.on(move |_: MouseEvent| Action::UseOwn(id.clone()));
        (text::put_to_use(), action)
    };
    let copy = {
        let (desk, keeper, props) = (desk.clone(), keeper.clone(), props.clone());
        Callback::from(move |_: MouseEvent| {
            let name = free_name(props.thing.content.name(), &props.names);
            let copy = props.thing.copied(super::keeper::fresh_id(), Some(name));
            keeper.keep(&desk, copy, props.names.clone(), None);
        })
    };
    let delete = {
        let (desk, keeper, thing) = (desk.clone(), keeper.clone(), props.thing.clone());
        Callback::from(move |_: MouseEvent| {
            keeper.take_out(&desk, thing.clone());
            browser::focus(HEADING);
        })
    };
    let rename = {
        let renaming = renaming.clone();
        Callback::from(move |_: MouseEvent| renaming.set(!*renaming))
    };
    let renamed = {
        let renaming = renaming.clone();
        Callback::from(move |()| renaming.set(false))
    };
    let label = |action: &str| text::of_thing(action, &name);
    html! {
        <li class={classes!("shop-row", props.in_hand.then_some("shop-in-hand"))}>
            <span class="shop-thing">
                { name.clone() }
                if props.in_hand { <span class="shop-mark">{ text::in_hand() }</span> }
                <span class="shop-about">{ props.about.clone() }</span>
            </span>
            <span class="buttons">
                <button type="button" class="button" aria-label={label(take.0)} onclick={take.1}>{ take.0 }</button>
                <button type="button" class="button" aria-label={label(text::copy())} onclick={copy}>{ text::copy() }</button>
                <button type="button" class="button" aria-label={label(text::rename())} aria-expanded={renaming.to_string()}
                    onclick={rename}>{ text::rename() }</button>
                <button type="button" class="button" aria-label={label(text::delete())} onclick={delete}>{ text::delete() }</button>
            </span>
            if *renaming { <Rename row={props.clone()} {renamed} /> }
        </li>
    }
}

#[derive(Clone, PartialEq, Properties)]
struct RenameProps {
    row: RowProps,
    renamed: Callback<()>,
}

/// The line for a new name.
#[component]
fn Rename(props: &RenameProps) -> Html {
    let (desk, keeper) = (use_desk(), use_keeper());
    let line = use_node_ref();
    {
        let line = line.clone();
        use_effect_with((), move |()| {
            if let Some(line) = line.cast::<HtmlInputElement>() {
                drop(line.focus());
                line.select();
            }
        });
    }
    let element = format!("name-{}", props.row.thing.id);
    let onsubmit = {
        let (line, props) = (line.clone(), props.clone());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            let typed = line.cast::<HtmlInputElement>().map(|l| l.value());
            let typed = typed.as_deref().unwrap_or_default().trim();
            let row = &props.row;
            if typed.is_empty() || typed == row.thing.content.name() {
                props.renamed.emit(());
                return;
            }
            let name = free_name(typed, &row.names);
            if row.in_hand {
                desk.say(Action::Name(name));
            } else {
                let mut thing = row.thing.clone();
                thing.content = thing.content.renamed(name);
                keeper.keep(&desk, thing, row.names.clone(), None);
            }
            props.renamed.emit(());
            browser::focus(HEADING);
        })
    };
    html! {
        <form class="shop-rename" {onsubmit} autocomplete="off">
            <label class="field-label" for={element.clone()}>{ text::new_name() }</label>
            <input class="entry" id={element} type="text" ref={line} value={props.row.thing.content.name().to_owned()} />
            <button type="submit" class="button">{ text::save() }</button>
        </form>
    }
}
