//! What the page's own script knows of the page on this device, as it changes.

use js_sys::{Function, Reflect};
use wasm_bindgen::prelude::*;
use yew::prelude::*;

/// Where the page is kept.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) enum Kept {
    /// Nowhere, as far as is known.
    #[default]
    Nowhere,
    /// By the browser, all of this version.
    Browser,
    /// By the person, as one file.
    File,
}

impl Kept {
    /// Where it is, by the word of the script.
    fn by_word(word: &str) -> Kept {
        match word {
            "kept" => Kept::Browser,
            "file" => Kept::File,
            _ => Kept::Nowhere,
        }
    }
}

/// How the page stands on this device.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Standing {
    pub(super) kept: Kept,
    /// A newer version is kept as well, whole: it comes when the page is loaded again.
    pub(super) newer: bool,
    /// The browser offers to install the page.
    pub(super) installable: bool,
}

/// Something that the page's script gives, and what it is part of.
fn given(name: &str) -> Option<(JsValue, JsValue)> {
    let ours = Reflect::get(&js_sys::global(), &"thinwright".into()).ok()?;
    let part = Reflect::get(&ours, &name.into()).ok()?;
    Some((ours, part))
}

fn function(name: &str) -> Option<(JsValue, Function)> {
    let (ours, part) = given(name)?;
    Some((ours, part.dyn_into().ok()?))
}

/// Digest of the page and all that it is made of, where the builder gave one.
pub(super) fn build() -> Option<String> {
    given("version")?.1.as_string().filter(|v| !v.is_empty())
}

/// Lets the browser ask the person whether the page is to be installed.
pub(super) fn install() {
    if let Some((ours, install)) = function("install") {
        drop(install.call0(&ours));
    }
}

type Watcher = Closure<dyn FnMut(String, bool, bool)>;

/// Hears of every change until the watch is dropped.
struct Watch {
    end: Option<Function>,
    _watcher: Watcher,
}

impl Watch {
    fn new(then: impl Fn(Standing) + 'static) -> Watch {
        let watcher = Watcher::new(move |word: String, newer, installable| {
            then(Standing {
                kept: Kept::by_word(&word),
                newer,
                installable,
            });
        });
        let end = function("watch").and_then(|(ours, watch)| {
            let end = watch.call1(&ours, watcher.as_ref()).ok()?;
            end.dyn_into().ok()
        });
        Watch {
            end,
            _watcher: watcher,
        }
    }
}

impl Drop for Watch {
    fn drop(&mut self) {
        if let Some(end) = &self.end {
            drop(end.call0(&JsValue::NULL));
        }
    }
}

/// How the page stands now; a change renders anew.
#[hook]
pub(super) fn use_standing() -> Standing {
    let standing = use_state_eq(Standing::default);
    let setter = standing.setter();
    use_effect_with((), move |()| {
        let watch = Watch::new(move |now| setter.set(now));
        move || drop(watch)
    });
    *standing
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_unknown_word_promises_nothing() {
        assert_eq!(Kept::by_word("kept"), Kept::Browser);
        assert_eq!(Kept::by_word("file"), Kept::File);
        assert_eq!(Kept::by_word(""), Kept::Nowhere);
        assert_eq!(Kept::by_word("soon"), Kept::Nowhere);
    }
}
