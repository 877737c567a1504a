//! Which language the page speaks: at first the one that the browser asks for, then the one that the person has chosen.

mod choice;
mod fetch;

pub(crate) use choice::LanguageChoice;
pub(crate) use fetch::{begin, learn};

use crate::desk::use_desk;
use thinwright_words::language::Language;
use yew::prelude::*;

/// Where the language that the person has chosen is kept.
const KEY: &str = "thinwright.language";

/// The language to speak: as kept, else the first that the browser asks for and that there is, else English.
fn choose(kept: Option<&str>, asked: &[String]) -> Language {
    let kept = kept.and_then(Language::by_tag);
    let asked = || asked.iter().find_map(|tag| Language::by_tag(tag));
    kept.or_else(asked).unwrap_or_default()
}

/// The language that is spoken. What uses this, or the desk, is drawn anew in another language; nothing else is.
#[hook]
pub(crate) fn use_language() -> Language {
    use_desk().language
}

#[cfg(test)]
mod tests {
    use super::*;

    fn chosen(kept: Option<&str>, asked: &[&str]) -> Language {
        let asked: Vec<String> = asked.iter().map(|&tag| tag.to_owned()).collect();
        choose(kept, &asked)
    }

    #[test]
    fn what_the_person_chose_goes_before_what_the_browser_asks_for() {
        assert_eq!(chosen(Some("es"), &["de-AT", "en"]), Language::Spanish);
        assert_eq!(chosen(Some("en"), &["de-AT"]), Language::English);
    }

    #[test]
    fn the_browsers_first_language_that_there_is_counts() {
        assert_eq!(chosen(None, &["fr", "de-AT", "es"]), Language::German);
        assert_eq!(chosen(None, &["es-419"]), Language::Spanish);
        assert_eq!(chosen(None, &["fr", "en-GB", "de"]), Language::English);
        // What was kept by hand may be anything.
        assert_eq!(chosen(Some("xx"), &["de"]), Language::German);
        assert_eq!(chosen(Some(""), &[]), Language::English);
    }
}
