//! Listening to the window for as long as it is wanted.

use wasm_bindgen::prelude::*;
use web_sys::Event;

/// Listens to happenings of the window until it is dropped.
pub(super) struct Ear {
    names: &'static [&'static str],
    called: Closure<dyn FnMut(Event)>,
}

/// Calls whenever one of these happens to the window.
pub(super) fn listen(
    names: &'static [&'static str],
    then: impl FnMut(Event) + 'static,
) -> Option<Ear> {
    let window = web_sys::window()?;
    let called = Closure::<dyn FnMut(Event)>::new(then);
    for name in names {
        window
            .add_event_listener_with_callback(name, called.as_ref().unchecked_ref())
            .ok()?;
    }
    Some(Ear { names, called })
}

impl Drop for Ear {
    fn drop(&mut self) {
        let Some(window) = web_sys::window() else {
            return;
        };
        for name in self.names {
            let called = self.called.as_ref().unchecked_ref();
            drop(window.remove_event_listener_with_callback(name, called));
        }
    }
}
