//! Everything in one file: saved, and brought in.

use super::keeper::{Keeper, fresh_id, use_keeper};
use super::panel::today;
use crate::browser;
use crate::desk::{Desk, use_desk};
use crate::state::{Action, Message, Stock};
use crate::text::shop as text;
use std::rc::Rc;
use thinwright_jobfile::shop::{ShopFile, merge};
use web_sys::HtmlInputElement;
use yew::prelude::*;

#[derive(Clone, PartialEq, Properties)]
pub(super) struct WholeProps {
    pub(super) stock: Rc<Stock>,
}

/// The two ways.
#[component]
pub(super) fn Whole(props: &WholeProps) -> Html {
    let (desk, keeper) = (use_desk(), use_keeper());
    let picker = use_node_ref();
    let save = {
        let stock = props.stock.clone();
        Callback::from(move |_: MouseEvent| {
            let name = format!("thinwright-{}.json", today());
            browser::download(&name, &ShopFile::write(&stock.shop.things));
        })
    };
    let open = {
        let picker = picker.clone();
        Callback::from(move |_: MouseEvent| {
            if let Some(picker) = picker.cast::<HtmlInputElement>() {
                picker.click();
            }
        })
    };
    let picked = {
        let stock = props.stock.clone();
        Callback::from(move |event: Event| {
            let picker: HtmlInputElement = event.target_unchecked_into();
            let Some(file) = picker.files().and_then(|files| files.get(0)) else {
                return;
            };
            let (desk, keeper, stock) = (desk.clone(), keeper.clone(), stock.clone());
            let name = file.name();
            let read = Callback::from(move |bytes: Option<Vec<u8>>| {
                bring_in(&desk, &keeper, &stock, &name, bytes.as_deref());
            });
            browser::read_file(&file, read);
            // The same file can be picked again.
            picker.set_value("");
        })
    };
    html! {
        <section aria-labelledby="shop-whole">
            <h3 class="shop-name" id="shop-whole">{ text::all_in_one() }</h3>
            <div class="buttons">
                <button type="button" class="button" onclick={save}>{ text::export() }</button>
                <input class="away" type="file" accept=".json,application/json" tabindex="-1" aria-hidden="true"
                    ref={picker} onchange={picked} />
                <button type="button" class="button" onclick={open}>{ text::import() }</button>
            </div>
        </section>
    }
}

/// Brings a file in, and says what came of it.
fn bring_in(desk: &Desk, keeper: &Keeper, stock: &Stock, name: &str, bytes: Option<&[u8]>) {
    let tell = |text: String, alarm: bool| desk.say(Action::Tell(Message { text, alarm }));
    let Some(bytes) = bytes else {
        tell(crate::text::not_read().to_owned(), true);
        return;
    };
    let file = match ShopFile::read(bytes) {
        Ok(file) => file,
        Err(error) => {
            tell(
                text::not_brought_in(name, &crate::text::fault(&error)),
                true,
            );
            return;
        }
    };
    for left in &file.left {
        let error = crate::text::fault(&left.error);
        tell(text::left_out(name, &left.place, &error), true);
    }
    let merged = merge(&stock.shop.things, file.things, fresh_id);
    for (before, now) in &merged.renamed {
        tell(text::came_renamed(before, now), false);
    }
    tell(text::brought_in(name, merged.put.len(), merged.same), false);
    for mut thing in merged.put {
        if thing.changed.is_empty() {
            thing.changed = super::asked::date(0.0);
        }
        let names = stock.shop.names(thing.content.kind());
        keeper.keep(desk, thing, names, None);
    }
}
