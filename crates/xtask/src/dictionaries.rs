//! Dictionaries of the page: a file for each language but English, fetched only where that language is spoken.

/// The folder, as `web/index.html` names it.
const FOLDER: &str = "../shared/words/";

/// The language of a file that the page's source names, where it is a dictionary: `../shared/words/de.json` is of `de`.
pub(crate) fn tag(path: &str) -> Option<&str> {
    path.strip_prefix(FOLDER)?.strip_suffix(".json")
}

/// What the file is called before its fingerprint.
pub(crate) fn name(tag: &str) -> String {
    format!("words-{tag}.json")
}

/// The dictionary within the page: no text of it can end its element.
pub(crate) fn inlined(tag: &str, json: &str) -> String {
    let json = json.replace('<', "\\u003c");
    format!("<script type=\"text/plain\" id=\"words-{tag}\">{json}</script>\n")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::errand::{read, root};
    use crate::html::{self, Line};

    #[test]
    fn a_dictionary_is_told_by_where_it_lies() {
        assert_eq!(tag("../shared/words/de.json"), Some("de"));
        assert_eq!(tag("manifest.webmanifest"), None);
        assert_eq!(name("de"), "words-de.json");
    }

    /// Every dictionary that there is belongs to the page, and the page names no other.
    #[test]
    fn the_page_names_every_dictionary() {
        let source = read(&root().join("web/index.html")).unwrap();
        let lines = html::lines(&source).unwrap();
        let named: Vec<&str> = lines
            .iter()
            .filter_map(|line| match line {
                Line::Copy(path) => tag(path),
                _ => None,
            })
            .collect();
        let files = std::fs::read_dir(root().join("shared/words")).unwrap();
        let mut there: Vec<String> = files
            .filter_map(|file| {
                let name = file.unwrap().file_name().to_string_lossy().into_owned();
                name.strip_suffix(".json").map(str::to_owned)
            })
            .collect();
        there.sort();
        assert_eq!(named, there);
    }

    #[test]
    fn an_inlined_dictionary_says_the_same_and_cannot_end_its_element() {
        let json = r#"{"a </script> b": "c <!-- d"}"#;
        let inlined = inlined("de", json);
        assert_eq!(inlined.matches('<').count(), 2, "{inlined}");
        let body = inlined.split_once('>').unwrap().1;
        let body = body.strip_suffix("</script>\n").unwrap();
        let back = body.replace("\\u003c", "<");
        assert_eq!(back, json);
    }
}
