//! What machinists type, to SI: `1/4 in`, `0.25"`, `6,35 mm`, `18k rpm`.

mod error;
mod number;
#[cfg(test)]
mod tests;

pub use error::{ParseError, ParseErrorKind};

use crate::kind::{Kind, UnitSystem, unit_size};
use crate::unit::{self, Dimension};
use number::is_blank;

/// Greatest value in SI that is taken at all.
const MOST: f64 = 1.0e9;
/// The same for stress and stiffness, which are large numbers in SI.
const MOST_STIFF: f64 = 1.0e15;

/// Reads a quantity; a bare number is in the unit that `assumed` shows the kind in.
///
/// A comma or a point parts decimals; a blank, a thin blank or an apostrophe parts groups of three digits; `k` after
/// the number is a thousand. What two people could read differently (`1,250`, `mil`) is refused, never guessed.
///
/// Units: the result is SI; counts and ratios are plain.
/// Valid for: sizes up to 1e9 in SI, stress and stiffness up to 1e15.
///
/// # Errors
/// What is wrong with the text, and where.
///
/// # Example
/// ```
/// use thinwright_quantity::{Kind, UnitSystem, parse};
/// let quarter = parse(Kind::Length, "1/4 in", UnitSystem::Metric);
/// assert!((quarter.unwrap() - 0.00635).abs() < 1e-15); // 6.35 mm
/// ```
pub fn parse(kind: Kind, text: &str, assumed: UnitSystem) -> Result<f64, ParseError> {
    let fail = |at, kind| Err(ParseError { at, kind });
    let end = text.trim_end().len();
    let body = &text[..end];
    if body.is_empty() {
        return fail(end..end, ParseErrorKind::Empty);
    }
    let number = match number::read(body) {
        Ok(number) => number,
        Err((at, kind)) => return fail(at, kind),
    };
    let rest = &body[number.at.end..];
    let name = rest.trim_start();
    let name_at = end - name.len()..end;
    let size = match size(kind, name, assumed) {
        Ok(size) => size,
        Err(kind) => return fail(name_at, kind),
    };
    let whole_at = number.at.start..end;
    // Adding 0 takes the sign off a zero.
    let si = number.value * size + 0.0;
    let most = match kind {
        Kind::Stress | Kind::Stiffness => MOST_STIFF,
        _ => MOST,
    };
    if !si.is_finite() || si.abs() > most {
        return fail(whole_at, ParseErrorKind::TooLarge);
    }
    if kind == Kind::Count && si < 0.0 {
        return fail(whole_at, ParseErrorKind::Negative);
    }
    if kind == Kind::Count && si.fract() != 0.0 {
        return fail(whole_at, ParseErrorKind::NotWhole);
    }
    Ok(si)
}

/// SI units in what stands behind the number: nothing, `k`, a unit, or `k` and a unit.
fn size(kind: Kind, name: &str, assumed: UnitSystem) -> Result<f64, ParseErrorKind> {
    let folded = fold(name);
    let thousands = folded
        .strip_prefix('k')
        .filter(|_| unit::by_name(&folded).is_none());
    let (thousand, folded) = match thousands {
        Some(rest) => (1.0e3, rest.trim_start()),
        None => (1.0, folded.as_str()),
    };
    let typed = unit::by_name(folded);
    match typed {
        _ if folded.is_empty() => Ok(thousand * unit_size(kind, assumed)),
        Some((dimension, size)) if fits(kind, dimension) => Ok(thousand * size),
        Some(_) => Err(ParseErrorKind::WrongUnit(kind)),
        None if matches!(folded, "mil" | "mils") => Err(ParseErrorKind::AmbiguousMil),
        None if folded.starts_with(continues_number) => Err(ParseErrorKind::NotANumber),
        None => Err(ParseErrorKind::UnknownUnit),
    }
}

fn fits(kind: Kind, dimension: Dimension) -> bool {
    unit::dimension(kind) == Some(dimension)
        // Turns a second are hertz to many.
        || (kind == Kind::SpindleSpeed && dimension == Dimension::Frequency)
}

/// What cannot start a unit: the number went wrong there.
fn continues_number(c: char) -> bool {
    c.is_numeric() || matches!(c, '.' | ',' | '+' | '-' | '/')
}

/// A unit's name in lower case with one spelling of micro, minus, quotes and powers; blanks stay only between letters.
fn fold(name: &str) -> String {
    let mut out = String::new();
    let mut blank = false;
    for c in name.chars().flat_map(char::to_lowercase) {
        let c = match c {
            'µ' | 'μ' => 'u',
            '”' | '“' | '″' => '"',
            '’' | '′' => '\'',
            '²' => '2',
            '¹' => '1',
            '⁻' => '-',
            'º' => '°',
            '−' => '-',
            '·' | '*' | '⋅' => ' ',
            '^' => continue,
            c => c,
        };
        if is_blank(c) {
            blank = true;
            continue;
        }
        if blank && c.is_alphabetic() && out.ends_with(char::is_alphabetic) {
            out.push(' ');
        }
        blank = false;
        out.push(c);
    }
    // in. and min. are abbreviations.
    if out.len() > 1 && out.ends_with('.') {
        out.pop();
    }
    out
}
