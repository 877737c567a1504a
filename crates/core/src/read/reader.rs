//! One pass over the answers that gathers problems and defaults.

use crate::answers::Answers;
use crate::estimate::{Estimate, Known};
use crate::field::{Field, FieldId, Input};
use crate::problem::{Problem, ProblemKind};
use crate::strategy::Defaulted;
use thinwright_catalog::Catalog;
use thinwright_quantity::{Kind, Rounding, format, parse};

/// Reads fields one by one and keeps what went wrong.
pub(crate) struct Reader<'a> {
    pub(super) answers: &'a Answers,
    pub(super) catalog: &'a Catalog,
    problems: Vec<Problem>,
    defaults: Vec<Defaulted>,
}

impl<'a> Reader<'a> {
    pub(super) fn new(answers: &'a Answers, catalog: &'a Catalog) -> Reader<'a> {
        Reader {
            answers,
            catalog,
            problems: Vec::new(),
            defaults: Vec::new(),
        }
    }

    /// The problems so far, in the order of the questionnaire.
    pub(super) fn problems(&self) -> Vec<Problem> {
        let mut problems = self.problems.clone();
        problems.sort_by_key(|p| (p.field.field.spec().group, p.field.row, p.field.field));
        problems
    }

    /// The answers that were left to a table.
    pub(super) fn defaults(&self) -> Vec<Defaulted> {
        self.defaults.clone()
    }

    /// Notes a problem.
    pub(crate) fn problem(&mut self, field: impl Into<FieldId>, kind: ProblemKind) {
        self.problems.push(Problem {
            field: field.into(),
            kind,
        });
    }

    fn kind(field: FieldId) -> Kind {
        match field.field.spec().input {
            Input::Quantity(kind) => kind,
            Input::Text | Input::Choice(_) | Input::Row(_) => Kind::Ratio,
        }
    }

    /// A quantity in SI, `None` if the field is empty; a text that is none is a problem, as is a value out of bounds.
    pub(crate) fn typed(&mut self, field: impl Into<FieldId>, bounds: (f64, f64)) -> Option<f64> {
        let field = field.into();
        let text = self.answers.text(field);
        if text.trim().is_empty() {
            return None;
        }
        match parse(Reader::kind(field), text, self.answers.units) {
            Err(error) => self.problem(field, ProblemKind::Text(error)),
            // Bounds hold to a millionth, so that a limit typed in inches is not missed by rounding.
            Ok(value) if value < bounds.0 - bounds.0.abs() * 1.0e-6 => {
                self.problem(
                    field,
                    ProblemKind::TooSmall {
                        value,
                        least: bounds.0,
                    },
                );
            }
            Ok(value) if value > bounds.1 * (1.0 + 1.0e-6) => {
                self.problem(
                    field,
                    ProblemKind::TooLarge {
                        value,
                        greatest: bounds.1,
                    },
                );
            }
            Ok(value) => return Some(value),
        }
        None
    }

    /// Whether a field was left empty.
    pub(super) fn empty(&self, field: impl Into<FieldId>) -> bool {
        self.answers.text(field.into()).trim().is_empty()
    }

    /// A quantity that must be given.
    pub(super) fn needed(&mut self, field: impl Into<FieldId>, bounds: (f64, f64)) -> Option<f64> {
        let field = field.into();
        if self.empty(field) {
            self.problem(field, ProblemKind::Missing);
            return None;
        }
        self.typed(field, bounds)
    }

    /// A quantity with a default, which is noted when it is used.
    pub(super) fn or(
        &mut self,
        field: impl Into<FieldId>,
        bounds: (f64, f64),
        default: f64,
    ) -> Option<f64> {
        let field = field.into();
        if self.empty(field) {
            let value = format(
                Reader::kind(field),
                default,
                self.answers.units,
                Rounding::Nearest,
            );
            self.defaults.push(Defaulted { field, value });
            return Some(default);
        }
        self.typed(field, bounds)
    }

    /// A quantity with a default that goes without saying (0 or none).
    pub(super) fn or_silent(
        &mut self,
        field: impl Into<FieldId>,
        bounds: (f64, f64),
        default: f64,
    ) -> Option<f64> {
        let field = field.into();
        if self.empty(field) {
            Some(default)
        } else {
            self.typed(field, bounds)
        }
    }

    /// A typed estimate: as it stands if measured or from a data sheet, with a spread if estimated.
    pub(super) fn estimate(
        &mut self,
        field: Field,
        bounds: (f64, f64),
        spread: f64,
    ) -> Option<Estimate> {
        let value = self.typed(field, bounds)?;
        let known = self.answers.known(field.into());
        let numbers = &self.catalog.numbers;
        let share = match known {
            Known::Measured => numbers.measured_spread,
            Known::DataSheet => spread,
            Known::Estimated => numbers.guess_spread,
        };
        Some(Estimate::spread(value, share, known))
    }

    /// A whole number with a default.
    pub(super) fn count(
        &mut self,
        field: impl Into<FieldId>,
        bounds: (u32, u32),
        default: u32,
    ) -> u32 {
        let bounds = (f64::from(bounds.0), f64::from(bounds.1));
        let value = self
            .or_silent(field, bounds, f64::from(default))
            .unwrap_or(f64::from(default));
        #[allow(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "bounded just above"
        )]
        let whole = value.clamp(bounds.0, bounds.1) as u32;
        whole
    }

    /// The index of a choice; the default when empty, a problem when it is none of the keys.
    pub(super) fn choice(&mut self, field: impl Into<FieldId>, default: usize) -> usize {
        let field = field.into();
        let Input::Choice(keys) = field.field.spec().input else {
            return default;
        };
        let text = self.answers.text(field).trim();
        if text.is_empty() {
            return default;
        }
        keys.iter().position(|k| *k == text).unwrap_or_else(|| {
            self.problem(field, ProblemKind::NoSuchChoice);
            default
        })
    }

    /// A row of a table by its id; a problem when there is none.
    pub(super) fn row<T>(
        &mut self,
        field: Field,
        default: &str,
        find: impl Fn(&str) -> Option<&'a T>,
    ) -> Option<T>
    where
        T: Clone + 'a,
    {
        let text = self.answers.text(field.into()).trim();
        let id = if text.is_empty() { default } else { text };
        let row = find(id).cloned();
        if row.is_none() {
            self.problem(field, ProblemKind::NoSuchChoice);
        } else if text.is_empty() {
            self.defaults.push(Defaulted {
                field: field.into(),
                value: id.to_owned(),
            });
        }
        row
    }
}
