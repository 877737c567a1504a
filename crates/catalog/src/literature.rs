//! The literature list, as far as a reader of the sheet needs it.

/// An entry of the literature list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LiteratureEntry {
    /// Key, by which rows and doc comments name it.
    pub key: String,
    /// Authors or issuing body.
    pub author: String,
    /// Title.
    pub title: String,
    /// Year, empty where there is none.
    pub year: String,
    /// Whether it was read or is remembered, and other remarks.
    pub note: String,
}

/// The entries of a BibTeX file that keeps to `@kind{key,` and one `name = {value},` a line or a row of them on one line.
pub(crate) fn entries(text: &str) -> Vec<LiteratureEntry> {
    text.split('@').skip(1).filter_map(entry).collect()
}

fn entry(text: &str) -> Option<LiteratureEntry> {
    let (_, rest) = text.split_once('{')?;
    let (key, fields) = rest.split_once(',')?;
    let field = |name: &str| value(fields, name).unwrap_or_default();
    Some(LiteratureEntry {
        key: key.trim().to_owned(),
        author: field("author"),
        title: field("title"),
        year: field("year"),
        note: field("note"),
    })
}

/// The value of a field, with inner braces dropped.
fn value(fields: &str, name: &str) -> Option<String> {
    for (at, _) in fields.match_indices(name) {
        let before = fields[..at].chars().next_back();
        if before.is_some_and(|c| c.is_alphanumeric() || c == '-') {
            continue;
        }
        let Some(rest) = fields[at + name.len()..].trim_start().strip_prefix('=') else {
            continue;
        };
        let Some(rest) = rest.trim_start().strip_prefix('{') else {
            continue;
        };
        return Some(braced(rest));
    }
    None
}

/// The text up to the brace that closes, without braces and runs of space.
fn braced(text: &str) -> String {
    let mut depth = 1;
    let mut out = String::new();
    for c in text.chars() {
        match c {
            '{' => depth += 1,
            '}' => depth -= 1,
            _ => out.push(c),
        }
        if depth == 0 {
            break;
        }
    }
    out.split_whitespace().collect::<Vec<_>>().join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn entries_are_read_whatever_the_layout() {
        let text = "% comment\n@book{a1,\n  author = {A. Writer},\n  title = {On {ISO} 513},\n  year = {1990},\n}\n@misc{b2, title={Two}, note = {read}}\n";
        let list = entries(text);
        assert_eq!(list.len(), 2);
        assert_eq!(
            (
                list[0].key.as_str(),
                list[0].title.as_str(),
                list[0].year.as_str()
            ),
            ("a1", "On ISO 513", "1990")
        );
        assert_eq!(
            (
                list[1].key.as_str(),
                list[1].author.as_str(),
                list[1].note.as_str()
            ),
            ("b2", "", "read")
        );
    }

    #[test]
    fn a_cut_off_file_gives_what_can_be_read() {
        assert!(entries("@book").is_empty());
        assert_eq!(entries("@book{a, title = {On")[0].title, "On");
    }
}
