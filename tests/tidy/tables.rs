//! Every row of a table names where it comes from.

use crate::sources::{bibliography, keys};
use crate::{hold, tree};
use serde_json::Value;
use std::collections::BTreeSet;

fn complaints(path: &str, text: &str, keys: &BTreeSet<&str>) -> Vec<String> {
    let table: Value = match serde_json::from_str(text) {
        Ok(table) => table,
        Err(why) => return vec![format!("{path}: {why}")],
    };
    let Some(rows) = table["rows"].as_array().filter(|rows| !rows.is_empty()) else {
        return vec![format!("{path}: no rows")];
    };
    let shared = &table["every_row"]["sources"];
    let mut found = Vec::new();
    for (number, row) in rows.iter().enumerate() {
        let own = &row["sources"];
        let sources = if own.is_null() { shared } else { own };
        let named = sources.as_array().map(Vec::as_slice).unwrap_or_default();
        let place = format!("{path}: row {} ({})", number + 1, row["id"]);
        if named.is_empty() {
            found.push(format!("{place} has no source"));
        }
        let known = |key: &&Value| key.as_str().is_some_and(|key| keys.contains(key));
        found.extend(
            named
                .iter()
                .filter(|key| !known(key))
                .map(|key| format!("{place}: {key} is not in the bibliography")),
        );
    }
    found
}

#[test]
fn every_row_has_a_known_source() {
    let is_table = |path: &str| path.starts_with("shared/data/") && path.ends_with(".json");
    let tables: Vec<_> = tree::files()
        .into_iter()
        .filter(|file| is_table(&file.path))
        .collect();
    let bibliography = bibliography();
    let keys = keys(&bibliography);
    hold(
        tables.len(),
        &tables
            .iter()
            .flat_map(|file| complaints(&file.path, &file.text, &keys))
            .collect::<Vec<_>>(),
    );
}

#[test]
fn a_row_without_a_source_is_noticed() {
    let keys = BTreeSet::from(["known2001"]);
    let count = |text: &str| complaints("a.json", text, &keys).len();
    assert_eq!(
        count(r#"{"rows": [{"id": "a", "sources": ["known2001"]}]}"#),
        0
    );
    assert_eq!(
        count(
            r#"{"every_row": {"sources": ["known2001"]}, "rows": [{"id": "a"}, {"id": "b", "sources": []}]}"#
        ),
        1
    );
    assert_eq!(count(r#"{"rows": [{"id": "a"}]}"#), 1);
    assert_eq!(
        count(r#"{"rows": [{"id": "a", "sources": ["nobody1999"]}]}"#),
        1
    );
    assert_eq!(count(r#"{"rows": []}"#), 1);
    assert_eq!(count("{"), 1);
}
