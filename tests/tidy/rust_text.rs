//! Rust text without what only looks like code: comments, strings, characters.

/// The code alone: everything else becomes spaces, line by line as before.
pub(crate) fn code(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut rest = text;
    while let Some(first) = rest.chars().next() {
        let length = not_code(rest, out.chars().next_back());
        let (taken, after) = rest.split_at(if length == 0 {
            first.len_utf8()
        } else {
            length
        });
        if length == 0 {
            out.push_str(taken);
        } else {
            out.extend(taken.chars().map(|c| if c == '\n' { '\n' } else { ' ' }));
        }
        rest = after;
    }
    out
}

/// How many bytes at the start of the text are a comment, a string or a character.
fn not_code(text: &str, before: Option<char>) -> usize {
    let in_word = before.is_some_and(|c| c.is_alphanumeric() || c == '_');
    if text.starts_with("//") {
        text.find('\n').unwrap_or(text.len())
    } else if text.starts_with("/*") {
        block_comment(text)
    } else if text.starts_with('"') {
        quoted(text, '"')
    } else if text.starts_with('r') && !in_word {
        raw_string(text)
    } else if text.starts_with('\'') {
        character(text)
    } else {
        0
    }
}

fn block_comment(text: &str) -> usize {
    let mut depth = 0_usize;
    let mut at = 0;
    while let Some(rest) = text.get(at..).filter(|rest| !rest.is_empty()) {
        if rest.starts_with("/*") {
            depth += 1;
            at += 2;
        } else if rest.starts_with("*/") {
            depth -= 1;
            at += 2;
            if depth == 0 {
                return at;
            }
        } else {
            at += rest.chars().next().map_or(1, char::len_utf8);
        }
    }
    text.len()
}

fn quoted(text: &str, quote: char) -> usize {
    let mut escaped = false;
    for (at, c) in text.char_indices().skip(1) {
        match c {
            _ if escaped => escaped = false,
            '\\' => escaped = true,
            _ if c == quote => return at + 1,
            _ => {}
        }
    }
    text.len()
}

fn raw_string(text: &str) -> usize {
    let hashes = text[1..].chars().take_while(|&c| c == '#').count();
    if !text[1 + hashes..].starts_with('"') {
        return 0;
    }
    let end = format!("\"{}", "#".repeat(hashes));
    let start = hashes + 2;
    text[start..]
        .find(&end)
        .map_or(text.len(), |at| start + at + end.len())
}

/// A character, not the start of a lifetime.
fn character(text: &str) -> usize {
    let mut inside = text[1..].chars();
    match (inside.next(), inside.next()) {
        (Some('\\'), _) => quoted(text, '\''),
        (Some(c), Some('\'')) => 2 + c.len_utf8(),
        _ => 0,
    }
}

/// The code without its inline test module.
pub(crate) fn without_tests(code: &str) -> &str {
    let mut from = 0;
    while let Some(at) = code[from..].find("#[cfg(test)]").map(|at| from + at) {
        let after = &code[at..];
        let item = after
            .split_once(']')
            .map_or("", |(_, item)| item)
            .trim_start();
        let head = item.split(['{', ';']).next().unwrap_or(item);
        if item.starts_with("mod ") && item[head.len()..].starts_with('{') {
            return &code[..at];
        }
        from = at + 1;
    }
    code
}

/// Whether a path names tests only.
pub(crate) fn is_test(path: &str) -> bool {
    path.contains("/tests/")
        || path.ends_with("/tests.rs")
        || path.starts_with("tests/")
        || path.contains("/examples/")
}

/// Whether the code has this text with no word going on at either end.
pub(crate) fn mentions(code: &str, what: &str) -> bool {
    let word = |c: char| c.is_alphanumeric() || c == '_';
    code.match_indices(what).any(|(at, _)| {
        let open = what.starts_with(word) && code[..at].ends_with(word);
        let goes_on = what.ends_with(word) && code[at + what.len()..].starts_with(word);
        !open && !goes_on
    })
}

#[test]
fn only_code_is_left() {
    let text = "let a = \"std::fs \\\" x\"; // std::time\n/* a /* b */ c */ fn f<'a>(c: char) { c == '\"' || c == '\\'' }\nr#\"println!(\"x\")\"#";
    let code = code(text);
    assert_eq!(code.lines().count(), text.lines().count());
    assert_eq!(
        code.split_whitespace().collect::<Vec<_>>().join(" "),
        "let a = ; fn f<'a>(c: char) { c == || c == }"
    );
}

#[test]
fn tests_are_left_out() {
    assert_eq!(
        without_tests("fn a() {}\n#[cfg(test)]\nmod tests { x }"),
        "fn a() {}\n"
    );
    let elsewhere = "#[cfg(test)]\nmod tests;\nfn a() {}";
    assert_eq!(without_tests(elsewhere), elsewhere);
}

#[test]
fn words_are_whole() {
    assert!(mentions("use gloo::x;", "gloo"));
    assert!(!mentions("use igloo::x;", "gloo"));
    assert!(!mentions("gloomy", "gloo"));
    assert!(mentions("eprintln!(1); println!(2)", "println!"));
}
