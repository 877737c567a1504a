//! What can be wrong with a file, and where.

use std::fmt;

/// What should have stood at a place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wanted {
    /// A text.
    Text,
    /// `true` or `false`.
    Flag,
    /// A number.
    Number,
    /// A whole number from 0 up to this.
    WholeUpTo(u32),
    /// A list.
    List,
    /// An object.
    Object,
    /// One of these words.
    OneOf(&'static [&'static str]),
    /// A name that this program knows.
    KnownName,
}

impl fmt::Display for Wanted {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Wanted::Text => f.write_str("a text in quotes"),
            Wanted::Flag => f.write_str("true or false"),
            Wanted::Number => f.write_str("a number"),
            Wanted::WholeUpTo(most) => write!(f, "a whole number from 0 to {most}"),
            Wanted::List => f.write_str("a list"),
            Wanted::Object => f.write_str("an object"),
            Wanted::OneOf(words) => write!(f, "one of {}", words.join(", ")),
            Wanted::KnownName => f.write_str("a name that is known here"),
        }
    }
}

/// Why a file cannot be read. A place is a path of keys: `answers.part.diameter`, `records.2.note` (lists count from 1).
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum JobFileError {
    /// Larger than any job file.
    TooLarge {
        /// Its size.
        bytes: usize,
        /// The most that is read.
        most: usize,
    },
    /// Not UTF-8 text.
    NotText {
        /// Byte where it stops being text.
        at: usize,
    },
    /// Not JSON.
    NotJson {
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
    },
    /// JSON, but of something else.
    SomethingElse {
        /// The key that should say what it is and its version.
        wanted: &'static str,
    },
    /// Written in a newer format than this program reads.
    Newer {
        /// Version in the file.
        version: u32,
        /// Newest version that is read.
        newest: u32,
    },
    /// Written in a format that no program reads.
    Older {
        /// Version in the file.
        version: u32,
        /// Oldest version that is read.
        oldest: u32,
    },
    /// A key that means nothing.
    UnknownKey {
        /// Where.
        place: String,
    },
    /// A key that is there twice.
    Twice {
        /// Where.
        place: String,
    },
    /// A key that should be there.
    Missing {
        /// Where.
        place: String,
    },
    /// Something else than what should be there.
    Not {
        /// Where.
        place: String,
        /// What should be there.
        wanted: Wanted,
    },
    /// More entries than make sense.
    TooMany {
        /// Where.
        place: String,
        /// The most.
        most: usize,
    },
    /// A longer text than makes sense.
    TooLong {
        /// Where.
        place: String,
        /// The most bytes.
        most: usize,
    },
}

impl fmt::Display for JobFileError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            JobFileError::TooLarge { bytes, most } => {
                write!(
                    f,
                    "the file has {bytes} bytes; a job file has {most} at most"
                )
            }
            JobFileError::NotText { at } => write!(f, "this is no text: byte {at} is not UTF-8"),
            JobFileError::NotJson { line, column } => {
                write!(f, "not JSON: line {line}, column {column}")
            }
            JobFileError::SomethingElse { wanted } => {
                write!(
                    f,
                    "not a file of this program: {wanted:?} with a version is missing at its top"
                )
            }
            JobFileError::Newer { version, newest } => {
                write!(
                    f,
                    "written by a newer program: format {version}, this one reads up to {newest}"
                )
            }
            JobFileError::Older { version, oldest } => {
                write!(
                    f,
                    "format {version} is not read any more; the oldest that is read is {oldest}"
                )
            }
            JobFileError::UnknownKey { place } => write!(f, "{place}: this key is not known"),
            JobFileError::Twice { place } => write!(f, "{place}: this key is there twice"),
            JobFileError::Missing { place } => write!(f, "{place}: this key is missing"),
            JobFileError::Not { place, wanted } => write!(f, "{place}: this must be {wanted}"),
            JobFileError::TooMany { place, most } => write!(f, "{place}: more than {most} entries"),
            JobFileError::TooLong { place, most } => {
                write!(f, "{place}: a text longer than {most} bytes")
            }
        }
    }
}

impl std::error::Error for JobFileError {}
