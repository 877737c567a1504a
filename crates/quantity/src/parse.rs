//! What machinists type, to SI: `1/4 in`, `0.25"`, `6,35 mm`, `18k rpm`.

use crate::kind::{Kind, UnitSystem, unit_size};
use crate::unit::{self, Dimension};
use core::fmt;
use core::ops::Range;

/// Why a text is no quantity, and where in the text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ParseError {
    /// The bytes of the text that are at fault.
    pub at: Range<usize>,
    /// What is wrong with them.
    pub kind: ParseErrorKind,
}

/// What is wrong with a text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum ParseErrorKind {
    /// Nothing there.
    Empty,
    /// No number.
    NotANumber,
    /// A unit that is not known.
    UnknownUnit,
    /// A unit of something else.
    WrongUnit(Kind),
    /// `mil`: a thousandth of an inch to some, a millimetre to others.
    AmbiguousMil,
    /// A comma before exactly three digits: thousands to some, decimals to others.
    AmbiguousComma,
    /// A fraction over nothing.
    DivisionByZero,
    /// Larger than anything that makes sense.
    TooLarge,
    /// A count that is not whole.
    NotWhole,
    /// Below nothing where there is nothing below nothing.
    Negative,
}

impl fmt::Display for ParseError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.kind {
            ParseErrorKind::Empty => f.write_str("nothing is typed"),
            ParseErrorKind::NotANumber => {
                f.write_str("this is not a number; type one such as 6.35 or 1/4")
            }
            ParseErrorKind::UnknownUnit => f.write_str("this unit is not known"),
            ParseErrorKind::WrongUnit(kind) => {
                let unit = crate::unit_name(kind, UnitSystem::Metric);
                write!(
                    f,
                    "this unit measures something else; use {unit} or leave the unit out"
                )
            }
            ParseErrorKind::AmbiguousMil => {
                f.write_str("mil can mean a millimetre or 0.001 in; type mm or thou")
            }
            ParseErrorKind::AmbiguousComma => {
                f.write_str("is the comma for thousands or for decimals? type 1250 or 1.25")
            }
            ParseErrorKind::DivisionByZero => f.write_str("a fraction over 0 is no number"),
            ParseErrorKind::TooLarge => f.write_str("this is too large to be meant"),
            ParseErrorKind::NotWhole => f.write_str("this must be a whole number"),
            ParseErrorKind::Negative => f.write_str("this cannot be below 0"),
        }
    }
}

impl core::error::Error for ParseError {}

/// Greatest value in SI that is taken at all.
const MOST: f64 = 1.0e9;
/// The same for stress and stiffness, which are large numbers in SI.
const MOST_STIFF: f64 = 1.0e15;

/// Reads a quantity; a bare number is in the unit that `assumed` shows the kind in.
///
/// Units: the result is SI; counts and ratios are plain.
///
/// # Errors
/// What is wrong with the text, and where.
pub fn parse(kind: Kind, text: &str, assumed: UnitSystem) -> Result<f64, ParseError> {
    let start = text.len() - text.trim_start().len();
    let body = text.trim();
    let fail = |at: Range<usize>, kind| {
        Err(ParseError {
            at: start + at.start..start + at.end,
            kind,
        })
    };
    if body.is_empty() {
        return fail(0..0, ParseErrorKind::Empty);
    }
    let split = split_unit(body);
    let (number, name) = (body[..split].trim_end(), body[split..].trim());
    let (value, thousand) = match read_number(number) {
        Ok(value) => (value, 1.0),
        Err(kind) => {
            return fail(
                0..if number.is_empty() {
                    body.len()
                } else {
                    number.len()
                },
                kind,
            );
        }
    };
    let folded = fold(name);
    let unit_at = split..body.len();
    let (thousand, folded) = match folded
        .strip_prefix('k')
        .filter(|_| unit::by_name(&folded).is_none())
    {
        Some(rest) => (thousand * 1.0e3, rest.to_owned()),
        None => (thousand, folded),
    };
    let size = if folded.is_empty() {
        unit_size(kind, assumed)
    } else if folded == "mil" || folded == "mils" {
        return fail(unit_at, ParseErrorKind::AmbiguousMil);
    } else {
        match unit::by_name(&folded) {
            None => return fail(unit_at, ParseErrorKind::UnknownUnit),
            Some((dimension, size)) if fits(kind, dimension) => size,
            Some(_) => return fail(unit_at, ParseErrorKind::WrongUnit(kind)),
        }
    };
    let si = value * thousand * size;
    let most = if matches!(kind, Kind::Stress | Kind::Stiffness) {
        MOST_STIFF
    } else {
        MOST
    };
    if !si.is_finite() || si.abs() > most {
        return fail(0..body.len(), ParseErrorKind::TooLarge);
    }
    if kind == Kind::Count {
        if si < 0.0 {
            return fail(0..number.len(), ParseErrorKind::Negative);
        }
        if si.fract() != 0.0 {
            return fail(0..number.len(), ParseErrorKind::NotWhole);
        }
    }
    Ok(si)
}

fn fits(kind: Kind, dimension: Dimension) -> bool {
    unit::dimension(kind) == Some(dimension)
        // Turns a second are hertz to many.
        || (kind == Kind::SpindleSpeed && dimension == Dimension::Frequency)
}

/// Where the unit begins: after the last digit, point or fraction sign of the number.
fn split_unit(body: &str) -> usize {
    for unit in ["1/min", "1/s"] {
        let blank = |rest: &&str| rest.ends_with(is_blank);
        if let Some(number) = body.strip_suffix(unit).filter(blank) {
            return number.len();
        }
    }
    let part = |c: char| {
        c.is_ascii_digit()
            || matches!(c, '.' | ',' | '+' | '-' | '−' | '½' | '¼' | '¾')
            || is_blank(c)
    };
    let mut end = 0;
    let mut chars = body.char_indices().peekable();
    while let Some((at, c)) = chars.next() {
        let next = chars.peek().map(|n| n.1);
        // A slash belongs to the number only between digits (1/4), not in N/mm.
        let slash = c == '/' && end > 0 && next.is_some_and(|n| n.is_ascii_digit());
        if !part(c) && !slash {
            break;
        }
        if !is_blank(c) {
            end = at + c.len_utf8();
        }
    }
    end
}

fn is_blank(c: char) -> bool {
    c.is_whitespace() || matches!(c, '\u{202F}' | '\u{2009}' | '\u{A0}' | '\'')
}

/// A unit's name without blanks, in lower case, with one spelling of micro and of the dot.
fn fold(name: &str) -> String {
    name.chars()
        .filter(|c| !is_blank(*c) && !matches!(c, '·' | '*' | '⋅'))
        .flat_map(char::to_lowercase)
        .map(|c| match c {
            'µ' | 'μ' => 'u',
            '”' | '″' => '"',
            c => c,
        })
        .collect()
}

fn read_number(text: &str) -> Result<f64, ParseErrorKind> {
    let text: String = text
        .chars()
        .map(|c| if c == '−' { '-' } else { c })
        .collect();
    let (negative, text) = match text.strip_prefix('-') {
        Some(rest) => (true, rest.trim_start().to_owned()),
        None => (false, text.strip_prefix('+').unwrap_or(&text).to_owned()),
    };
    let value = unsigned(&text)?;
    Ok(if negative { -value } else { value })
}

fn unsigned(text: &str) -> Result<f64, ParseErrorKind> {
    for (sign, value) in [('½', 0.5), ('¼', 0.25), ('¾', 0.75)] {
        if let Some(whole) = text.strip_suffix(sign) {
            let whole = whole.trim();
            return Ok(value
                + if whole.is_empty() {
                    0.0
                } else {
                    decimal(whole)?
                });
        }
    }
    let Some((left, right)) = text.split_once('/') else {
        return decimal(text);
    };
    // 1 1/4: the last blank before the slash parts whole and fraction.
    let left = left.trim_end();
    let (whole, top) = match left.rsplit_once(is_blank) {
        Some((whole, top)) => (decimal(whole.trim())?, decimal(top)?),
        None => (0.0, decimal(left)?),
    };
    let bottom = decimal(right.trim())?;
    if bottom == 0.0 {
        return Err(ParseErrorKind::DivisionByZero);
    }
    Ok(whole + top / bottom)
}

/// A number with a point or a comma for decimals, and blanks between groups of three digits.
fn decimal(text: &str) -> Result<f64, ParseErrorKind> {
    let points = text.matches('.').count();
    let commas = text.matches(',').count();
    if points + commas > 1 {
        let separators_only = points > 1 && commas > 1;
        return Err(if separators_only {
            ParseErrorKind::NotANumber
        } else {
            ParseErrorKind::AmbiguousComma
        });
    }
    if let Some((whole, rest)) = text.split_once(',') {
        let digits = whole.chars().filter(char::is_ascii_digit).count();
        let nonzero = whole.chars().any(|c| matches!(c, '1'..='9'));
        if rest.len() == 3 && nonzero && (1..=3).contains(&digits) {
            return Err(ParseErrorKind::AmbiguousComma);
        }
    }
    let (whole, rest) = text.split_once(['.', ',']).unwrap_or((text, ""));
    let whole = ungrouped(whole)?;
    let digits_only = whole
        .chars()
        .chain(rest.chars())
        .all(|c| c.is_ascii_digit());
    if !digits_only || whole.len() + rest.len() == 0 {
        return Err(ParseErrorKind::NotANumber);
    }
    std::format!("0{whole}.{rest}0")
        .parse()
        .map_err(|_| ParseErrorKind::NotANumber)
}

/// Takes blanks out where they part groups of three digits, and nowhere else.
fn ungrouped(text: &str) -> Result<String, ParseErrorKind> {
    let mut groups = text.split(is_blank);
    let first = groups.next().unwrap_or("");
    let mut whole = first.to_owned();
    for group in groups {
        if group.len() != 3 || first.is_empty() || first.len() > 3 {
            return Err(ParseErrorKind::NotANumber);
        }
        whole.push_str(group);
    }
    Ok(whole)
}

#[cfg(test)]
mod tests;
