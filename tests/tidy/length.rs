//! A file has one subject, so it is short; so is a function.

use crate::rust_text::code;
use crate::{hold, tree};

/// The longest body of a function, in lines.
const BODY: usize = 60;
/// The most public items of a file of a kernel.
const PUBLIC_ITEMS: usize = 10;
const KERNELS: &[&str] = &[
    "crates/mechanics/src/",
    "crates/chatter/src/",
    "crates/plate/src/",
    "crates/sound/src/",
];

/// How many lines a file may have.
fn budget(path: &str) -> Option<usize> {
    let name = path.rsplit('/').next().unwrap_or(path);
    let rust = name.ends_with(".rs");
    match path {
        "DEVELOPERS.md" => Some(350),
        _ if !rust => None,
        _ if path.starts_with("tests/") => Some(500),
        _ if name == "lib.rs" || name == "main.rs" || path.contains("/bin/") => Some(120),
        _ if path.starts_with("web/src/components/") => Some(150),
        _ if path.starts_with("web/src/pages/") => Some(200),
        _ => Some(400),
    }
}

fn too_long(path: &str, text: &str) -> Option<String> {
    let (lines, most) = (text.lines().count(), budget(path)?);
    (lines > most).then(|| format!("{path}: {lines} lines, at most {most}"))
}

/// Every function whose body is too long.
fn long_bodies(path: &str, text: &str) -> Vec<String> {
    let code = code(text);
    let mut complaints = Vec::new();
    for (at, _) in code.match_indices("fn ") {
        if code[..at].ends_with(|c: char| c.is_alphanumeric() || c == '_') {
            continue;
        }
        let Some((name, lines)) = body(&code[at + 3..]) else {
            continue;
        };
        if lines > BODY {
            complaints.push(format!(
                "{path}: the body of {name} has {lines} lines, at most {BODY}"
            ));
        }
    }
    complaints
}

/// The name of a function and the lines between its braces; nothing for a type or a declaration.
fn body(after_fn: &str) -> Option<(&str, usize)> {
    let name_end = after_fn.find(|c: char| !c.is_alphanumeric() && c != '_')?;
    let name = after_fn.get(..name_end).filter(|name| !name.is_empty())?;
    let mut nested = 0_i32;
    let mut open = None;
    for (at, c) in after_fn.char_indices() {
        match c {
            ';' if nested == 0 => return None,
            '{' if nested == 0 => {
                open = Some(at);
                nested = 1;
            }
            '(' | '[' | '{' => nested += 1,
            ')' | ']' | '}' => nested -= 1,
            _ => {}
        }
        if let Some(open) = open.filter(|_| nested == 0) {
            return Some((name, after_fn[open..at].lines().count().saturating_sub(1)));
        }
        if nested < 0 {
            return None;
        }
    }
    None
}

/// Items that a kernel's file offers at its top level.
fn too_many_items(path: &str, text: &str) -> Option<String> {
    let name = path.rsplit('/').next()?;
    if name == "lib.rs" || !KERNELS.iter().any(|kernel| path.starts_with(kernel)) {
        return None;
    }
    let kinds = [
        "fn ", "struct ", "enum ", "const ", "trait ", "type ", "static ",
    ];
    let public = |line: &&str| {
        line.strip_prefix("pub ")
            .is_some_and(|item| kinds.iter().any(|kind| item.starts_with(kind)))
    };
    let count = code(text).lines().filter(public).count();
    (count > PUBLIC_ITEMS).then(|| format!("{path}: {count} public items, at most {PUBLIC_ITEMS}"))
}

#[test]
fn files_are_short() {
    let files = tree::files();
    hold(
        files.len(),
        &files
            .iter()
            .filter_map(|file| too_long(&file.path, &file.text))
            .collect::<Vec<_>>(),
    );
}

#[test]
fn functions_are_short() {
    let files = tree::rust();
    hold(
        files.len(),
        &files
            .iter()
            .flat_map(|file| long_bodies(&file.path, &file.text))
            .collect::<Vec<_>>(),
    );
}

#[test]
fn kernels_offer_few_items_per_file() {
    let files = tree::rust();
    hold(
        files.len(),
        &files
            .iter()
            .filter_map(|file| too_many_items(&file.path, &file.text))
            .collect::<Vec<_>>(),
    );
}

#[test]
fn what_is_too_long_is_noticed() {
    assert!(too_long("crates/core/src/a.rs", &"\n".repeat(401)).is_some());
    assert!(too_long("crates/core/src/a.rs", &"\n".repeat(400)).is_none());
    assert!(too_long("crates/core/src/lib.rs", &"\n".repeat(121)).is_some());
    assert!(too_long("web/src/components/a.rs", &"\n".repeat(151)).is_some());
    let function = |lines: usize| {
        format!(
            "fn f<T>(a: [u8; 2]) -> T where T: X {{\n{}}}\nfn g();",
            "x();\n".repeat(lines)
        )
    };
    assert_eq!(long_bodies("a.rs", &function(60)), Vec::<String>::new());
    assert_eq!(
        long_bodies("a.rs", &function(61)),
        ["a.rs: the body of f has 61 lines, at most 60"]
    );
    let items = "pub fn a() {}\n".repeat(11);
    assert!(too_many_items("crates/plate/src/a.rs", &items).is_some());
    assert!(too_many_items("crates/core/src/a.rs", &items).is_none());
}
