//! Dictionaries of the languages (`shared/words`): English texts, and what they become.

use crate::error::{CatalogError, Fault};
use serde_json::Value;

/// Reads a dictionary: one JSON object of texts. `file` is its name in what is said of it.
///
/// # Errors
/// [`CatalogError::NotJson`] and [`CatalogError::NotATable`] of the whole, [`CatalogError::Field`] of an entry that is no
/// text.
pub fn dictionary(file: &str, json: &str) -> Result<Vec<(String, String)>, CatalogError> {
    let value: Value = serde_json::from_str(json).map_err(|e| CatalogError::NotJson {
        file: file.to_owned(),
        line: e.line(),
        column: e.column(),
    })?;
    let Value::Object(entries) = value else {
        return Err(CatalogError::NotATable {
            file: file.to_owned(),
        });
    };
    let each = entries.into_iter().map(|(english, text)| match text {
        Value::String(text) => Ok((english, text)),
        _ => Err(CatalogError::Field {
            file: file.to_owned(),
            row: "words".to_owned(),
            field: english,
            fault: Fault::NotText,
        }),
    });
    each.collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn texts_are_read_and_anything_else_is_told() {
        let read = |json| dictionary("de.json", json);
        let stop = ("Stop".to_owned(), "Halt".to_owned());
        assert_eq!(read(r#"{"Stop": "Halt"}"#), Ok(vec![stop]));
        let told = |json| read(json).map_err(|e| e.to_string()).unwrap_err();
        assert!(told(r#"{"Stop": }"#).contains("line 1"), "{}", told("{"));
        assert!(told("[]").starts_with("de.json"), "{}", told("[]"));
        let no_text = told(r#"{"Stop": 1}"#);
        assert!(no_text.contains("Stop"), "{no_text}");
    }
}
