//! A tree between JSON and the values: keeps keys in order, and keys that stand twice.

use serde::de::{Deserialize, Deserializer, MapAccess, SeqAccess, Visitor};
use serde::ser::{Serialize, SerializeMap, SerializeSeq, Serializer};
use std::fmt;

/// Whole numbers up to here are printed without a decimal point: all of them are exact.
const WHOLE: f64 = 9.0e15;

/// A piece of JSON.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Node {
    Null,
    Flag(bool),
    Number(f64),
    Text(String),
    List(Vec<Node>),
    Object(Vec<(String, Node)>),
}

impl Node {
    /// A text.
    pub(crate) fn text(text: impl Into<String>) -> Node {
        Node::Text(text.into())
    }

    /// An object.
    pub(crate) fn object<K: Into<String>>(fields: impl IntoIterator<Item = (K, Node)>) -> Node {
        Node::Object(fields.into_iter().map(|(k, n)| (k.into(), n)).collect())
    }

    /// On one line.
    pub(crate) fn line(&self) -> String {
        // Fails only for keys that are no text; ours are.
        serde_json::to_string(self).unwrap_or_default()
    }

    /// For people: the first two levels a line per entry, what is deeper on the line of its key.
    pub(crate) fn lines(&self) -> String {
        let mut out = String::new();
        self.render(0, &mut out);
        out.push('\n');
        out
    }

    fn render(&self, depth: usize, out: &mut String) {
        const BROKEN: usize = 2;
        let (open, close, entries): (char, char, Vec<(Option<&str>, &Node)>) = match self {
            Node::Object(fields) => (
                '{',
                '}',
                fields.iter().map(|(k, n)| (Some(k.as_str()), n)).collect(),
            ),
            Node::List(items) => ('[', ']', items.iter().map(|n| (None, n)).collect()),
            Node::Null | Node::Flag(_) | Node::Number(_) | Node::Text(_) => {
                ('\0', '\0', Vec::new())
            }
        };
        if entries.is_empty() || depth >= BROKEN {
            out.push_str(&self.line());
            return;
        }
        let indent = |out: &mut String, by: usize| out.extend(std::iter::repeat_n("  ", by));
        out.push(open);
        for (place, (key, node)) in entries.iter().enumerate() {
            out.push_str(if place == 0 { "\n" } else { ",\n" });
            indent(out, depth + 1);
            if let Some(key) = key {
                out.push_str(&Node::text(*key).line());
                out.push_str(": ");
            }
            node.render(depth + 1, out);
        }
        out.push('\n');
        indent(out, depth);
        out.push(close);
    }
}

impl Serialize for Node {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Node::Null => serializer.serialize_unit(),
            Node::Flag(flag) => serializer.serialize_bool(*flag),
            Node::Number(number) => {
                let negative_zero = *number == 0.0 && number.is_sign_negative();
                if number.fract() == 0.0 && number.abs() < WHOLE && !negative_zero {
                    #[allow(
                        clippy::cast_possible_truncation,
                        reason = "whole and within i64, just checked"
                    )]
                    serializer.serialize_i64(*number as i64)
                } else {
                    serializer.serialize_f64(*number)
                }
            }
            Node::Text(text) => serializer.serialize_str(text),
            Node::List(items) => {
                let mut list = serializer.serialize_seq(Some(items.len()))?;
                for item in items {
                    list.serialize_element(item)?;
                }
                list.end()
            }
            Node::Object(fields) => {
                let mut map = serializer.serialize_map(Some(fields.len()))?;
                for (key, node) in fields {
                    map.serialize_entry(key, node)?;
                }
                map.end()
            }
        }
    }
}

impl<'de> Deserialize<'de> for Node {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Node, D::Error> {
        deserializer.deserialize_any(Reader)
    }
}

struct Reader;

impl<'de> Visitor<'de> for Reader {
    type Value = Node;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("JSON")
    }

    fn visit_unit<E>(self) -> Result<Node, E> {
        Ok(Node::Null)
    }

    fn visit_bool<E>(self, flag: bool) -> Result<Node, E> {
        Ok(Node::Flag(flag))
    }

    fn visit_i64<E>(self, number: i64) -> Result<Node, E> {
        #[allow(clippy::cast_precision_loss, reason = "as JSON means it: a number")]
        Ok(Node::Number(number as f64))
    }

    fn visit_u64<E>(self, number: u64) -> Result<Node, E> {
        #[allow(clippy::cast_precision_loss, reason = "as JSON means it: a number")]
        Ok(Node::Number(number as f64))
    }

    fn visit_f64<E>(self, number: f64) -> Result<Node, E> {
        Ok(Node::Number(number))
    }

    fn visit_str<E>(self, text: &str) -> Result<Node, E> {
        Ok(Node::text(text))
    }

    fn visit_string<E>(self, text: String) -> Result<Node, E> {
        Ok(Node::Text(text))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<Node, A::Error> {
        let mut out = Vec::new();
        while let Some(item) = list.next_element()? {
            out.push(item);
        }
        Ok(Node::List(out))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Node, A::Error> {
        let mut out = Vec::new();
        while let Some(entry) = map.next_entry()? {
            out.push(entry);
        }
        Ok(Node::Object(out))
    }
}
