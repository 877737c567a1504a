//! The little that the shop asks of the browser.

use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::{JsFuture, future_to_promise};
use web_sys::{Storage, Window};

/// Waits for a work, but not longer than so many milliseconds.
pub(super) async fn at_most<T: 'static>(
    most: i32,
    work: impl Future<Output = T> + 'static,
) -> Option<T> {
    let done = Rc::new(RefCell::new(None));
    let work = {
        let done = done.clone();
        future_to_promise(async move {
            let result = work.await;
            done.replace(Some(result));
            Ok(JsValue::UNDEFINED)
        })
    };
    let rest = js_sys::Promise::new(&mut |resolve, _| {
        if let Some(window) = web_sys::window() {
            drop(window.set_timeout_with_callback_and_timeout_and_arguments_0(&resolve, most));
        }
    });
    let first = js_sys::Promise::race(&js_sys::Array::of2(&work, &rest));
    drop(JsFuture::from(first).await);
    done.take()
}

/// Asks the browser to keep what is here even when it runs short of room; nothing where it cannot be asked.
pub(super) async fn persist() -> Option<bool> {
    let navigator = web_sys::window()?.navigator();
    let storage = js_sys::Reflect::get(&navigator, &"storage".into()).ok()?;
    if storage.is_undefined() {
        return None;
    }
    let asked = JsFuture::from(navigator.storage().persist().ok()?);
    asked.await.ok()?.as_bool()
}

/// 64 bits by lot.
pub(super) fn lot() -> u64 {
    // 32 bits at a time: a number by lot has no more than 53.
    const HALF: f64 = 4_294_967_296.0;
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "from 0 to less than 2^32"
    )]
    let half = || (js_sys::Math::random() * HALF) as u64;
    (half() << 32) | half()
}

/// The present time and so many milliseconds, as ISO 8601 writes it in universal time.
pub(super) fn date(more: f64) -> String {
    let date = js_sys::Date::new(&JsValue::from_f64(js_sys::Date::now() + more));
    date.to_iso_string().into()
}

/// A date as people of the place write it.
pub(super) fn local_date(date: &str, language: &str) -> String {
    let options = js_sys::Object::new();
    for (key, value) in [("dateStyle", "medium"), ("timeStyle", "short")] {
        drop(js_sys::Reflect::set(&options, &key.into(), &value.into()));
    }
    let date = js_sys::Date::new(&date.into());
    if date.get_time().is_nan() {
        return String::new();
    }
    date.to_locale_string(language, &options).into()
}

fn session() -> Option<Storage> {
    web_sys::window()?.session_storage().ok().flatten()
}

/// What this window has noted under a key, over its reloads.
pub(super) fn from_session(key: &str) -> Option<String> {
    session()?.get_item(key).ok().flatten()
}

/// Notes something for as long as the window lives.
pub(super) fn put_in_session(key: &str, text: &str) {
    if let Some(session) = session() {
        drop(session.set_item(key, text));
    }
}

/// Called whenever the page goes out of sight, for as long as this is kept.
pub(super) struct Hidden {
    window: Option<Window>,
    called: Closure<dyn FnMut()>,
}

const EVENTS: [&str; 2] = ["pagehide", "blur"];

/// Calls whenever the page goes out of sight or the person goes elsewhere.
pub(super) fn when_hidden(then: impl FnMut() + 'static) -> Hidden {
    let called = Closure::<dyn FnMut()>::new(then);
    let window = web_sys::window();
    if let Some(window) = &window {
        for event in EVENTS {
            let called = called.as_ref().unchecked_ref();
            drop(window.add_event_listener_with_callback(event, called));
        }
    }
    Hidden { window, called }
}

impl Drop for Hidden {
    fn drop(&mut self) {
        if let Some(window) = &self.window {
            for event in EVENTS {
                let called = self.called.as_ref().unchecked_ref();
                drop(window.remove_event_listener_with_callback(event, called));
            }
        }
    }
}
