//! Fetching a dictionary, and speaking its language from then on.

use super::{KEY, choose};
use crate::browser::LocalShelf;
use crate::shelf::Shelf;
use crate::text;
use js_sys::{Function, Promise, Reflect};
use thinwright_words::language::{Dictionary, Language, speak};
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;

/// Speaks the language that the page is to begin with. Where its dictionary cannot be had, the page speaks English, and
/// what there is to tell comes back.
pub(crate) async fn begin() -> Option<String> {
    let kept = LocalShelf::new().get(KEY);
    let language = choose(kept.as_deref(), &asked());
    let told = speak_now(language).await.err();
    name_page(if told.is_some() {
        Language::English
    } else {
        language
    });
    told
}

/// Speaks another language, and keeps that for the next visit; or what there is to tell where it cannot be had.
pub(crate) async fn learn(language: Language) -> Result<(), String> {
    speak_now(language).await?;
    name_page(language);
    LocalShelf::new().put(KEY, language.tag());
    Ok(())
}

async fn speak_now(language: Language) -> Result<(), String> {
    let failed = || text::no_dictionary(language.own_name());
    let dictionary = match language {
        Language::English => Dictionary::default(),
        other => {
            let text = words(other).await.ok_or_else(failed)?;
            let pairs = thinwright_catalog::dictionary(language.tag(), &text);
            Dictionary::new(pairs.map_err(|_| failed())?)
        }
    };
    speak(language, dictionary);
    Ok(())
}

/// The text of a dictionary, from wherever this page has it.
async fn words(language: Language) -> Option<String> {
    let ours = Reflect::get(&js_sys::global(), &"thinwright".into()).ok()?;
    let words: Function = Reflect::get(&ours, &"words".into()).ok()?.dyn_into().ok()?;
    let promise: Promise = words
        .call1(&ours, &language.tag().into())
        .ok()?
        .dyn_into()
        .ok()?;
    JsFuture::from(promise).await.ok()?.as_string()
}

/// The languages that the browser asks for, the dearest first.
fn asked() -> Vec<String> {
    let Some(window) = web_sys::window() else {
        return Vec::new();
    };
    let tags = window.navigator().languages();
    tags.iter().filter_map(|tag| tag.as_string()).collect()
}

/// Says what the page's words are in: readers speak it, and break its words, by that.
fn name_page(language: Language) -> Option<()> {
    let root = web_sys::window()?.document()?.document_element()?;
    root.set_attribute("lang", language.tag()).ok()
}
