//! Reads `web/index.html`: its `data-trunk` lines name what the page is made of, one `<link>` a line.

use crate::errand::Fallible;

/// One line of the page's source.
#[derive(Debug, PartialEq)]
pub(crate) enum Line<'a> {
    /// A style sheet, by its path under `web/`.
    Style(&'a str),
    /// A file that is copied under its own name.
    Copy(&'a str),
    /// The program.
    Program,
    /// Anything else.
    Text(&'a str),
}

/// The value of an attribute in a line that holds one element.
fn attribute<'a>(line: &'a str, name: &str) -> Option<&'a str> {
    let (_, rest) = line.split_once(&format!(" {name}=\""))?;
    rest.split_once('"').map(|(value, _)| value)
}

/// Every line of the page's source, understood.
pub(crate) fn lines(html: &str) -> Fallible<Vec<Line<'_>>> {
    html.lines().map(read_line).collect()
}

fn read_line(line: &str) -> Fallible<Line<'_>> {
    if !line.contains(" data-trunk") {
        return Ok(Line::Text(line));
    }
    let href = attribute(line, "href").ok_or_else(|| format!("no href: {line}"))?;
    match attribute(line, "rel") {
        Some("css") => Ok(Line::Style(href)),
        Some("copy-file") => Ok(Line::Copy(href)),
        Some("rust") => Ok(Line::Program),
        _ => Err(format!(
            "a data-trunk line of a kind not known here: {line}"
        )),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_kind_of_line_is_told_apart() {
        let html = "<html>\n<link data-trunk rel=\"css\" href=\"styles/a.css\">\n<link data-trunk rel=\"copy-file\" href=\"sw.js\">\n<link data-trunk rel=\"rust\" href=\"Cargo.toml\">";
        let expected = vec![
            Line::Text("<html>"),
            Line::Style("styles/a.css"),
            Line::Copy("sw.js"),
            Line::Program,
        ];
        assert_eq!(lines(html), Ok(expected));
    }

    #[test]
    fn an_unknown_kind_is_refused() {
        assert!(lines("<link data-trunk rel=\"sass\" href=\"a.scss\">").is_err());
        assert!(lines("<link data-trunk rel=\"css\">").is_err());
    }
}
