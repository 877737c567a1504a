//! The tree names no place that only one machine has.

use crate::{hold, tree};

/// Folders of somebody's machine, in two halves so that this file passes its own rule.
const FOLDERS: &[(&str, &str)] = &[
    ("/wo", "rk/"),
    ("/tm", "p/"),
    ("/ro", "ot/"),
    ("/ho", "me/"),
    ("/Us", "ers/"),
    (":\\Us", "ers\\"),
];
/// Hosts that packages are fetched from: each client knows its own.
const HOSTS: &[(&str, &str)] = &[
    ("crates", ".io"),
    ("npmjs", ".org"),
    ("npmjs", ".com"),
    ("pypi", ".org"),
    ("pythonhosted", ".org"),
    ("deb.debian", ".org"),
    ("artifac", "tory"),
    ("proxy.golang", ".org"),
];
/// What Cargo itself writes into its lock file, whatever the host.
const LOCKED: (&str, &str) = (
    "source = \"registry+https://github.com/rust-lang/crates",
    ".io-index\"",
);
/// Files of others, kept as they came.
const VENDORED: &str = "tests/browser/vendor/";

fn complaints(path: &str, text: &str) -> Vec<String> {
    if path.starts_with(VENDORED) {
        return Vec::new();
    }
    let locked = format!("{}{}", LOCKED.0, LOCKED.1);
    let mut found = Vec::new();
    for (number, line) in text.lines().enumerate().filter(|(_, line)| *line != locked) {
        let folder = FOLDERS
            .iter()
            .map(|(a, b)| format!("{a}{b}"))
            .find(|folder| starts_a_path(line, folder));
        let host = HOSTS
            .iter()
            .map(|(a, b)| format!("{a}{b}"))
            .find(|host| line.contains(host.as_str()));
        found.extend(
            folder
                .or(host)
                .map(|place| format!("{path}:{}: names {place}", number + 1)),
        );
    }
    found
}

/// Whether the folder stands at the start of a path, not within a longer one.
fn starts_a_path(line: &str, folder: &str) -> bool {
    let within =
        |before: &str| before.ends_with(|c: char| c.is_alphanumeric() || "._-$}*)".contains(c));
    line.match_indices(folder)
        .any(|(at, _)| folder.starts_with(':') || !within(&line[..at]))
}

#[test]
fn no_file_names_a_machine_or_a_registry() {
    let files = tree::files();
    hold(
        files.len(),
        &files
            .iter()
            .flat_map(|file| complaints(&file.path, &file.text))
            .collect::<Vec<_>>(),
    );
}

#[test]
fn a_place_is_noticed() {
    for (a, b) in FOLDERS {
        assert_eq!(
            complaints("a.md", &format!("see \"{a}{b}x\"")).len(),
            1,
            "{a}{b}"
        );
    }
    for (a, b) in HOSTS {
        assert_eq!(
            complaints("Cargo.lock", &format!("source = \"https://{a}{b}/x\"")).len(),
            1,
            "{a}{b}"
        );
    }
    assert_eq!(
        complaints("a.md", &format!("frame{}{}", FOLDERS[0].0, FOLDERS[0].1)),
        Vec::<String>::new()
    );
    assert_eq!(
        complaints("Cargo.lock", &format!("{}{}", LOCKED.0, LOCKED.1)),
        Vec::<String>::new()
    );
}
