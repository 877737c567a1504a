//! `dist/`: the files of the page under names that change with what they hold, and the page that names them.

use crate::dictionaries;
use crate::errand::{Fallible, fresh_folder, read, read_bytes, root, write};
use crate::fingerprint::{digest, hashed_name};
use crate::html::{self, Line};
use crate::page::{Built, Glue, PROGRAM, bind};
use crate::sizes;
use std::collections::BTreeMap;

/// Scripts whose names change with what they hold. The service worker's must not: the browser looks for a newer one there.
const SCRIPTS: &[&str] = &["offline.js", "boot.js", "worker.js"];
/// Stands in the page for its version, while that is made of all the rest.
const NO_VERSION: &str = "not-yet-known";

/// Files by their names.
type Files = BTreeMap<String, Vec<u8>>;

/// Writes `dist/`.
pub(crate) fn write_folder(built: &Built) -> Fallible<()> {
    let (script, wasm) = bind(built, Glue::Module)?;
    let source = read(&root().join("web/index.html"))?;
    let from = |path: &str| read_bytes(&root().join("web").join(path));
    let folder = root().join("dist");
    fresh_folder(&folder)?;
    for (name, content) in assemble(&source, script.as_bytes(), &wasm, from)? {
        write(&folder.join(name), content)?;
    }
    sizes::print("dist/: program", &wasm);
    sizes::print("       glue", script.as_bytes());
    Ok(())
}

/// The page while it is put together.
#[derive(Default)]
struct Dist {
    files: Files,
    page: String,
    style: Vec<u8>,
    /// What files are called now, by what they are to the page.
    names: BTreeMap<String, String>,
    /// What keeps its name whatever it holds.
    fixed: Vec<u8>,
}

/// All files of the page: its source's, read by their paths, and the program with its glue.
fn assemble(
    source: &str,
    script: &[u8],
    wasm: &[u8],
    from: impl Fn(&str) -> Fallible<Vec<u8>>,
) -> Fallible<Files> {
    let mut dist = Dist::default();
    dist.hashed("js", &format!("{PROGRAM}.js"), script);
    dist.hashed("wasm", &format!("{PROGRAM}.wasm"), wasm);
    for line in html::lines(source)? {
        dist.take(line, &from)?;
    }
    let version = digest(&[dist.page.as_bytes(), &dist.fixed].concat());
    let page = dist.page.replace(NO_VERSION, &version);
    dist.files.insert("index.html".to_owned(), page.into());
    Ok(dist.files)
}

impl Dist {
    fn take(&mut self, line: Line<'_>, from: impl Fn(&str) -> Fallible<Vec<u8>>) -> Fallible<()> {
        match line {
            Line::Style(path) => self.style.extend(from(path)?),
            Line::Copy(path) if SCRIPTS.contains(&path) => self.hashed(path, path, &from(path)?),
            Line::Copy(path) if let Some(tag) = dictionaries::tag(path) => {
                self.hashed(tag, &dictionaries::name(tag), &from(path)?);
            }
            Line::Copy(path) => {
                let content = from(path)?;
                self.fixed.extend(&content);
                let name = path.rsplit('/').next().unwrap_or(path);
                self.files.insert(name.to_owned(), content);
            }
            Line::Program => self.head(),
            Line::Text(text) if text.trim() == "</body>" => {
                let loader = self.loader();
                self.page += &format!("{loader}{text}\n");
            }
            Line::Text(text) => self.page += &format!("{text}\n"),
        }
        Ok(())
    }

    /// A file under a name that changes with what it holds.
    fn hashed(&mut self, what: &str, name: &str, content: &[u8]) {
        let name = hashed_name(name, content);
        self.files.insert(name.clone(), content.to_owned());
        self.names.insert(what.to_owned(), name);
    }

    fn name(&self, what: &str) -> &str {
        self.names.get(what).map_or("", String::as_str)
    }

    /// All style in one file: one request in place of a dozen. And the browser fetches the program while it still reads
    /// the page.
    fn head(&mut self) {
        let style = std::mem::take(&mut self.style);
        self.hashed("style", "style.css", &style);
        let (style, script, wasm) = (self.name("style"), self.name("js"), self.name("wasm"));
        let head = format!(
            "<link rel=\"stylesheet\" href=\"./{style}\">\n\
             <link rel=\"modulepreload\" href=\"./{script}\">\n\
             <link rel=\"preload\" href=\"./{wasm}\" as=\"fetch\" type=\"application/wasm\" crossorigin>\n"
        );
        self.page += &head;
    }

    fn loader(&self) -> String {
        let named = |(data, what)| (data, self.name(what));
        let own = [("js", "js"), ("wasm", "wasm"), ("worker", "worker.js")].map(named);
        let languages = self
            .names
            .iter()
            .filter(|(_, name)| name.starts_with("words-"));
        let languages = languages.map(|(tag, name)| (tag.as_str(), name.as_str()));
        let data: Vec<_> = own.into_iter().chain(languages).collect();
        let (offline, boot) = (self.name("offline.js"), self.name("boot.js"));
        loader(offline, boot, &data, Some(NO_VERSION))
    }
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
    use super::*;

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
        let here = loader("offline.js", "boot.js", &data, None);
        let trunk = read(&root().join("Trunk.toml"))
            .unwrap()
            .replace("{base}", "./");
        assert!(trunk.contains(here.trim()), "{here}");
    }

    /// The page as it is, with every file holding only its own path, but one that is changed.
    fn built(changed: &str) -> Files {
        let source = read(&root().join("web/index.html")).unwrap();
        let content = |path: &str| {
            let mark = if path == changed { "changed " } else { "" };
            format!("{mark}{path}").into_bytes()
        };
        let from = |path: &str| Ok(content(path));
        assemble(&source, &content("glue"), &content("program"), from).unwrap()
    }

    fn page(files: &Files) -> String {
        String::from_utf8(files["index.html"].clone()).unwrap()
    }

    fn version(files: &Files) -> String {
        let page = page(files);
        let (_, rest) = page.split_once(" data-version=\"").unwrap();
        rest.split_once('"').unwrap().0.to_owned()
    }

    /// Two builds that differ in any file but the service worker, which browsers renew by themselves, are two versions; and
    /// what has changed has another name, or never had a fingerprint.
    #[test]
    fn each_change_makes_another_version() {
        let before = built("");
        assert_eq!(version(&before), version(&built("")));
        let source = read(&root().join("web/index.html")).unwrap();
        let lines = html::lines(&source).unwrap();
        let paths = lines.iter().filter_map(|line| match line {
            Line::Style(path) | Line::Copy(path) => Some(*path),
            Line::Program | Line::Text(_) => None,
        });
        let paths: Vec<&str> = paths
            .chain(["glue", "program"])
            .filter(|path| *path != "sw.js")
            .collect();
        assert!(paths.len() > 15, "{paths:?}");
        for path in paths {
            let after = built(path);
            assert_ne!(version(&before), version(&after), "{path}");
            for (name, content) in &after {
                let changed = before.get(name).is_some_and(|c| c != content);
                let fixed = |name: &str| name.starts_with("icon") || name == "manifest.webmanifest";
                assert!(!changed || name == "index.html" || fixed(name), "{name}");
            }
        }
    }

    /// The service worker keeps what the page names: so the page must name all that it may ask for.
    #[test]
    fn the_page_names_every_file_but_those_of_the_manifest() {
        let files = built("");
        let page = page(&files);
        for name in files.keys() {
            let elsewhere = [
                "index.html",
                "sw.js",
                "icon-512.png",
                "icon-maskable-512.png",
            ];
            let named = page.contains(&format!("=\"./{name}\""));
            assert!(named != elsewhere.contains(&name.as_str()), "{name}");
        }
    }

    /// What the manifest names is there.
    #[test]
    fn the_manifest_names_files_of_the_page() {
        let manifest = read(&root().join("web/manifest.webmanifest")).unwrap();
        let manifest: serde_json::Value = serde_json::from_str(&manifest).unwrap();
        let icons = manifest["icons"].as_array().unwrap();
        assert!(icons.len() >= 3);
        let files = built("");
        for icon in icons {
            assert!(files.contains_key(icon["src"].as_str().unwrap()), "{icon}");
        }
        assert_eq!(manifest["start_url"], "./");
        assert_eq!(manifest["scope"], "./");
    }
}
