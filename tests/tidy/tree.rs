//! The files of the tree.

use std::path::{Path, PathBuf};
use std::process::Command;

/// A text file: its path from the top, and what it holds.
pub(crate) struct File {
    pub(crate) path: String,
    pub(crate) text: String,
}

/// Folders that hold what is built.
const BUILT: &[&str] = &["target", "dist", "dist-single"];

/// The top of the tree.
pub(crate) fn top() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..")
}

/// Every text file that is kept under version control; in a copy without it, every file that is not built.
pub(crate) fn files() -> Vec<File> {
    let mut paths = tracked().unwrap_or_else(|| walk(&top()));
    paths.sort();
    let read = |path: String| {
        Some(File {
            text: std::fs::read_to_string(top().join(&path)).ok()?,
            path,
        })
    };
    paths.into_iter().filter_map(read).collect()
}

/// The Rust files, without those of others.
pub(crate) fn rust() -> Vec<File> {
    files()
        .into_iter()
        .filter(|file| file.path.ends_with(".rs"))
        .collect()
}

fn tracked() -> Option<Vec<String>> {
    let listed = Command::new("git")
        .args(["ls-files", "-z"])
        .current_dir(top())
        .output()
        .ok()?;
    let text = String::from_utf8(listed.stdout).ok()?;
    let paths: Vec<String> = text.split_terminator('\0').map(str::to_owned).collect();
    (listed.status.success() && !paths.is_empty()).then_some(paths)
}

fn walk(top: &Path) -> Vec<String> {
    let mut found = Vec::new();
    let mut folders = vec![top.to_owned()];
    while let Some(folder) = folders.pop() {
        for entry in std::fs::read_dir(&folder).into_iter().flatten().flatten() {
            let name = entry.file_name().to_string_lossy().into_owned();
            if entry.path().is_dir() {
                if !BUILT.contains(&name.as_str()) && name != ".git" {
                    folders.push(entry.path());
                }
            } else if let Ok(path) = entry.path().strip_prefix(top) {
                found.push(path.to_string_lossy().replace('\\', "/"));
            }
        }
    }
    found
}

#[test]
fn a_copy_without_version_control_gives_the_same_sources() {
    let rust = |paths: Vec<String>| {
        paths
            .into_iter()
            .filter(|path| path.ends_with(".rs"))
            .collect::<Vec<_>>()
    };
    let walked = rust(walk(&top()));
    assert!(
        walked.contains(&"tests/tidy/tree.rs".to_owned()),
        "{walked:?}"
    );
    for path in rust(tracked().unwrap_or_default()) {
        assert!(
            walked.contains(&path) || !top().join(&path).exists(),
            "{path}"
        );
    }
}
