//! Which language is spoken, and what a sentence is in it.
//!
//! Sentences are written in English where they are made; the dictionaries of the other languages (`shared/words`) are
//! keyed by them. A language is spoken by a thread: whoever makes sentences chooses it once, with [`speak`].
//!
//! A sentence that takes something in is a template with named places, filled by [`say!`](crate::say): a translation
//! may put the places in another order.

use std::cell::{Cell, RefCell};
use std::collections::{BTreeMap, BTreeSet};
use std::fmt::{Display, Write as _};

/// A language that is complete.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Language {
    /// What every sentence is written in.
    #[default]
    English,
    /// German.
    German,
    /// Spanish.
    Spanish,
}

impl Language {
    /// All of them, in the order of their tags.
    pub const ALL: [Language; 3] = [Language::German, Language::English, Language::Spanish];

    /// Tag of BCP 47.
    pub fn tag(self) -> &'static str {
        match self {
            Language::English => "en",
            Language::German => "de",
            Language::Spanish => "es",
        }
    }

    /// Its name in itself.
    pub fn own_name(self) -> &'static str {
        match self {
            Language::English => "English",
            Language::German => "Deutsch",
            Language::Spanish => "Espa\u{F1}ol",
        }
    }

    /// The language of a tag: `de-AT` is German.
    pub fn by_tag(tag: &str) -> Option<Language> {
        let first = tag.split(['-', '_']).next().unwrap_or_default();
        let own = |l: &Language| first.eq_ignore_ascii_case(l.tag());
        Language::ALL.into_iter().find(own)
    }

    /// What stands before the decimals: ISO 80000-1 takes either; each language has its own.
    pub fn decimal_mark(self) -> char {
        match self {
            Language::English => '.',
            Language::German | Language::Spanish => ',',
        }
    }
}

/// Sentences of a language, by what they are in English.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Dictionary(BTreeMap<String, String>);

impl Dictionary {
    /// A dictionary of English texts and what they become; an empty text is one that is still to be translated.
    pub fn new(pairs: impl IntoIterator<Item = (String, String)>) -> Dictionary {
        let translated = |pair: &(String, String)| !pair.1.is_empty();
        Dictionary(pairs.into_iter().filter(translated).collect())
    }

    /// English texts and what they become, in the order of the English.
    pub fn iter(&self) -> impl Iterator<Item = (&str, &str)> {
        self.0.iter().map(|(k, v)| (k.as_str(), v.as_str()))
    }
}

/// Texts that live as long as the program: a page speaks three languages at most.
type Spoken = BTreeMap<&'static str, &'static str>;

thread_local! {
    static LANGUAGE: Cell<Language> = const { Cell::new(Language::English) };
    static SPOKEN: RefCell<Spoken> = const { RefCell::new(Spoken::new()) };
    static MISSED: RefCell<BTreeSet<String>> = const { RefCell::new(BTreeSet::new()) };
}

/// Speaks a language from now on, in this thread. English needs no dictionary; elsewhere, what the dictionary lacks stays
/// English.
pub fn speak(language: Language, dictionary: Dictionary) {
    let lasting = |text: String| -> &'static str { Box::leak(text.into_boxed_str()) };
    let all = dictionary.0.into_iter();
    let spoken = all.map(|(k, v)| (lasting(k), lasting(v))).collect();
    LANGUAGE.set(language);
    SPOKEN.replace(spoken);
    MISSED.take();
}

/// The language that is spoken.
pub fn language() -> Language {
    LANGUAGE.get()
}

/// What was said in English because the dictionary lacks it, since [`speak`].
pub fn missed() -> Vec<String> {
    MISSED.with_borrow(|missed| missed.iter().cloned().collect())
}

/// An English text in the language that is spoken.
pub fn tr(text: &str) -> &str {
    if language() == Language::English || text.is_empty() {
        return text;
    }
    let found = SPOKEN.with_borrow(|spoken| spoken.get(text).copied());
    found.unwrap_or_else(|| {
        MISSED.with_borrow_mut(|missed| missed.insert(text.to_owned()));
        text
    })
}

/// English texts in the language that is spoken.
pub fn tr_all<const N: usize>(texts: [&'static str; N]) -> [&'static str; N] {
    texts.map(tr)
}

/// A template with its places filled: `{name}` by what has that name; `{{` and `}}` are braces.
pub fn fill(template: &str, parts: &[(&str, &dyn Display)]) -> String {
    let mut out = String::with_capacity(template.len() + 16 * parts.len());
    let mut rest = template;
    while let Some(at) = rest.find(['{', '}']) {
        out.push_str(&rest[..at]);
        let (brace, after) = rest[at..].split_at(1);
        if let Some(after) = after.strip_prefix(brace) {
            out.push_str(brace);
            rest = after;
            continue;
        }
        if brace == "}" {
            out.push_str(brace);
            rest = after;
            continue;
        }
        let (name, after) = after.split_once('}').unwrap_or((after, ""));
        if let Some((_, part)) = parts.iter().find(|(n, _)| *n == name) {
            // Writing to a text cannot fail.
            let _ = write!(out, "{part}");
        }
        rest = after;
    }
    out.push_str(rest);
    out
}

/// A sentence in the language that is spoken: an English template, then what its named places take in.
///
/// `say!("{depth} at {speed}", depth, speed = self.speed(n))`.
#[macro_export]
macro_rules! say {
    (@part $name:ident) => { $name };
    (@part $name:ident = $value:expr) => { $value };
    ($template:literal $(, $name:ident $(= $value:expr)?)* $(,)?) => {
        $crate::language::fill(
            $crate::language::tr($template),
            &[$((stringify!($name), &$crate::say!(@part $name $(= $value)?) as &dyn ::std::fmt::Display)),*],
        )
    };
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_sentence_is_filled_in_the_order_of_its_language() {
        let pair = |a: &str, b: &str| (a.to_owned(), b.to_owned());
        let german = [
            pair("{depth} at {speed}", "bei {speed}: {depth}"),
            pair("Stop", "Halt"),
            pair("Go on", ""),
        ];
        let depth = "1 mm";
        assert_eq!(say!("{depth} at {speed}", depth, speed = 3), "1 mm at 3");
        speak(Language::German, Dictionary::new(german));
        assert_eq!(say!("{depth} at {speed}", depth, speed = 3), "bei 3: 1 mm");
        assert_eq!((tr("Stop"), tr("Go on")), ("Halt", "Go on"));
        assert_eq!(missed(), ["Go on"]);
        speak(Language::English, Dictionary::default());
        assert_eq!((tr("Stop"), missed().len()), ("Stop", 0));
    }

    #[test]
    fn odd_templates_do_no_harm() {
        assert_eq!(fill("{{a}} {", &[]), "{a} ");
        assert_eq!(fill("} {b}{c", &[("b", &1)]), "} 1");
        assert_eq!(fill("{b}", &[("b", &1)]), "1");
    }

    #[test]
    fn a_tag_may_say_more() {
        assert_eq!(Language::by_tag("de-AT"), Some(Language::German));
        assert_eq!(Language::by_tag("es"), Some(Language::Spanish));
        assert_eq!(Language::by_tag("fr"), None);
        for language in Language::ALL {
            assert_eq!(Language::by_tag(language.tag()), Some(language));
        }
    }
}
