//! Small tools of grammar.

use crate::language::{Language, language, tr};
use crate::say;

/// A count with its noun, which is given in English.
pub(crate) fn plural(count: u32, one: &str, many: &str) -> String {
    let noun = tr(if count == 1 { one } else { many });
    format!("{count} {noun}")
}

/// The first letter small, unless the word is an abbreviation. German keeps it: most such words are nouns.
pub(crate) fn lower_first(text: &str) -> String {
    if language() == Language::German {
        return text.to_owned();
    }
    let mut chars = text.chars();
    match (chars.next(), chars.next()) {
        (Some(first), second) if second.is_none_or(|c| !c.is_uppercase()) => {
            first.to_lowercase().chain(text.chars().skip(1)).collect()
        }
        _ => text.to_owned(),
    }
}

/// The first letter large.
pub(crate) fn upper_first(text: &str) -> String {
    let mut chars = text.chars();
    chars.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(chars).collect()
    })
}

/// `a`, `a and b`, `a, b and c`.
pub(crate) fn list(items: &[String]) -> String {
    match items {
        [] => String::new(),
        [one] => one.clone(),
        [first @ .., last] => {
            let first = first.join(", ");
            if language() == Language::Spanish && begins_with_i(last) {
                return format!("{first} e {last}");
            }
            say!("{first} and {last}", first, last)
        }
    }
}

/// Whether a Spanish word begins with the sound of i, before which `y` becomes `e`.
fn begins_with_i(word: &str) -> bool {
    let word = word.to_lowercase();
    let sound = word.strip_prefix('h').unwrap_or(&word);
    let glides = ["ie", "ia", "io"].iter().any(|g| sound.starts_with(g));
    sound.starts_with(['i', '\u{ED}']) && !glides
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::language::{Dictionary, speak};

    #[test]
    fn lists_and_nouns_keep_to_the_language() {
        let told = |a: &str, b: &str| list(&[a.to_owned(), b.to_owned()]);
        assert_eq!(
            (told("feed", "ink"), lower_first("Feed")),
            ("feed and ink".to_owned(), "feed".to_owned())
        );
        let and = |text: &str| [("{first} and {last}".to_owned(), text.to_owned())];
        speak(Language::Spanish, Dictionary::new(and("{first} y {last}")));
        assert_eq!(told("avance", "paso"), "avance y paso");
        assert_eq!(
            told("avance", "inclinaci\u{F3}n"),
            "avance e inclinaci\u{F3}n"
        );
        assert_eq!(told("agua", "hielo"), "agua y hielo");
        speak(Language::German, Dictionary::new(and("{first} und {last}")));
        assert_eq!(told("Vorschub", "Weg"), "Vorschub und Weg");
        assert_eq!(lower_first("Vorschub"), "Vorschub");
        speak(Language::English, Dictionary::default());
    }
}
