//! What the source says to people: the English texts that a file hands over to be said.
//!
//! A text is handed over inside `tr(...)`, `tr_all(...)` or `plural(...)`, as the first argument of `say!(...)`, or in a
//! list of `texts! {...}` or `limits! {...}`. Patterns of a `match` and sides of a comparison are no texts.

use super::rust_tokens::{Token, tokens};

/// The functions whose texts are said.
const SPEAKS: [&str; 3] = ["tr", "tr_all", "plural"];
/// The macros whose lists of texts are said.
const LISTS: [&str; 2] = ["texts", "limits"];

/// Texts that a file says, and those that it does not.
#[derive(Debug, Default)]
pub(crate) struct Found {
    /// Handed over to be said.
    pub(crate) said: Vec<String>,
    /// Anything else between quotes that may reach people.
    pub(crate) unsaid: Vec<String>,
}

/// What a file without its tests says.
pub(crate) fn found(text: &str) -> Found {
    let tokens = without_tests(tokens(text));
    let mut found = Found::default();
    let mut at = 0;
    while at < tokens.len() {
        group(&tokens, &mut at, false, &mut found);
        at += 1;
    }
    found
}

/// The tokens without an inline module of tests.
fn without_tests(mut all: Vec<Token>) -> Vec<Token> {
    let head = tokens("#[cfg(test)] mod");
    let inline = |at: usize| all.get(at + head.len() + 1) == Some(&Token::Sign('{'));
    let module = (0..all.len()).find(|at| all[*at..].starts_with(&head) && inline(*at));
    if let Some(at) = module {
        all.truncate(at);
    }
    all
}

/// Goes through a group to its closing bracket.
fn group(tokens: &[Token], at: &mut usize, speaks: bool, found: &mut Found) {
    // Where the texts of the arm of a match begin that is not over yet.
    let mut arm = found.said.len();
    while let Some(token) = tokens.get(*at) {
        match token {
            Token::Sign(')' | ']' | '}') => return,
            Token::Sign('(' | '[' | '{') => {
                let block = *token == Token::Sign('{');
                let inside = speaks || opened_by(tokens, *at, &SPEAKS, false);
                match list(tokens, *at) {
                    Some("texts") => entries(tokens, at, found),
                    Some(_) => inner(tokens, at, true, found),
                    None => inner(tokens, at, inside, found),
                }
                if block {
                    arm = found.said.len();
                }
            }
            Token::Sign(',' | ';') => arm = found.said.len(),
            Token::Sign('=') if tokens.get(*at + 1) == Some(&Token::Sign('>')) => {
                let pattern = found.said.split_off(arm);
                found.unsaid.extend(pattern);
            }
            Token::Text(_) if aside(tokens, *at) => {}
            Token::Text(text) => {
                let template = *at > 0 && opened_by(tokens, *at - 1, &["say"], true);
                let into = if template || (speaks && !compared(tokens, *at)) {
                    &mut found.said
                } else {
                    &mut found.unsaid
                };
                into.push(text.clone());
            }
            Token::Word(_) | Token::Sign(_) => {}
        }
        *at += 1;
    }
}

/// Whether a text is a remark to those who work on the program: why a lint is allowed, why something cannot happen.
fn aside(tokens: &[Token], at: usize) -> bool {
    let before = |back: usize| at.checked_sub(back).and_then(|at| tokens.get(at));
    let reason = matches!(before(2), Some(Token::Word(w)) if w == "reason");
    let called = at > 0 && opened_by(tokens, at - 1, &["expect"], false);
    reason && before(1) == Some(&Token::Sign('=')) || called
}

fn inner(tokens: &[Token], at: &mut usize, speaks: bool, found: &mut Found) {
    *at += 1;
    group(tokens, at, speaks, found);
}

/// The entries of `texts!`: of three texts the middle one is a symbol, which is the same in any language.
fn entries(tokens: &[Token], at: &mut usize, found: &mut Found) {
    let mut all = Found::default();
    let mut entry = Found::default();
    *at += 1;
    while let Some(token) = tokens.get(*at) {
        match token {
            Token::Sign('}') => break,
            Token::Sign(';') => {
                let mut texts = std::mem::take(&mut entry.said);
                if texts.len() == 3 {
                    all.unsaid.push(texts.remove(1));
                }
                all.said.extend(texts);
            }
            Token::Text(text) => entry.said.push(text.clone()),
            Token::Word(_) | Token::Sign(_) => {}
        }
        *at += 1;
    }
    found.said.extend(all.said);
    found.unsaid.extend(all.unsaid);
}

/// Whether the bracket at a place opens the arguments of one of these functions, or macros.
fn opened_by(tokens: &[Token], at: usize, names: &[&str], of_macro: bool) -> bool {
    if !matches!(tokens.get(at), Some(Token::Sign('(' | '[' | '{'))) {
        return false;
    }
    let back = if of_macro { 2 } else { 1 };
    if of_macro && (at < 1 || tokens[at - 1] != Token::Sign('!')) {
        return false;
    }
    let name = at.checked_sub(back).and_then(|at| tokens.get(at));
    let function = at.checked_sub(back + 1).and_then(|at| tokens.get(at));
    let defined = function.is_some_and(|t| matches!(t, Token::Word(w) if w == "fn"));
    !defined && matches!(name, Some(Token::Word(w)) if names.contains(&w.as_str()))
}

/// Which list of texts a bracket opens.
fn list(tokens: &[Token], at: usize) -> Option<&'static str> {
    LISTS
        .into_iter()
        .find(|name| opened_by(tokens, at, &[name], true))
}

/// Whether a text stands beside `==` or `!=`.
fn compared(tokens: &[Token], at: usize) -> bool {
    let is_comparison = |pair: &[Token]| matches!(pair, [Token::Sign('=' | '!'), Token::Sign('=')]);
    let before = at.checked_sub(2).map(|from| &tokens[from..at]);
    let after = tokens.get(at + 1..at + 3);
    before.is_some_and(is_comparison) || after.is_some_and(is_comparison)
}

#[test]
fn what_is_handed_over_is_found() {
    let text = r#"
        fn tr(text: &str) -> &str { "no" }
        fn name(x: &str) -> &str { tr(match x { ("no", _) => "one", _ => { "two" } _ if x == "no" => "three" }) }
        fn told(d: u8) -> String { say!("{d} of it\u{A0}s \
            and more", d = tr("four")) + "no" }
        texts! { A: "five"; B: "six", "no", "seven"; }
        // tr("no")
        #[allow(dead_code, reason = "aside")]
        fn many() { x.expect("aside"); let c = '"'; plural(2, "eight", r"nine"); thinwright_words::say!("ten") }
        #[cfg(test)]
        mod tests { fn a() { tr("no"); } }
    "#;
    let found = found(text);
    let said = [
        "one",
        "two",
        "three",
        "{d} of it\u{A0}s and more",
        "four",
        "five",
        "six",
        "seven",
        "eight",
        "nine",
        "ten",
    ];
    assert_eq!(found.said, said);
    assert!(found.unsaid.iter().all(|t| t == "no"), "{:?}", found.unsaid);
    assert_eq!(found.unsaid.len(), 5);
}
