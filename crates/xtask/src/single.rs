//! The whole page as one file that runs from a disk: `dist-single/thinwright.html`.

use crate::dictionaries;
use crate::errand::{Fallible, fresh_folder, read, root, write};
use crate::fingerprint::{digest, policy_hash};
use crate::html::{self, Line};
use crate::page::{Built, Glue, bind};
use crate::{server, sizes};
use base64::Engine as _;

/// Starts the program from within the page.
const BOOT: &str = include_str!("single_boot.js");
/// Starts the element that holds the program, and names the version.
const PROGRAM: &str = "<script type=\"text/plain\" id=\"program\"";

/// Writes the file.
pub(crate) fn write_file(built: &Built) -> Fallible<()> {
    let (glue, wasm) = bind(built, Glue::Script)?;
    let folder = root().join("dist-single");
    fresh_folder(&folder)?;
    let page = assemble(&read(&root().join("web/index.html"))?, &glue, &wasm)?;
    sizes::print("dist-single/thinwright.html", page.as_bytes());
    write(&folder.join("thinwright.html"), page)
}

/// Every part inlined, and a policy that lets through these parts only.
fn assemble(source: &str, glue: &str, wasm: &[u8]) -> Fallible<String> {
    // An inline script must not hold the text that would end it.
    let glue = glue.replace("</script", "<\\/script");
    let wasm = base64::engine::general_purpose::STANDARD.encode(wasm);
    let styles = styles(source)?;
    let policy = policy(&styles, &[&glue, BOOT]);
    let mut page = String::new();
    let mut words = String::new();
    for line in html::lines(source)? {
        match line {
            Line::Copy(path) if let Some(tag) = dictionaries::tag(path) => {
                words += &dictionaries::inlined(tag, &read(&root().join("web").join(path))?);
            }
            Line::Style(_) | Line::Copy(_) => {}
            Line::Program => page += &format!("<style>{styles}</style>\n"),
            Line::Text(text) if text.contains("http-equiv=\"Content-Security-Policy\"") => {
                page += &format!(
                    "<meta http-equiv=\"Content-Security-Policy\" content=\"{policy}\">\n"
                );
            }
            // It is no application of a server, and has no file beside it.
            Line::Text(text)
                if ["manifest", "apple-touch-icon"]
                    .iter()
                    .any(|rel| is_link(text, rel)) => {}
            Line::Text(text) if is_link(text, "icon") => page += &icon()?,
            Line::Text(text) if text.trim() == "</body>" => {
                page += &words;
                page += &format!("{PROGRAM}>{wasm}</script>\n");
                page += &format!(
                    "<script id=\"glue\">{glue}</script>\n<script>{BOOT}</script>\n{text}\n"
                );
            }
            Line::Text(text) => page += &format!("{text}\n"),
        }
    }
    // On an element that no script is in: the policy knows the scripts by their digests.
    let version = digest(page.as_bytes());
    Ok(page.replacen(PROGRAM, &format!("{PROGRAM} data-version=\"{version}\""), 1))
}

fn is_link(line: &str, rel: &str) -> bool {
    line.starts_with(&format!("<link rel=\"{rel}\""))
}

/// The icon within the page.
fn icon() -> Fallible<String> {
    let icon = read(&root().join("web/icons/icon.svg"))?;
    let icon = base64::engine::general_purpose::STANDARD.encode(icon);
    Ok(format!(
        "<link rel=\"icon\" href=\"data:image/svg+xml;base64,{icon}\">\n"
    ))
}

/// All style sheets, in the page's order.
fn styles(source: &str) -> Fallible<String> {
    let mut styles = String::new();
    for line in html::lines(source)? {
        if let Line::Style(path) = line {
            styles += &read(&root().join("web").join(path))?;
        }
    }
    Ok(styles)
}

/// The served page's policy, with hashes for what is inlined, and a worker made from the page's own text.
fn policy(styles: &str, scripts: &[&str]) -> String {
    let hashes: Vec<String> = scripts.iter().map(|script| policy_hash(script)).collect();
    server::POLICY
        .replace(
            "script-src 'self'",
            &format!("script-src {}", hashes.join(" ")),
        )
        .replace(
            "style-src 'self'",
            &format!("style-src {}", policy_hash(styles)),
        )
        .replace("worker-src 'self'", "worker-src blob:")
        .replace("connect-src 'self'", "connect-src 'none'")
        .replace("img-src 'self' ", "img-src ")
        .replace("manifest-src 'self'", "manifest-src 'none'")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_policy_lets_nothing_else_through() {
        let policy = policy("a{}", &["x"]);
        assert!(!policy.contains("'self'"), "{policy}");
        assert!(
            policy.contains(&format!(
                "script-src {} 'wasm-unsafe-eval'",
                policy_hash("x")
            )),
            "{policy}"
        );
        assert!(
            policy.contains(&format!("style-src {}", policy_hash("a{}"))),
            "{policy}"
        );
    }

    #[test]
    fn inlined_text_cannot_end_its_element() {
        let source = "<head>\n<link data-trunk rel=\"rust\" href=\"Cargo.toml\">\n</head>\n<body>\n</body>\n";
        let page = assemble(source, "a('</script>')", b"x").unwrap();
        assert_eq!(page.matches("</script>").count(), 3, "{page}");
    }
}
