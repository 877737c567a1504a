//! Every key that a comment names as its source stands in the bibliography.

use crate::{hold, tree};
use std::collections::BTreeSet;

pub(crate) const BIBLIOGRAPHY: &str = "shared/data/literature.bib";
/// A key is a name and a year or number: at least this many letters, then at least this many digits.
const LETTERS: usize = 3;
const DIGITS: usize = 3;

/// The keys of the bibliography.
pub(crate) fn keys(bibliography: &str) -> BTreeSet<&str> {
    let entries = bibliography.lines().filter(|line| line.starts_with('@'));
    entries
        .filter_map(|line| line.split_once('{')?.1.split(',').next())
        .map(str::trim)
        .collect()
}

/// The bibliography's text.
pub(crate) fn bibliography() -> String {
    std::fs::read_to_string(tree::top().join(BIBLIOGRAPHY)).unwrap()
}

/// Each source named in comments: its line, and its text to the end of the sentence or the comment.
fn named(text: &str) -> Vec<(usize, String)> {
    let comment = |line: &str| {
        let line = line.trim_start();
        line.starts_with("//")
            .then(|| line.trim_start_matches(['/', '!']).trim().to_owned())
    };
    let lines: Vec<Option<String>> = text.lines().map(comment).collect();
    let mut found = Vec::new();
    for (number, line) in lines.iter().enumerate() {
        let Some((_, start)) = line.as_deref().and_then(|line| line.split_once("Source:")) else {
            continue;
        };
        let more = lines[number + 1..]
            .iter()
            .map_while(|line| line.as_deref().filter(|line| !line.is_empty()));
        let more = more.take_while(|line| !line.starts_with("# ") && !line.contains("Source:"));
        let whole = std::iter::once(start)
            .chain(more)
            .collect::<Vec<_>>()
            .join(" ");
        found.push((number + 1, whole));
    }
    found
}

/// Words that have the form of a key.
fn looks_like_key(word: &str) -> bool {
    let letters = word.chars().take_while(char::is_ascii_lowercase).count();
    let digits = word[letters..]
        .chars()
        .take_while(char::is_ascii_digit)
        .count();
    let rest = &word[letters + digits..];
    let suffix =
        rest.is_empty() || (rest.len() == 1 && rest.chars().all(|c| c.is_ascii_lowercase()));
    letters >= LETTERS && digits >= DIGITS && suffix
}

fn complaints(path: &str, text: &str, keys: &BTreeSet<&str>) -> Vec<String> {
    let mut found = Vec::new();
    for (line, source) in named(text) {
        if source.trim().is_empty() {
            found.push(format!("{path}:{line}: a source without words"));
        }
        let words = source
            .split(|c: char| !c.is_ascii_alphanumeric())
            .filter(|word| looks_like_key(word));
        let unknown = words.filter(|word| !keys.contains(word));
        found.extend(unknown.map(|word| format!("{path}:{line}: {word} is not in {BIBLIOGRAPHY}")));
    }
    found
}

#[test]
fn every_source_in_a_comment_is_known() {
    let (files, bibliography) = (tree::rust(), bibliography());
    let keys = keys(&bibliography);
    hold(
        files.len(),
        &files
            .iter()
            .flat_map(|file| complaints(&file.path, &file.text, &keys))
            .collect::<Vec<_>>(),
    );
}

#[test]
fn no_key_stands_twice() {
    let bibliography = bibliography();
    let entries = bibliography
        .lines()
        .filter(|line| line.starts_with('@'))
        .count();
    assert_eq!(entries, keys(&bibliography).len());
}

#[test]
fn an_unknown_source_is_noticed() {
    let bibliography = "@book{known2001,\n  title = {T}}\n@misc{iso9999,\n}";
    let keys = keys(bibliography);
    assert_eq!(keys.len(), 2);
    let bad = concat!(
        "/// A sum.\n/// Sour",
        "ce: known2001 p. 3, and\n/// `nobody1999` table 2.\n///\n/// other2000 is not meant."
    );
    assert_eq!(
        complaints("a.rs", bad, &keys),
        ["a.rs:2: nobody1999 is not in shared/data/literature.bib"]
    );
    let good = concat!("// Sour", "ce: elementary, kc1_1 of iso9999 at 1 mm.");
    assert_eq!(complaints("a.rs", good, &keys), Vec::<String>::new());
    assert_eq!(
        complaints("a.rs", concat!("/// Sour", "ce:\n"), &keys).len(),
        1
    );
}
