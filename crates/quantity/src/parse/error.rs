//! Why a text is no quantity, and where in the text.

use crate::kind::{Kind, UnitSystem, unit_name};
use core::fmt;
use core::ops::Range;

/// Why a text is no quantity, and where in the text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ParseError {
    /// The bytes of the text that are at fault; always on character boundaries.
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
    /// A unit of something else than the kind that was asked for.
    WrongUnit(Kind),
    /// `mil`: a thousandth of an inch to some, a millimetre to others.
    AmbiguousMil,
    /// A comma before exactly three digits, or several separators: thousands to some, decimals to others.
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
        f.write_str(match self.kind {
            ParseErrorKind::Empty => "nothing is typed; type a number such as 6.35",
            ParseErrorKind::NotANumber => "this is not a number; type one such as 6.35 or 1/4",
            ParseErrorKind::UnknownUnit => "this unit is not known; leave it out or use another",
            ParseErrorKind::WrongUnit(kind) => return wrong_unit(kind, f),
            ParseErrorKind::AmbiguousMil => {
                "mil can mean a millimetre or 0.001 in; type mm or thou"
            }
            ParseErrorKind::AmbiguousComma => {
                "is the comma for thousands or for decimals? type 1250 or 1.25"
            }
            ParseErrorKind::DivisionByZero => {
                "a fraction over 0 is no number; type one such as 1/4"
            }
            ParseErrorKind::TooLarge => "this is too large to be meant; type a smaller number",
            ParseErrorKind::NotWhole => "this must be a whole number; type one such as 3",
            ParseErrorKind::Negative => "this cannot be below 0; type a number from 0 up",
        })
    }
}

/// A unit of something else: what to type for `kind`.
fn wrong_unit(kind: Kind, f: &mut fmt::Formatter<'_>) -> fmt::Result {
    let (metric, inch) = (
        unit_name(kind, UnitSystem::Metric),
        unit_name(kind, UnitSystem::Inch),
    );
    f.write_str("this unit measures something else; ")?;
    match (kind, metric == inch) {
        (Kind::Count, _) => f.write_str("type the number alone"),
        (Kind::Ratio, _) => f.write_str("use % or type the number alone"),
        (_, true) => write!(f, "use {metric} or leave the unit out"),
        (_, false) => write!(f, "use {metric} or {inch} or leave the unit out"),
    }
}

impl core::error::Error for ParseError {}
