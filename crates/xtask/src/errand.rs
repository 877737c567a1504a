//! Running commands at the top of the tree, and failing in words.

use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::OnceLock;

/// What an errand gives back: a value, or why it failed, in words.
pub(crate) type Fallible<T> = Result<T, String>;

/// The top of the tree: cargo says where this package stands; without cargo, the current folder.
pub(crate) fn root() -> &'static Path {
    static ROOT: OnceLock<PathBuf> = OnceLock::new();
    ROOT.get_or_init(|| match std::env::var("CARGO_MANIFEST_DIR") {
        Ok(package) => Path::new(&package)
            .ancestors()
            .nth(2)
            .unwrap_or(Path::new("."))
            .to_owned(),
        Err(_) => PathBuf::from("."),
    })
}

/// A command that will run at the top of the tree.
pub(crate) fn command(program: &str, arguments: &[&str]) -> Command {
    let mut command = Command::new(program);
    command.args(arguments).current_dir(root());
    command
}

/// The cargo that started this errand.
pub(crate) fn cargo(arguments: &[&str]) -> Command {
    let program = std::env::var("CARGO").unwrap_or_else(|_| "cargo".to_owned());
    command(&program, arguments)
}

/// Runs to the end; anything but success is a failure.
pub(crate) fn run(command: &mut Command) -> Fallible<()> {
    let status = command.status().map_err(|e| format!("{command:?}: {e}"))?;
    if status.success() {
        Ok(())
    } else {
        Err(format!("{command:?}: {status}"))
    }
}

/// Runs to the end and gives what it printed.
pub(crate) fn output(command: &mut Command) -> Fallible<String> {
    let done = command.output().map_err(|e| format!("{command:?}: {e}"))?;
    if !done.status.success() {
        return Err(format!(
            "{command:?}: {}\n{}",
            done.status,
            String::from_utf8_lossy(&done.stderr)
        ));
    }
    String::from_utf8(done.stdout).map_err(|e| format!("{command:?}: {e}"))
}

/// Where cargo puts what it builds.
pub(crate) fn target_folder() -> Fallible<PathBuf> {
    let text = output(&mut cargo(&[
        "metadata",
        "--format-version=1",
        "--no-deps",
        "--offline",
    ]))?;
    let metadata: serde_json::Value =
        serde_json::from_str(&text).map_err(|e| format!("cargo metadata: {e}"))?;
    metadata["target_directory"]
        .as_str()
        .map(PathBuf::from)
        .ok_or_else(|| "cargo metadata names no target folder".to_owned())
}

/// A file as text.
pub(crate) fn read(path: &Path) -> Fallible<String> {
    std::fs::read_to_string(path).map_err(|e| format!("{}: {e}", path.display()))
}

/// A file as bytes.
pub(crate) fn read_bytes(path: &Path) -> Fallible<Vec<u8>> {
    std::fs::read(path).map_err(|e| format!("{}: {e}", path.display()))
}

/// Writes a file.
pub(crate) fn write(path: &Path, content: impl AsRef<[u8]>) -> Fallible<()> {
    std::fs::write(path, content).map_err(|e| format!("{}: {e}", path.display()))
}

/// Makes a folder that is there and empty.
pub(crate) fn fresh_folder(path: &Path) -> Fallible<()> {
    if path.exists() {
        std::fs::remove_dir_all(path).map_err(|e| format!("{}: {e}", path.display()))?;
    }
    std::fs::create_dir_all(path).map_err(|e| format!("{}: {e}", path.display()))
}
