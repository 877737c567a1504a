//! Writing answers as a person would: bare numbers in the system of the sheet, now and then a unit.

use thinwright_core::{Answers, Field, FieldId, Known};
use thinwright_quantity::UnitSystem;

/// Answers being written. Lengths are counted in hundredths of a millimetre, so that no rounding differs anywhere.
pub(super) struct Sheet {
    pub(super) answers: Answers,
    /// Where the next answer's number is from.
    known: Known,
}

impl Sheet {
    pub(super) fn new(inch: bool) -> Sheet {
        let units = if inch {
            UnitSystem::Inch
        } else {
            UnitSystem::Metric
        };
        Sheet {
            answers: Answers::new(units),
            known: Known::Estimated,
        }
    }

    pub(super) fn inch(&self) -> bool {
        self.answers.units == UnitSystem::Inch
    }

    /// From now on answers are known like this.
    pub(super) fn known(&mut self, known: Known) {
        self.known = known;
    }

    pub(super) fn text(&mut self, id: impl Into<FieldId>, text: impl Into<String>) {
        self.answers.set(id, text, self.known);
    }

    /// A length in hundredths of a millimetre.
    pub(super) fn length(&mut self, id: impl Into<FieldId>, hundredths: i64) {
        // 2540 to the inch; written to the ten-thousandth.
        let text = if self.inch() {
            decimal(hundredths * 10_000 / 2540, 4)
        } else {
            decimal(hundredths, 2)
        };
        self.text(id, text);
    }

    /// A length with its unit, whatever the sheet's system.
    pub(super) fn in_mm(&mut self, id: impl Into<FieldId>, hundredths: i64) {
        self.text(id, format!("{} mm", decimal(hundredths, 2)));
    }

    /// A length, if there is one.
    pub(super) fn length_if(&mut self, field: Field, hundredths: i64) {
        if hundredths > 0 {
            self.length(field, hundredths);
        }
    }
}

/// A whole number as a decimal with so many places, without zeros at its end.
pub(super) fn decimal(value: i64, places: usize) -> String {
    let digits = format!("{value:0width$}", width = places + 1);
    let (whole, rest) = digits.split_at(digits.len() - places);
    let rest = rest.trim_end_matches('0');
    if rest.is_empty() {
        whole.to_owned()
    } else {
        format!("{whole}.{rest}")
    }
}
