//! Builds the page: the program to WASM, its glue, style sheets and scripts into `dist/`.

use crate::dictionaries;
use crate::errand::{
    Fallible, cargo, fresh_folder, read, read_bytes, root, run, target_folder, write,
};
use crate::fingerprint::{digest, hashed_name};
use crate::html::{self, Line};
use crate::sizes;
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use wasm_bindgen_cli_support::Bindgen;

const PROGRAM: &str = "thinwright-web";
const TARGET: &str = "wasm32-unknown-unknown";
/// Scripts whose names change with what they hold. The service worker's must not: the browser looks for a newer one there.
const SCRIPTS: &[&str] = &["offline.js", "boot.js", "worker.js"];
/// Stands in the page for its version, while that is made of all the rest.
const NO_VERSION: &str = "not-yet-known";

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

/// Writes `dist/`.
pub(crate) fn write_dist(built: &Built) -> Fallible<()> {
    let (script, wasm) = bind(built, Glue::Module)?;
    let dist = root().join("dist");
    fresh_folder(&dist)?;
    let hashed = |name: &str, content: &[u8]| {
        let name = hashed_name(name, content);
        write(&dist.join(&name), content).map(|()| name)
    };
    let script_name = hashed(&format!("{PROGRAM}.js"), script.as_bytes())?;
    let wasm_name = hashed(&format!("{PROGRAM}.wasm"), &wasm)?;
    let mut scripts = BTreeMap::new();
    let mut languages = BTreeMap::new();
    // What keeps its name whatever it holds.
    let mut fixed = Vec::new();
    let web = root().join("web");
    let source = read(&web.join("index.html"))?;
    let mut page = String::new();
    for line in html::lines(&source)? {
        page += &match line {
            Line::Style(path) => {
                let name = hashed(path, &read_bytes(&web.join(path))?)?;
                format!("<link rel=\"stylesheet\" href=\"./{name}\">\n")
            }
            Line::Copy(path) if SCRIPTS.contains(&path) => {
                scripts.insert(path, hashed(path, &read_bytes(&web.join(path))?)?);
                String::new()
            }
            Line::Copy(path) if let Some(tag) = dictionaries::tag(path) => {
                let words = read_bytes(&web.join(path))?;
                languages.insert(tag, hashed(&dictionaries::name(tag), &words)?);
                String::new()
            }
            Line::Copy(path) => {
                fixed.extend(copy(&web.join(path), &dist)?);
                String::new()
            }
            Line::Program => preload(&script_name, &wasm_name),
            Line::Text(text) if text.trim() == "</body>" => {
                let name = |path| scripts.get(path).map_or(path, String::as_str);
                let mut data = vec![
                    ("js", script_name.as_str()),
                    ("wasm", &wasm_name),
                    ("worker", name("worker.js")),
                ];
                data.extend(languages.iter().map(|(tag, name)| (*tag, name.as_str())));
                let loader = loader(name("offline.js"), name("boot.js"), &data, Some(NO_VERSION));
                format!("{loader}{text}\n")
            }
            Line::Text(text) => format!("{text}\n"),
        };
    }
    let version = digest(&[page.as_bytes(), &fixed].concat());
    let page = page.replace(NO_VERSION, &version);
    write(&dist.join("index.html"), page)?;
    sizes::print("dist/: program", &wasm);
    sizes::print("       glue", script.as_bytes());
    Ok(())
}

/// Copies a file under its own name, and gives what it holds.
fn copy(file: &Path, folder: &Path) -> Fallible<Vec<u8>> {
    let content = read_bytes(file)?;
    write(&folder.join(file.file_name().unwrap_or_default()), &content)?;
    Ok(content)
}

/// Lets the browser fetch the program while it still reads the page.
fn preload(script: &str, wasm: &str) -> String {
    format!(
        "<link rel=\"modulepreload\" href=\"./{script}\">\n\
         <link rel=\"preload\" href=\"./{wasm}\" as=\"fetch\" type=\"application/wasm\" crossorigin>\n"
    )
}

/// The elements that start the program, with the names of the files it is made of; Trunk.toml has the same under
/// `pattern_script`, but for the version.
fn loader(offline: &str, boot: &str, data: &[(&str, &str)], version: Option<&str>) -> String {
    let mut names = String::new();
    for (what, name) in data {
        names += &format!(" data-{what}=\"./{name}\"");
    }
    let version = version.map_or(String::new(), |v| format!(" data-version=\"{v}\""));
    format!(
        "<script type=\"module\" src=\"./{offline}\"></script>\n\
         <script type=\"module\" src=\"./{boot}\"{names}{version}></script>\n"
    )
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

    /// The page that Trunk builds starts the same way.
    #[test]
    fn the_loader_is_the_same_everywhere() {
        let data = [
            ("js", "{js}"),
            ("wasm", "{wasm}"),
            ("worker", "worker.js"),
            ("de", "de.json"),
            ("es", "es.json"),
        ];
        let here = super::loader("offline.js", "boot.js", &data, None);
        let trunk = read(&root().join("Trunk.toml"))
            .unwrap()
            .replace("{base}", "./");
        assert!(trunk.contains(here.trim()), "{here}");
    }
}
