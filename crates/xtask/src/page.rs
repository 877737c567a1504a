//! Builds the program of the page: WASM, and the glue around it.

use crate::errand::{Fallible, cargo, fresh_folder, read, read_bytes, root, run, target_folder};
use std::path::PathBuf;
use wasm_bindgen_cli_support::Bindgen;

/// The program's package, and what its files are called.
pub(crate) const PROGRAM: &str = "thinwright-web";
const TARGET: &str = "wasm32-unknown-unknown";

/// How the glue is loaded.
#[derive(Clone, Copy)]
pub(crate) enum Glue {
    /// As a module, from a server.
    Module,
    /// As a plain script, from within one file.
    Script,
}

/// What the compiler made.
pub(crate) struct Built {
    /// The program before its glue is split off.
    wasm: PathBuf,
    target: PathBuf,
}

/// Compiles the program.
pub(crate) fn build() -> Fallible<Built> {
    let mut compile = cargo(&[
        "build",
        "--release",
        "--package",
        PROGRAM,
        "--bin",
        PROGRAM,
        "--target",
        TARGET,
    ]);
    run(compile.env("CARGO_ENCODED_RUSTFLAGS", without_places()))?;
    let target = target_folder()?;
    let wasm = target
        .join(TARGET)
        .join("release")
        .join(format!("{PROGRAM}.wasm"));
    Ok(Built { wasm, target })
}

/// Flags that keep the folders of this machine out of the program's messages, beside those that are set already.
fn without_places() -> String {
    let set = std::env::var("RUSTFLAGS").unwrap_or_default();
    let mut flags: Vec<String> = set.split_whitespace().map(str::to_owned).collect();
    let home = |variable: &str, folder: &str| {
        let named = std::env::var_os(variable).map(PathBuf::from);
        named.or_else(|| std::env::home_dir().map(|home| home.join(folder)))
    };
    let cargo = home("CARGO_HOME", ".cargo");
    // The folders of the registries bear their hosts' names; of several prefixes that fit, the last counts.
    let registries = cargo
        .as_ref()
        .map(|cargo| cargo.join("registry").join("src"));
    let registries = registries.and_then(|folder| std::fs::read_dir(folder).ok());
    let mut places = vec![
        (Some(root().to_path_buf()), "."),
        (cargo, "cargo"),
        (home("RUSTUP_HOME", ".rustup"), "rustup"),
    ];
    let crates = registries.into_iter().flatten().flatten();
    places.extend(crates.map(|folder| (Some(folder.path()), "crates")));
    for (place, name) in places {
        if let Some(place) = place {
            flags.push(format!("--remap-path-prefix={}={name}", place.display()));
        }
    }
    flags.join("\u{1f}")
}

/// The glue (JavaScript) and the program (WASM).
pub(crate) fn bind(built: &Built, glue: Glue) -> Fallible<(String, Vec<u8>)> {
    let folder = built.target.join("page").join(match glue {
        Glue::Module => "module",
        Glue::Script => "script",
    });
    fresh_folder(&folder)?;
    let mut bindgen = Bindgen::new();
    bindgen
        .input_path(&built.wasm)
        .typescript(false)
        .remove_name_section(true)
        .remove_producers_section(true);
    match glue {
        Glue::Module => bindgen.web(true),
        Glue::Script => bindgen.no_modules(true),
    }
    .and_then(|bindgen| bindgen.omit_default_module_path(true).generate(&folder))
    .map_err(|e| format!("wasm-bindgen: {e:#}"))?;
    let script = read(&folder.join(format!("{PROGRAM}.js")))?;
    let wasm = read_bytes(&folder.join(format!("{PROGRAM}_bg.wasm")))?;
    Ok((script, wasm))
}

#[cfg(test)]
mod tests {
    use crate::errand::{read, root};
    use crate::server::POLICY;

    #[test]
    fn the_policy_is_the_same_everywhere() {
        for file in ["web/index.html", "Trunk.toml"] {
            assert!(read(&root().join(file)).unwrap().contains(POLICY), "{file}");
        }
    }
}
