//! The dictionaries in `shared/words`, held against the texts that are said.

use super::rust_words::Found;
use super::{rust_words, table_words};
use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write as _;
use std::fs;
use std::path::{Path, PathBuf};
use thinwright_words::language::{Dictionary, Language};

/// Where texts are said that are written in the source.
const SOURCES: [&str; 2] = ["crates/words/src", "web/src"];

/// The root of the tree.
pub(crate) fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("..")
}

/// Every file of source under a place, its tests left out.
pub(crate) fn sources(place: &str) -> Vec<(String, Found)> {
    let mut out = Vec::new();
    let mut places = vec![root().join(place)];
    while let Some(place) = places.pop() {
        let entries = fs::read_dir(&place).unwrap_or_else(|e| panic!("{}: {e}", place.display()));
        for entry in entries {
            let path = entry.expect("an entry of a folder").path();
            let name = path.file_name().map(|n| n.to_string_lossy().into_owned());
            let name = name.unwrap_or_default();
            if path.is_dir() {
                if name != "tests" {
                    places.push(path);
                }
            } else if name.ends_with(".rs") && name != "tests.rs" {
                let text = read(&path);
                out.push((path.display().to_string(), rust_words::found(&text)));
            }
        }
    }
    out.sort_by(|a, b| a.0.cmp(&b.0));
    out
}

fn read(path: &Path) -> String {
    fs::read_to_string(path).unwrap_or_else(|e| panic!("{}: {e}", path.display()))
}

/// Every English text that is said: of the source, and of the tables.
pub(crate) fn said() -> BTreeSet<String> {
    let all = SOURCES.into_iter().flat_map(sources);
    let of_source = all.flat_map(|(_, found)| found.said);
    let spoken = of_source.chain(table_words::texts());
    spoken
        .filter(|t| t.chars().any(char::is_alphabetic))
        .collect()
}

fn path(language: Language) -> PathBuf {
    root()
        .join("shared/words")
        .join(format!("{}.json", language.tag()))
}

/// English texts of a dictionary, and what they become.
pub(crate) fn pairs(language: Language) -> BTreeMap<String, String> {
    let path = path(language);
    let pairs = thinwright_catalog::dictionary(language.tag(), &read(&path));
    pairs
        .unwrap_or_else(|e| panic!("{e}"))
        .into_iter()
        .collect()
}

/// The dictionary as the page would speak it.
pub(crate) fn dictionary(language: Language) -> Dictionary {
    Dictionary::new(pairs(language))
}

/// Writes the dictionary anew: what is said stays as it is translated, what is new stands empty, what nothing says goes.
pub(crate) fn update(language: Language) {
    let mut old = pairs(language);
    let mut out = "{".to_owned();
    for english in said() {
        let text = old.remove(&english).unwrap_or_default();
        let comma = if out.len() > 1 { "," } else { "" };
        // Writing to a text cannot fail.
        let _ = write!(out, "{comma}\n  {}: {}", json(&english), json(&text));
    }
    out += "\n}\n";
    let path = path(language);
    fs::write(&path, out).unwrap_or_else(|e| panic!("{}: {e}", path.display()));
}

/// A text in JSON, with blanks that cannot be told from others written as numbers.
fn json(text: &str) -> String {
    let mut out = "\"".to_owned();
    for c in text.chars() {
        match c {
            '"' | '\\' => out.extend(['\\', c]),
            '\u{A0}' | '\u{202F}' | '\u{2060}' => {
                let _ = write!(out, "\\u{:04x}", u32::from(c));
            }
            c if c.is_control() => {
                let _ = write!(out, "\\u{:04x}", u32::from(c));
            }
            c => out.push(c),
        }
    }
    out + "\""
}

/// The named places of a template, each as often as it stands there.
pub(crate) fn places(template: &str) -> Vec<String> {
    let mut out: Vec<String> = template
        .split('{')
        .skip(1)
        .map(|rest| match rest.split_once('}') {
            Some((name, _)) => name.to_owned(),
            None => format!("{rest} without an end"),
        })
        .collect();
    out.sort();
    out
}

/// What is wrong with a translation, if anything.
pub(crate) fn fault(english: &str, text: &str) -> Option<String> {
    let told = |what: &str| Some(format!("{what}: {english:?} -> {text:?}"));
    if text.trim().is_empty() {
        return told("not translated");
    }
    let names = |t: &str| places(t).into_iter().collect::<BTreeSet<_>>();
    if names(english) != names(text) || text.matches('{').count() != text.matches('}').count() {
        return told("other places");
    }
    let edges = |t: &str| (t.len() - t.trim_start().len(), t.len() - t.trim_end().len());
    if edges(english) != edges(text) || english.matches("  ").count() != text.matches("  ").count()
    {
        return told("other blanks");
    }
    let mark = |c: &char| matches!(c, '.' | ':' | '?' | '!' | '\u{2026}');
    let end = |t: &str| t.chars().next_back().filter(mark);
    // An abbreviation ends as it ends in its language.
    if english.contains(' ') && end(english) != end(text) {
        return told("ends otherwise");
    }
    let tied = |t: &str| t.matches(['\u{A0}', '\u{2060}']).count();
    if tied(english) > tied(text) {
        return told("a blank that must not break may break");
    }
    None
}

#[test]
fn faults_of_translations_are_told() {
    assert_eq!(fault("{a} of {b}", "{b}: {a}"), None);
    assert_eq!(fault("{d}\u{A0}Hz.", "{d}\u{A0}Hz."), None);
    let wrong = [
        ("a", ""),
        ("{a} of {b}", "{a} von {c}"),
        ("{a} of {b}", "{a} von b"),
        ("{a}", "{a} {"),
        ("a", "a "),
        ("a b.", "a b"),
        ("a  b", "a b"),
        ("{d}\u{A0}Hz", "{d} Hz"),
    ];
    for (english, text) in wrong {
        assert!(fault(english, text).is_some(), "{english:?} -> {text:?}");
    }
}
