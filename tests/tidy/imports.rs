//! What a crate's own text must not use.

use crate::rust_text::{code, is_test, mentions, without_tests};
use crate::{hold, tree};

/// Crates that compute: no clock, no files, no browser, no printing.
const LIBRARIES: &[&str] = &[
    "quantity",
    "mechanics",
    "chatter",
    "plate",
    "sound",
    "catalog",
    "core",
    "words",
    "jobfile",
];
/// Crates whose types carry no wire format.
const WITHOUT_SERDE: &[&str] = &[
    "quantity",
    "mechanics",
    "chatter",
    "plate",
    "sound",
    "core",
    "words",
];
const OUTSIDE_WORLD: &[&str] = &[
    "web_sys",
    "js_sys",
    "wasm_bindgen",
    "gloo",
    "gloo_storage",
    "gloo_timers",
];
const STANDARD: &[&str] = &["time", "fs", "net", "env", "process", "thread"];
const PRINTING: &[&str] = &["println!", "eprintln!", "print!", "eprint!", "dbg!"];
/// Formulas: the page asks the core for results.
const FORMULAS: &[&str] = &[
    "mechanics::",
    "chatter::",
    "plate::",
    "thinwright_mechanics",
    "thinwright_chatter",
    "thinwright_plate",
];

fn complaints(path: &str, text: &str) -> Vec<String> {
    if is_test(path) {
        return Vec::new();
    }
    let code = code(text);
    let code = without_tests(&code);
    let of = |crates: &[&str]| {
        crates
            .iter()
            .any(|name| path.starts_with(&format!("crates/{name}/src/")))
    };
    let mut wrong: Vec<String> = Vec::new();
    let mut forbid = |words: &[&str]| {
        wrong.extend(
            words
                .iter()
                .filter(|word| mentions(code, word))
                .map(ToString::to_string),
        );
    };
    if of(LIBRARIES) {
        forbid(OUTSIDE_WORLD);
        forbid(PRINTING);
    }
    if of(WITHOUT_SERDE) {
        forbid(&["serde", "serde_json"]);
    }
    if path.starts_with("web/src/") {
        forbid(FORMULAS);
    }
    if of(LIBRARIES) {
        wrong.extend(
            STANDARD
                .iter()
                .filter(|module| uses_standard(code, module))
                .map(|module| format!("std::{module}")),
        );
    }
    wrong
        .into_iter()
        .map(|what| format!("{path}: must not use {what}"))
        .collect()
}

/// Whether the code names a module of the standard library, alone or in a group.
fn uses_standard(code: &str, module: &str) -> bool {
    let grouped = code.match_indices("std::{").any(|(at, start)| {
        let group = &code[at + start.len()..];
        mentions(group.split(';').next().unwrap_or(group), module)
    });
    grouped || mentions(code, &format!("std::{module}"))
}

#[test]
fn libraries_do_not_touch_the_outside_world() {
    let files = tree::rust();
    hold(
        files.len(),
        &files
            .iter()
            .flat_map(|file| complaints(&file.path, &file.text))
            .collect::<Vec<_>>(),
    );
}

#[test]
fn a_forbidden_use_is_noticed() {
    let one = |path: &str, text: &str| complaints(path, text).len();
    assert_eq!(one("crates/core/src/a.rs", "use std::time::Instant;"), 1);
    assert_eq!(one("crates/core/src/a.rs", "use std::{fmt, fs::read};"), 1);
    assert_eq!(
        one("crates/plate/src/a.rs", "fn f() { println!(\"x\"); }"),
        1
    );
    assert_eq!(one("crates/words/src/a.rs", "use web_sys::Node;"), 1);
    assert_eq!(
        one(
            "crates/core/src/a.rs",
            "#[derive(serde::Serialize)] struct A;"
        ),
        1
    );
    assert_eq!(
        one("web/src/a.rs", "use thinwright_core::mechanics::power;"),
        1
    );
    assert_eq!(one("web/src/a.rs", "use thinwright_plate as p;"), 1);
}

#[test]
fn what_only_looks_like_a_use_is_let_through() {
    let fine = "// println!\nconst A: &str = \"std::fs\"; use std::fmt; fn time() {}\n#[cfg(test)]\nmod tests { use std::fs; }";
    assert_eq!(
        complaints("crates/core/src/a.rs", fine),
        Vec::<String>::new()
    );
    assert_eq!(
        complaints("crates/catalog/src/a.rs", "use serde::Deserialize;"),
        Vec::<String>::new()
    );
    assert_eq!(
        complaints("crates/core/src/a/tests.rs", "use std::fs;"),
        Vec::<String>::new()
    );
}
