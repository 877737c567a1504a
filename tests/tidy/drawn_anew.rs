//! Another language shows everywhere at once: each component draws itself anew when the language changes.

use crate::rust_text::{code, is_test, mentions, without_tests};
use crate::{hold, tree};

/// What hears of the language: the desk carries it.
const HEARS: &[&str] = &["use_language", "use_desk"];
/// What the language comes from, and what says nothing: entries in words that others give.
const NEEDS_NOT: &[(&str, &str)] = &[("web/src/app.rs", "App"), ("web/src/select.rs", "Select")];

fn complaints(path: &str, text: &str) -> Vec<String> {
    if !path.starts_with("web/src/") || is_test(path) {
        return Vec::new();
    }
    let code = code(text);
    let code = without_tests(&code);
    let deaf = code.split("#[component]").skip(1).filter_map(|after| {
        let (_, rest) = after.split_once("fn ")?;
        let name = rest.split(['(', '<']).next()?.trim();
        // The house's format closes a function at the start of a line.
        let body = rest.split("\n}").next()?;
        let hears = HEARS.iter().any(|hook| mentions(body, hook));
        let needs = !NEEDS_NOT.contains(&(path, name));
        (needs && !hears).then(|| name.to_owned())
    });
    deaf.map(|name| format!("{path}: {name} is not drawn anew in another language"))
        .collect()
}

#[test]
fn every_component_hears_of_the_language() {
    let files = tree::rust();
    let found: Vec<String> = files
        .iter()
        .flat_map(|file| complaints(&file.path, &file.text))
        .collect();
    hold(files.len(), &found);
}

#[test]
fn a_component_that_does_not_is_noticed() {
    let deaf = "#[component]\nfn Line(props: &Props) -> Html {\n    html! { <p>{ text::stop() }</p> }\n}\n";
    let hears = "#[component]\nfn Line() -> Html {\n    let desk = use_desk();\n    html! {}\n}\n";
    // What a later function hears of is of no use to the first.
    let both = format!("{deaf}{hears}");
    for (path, text, wrong) in [
        ("web/src/a.rs", deaf, 1),
        ("web/src/a.rs", hears, 0),
        ("web/src/a.rs", &both, 1),
        ("web/src/a/tests.rs", deaf, 0),
        ("crates/words/src/a.rs", deaf, 0),
        ("web/src/select.rs", &deaf.replace("Line", "Select"), 0),
    ] {
        assert_eq!(complaints(path, text).len(), wrong, "{path} {text}");
    }
}
