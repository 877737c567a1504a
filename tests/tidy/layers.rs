//! Who may know whom, read from each package's manifest.

use crate::{hold, tree};

/// Each package of the house, and the packages that it may depend on: of the house first, then of others.
const LAYERS: &[(&str, &[&str], &[&str])] = &[
    ("quantity", &[], &[]),
    ("mechanics", &[], &["libm"]),
    ("chatter", &[], &["libm"]),
    ("plate", &[], &["amd", "libm", "spade"]),
    ("sound", &[], &["libm", "rustfft"]),
    ("catalog", &["quantity"], &["serde", "serde_json"]),
    (
        "core",
        &["quantity", "mechanics", "chatter", "plate", "catalog"],
        &["i_overlay", "libm"],
    ),
    ("words", &["quantity", "core", "catalog", "sound"], &[]),
    (
        "jobfile",
        &["quantity", "core", "catalog"],
        &["miniz_oxide", "serde", "serde_json"],
    ),
    (
        "cli",
        &["quantity", "core", "catalog", "words", "jobfile"],
        &["serde_json"],
    ),
];
/// What the page may know of the house; what it may use of others is its own affair.
const PAGE: &[&str] = &["quantity", "core", "catalog", "words", "jobfile", "sound"];
const PREFIX: &str = "thinwright-";

/// Names under `[dependencies]`, in either way of writing them.
fn dependencies(manifest: &str) -> Vec<&str> {
    let mut section = "";
    let mut names = Vec::new();
    for line in manifest.lines().map(str::trim) {
        if let Some(header) = line
            .strip_prefix('[')
            .and_then(|line| line.strip_suffix(']'))
        {
            section = header;
            names.extend(header.strip_prefix("dependencies."));
        } else if section == "dependencies" && !line.starts_with('#') {
            names.extend(line.split_once(['=', '.']).map(|(name, _)| name.trim()));
        }
    }
    names
}

/// The tests, and the fuzzer's programs beside them.
fn is_test(folder: &str) -> bool {
    folder == "tests" || folder == "tests/fuzz"
}

fn complaints(path: &str, manifest: &str) -> Vec<String> {
    let Some(folder) = path.strip_suffix("/Cargo.toml") else {
        return Vec::new();
    };
    let package = folder.rsplit('/').next().unwrap_or(folder);
    let layer = LAYERS
        .iter()
        .find(|(name, ..)| *name == package && folder.starts_with("crates/"));
    let may = |dependency: &str| match (layer, dependency.strip_prefix(PREFIX)) {
        (Some((_, house, _)), Some(name)) => house.contains(&name),
        (Some((.., others)), None) => others.contains(&dependency),
        (None, Some(name)) => is_test(folder) || (folder == "web" && PAGE.contains(&name)),
        (None, None) => is_test(folder) || folder == "web" || folder == "crates/xtask",
    };
    let wrong = dependencies(manifest)
        .into_iter()
        .filter(|dependency| !may(dependency));
    wrong
        .map(|dependency| format!("{path}: must not know {dependency}"))
        .collect()
}

#[test]
fn each_crate_knows_only_those_below() {
    let manifests: Vec<_> = tree::files()
        .into_iter()
        .filter(|file| file.path.ends_with("/Cargo.toml"))
        .collect();
    let found: Vec<String> = manifests
        .iter()
        .flat_map(|file| complaints(&file.path, &file.text))
        .collect();
    hold(manifests.len(), &found);
    let known = |name: &str| {
        manifests
            .iter()
            .any(|file| file.path == format!("crates/{name}/Cargo.toml"))
    };
    assert!(
        LAYERS.iter().all(|(name, ..)| known(name)),
        "a crate of the list is gone"
    );
}

#[test]
fn a_crate_that_knows_too_much_is_noticed() {
    let upwards = "[package]\nname = \"x\"\n[dependencies]\nlibm.workspace = true\nthinwright-core.workspace = true\n";
    assert_eq!(
        complaints("crates/mechanics/Cargo.toml", upwards),
        ["crates/mechanics/Cargo.toml: must not know thinwright-core"]
    );
    let table = "[dependencies.serde]\nversion = \"1\"\n[dev-dependencies]\napprox = \"0.5\"\n";
    assert_eq!(
        complaints("crates/core/Cargo.toml", table),
        ["crates/core/Cargo.toml: must not know serde"]
    );
    let sideways = "[dependencies]\nthinwright-plate = { path = \"../crates/plate\" }\n";
    assert_eq!(complaints("web/Cargo.toml", sideways).len(), 1);
    assert_eq!(complaints("crates/unheard/Cargo.toml", sideways).len(), 1);
}
