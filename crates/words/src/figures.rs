//! Numbers as people read them: with the decimal mark of the language that is spoken.
//!
//! Groups of three digits are parted by a thin no-break space in every language (ISO 80000-1).

use crate::language::{Language, language, tr};
use thinwright_quantity::{Kind, Rounding, UnitSystem, format, format_bare, unit_name};

/// A number and its unit as people read them; `-` for what is no number.
///
/// Units: `si` in SI; counts and ratios plain.
pub fn written(kind: Kind, si: f64, units: UnitSystem, rounding: Rounding) -> String {
    let text = format(kind, si, units, rounding);
    if language() == Language::English {
        return text;
    }
    match text.split_once('\u{A0}') {
        None => marked(&text),
        Some((number, _)) if kind == Kind::SpindleSpeed => {
            std::format!("{}\u{A0}{}", marked(number), unit(kind, units))
        }
        // No unit has a point.
        Some(_) => marked(&text),
    }
}

/// The number alone, as people read it: in the unit of [`unit()`].
pub fn bare(kind: Kind, si: f64, units: UnitSystem, rounding: Rounding) -> String {
    marked(&format_bare(kind, si, units, rounding))
}

/// A number that is written with a point, with the mark of the language.
pub fn marked(number: &str) -> String {
    match language().decimal_mark() {
        '.' => number.to_owned(),
        mark => number.replace('.', mark.encode_utf8(&mut [0; 4])),
    }
}

/// The unit in which a kind is shown: standards have one sign for each but turns in a minute.
pub fn unit(kind: Kind, units: UnitSystem) -> &'static str {
    match unit_name(kind, units) {
        "rpm" => tr("rpm"),
        other => other,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::language::{Dictionary, speak};

    #[test]
    fn each_language_has_its_mark() {
        let length = |si| written(Kind::Length, si, UnitSystem::Metric, Rounding::Nearest);
        let speed = |n| written(Kind::SpindleSpeed, n, UnitSystem::Metric, Rounding::Nearest);
        let ratio = |x| bare(Kind::Ratio, x, UnitSystem::Metric, Rounding::Nearest);
        assert_eq!(
            (length(0.012_345), speed(300.0), ratio(0.5)),
            (
                "12.345\u{A0}mm".to_owned(),
                "18\u{202F}000\u{A0}rpm".to_owned(),
                "0.5".to_owned()
            )
        );
        let german = [("rpm".to_owned(), "1/min".to_owned())];
        speak(Language::German, Dictionary::new(german));
        assert_eq!(
            (length(0.012_345), speed(300.0), ratio(0.5)),
            (
                "12,345\u{A0}mm".to_owned(),
                "18\u{202F}000\u{A0}1/min".to_owned(),
                "0,5".to_owned()
            )
        );
        assert_eq!(length(12.345), "12\u{202F}345\u{A0}mm");
        speak(Language::English, Dictionary::default());
    }
}
