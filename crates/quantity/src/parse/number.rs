//! The number at the start of a text: sign, groups of digits, decimals, fractions.

use super::error::ParseErrorKind;
use core::ops::Range;

/// A number and the bytes that it takes.
#[derive(Debug)]
pub(super) struct Number {
    pub(super) value: f64,
    pub(super) at: Range<usize>,
}

/// What is wrong, and where.
type Fault = (Range<usize>, ParseErrorKind);

/// What a phone's keyboard offers for common fractions.
const FRACTION_SIGNS: [(char, f64); 9] = [
    ('½', 1.0 / 2.0),
    ('⅓', 1.0 / 3.0),
    ('⅔', 2.0 / 3.0),
    ('¼', 1.0 / 4.0),
    ('¾', 3.0 / 4.0),
    ('⅛', 1.0 / 8.0),
    ('⅜', 3.0 / 8.0),
    ('⅝', 5.0 / 8.0),
    ('⅞', 7.0 / 8.0),
];

/// Digits in a group of thousands.
const GROUP: usize = 3;

/// Reads the number that `text` starts with; what follows it is left to the caller.
pub(super) fn read(text: &str) -> Result<Number, Fault> {
    let mut scan = Scan { text, at: 0 };
    scan.blanks();
    let start = scan.at;
    let negative = scan.take(|c| matches!(c, '-' | '−'));
    if !negative {
        scan.take(|c| c == '+');
    }
    scan.blanks();
    let value = match scan.mixed(start)? {
        Some(value) => value,
        None => scan.plain_or_fraction(start)?,
    };
    Ok(Number {
        value: if negative { -value } else { value },
        at: start..scan.at,
    })
}

/// Whether a character is a blank; the thin and no-break ones part groups of digits.
pub(super) fn is_blank(c: char) -> bool {
    c.is_whitespace()
}

fn is_slash(c: char) -> bool {
    matches!(c, '/' | '\u{2044}' | '\u{2215}')
}

/// A place in a text; copied to look ahead.
#[derive(Clone, Copy)]
struct Scan<'a> {
    text: &'a str,
    at: usize,
}

impl<'a> Scan<'a> {
    fn rest(&self) -> &'a str {
        self.text.get(self.at..).unwrap_or("")
    }

    fn peek(&self) -> Option<char> {
        self.rest().chars().next()
    }

    fn take(&mut self, wanted: impl Fn(char) -> bool) -> bool {
        let Some(c) = self.peek().filter(|c| wanted(*c)) else {
            return false;
        };
        self.at += c.len_utf8();
        true
    }

    fn blanks(&mut self) {
        while self.take(is_blank) {}
    }

    fn digits(&mut self) -> &'a str {
        let start = self.at;
        while self.take(|c| c.is_ascii_digit()) {}
        self.text.get(start..self.at).unwrap_or("")
    }

    fn fraction_sign(&mut self) -> Option<f64> {
        let c = self.peek()?;
        let value = FRACTION_SIGNS.iter().find(|sign| sign.0 == c)?.1;
        self.at += c.len_utf8();
        Some(value)
    }

    /// `1 1/4`, `1-1/4`, `1½`, `¾`: a whole number and a proper fraction, or the sign of a fraction alone.
    fn mixed(&mut self, start: usize) -> Result<Option<f64>, Fault> {
        let mut scan = *self;
        let whole = scan.digits();
        let glued = scan.at;
        scan.blanks();
        if let Some(part) = scan.fraction_sign() {
            *self = scan;
            return Ok(Some(number(whole, "") + part));
        }
        let parted = scan.at > glued || scan.take(|c| c == '-');
        let top = scan.digits();
        if whole.is_empty() || !parted || top.is_empty() {
            return Ok(None);
        }
        let Some(bottom) = scan.denominator(start)? else {
            return Ok(None);
        };
        let part = number(top, "") / bottom;
        // Why: 18 000/2 could be 9000 or nonsense, and 1 5/4 is a slip: neither is guessed at.
        if top.len() >= GROUP || part <= 0.0 || part >= 1.0 {
            return Err((start..scan.at, ParseErrorKind::NotANumber));
        }
        *self = scan;
        Ok(Some(number(whole, "") + part))
    }

    /// `6`, `6,35`, `18 000`, `1/4`, `25.4/2`.
    fn plain_or_fraction(&mut self, start: usize) -> Result<f64, Fault> {
        let first = self.at;
        let value = self.decimal(start)?;
        let grouped = self.text[first..self.at].contains(is_separator);
        let Some(bottom) = self.denominator(start)? else {
            return Ok(value);
        };
        if grouped {
            return Err((start..self.at, ParseErrorKind::NotANumber));
        }
        Ok(value / bottom)
    }

    /// The number under a slash, if a slash and a digit follow.
    fn denominator(&mut self, start: usize) -> Result<Option<f64>, Fault> {
        let mut scan = *self;
        scan.blanks();
        if !scan.take(is_slash) {
            return Ok(None);
        }
        scan.blanks();
        if !scan.peek().is_some_and(|c| c.is_ascii_digit()) {
            return Ok(None);
        }
        let first = scan.at;
        let bottom = scan.decimal(start)?;
        let grouped = scan.text[first..scan.at].contains(is_separator);
        let fault = match bottom > 0.0 {
            true if !grouped => {
                *self = scan;
                return Ok(Some(bottom));
            }
            true => ParseErrorKind::NotANumber,
            false => ParseErrorKind::DivisionByZero,
        };
        Err((start..scan.at, fault))
    }

    /// Digits with a point or a comma for decimals, and blanks between groups of three.
    fn decimal(&mut self, start: usize) -> Result<f64, Fault> {
        let whole = self.whole();
        let (mut separators, mut comma, mut groups_of_three) = (0, false, true);
        let mut decimals = "";
        while self.take(|c| matches!(c, '.' | ',')) {
            comma |= self.text[..self.at].ends_with(',');
            separators += 1;
            decimals = self.digits();
            groups_of_three &= decimals.len() == GROUP;
        }
        let thousands = matches!(whole.len(), 1..=GROUP) && number(&whole, "") > 0.0;
        let fault = match separators {
            0 | 1 if whole.is_empty() && decimals.is_empty() => ParseErrorKind::NotANumber,
            1 if comma && thousands && groups_of_three => ParseErrorKind::AmbiguousComma,
            0 | 1 => return Ok(number(&whole, decimals)),
            2.. if whole.is_empty() || decimals.is_empty() => ParseErrorKind::NotANumber,
            // 1.250.000, and also 1,250.5 whose last separator could be either.
            _ => ParseErrorKind::AmbiguousComma,
        };
        let end = match fault {
            ParseErrorKind::NotANumber => self.text.len(),
            _ => self.at,
        };
        Err((start..end, fault))
    }

    /// Whole digits, their groups joined: a separator counts only between groups of exactly three.
    fn whole(&mut self) -> String {
        let first = self.digits();
        let mut whole = first.to_owned();
        if first.is_empty() || first.len() > GROUP || first.starts_with('0') {
            return whole;
        }
        loop {
            let mut scan = *self;
            if !scan.take(is_separator) {
                return whole;
            }
            let group = scan.digits();
            if group.len() != GROUP {
                return whole;
            }
            whole.push_str(group);
            *self = scan;
        }
    }
}

/// What may stand between groups of three digits.
fn is_separator(c: char) -> bool {
    is_blank(c) || matches!(c, '\'' | '’')
}

/// The value of decimal digits; more than f64 can hold becomes infinite.
fn number(whole: &str, decimals: &str) -> f64 {
    std::format!("0{whole}.{decimals}0")
        .parse()
        .unwrap_or(f64::INFINITY)
}
