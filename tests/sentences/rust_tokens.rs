//! Words, signs and texts of Rust source; comments, characters and lifetimes are passed over.

use std::iter::Peekable;
use std::str::Chars;

/// A piece of source.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Token {
    /// A name, or a number.
    Word(String),
    /// Any other character.
    Sign(char),
    /// What stands between quotes, as the program has it.
    Text(String),
}

/// The tokens of a file.
pub(crate) fn tokens(text: &str) -> Vec<Token> {
    let mut rest = text.chars().peekable();
    let mut out = Vec::new();
    while let Some(c) = rest.next() {
        match c {
            c if c.is_whitespace() => {}
            '/' if rest.peek() == Some(&'/') => {
                rest.by_ref().find(|c| *c == '\n');
            }
            '/' if rest.peek() == Some(&'*') => block_comment(&mut rest),
            '"' => out.push(Token::Text(quoted(&mut rest))),
            '\'' => character(&mut rest),
            c if c.is_alphanumeric() || c == '_' => {
                let mut word = c.to_string();
                while let Some(c) = rest.next_if(|c| c.is_alphanumeric() || *c == '_') {
                    word.push(c);
                }
                let raw = word == "r" && matches!(rest.peek(), Some('"' | '#'));
                match raw.then(|| raw_string(&mut rest)).flatten() {
                    Some(text) => out.push(Token::Text(text)),
                    None => out.push(Token::Word(word)),
                }
            }
            sign => out.push(Token::Sign(sign)),
        }
    }
    out
}

fn block_comment(rest: &mut Peekable<Chars<'_>>) {
    let mut depth = 1;
    rest.next();
    while depth > 0 {
        match rest.next() {
            Some('*') if rest.next_if_eq(&'/').is_some() => depth -= 1,
            Some('/') if rest.next_if_eq(&'*').is_some() => depth += 1,
            Some(_) => {}
            None => return,
        }
    }
}

/// A text up to its closing quote, its escapes resolved.
fn quoted(rest: &mut Peekable<Chars<'_>>) -> String {
    let mut out = String::new();
    while let Some(c) = rest.next() {
        match c {
            '"' => break,
            '\\' => match rest.next() {
                Some('n') => out.push('\n'),
                Some('t') => out.push('\t'),
                Some('u') => out.extend(code_point(rest)),
                Some('\n') => while rest.next_if(|c| c.is_whitespace()).is_some() {},
                Some(c) => out.push(c),
                None => {}
            },
            c => out.push(c),
        }
    }
    out
}

/// `{A0}` behind `\u`.
fn code_point(rest: &mut Peekable<Chars<'_>>) -> Option<char> {
    rest.next_if_eq(&'{')?;
    let digits: String = rest.by_ref().take_while(|c| *c != '}').collect();
    char::from_u32(u32::from_str_radix(&digits, 16).ok()?)
}

/// A character is passed over, and so is a lifetime's mark.
fn character(rest: &mut Peekable<Chars<'_>>) {
    let mut ahead = rest.clone();
    match (ahead.next(), ahead.next()) {
        (Some('\\'), _) => {
            rest.next();
            rest.next();
            rest.by_ref().find(|c| *c == '\'');
        }
        (Some(_), Some('\'')) => {
            rest.next();
            rest.next();
        }
        _ => {}
    }
}

/// A raw text, where one begins here.
fn raw_string(rest: &mut Peekable<Chars<'_>>) -> Option<String> {
    let ahead: String = rest.clone().collect();
    let body = ahead.trim_start_matches('#');
    let hashes = ahead.len() - body.len();
    let end = format!("\"{}", "#".repeat(hashes));
    let inside = body.strip_prefix('"')?;
    let length = inside.find(&end)?;
    let text = &inside[..length];
    let taken = hashes + 1 + text.chars().count() + end.chars().count();
    for _ in 0..taken {
        rest.next();
    }
    Some(text.to_owned())
}

#[test]
fn texts_are_as_the_program_has_them() {
    let texts = |source: &str| -> Vec<String> {
        let is_text = |t| match t {
            Token::Text(text) => Some(text),
            Token::Word(_) | Token::Sign(_) => None,
        };
        tokens(source).into_iter().filter_map(is_text).collect()
    };
    assert_eq!(
        texts(r#"a("x\u{A0}\"y\\") /* "no" /* */ "no" */ '"' "z""#),
        ["x\u{A0}\"y\\", "z"]
    );
    assert_eq!(
        texts("r#\"a \"b\" c\"# + r\"d\" + \"e \\\n    f\" // \"no\""),
        ["a \"b\" c", "d", "e f"]
    );
    assert_eq!(
        texts("fn f<'a>(x: &'a str, y: char) { x == \"g\" && y == '\\'' }"),
        ["g"]
    );
}
