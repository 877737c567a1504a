//! One row of a table while it is read: fields are taken out one by one, and none may be left over.

use crate::error::{CatalogError, Fault};
use crate::range::{ORIGINS, Origin, Range};
use serde_json::{Map, Value};

/// A row of which fields are still to be taken.
pub(crate) struct Row {
    file: String,
    id: String,
    fields: Map<String, Value>,
}

/// A file split into rows: the table that it belongs to, and its rows.
pub(crate) struct Table {
    pub(crate) name: String,
    pub(crate) rows: Vec<Row>,
}

/// What every row carries besides its own fields.
pub(crate) struct Standing {
    pub(crate) sources: Vec<String>,
    pub(crate) known: Origin,
    pub(crate) note: String,
}

/// Splits a file `{ "table": .., "about": .., "every_row": {..}, "rows": [..] }`.
pub(crate) fn split(file: &str, text: &str) -> Result<Table, CatalogError> {
    let whole: Value = serde_json::from_str(text).map_err(|e| CatalogError::NotJson {
        file: file.to_owned(),
        line: e.line(),
        column: e.column(),
    })?;
    let no_table = || CatalogError::NotATable {
        file: file.to_owned(),
    };
    let Value::Object(mut whole) = whole else {
        return Err(no_table());
    };
    let (Some(Value::String(name)), Some(Value::Array(list))) =
        (whole.remove("table"), whole.remove("rows"))
    else {
        return Err(no_table());
    };
    let shared = match whole.remove("every_row") {
        None => Map::new(),
        Some(Value::Object(shared)) => shared,
        Some(_) => return Err(no_table()),
    };
    let mut rows = Vec::with_capacity(list.len());
    for (place, value) in list.into_iter().enumerate() {
        let Value::Object(own) = value else {
            return Err(no_table());
        };
        let mut fields = shared.clone();
        fields.extend(own);
        let mut row = Row {
            file: file.to_owned(),
            id: format!("#{}", place + 1),
            fields,
        };
        row.id = row.text("id")?;
        rows.push(row);
    }
    Ok(Table { name, rows })
}

impl Row {
    /// The id.
    pub(crate) fn id(&self) -> String {
        self.id.clone()
    }

    /// An error at a field of this row.
    pub(crate) fn fault(&self, field: &str, fault: Fault) -> CatalogError {
        CatalogError::Field {
            file: self.file.clone(),
            row: self.id.clone(),
            field: field.to_owned(),
            fault,
        }
    }

    /// An error that says this row's id is taken.
    pub(crate) fn twice(&self) -> CatalogError {
        CatalogError::TwiceTheSame {
            file: self.file.clone(),
            row: self.id.clone(),
        }
    }

    fn take(&mut self, field: &str) -> Result<Value, CatalogError> {
        self.fields
            .remove(field)
            .ok_or_else(|| self.fault(field, Fault::Missing))
    }

    /// A finite number of any sign.
    pub(crate) fn number(&mut self, field: &str) -> Result<f64, CatalogError> {
        let value = self.take(field)?;
        self.as_number(field, &value)
    }

    fn as_number(&self, field: &str, value: &Value) -> Result<f64, CatalogError> {
        match value.as_f64() {
            Some(number) if number.is_finite() => Ok(number),
            _ => Err(self.fault(field, Fault::NotANumber)),
        }
    }

    /// A number above 0.
    pub(crate) fn positive(&mut self, field: &str) -> Result<f64, CatalogError> {
        let number = self.number(field)?;
        self.hold(field, number > 0.0, Fault::NotPositive)?;
        Ok(number)
    }

    /// A number from 0.
    pub(crate) fn zero_or_more(&mut self, field: &str) -> Result<f64, CatalogError> {
        let number = self.number(field)?;
        self.hold(field, number >= 0.0, Fault::NotPositive)?;
        Ok(number)
    }

    /// A number above 0, or `None` for a field that is absent or null.
    pub(crate) fn optional(&mut self, field: &str) -> Result<Option<f64>, CatalogError> {
        match self.fields.get(field) {
            None => Ok(None),
            Some(Value::Null) => {
                self.fields.remove(field);
                Ok(None)
            }
            Some(_) => self.positive(field).map(Some),
        }
    }

    /// A whole number from 0.
    pub(crate) fn count(&mut self, field: &str) -> Result<u32, CatalogError> {
        let value = self.take(field)?;
        value
            .as_u64()
            .and_then(|n| u32::try_from(n).ok())
            .ok_or_else(|| self.fault(field, Fault::NotACount))
    }

    /// Text that is not blank.
    pub(crate) fn text(&mut self, field: &str) -> Result<String, CatalogError> {
        match self.take(field)? {
            Value::String(text) if text.trim().is_empty() => Err(self.fault(field, Fault::Empty)),
            Value::String(text) => Ok(text),
            _ => Err(self.fault(field, Fault::NotText)),
        }
    }

    /// Text, empty when the field is absent.
    pub(crate) fn text_or_nothing(&mut self, field: &str) -> Result<String, CatalogError> {
        if self.fields.contains_key(field) {
            self.text(field)
        } else {
            Ok(String::new())
        }
    }

    /// Yes or no.
    pub(crate) fn flag(&mut self, field: &str) -> Result<bool, CatalogError> {
        let value = self.take(field)?;
        value
            .as_bool()
            .ok_or_else(|| self.fault(field, Fault::NotAFlag))
    }

    /// Yes or no; no when the field is absent.
    pub(crate) fn flag_or_no(&mut self, field: &str) -> Result<bool, CatalogError> {
        if self.fields.contains_key(field) {
            self.flag(field)
        } else {
            Ok(false)
        }
    }

    /// One of the words of a list.
    pub(crate) fn choice<T: Copy>(
        &mut self,
        field: &str,
        choices: &[(&str, T)],
    ) -> Result<T, CatalogError> {
        let word = self.text(field)?;
        self.chosen(field, &word, choices)
    }

    fn chosen<T: Copy>(
        &self,
        field: &str,
        word: &str,
        choices: &[(&str, T)],
    ) -> Result<T, CatalogError> {
        let found = choices.iter().find(|(name, _)| *name == word);
        found
            .map(|(_, value)| *value)
            .ok_or_else(|| self.fault(field, Fault::NotAChoice))
    }

    /// A list of texts; empty when the field is absent.
    pub(crate) fn texts(&mut self, field: &str) -> Result<Vec<String>, CatalogError> {
        let Some(value) = self.fields.remove(field) else {
            return Ok(Vec::new());
        };
        let Value::Array(list) = value else {
            return Err(self.fault(field, Fault::NotAList));
        };
        let words = list.iter().map(|item| match item.as_str() {
            Some(text) if !text.trim().is_empty() => Ok(text.to_owned()),
            Some(_) => Err(self.fault(field, Fault::Empty)),
            None => Err(self.fault(field, Fault::NotText)),
        });
        words.collect()
    }

    /// A list of words of a list; empty when the field is absent.
    pub(crate) fn choices<T: Copy>(
        &mut self,
        field: &str,
        choices: &[(&str, T)],
    ) -> Result<Vec<T>, CatalogError> {
        let words = self.texts(field)?;
        words
            .iter()
            .map(|word| self.chosen(field, word, choices))
            .collect()
    }

    /// A list of `N` numbers.
    pub(crate) fn numbers<const N: usize>(
        &mut self,
        field: &str,
    ) -> Result<[f64; N], CatalogError> {
        let value = self.take(field)?;
        self.as_numbers(field, &value)
    }

    fn as_numbers<const N: usize>(
        &self,
        field: &str,
        value: &Value,
    ) -> Result<[f64; N], CatalogError> {
        let list = value.as_array().filter(|list| list.len() == N);
        let list = list.ok_or_else(|| self.fault(field, Fault::NotAList))?;
        let mut out = [0.0; N];
        for (slot, item) in out.iter_mut().zip(list) {
            *slot = self.as_number(field, item)?;
        }
        Ok(out)
    }

    /// A low and a high end, from 0, in order.
    pub(crate) fn pair(&mut self, field: &str) -> Result<(f64, f64), CatalogError> {
        let [low, high] = self.numbers(field)?;
        self.hold(field, low >= 0.0, Fault::NotPositive)?;
        self.hold(field, low <= high, Fault::OutOfOrder)?;
        Ok((low, high))
    }

    /// A low end, a likely value and a high end, from 0, in order.
    pub(crate) fn range(&mut self, field: &str) -> Result<Range<f64>, CatalogError> {
        let [low, likely, high] = self.numbers(field)?;
        self.hold(field, low >= 0.0, Fault::NotPositive)?;
        self.hold(field, low <= likely && likely <= high, Fault::OutOfOrder)?;
        Ok(Range { low, likely, high })
    }

    /// A ladder of `N` numbers a step: at least one step, first numbers above 0 and increasing, the others from 0.
    pub(crate) fn ladder<const N: usize>(
        &mut self,
        field: &str,
    ) -> Result<Vec<[f64; N]>, CatalogError> {
        let Value::Array(list) = self.take(field)? else {
            return Err(self.fault(field, Fault::NotAList));
        };
        self.hold(field, !list.is_empty(), Fault::Empty)?;
        let mut steps: Vec<[f64; N]> = Vec::with_capacity(list.len());
        for item in &list {
            let step = self.as_numbers::<N>(field, item)?;
            self.hold(field, step.iter().all(|x| *x >= 0.0), Fault::NotPositive)?;
            let before = steps.last().map_or(0.0, |last| last[0]);
            self.hold(field, step[0] > before, Fault::OutOfOrder)?;
            steps.push(step);
        }
        Ok(steps)
    }

    /// Sources, how they are known, and the note.
    pub(crate) fn standing(&mut self) -> Result<Standing, CatalogError> {
        let sources = self.texts("sources")?;
        self.hold("sources", !sources.is_empty(), Fault::Empty)?;
        Ok(Standing {
            sources,
            known: self.choice("known", ORIGINS)?,
            note: self.text_or_nothing("note")?,
        })
    }

    /// Refuses a row of which a field does not hold what it must.
    pub(crate) fn hold(&self, field: &str, holds: bool, fault: Fault) -> Result<(), CatalogError> {
        if holds {
            Ok(())
        } else {
            Err(self.fault(field, fault))
        }
    }

    /// Ends the row: no field may be left.
    pub(crate) fn end(self) -> Result<(), CatalogError> {
        match self.fields.keys().next() {
            None => Ok(()),
            Some(field) => Err(self.fault(field, Fault::Surplus)),
        }
    }
}
