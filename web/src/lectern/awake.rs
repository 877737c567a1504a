//! The screen is kept from going dark while one reads at the machine, where the browser can do that.

use js_sys::{Function, Promise, Reflect};
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::{JsFuture, spawn_local};
use yew::prelude::*;

/// What the browser calls when it lets go.
const GONE: &str = "onrelease";

/// Whether the screen stays on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Awake {
    /// Not known yet.
    Asked,
    /// It stays on.
    Held,
    /// The browser cannot do it, or does not let it.
    No,
}

/// What the browser gave for keeping the screen on, and whether anybody still wants it.
struct Hold {
    given: RefCell<Option<JsValue>>,
    wanted: Cell<bool>,
    told: UseStateSetter<Awake>,
    /// Called when the browser lets go by itself.
    gone: Closure<dyn FnMut()>,
}

/// Keeps the screen on for as long as the component lives; asked for anew when the page comes back into sight, as browsers
/// let go of it when the page is hidden.
#[hook]
pub(crate) fn use_awake() -> Awake {
    let awake = use_state_eq(|| Awake::Asked);
    let told = awake.setter();
    use_effect_with((), move |()| {
        let lost = told.clone();
        let hold = Rc::new(Hold {
            given: RefCell::new(None),
            wanted: Cell::new(true),
            told,
            // Of a page out of sight it lets go always, and is asked again later.
            gone: Closure::new(move || {
                if in_sight() {
                    lost.set(Awake::No);
                }
            }),
        });
        ask(&hold);
        let again = {
            let hold = hold.clone();
            Closure::<dyn FnMut()>::new(move || {
                if in_sight() {
                    ask(&hold);
                }
            })
        };
        let name = "visibilitychange";
        if let Some(document) = document() {
            let called = again.as_ref().unchecked_ref();
            drop(document.add_event_listener_with_callback(name, called));
        }
        move || {
            if let Some(document) = document() {
                let called = again.as_ref().unchecked_ref();
                drop(document.remove_event_listener_with_callback(name, called));
            }
            hold.wanted.set(false);
            hold.given.take().iter().for_each(let_go);
        }
    });
    *awake
}

fn document() -> Option<web_sys::Document> {
    web_sys::window()?.document()
}

fn in_sight() -> bool {
    document().is_some_and(|d| !d.hidden())
}

/// The browser's promise to keep the screen on; none where it makes none.
fn promise() -> Option<Promise> {
    let navigator = web_sys::window()?.navigator();
    // web-sys knows it only as unstable.
    let lock = Reflect::get(&navigator, &"wakeLock".into()).ok()?;
    let request: Function = Reflect::get(&lock, &"request".into())
        .ok()?
        .dyn_into()
        .ok()?;
    request.call1(&lock, &"screen".into()).ok()?.dyn_into().ok()
}

fn ask(hold: &Rc<Hold>) {
    let Some(promise) = promise() else {
        hold.told.set(Awake::No);
        return;
    };
    let hold = hold.clone();
    spawn_local(async move {
        match JsFuture::from(promise).await {
            Ok(given) if hold.wanted.get() => {
                drop(Reflect::set(&given, &GONE.into(), hold.gone.as_ref()));
                let before = hold.given.replace(Some(given));
                before.iter().for_each(let_go);
                hold.told.set(Awake::Held);
            }
            Ok(given) => let_go(&given),
            Err(_) if hold.wanted.get() => hold.told.set(Awake::No),
            Err(_) => {}
        }
    });
}

fn let_go(given: &JsValue) {
    drop(Reflect::set(given, &GONE.into(), &JsValue::NULL));
    let release = Reflect::get(given, &"release".into());
    let release = release.ok().and_then(|r| r.dyn_into::<Function>().ok());
    let promise = release.and_then(|r| r.call0(given).ok());
    if let Some(promise) = promise.and_then(|p| p.dyn_into::<Promise>().ok()) {
        spawn_local(async move { drop(JsFuture::from(promise).await) });
    }
}
