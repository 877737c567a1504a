//! The little that is asked of the browser itself.

use crate::shelf::Shelf;
use gloo_timers::callback::Timeout;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::{JsFuture, spawn_local};
use web_sys::{
    Blob, BlobPropertyBag, Element, File, HtmlAnchorElement, HtmlDetailsElement, HtmlElement,
    Storage, Url,
};
use yew::Callback;

/// The browser's storage, where it has one.
pub(crate) struct LocalShelf(Option<Storage>);

impl LocalShelf {
    pub(crate) fn new() -> LocalShelf {
        LocalShelf(web_sys::window().and_then(|w| w.local_storage().ok().flatten()))
    }
}

impl Shelf for LocalShelf {
    fn get(&self, key: &str) -> Option<String> {
        self.0.as_ref()?.get_item(key).ok().flatten()
    }

    fn put(&self, key: &str, text: &str) -> bool {
        self.0
            .as_ref()
            .is_some_and(|s| s.set_item(key, text).is_ok())
    }

    fn take(&self, key: &str) {
        if let Some(storage) = &self.0 {
            drop(storage.remove_item(key));
        }
    }

    fn keys(&self, start: &str) -> Vec<String> {
        let Some(storage) = &self.0 else {
            return Vec::new();
        };
        let all =
            (0..storage.length().unwrap_or(0)).filter_map(|at| storage.key(at).ok().flatten());
        let mut keys: Vec<String> = all.filter(|key| key.starts_with(start)).collect();
        keys.sort_unstable();
        keys
    }
}

/// Hands a text to the person as a file.
pub(crate) fn download(name: &str, text: &str) -> Option<()> {
    let document = web_sys::window()?.document()?;
    let kind = BlobPropertyBag::new();
    kind.set_type("application/json");
    let parts = js_sys::Array::of1(&text.into());
    let blob = Blob::new_with_str_sequence_and_options(&parts, &kind).ok()?;
    let url = Url::create_object_url_with_blob(&blob).ok()?;
    let link: HtmlAnchorElement = document.create_element("a").ok()?.dyn_into().ok()?;
    link.set_href(&url);
    link.set_download(name);
    link.click();
    // The browser has taken it by then.
    Timeout::new(10_000, move || drop(Url::revoke_object_url(&url))).forget();
    Some(())
}

/// Reads a file and passes its bytes on; nothing where it cannot be read.
pub(crate) fn read_file(file: &File, then: Callback<Option<Vec<u8>>>) {
    let buffer = JsFuture::from(file.array_buffer());
    spawn_local(async move {
        let bytes = buffer
            .await
            .ok()
            .map(|b| js_sys::Uint8Array::new(&b).to_vec());
        then.emit(bytes);
    });
}

/// Puts a text on the clipboard and says whether that worked.
pub(crate) fn copy(text: &str, then: Callback<bool>) {
    let Some(window) = web_sys::window() else {
        return;
    };
    // A page that is not served safely has no clipboard.
    let navigator = window.navigator();
    if js_sys::Reflect::get(&navigator, &"clipboard".into()).is_ok_and(|c| c.is_undefined()) {
        then.emit(false);
        return;
    }
    let done = JsFuture::from(navigator.clipboard().write_text(text));
    spawn_local(async move { then.emit(done.await.is_ok()) });
}

/// Opens the print dialogue.
pub(crate) fn print() {
    if let Some(window) = web_sys::window() {
        drop(window.print());
    }
}

/// Opens whatever is folded around an element and moves the focus to it.
pub(crate) fn reveal(id: &str) -> Option<()> {
    let element = web_sys::window()?.document()?.get_element_by_id(id)?;
    let mut around = element.parent_element();
    while let Some(outer) = around {
        if let Some(details) = outer.dyn_ref::<HtmlDetailsElement>() {
            details.set_open(true);
        }
        around = outer.parent_element();
    }
    element.dyn_ref::<HtmlElement>()?.focus().ok()
}

/// How often an element that is still to come is looked for, and how long between two looks, ms: a rendering comes in
/// pieces, and on a slow machine the last of them seconds later.
const LOOKS: u32 = 100;
const BETWEEN_LOOKS: u32 = 30;

/// Moves the focus to an element, once what was just said has had its effect; where the person has moved it on by then,
/// it stays there.
pub(crate) fn focus(id: &str) {
    look_for(id.to_owned(), active(), 0, LOOKS);
}

fn look_for(id: String, from: Option<Element>, wait: u32, looks: u32) {
    Timeout::new(wait, move || {
        let now = active();
        let nowhere = now.as_ref().is_none_or(|e| e.tag_name() == "BODY");
        let moved_on = !nowhere && now != from;
        // What is inert takes no focus, and says nothing.
        let there = || reveal(&id).is_some() && active().is_some_and(|e| e.id() == id);
        if !moved_on && !there() && looks > 0 {
            look_for(id, from, BETWEEN_LOOKS, looks - 1);
        }
    })
    .forget();
}

/// What has the focus.
fn active() -> Option<Element> {
    web_sys::window()?.document()?.active_element()
}

/// The element goes away: where it has the focus and comes back elsewhere under the same name, the focus goes with it.
pub(crate) fn keep_focus(id: &str) -> Option<()> {
    if active()?.id() == id {
        focus(id);
    }
    Some(())
}

/// Scrolls a box that scrolls by itself, and nothing around it, until an element in it can be seen.
pub(crate) fn bring_into_view(outer: &str, inner: &str) -> Option<()> {
    let document = web_sys::window()?.document()?;
    let outer = document.get_element_by_id(outer)?;
    let room = outer.get_bounding_client_rect();
    let place = document
        .get_element_by_id(inner)?
        .get_bounding_client_rect();
    let scrolls = outer.scroll_height() > outer.client_height() && place.height() > 0.0;
    if scrolls && (place.top() < room.top() || place.bottom() > room.bottom()) {
        let by = place.top() - room.top() - room.height() / 2.0;
        outer.scroll_by_with_x_and_y(0.0, by);
    }
    Some(())
}

/// Light, dark, or as the system has it.
pub(crate) fn dress(theme: Option<&str>) -> Option<()> {
    let root = web_sys::window()?.document()?.document_element()?;
    match theme {
        Some(theme) => root.set_attribute("data-theme", theme).ok(),
        None => root.remove_attribute("data-theme").ok(),
    }
}

/// Date and time of the place, as ISO 8601 writes them, to the minute.
pub(crate) fn now() -> String {
    let date = js_sys::Date::new_0();
    format!(
        "{}-{:02}-{:02} {:02}:{:02}",
        date.get_full_year(),
        date.get_month() + 1,
        date.get_date(),
        date.get_hours(),
        date.get_minutes()
    )
}
