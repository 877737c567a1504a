//! What can be wrong with a table, and where.

use std::fmt;

/// A fault in a data file, with its place.
///
/// A wrong table is refused whole, at the first fault, because a half-read table would give advice that nobody checked.
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum CatalogError {
    /// The file is not JSON.
    NotJson {
        /// File.
        file: String,
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
    },
    /// The file is JSON, but no table: `table` names none that is known, or `rows` is no list of objects.
    NotATable {
        /// File.
        file: String,
    },
    /// A field of a row is wrong.
    Field {
        /// File.
        file: String,
        /// Id of the row, or its place in the file when it has none.
        row: String,
        /// Field.
        field: String,
        /// What is wrong.
        fault: Fault,
    },
    /// Two rows of a table have one id.
    TwiceTheSame {
        /// File of the second.
        file: String,
        /// The id.
        row: String,
    },
    /// A row that must be there is not.
    NoSuchRow {
        /// Table.
        table: &'static str,
        /// The id.
        row: String,
    },
}

/// What is wrong with a field.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Fault {
    /// It must be there.
    Missing,
    /// No such field is known.
    Surplus,
    /// It must be a number.
    NotANumber,
    /// It must be a whole number from 0.
    NotACount,
    /// It must be text.
    NotText,
    /// It must be `true` or `false`.
    NotAFlag,
    /// It must be a list of the right length and kind.
    NotAList,
    /// It must be one of the words that the table knows.
    NotAChoice,
    /// It must not be empty.
    Empty,
    /// It must be above 0 (or at least 0 where 0 has a meaning).
    NotPositive,
    /// Low end, likely value and high end, or the steps of a ladder, are out of order.
    OutOfOrder,
    /// The value contradicts another field of the row, or no such thing exists.
    OutOfBounds,
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Fault::Missing => "is missing",
            Fault::Surplus => "is not a field of this table",
            Fault::NotANumber => "is not a number",
            Fault::NotACount => "is not a whole number",
            Fault::NotText => "is not text",
            Fault::NotAFlag => "is neither true nor false",
            Fault::NotAList => "is not a list of the right length",
            Fault::NotAChoice => "is not one of the known words",
            Fault::Empty => "is empty",
            Fault::NotPositive => "is not positive",
            Fault::OutOfOrder => "is out of order",
            Fault::OutOfBounds => "is out of bounds",
        })
    }
}

impl fmt::Display for CatalogError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            CatalogError::NotJson { file, line, column } => {
                write!(f, "{file}: not JSON at line {line}, column {column}")
            }
            CatalogError::NotATable { file } => write!(f, "{file}: not a table of this catalog"),
            CatalogError::Field {
                file,
                row,
                field,
                fault,
            } => write!(f, "{file}: row {row}: {field} {fault}"),
            CatalogError::TwiceTheSame { file, row } => {
                write!(f, "{file}: row {row}: the id is taken")
            }
            CatalogError::NoSuchRow { table, row } => write!(f, "{table}: row {row} is missing"),
        }
    }
}

impl std::error::Error for CatalogError {}
