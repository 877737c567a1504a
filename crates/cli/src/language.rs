//! The languages that the program speaks: their dictionaries are in it.

use thinwright_words::language::{Dictionary, Language, speak};

/// The dictionary of a language; English needs none.
fn pairs(language: Language) -> Vec<(String, String)> {
    let json = match language {
        Language::English => return Vec::new(),
        Language::German => include_str!("../../../shared/words/de.json"),
        Language::Spanish => include_str!("../../../shared/words/es.json"),
    };
    let pairs = thinwright_catalog::dictionary(language.tag(), json);
    pairs.expect("a dictionary that can be read: `the_dictionaries_can_be_read`")
}

/// Speaks a language from now on.
pub(crate) fn begin(language: Language) {
    speak(language, Dictionary::new(pairs(language)));
}

#[test]
fn the_dictionaries_can_be_read() {
    for language in Language::ALL {
        assert_eq!(pairs(language).is_empty(), language == Language::English);
    }
}
