//! The place that is read, in the page's address: the browser's way back closes the view, and a page that is loaded again
//! comes back to where it was.

use super::ears::listen;
use super::spot::Spot;
use crate::browser;
use gloo_timers::callback::Timeout;
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::JsValue;
use web_sys::Event;
use yew::prelude::*;

/// What changes the end of the address.
const CHANGES: &[&str] = &["hashchange", "popstate"];

/// The place that the address names.
fn named() -> Option<Spot> {
    let hash = web_sys::window()?.location().hash().ok()?;
    Spot::read(&hash)
}

/// Puts something else at the end of the address, in place of what stands there in the browser's history.
fn put(url: &str) -> Option<()> {
    let history = web_sys::window()?.history().ok()?;
    history
        .replace_state_with_url(&JsValue::NULL, "", Some(url))
        .ok()
}

/// Where to go from a place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Way {
    /// To another.
    To(Spot),
    /// Out of the view, to where one came from.
    Out,
    /// Out of the view, to an element of the page.
    OutTo(&'static str),
}

/// How the view was opened.
#[derive(Default)]
struct Opened {
    /// From this page, so that the browser's way back leads to it.
    here: bool,
    /// What gets the focus once it is closed.
    by: Option<String>,
    /// It is on its way out: a place on the way back is left at once.
    leaves: bool,
}

/// The way in that a view was opened by.
fn opener(at: Spot) -> Option<String> {
    let own = super::way_in((at != Spot::FIRST).then_some(at.step + 1));
    let document = web_sys::window()?.document()?;
    document.get_element_by_id(&own).map(|_| own)
}

/// Whether the view is open.
#[hook]
pub(crate) fn use_open() -> bool {
    let open = use_state_eq(|| named().is_some());
    let now = open.clone();
    use_effect_with((), move |()| {
        let ear = listen(CHANGES, move |_| now.set(named().is_some()));
        move || drop(ear)
    });
    *open
}

/// The place that is read, and the way from it.
#[hook]
pub(super) fn use_spot() -> (Option<Spot>, Callback<Way>) {
    let spot = use_state_eq(named);
    let opened = use_mut_ref(Opened::default);
    {
        let (spot, opened) = (spot.setter(), opened.clone());
        let was = Rc::new(RefCell::new(named().is_some()));
        use_effect_with((), move |()| {
            let ear = listen(CHANGES, move |_| {
                let now = named();
                if now.is_some() && opened.borrow().leaves {
                    leave(false);
                    return;
                }
                match (was.replace(now.is_some()), now) {
                    (false, Some(at)) => {
                        *opened.borrow_mut() = Opened {
                            here: true,
                            by: opener(at),
                            leaves: false,
                        };
                    }
                    (true, None) => {
                        let by = opened.take().by;
                        browser::focus(by.as_deref().unwrap_or(super::OPEN));
                    }
                    _ => {}
                }
                spot.set(now);
            });
            move || drop(ear)
        });
    }
    let setter = spot.setter();
    let go = use_callback((), move |way: Way, ()| {
        if let Way::OutTo(id) = way {
            opened.borrow_mut().by = Some(id.to_owned());
        }
        if let Way::To(at) = way {
            put(&at.fragment());
            setter.set(Some(at));
            return;
        }
        let here = opened.borrow().here;
        opened.borrow_mut().leaves = true;
        leave(here);
    });
    (*spot, go)
}

/// Leaves the view: back to the page that it was opened from, or else by taking its name out of the address.
fn leave(opened_here: bool) -> Option<()> {
    let window = web_sys::window()?;
    if opened_here {
        return window.history().ok()?.back().ok();
    }
    let location = window.location();
    let path = location.pathname().ok()? + &location.search().ok()?;
    put(&path)?;
    // What is put in place tells nobody. Told later: what listens may be what is running now.
    Timeout::new(0, move || {
        if let Ok(told) = Event::new("hashchange") {
            drop(window.dispatch_event(&told));
        }
    })
    .forget();
    Some(())
}
