//! Words on the page itself: its version, where it is kept, whether a newer one waits.

use thinwright_words::say;

texts! {
    about_page: "This page";
    kept_here: "Kept on this device: works without a network.";
    kept_as_file: "One file: works without a network.";
    kept_nowhere: "Not yet kept on this device: needs the network.";
    newer_ready: "A newer version is ready, and what you typed stays: reload the page to take it.";
    reload: "Reload";
    install: "Install";
    install_here: "Install on this device";
}

/// The version as it is told: of the engine, and of the build where it is known.
pub(crate) fn version(version: &str, build: Option<&str>) -> String {
    match build {
        Some(build) => say!("Version {version}, build {build}.", version, build),
        None => say!("Version {version}.", version),
    }
}
