//! What can be wrong with a link.

use crate::error::JobFileError;
use std::fmt;

/// Why a link cannot be read, or not be made.
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum LinkError {
    /// It holds no job at all.
    NoJob,
    /// More letters than a link has.
    TooLong {
        /// How many.
        letters: usize,
        /// The most.
        most: usize,
    },
    /// More text than a link takes along.
    TooMuch {
        /// Bytes of the text; where a link is read, as far as it was unpacked.
        bytes: usize,
        /// The most.
        most: usize,
    },
    /// Written in a format that this program does not read.
    Version {
        /// The letter of the format.
        found: char,
    },
    /// Its end is missing.
    CutOff,
    /// A letter that no link has.
    Letter {
        /// Which letter behind the start, from 1.
        at: usize,
        /// The letter.
        found: char,
    },
    /// Letters were changed or lost.
    Damaged,
    /// What was packed is not text.
    NotText {
        /// Byte where it stops being text.
        at: usize,
    },
    /// The link came through whole, but something in it is not known or not allowed here.
    Content {
        /// What, and where.
        error: JobFileError,
        /// The engine that made the link, as far as it says so.
        engine: String,
    },
}

impl fmt::Display for LinkError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            LinkError::NoJob => f.write_str("the link holds no job"),
            LinkError::TooLong { letters, most } => {
                write!(f, "the link has {letters} letters; {most} are the most")
            }
            LinkError::TooMuch { most, .. } => {
                write!(
                    f,
                    "the answers are too long for a link: more than {most} bytes"
                )
            }
            LinkError::Version { found } => {
                write!(f, "the link is of format {found:?}, which is not read here")
            }
            LinkError::CutOff => f.write_str("the end of the link is missing"),
            LinkError::Letter { at, found } => {
                write!(f, "letter {at} of the link, {found:?}, belongs in no link")
            }
            LinkError::Damaged => f.write_str("letters of the link were changed or lost"),
            LinkError::NotText { at } => {
                write!(f, "what the link holds is no text: byte {at} is not UTF-8")
            }
            LinkError::Content { error, engine } if engine.is_empty() => error.fmt(f),
            LinkError::Content { error, engine } => write!(f, "{error} (made by {engine})"),
        }
    }
}

impl std::error::Error for LinkError {}
