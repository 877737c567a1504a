//! No sentence is missing in any language: what is said is written in the dictionaries, and nothing else is.
//!
//! `UPDATE_SENTENCES=1` writes the dictionaries anew: new texts stand in them untranslated, and fail until somebody has
//! translated them.
#![cfg(test)]

mod dictionaries;
mod rendered;
mod rust_tokens;
mod rust_words;
mod table_words;

use dictionaries::{fault, pairs, places, said, sources, update};
use thinwright_words::language::Language;

const OTHERS: [Language; 2] = [Language::German, Language::Spanish];

#[test]
fn every_text_is_translated() {
    let said = said();
    assert!(said.len() > 500, "only {} texts found", said.len());
    if std::env::var_os("UPDATE_SENTENCES").is_some() {
        OTHERS.into_iter().for_each(update);
    }
    let mut faults = Vec::new();
    for language in OTHERS {
        let pairs = pairs(language);
        let of = |what: String| format!("{}: {what}", language.tag());
        let wrong = said.iter().filter_map(|english| match pairs.get(english) {
            None => Some(format!("not in the dictionary: {english:?}")),
            Some(text) => fault(english, text),
        });
        faults.extend(wrong.map(of));
        let unsaid = pairs.keys().filter(|english| !said.contains(*english));
        faults.extend(unsaid.map(|english| of(format!("nothing says it: {english:?}"))));
    }
    assert!(
        faults.is_empty(),
        "{} faults; UPDATE_SENTENCES=1 adds and drops\n{}",
        faults.len(),
        faults.join("\n")
    );
}

/// Texts of one word cannot be told from keys; whatever reads like a sentence must be handed over to be said. Elsewhere on
/// the page, where names of styles stand, a sentence is told by its first letter.
#[test]
fn no_sentence_is_said_past_the_dictionary() {
    let places = [
        ("crates/words/src", false),
        ("web/src/text", false),
        ("web/src", true),
    ];
    let mut past = Vec::new();
    for (place, only_large) in places {
        for (file, found) in sources(place) {
            let reads = |text: &&String| {
                let plain = |word: &&str| word.len() > 1 && word.chars().all(char::is_alphabetic);
                let words = text.split_whitespace().filter(plain).count();
                let large = text.chars().next().is_some_and(char::is_uppercase);
                words > 1 && (large || !only_large)
            };
            let unsaid = found.unsaid.iter().filter(reads);
            past.extend(unsaid.map(|text| format!("{file}: {text:?}")));
        }
    }
    assert!(past.is_empty(), "{}", past.join("\n"));
}

/// A template without a name at a place, or with a whole expression, would be filled with nothing.
#[test]
fn every_place_has_a_name() {
    let name = |place: &String| {
        !place.is_empty()
            && place
                .chars()
                .all(|c| c.is_ascii_lowercase() || c == '_' || c.is_ascii_digit())
    };
    for english in said() {
        let wrong: Vec<String> = places(&english).into_iter().filter(|p| !name(p)).collect();
        assert!(wrong.is_empty(), "{wrong:?} in {english:?}");
    }
}
