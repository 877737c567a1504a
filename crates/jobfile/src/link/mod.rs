//! A job as a link: its answers packed into the part of an address behind `#`, which never leaves the device.
//!
//! `j=` and then letters that a QR code holds cheaply: one for the version, the packed bytes, and `Z` at the end, so that
//! a link that was cut off shows it. The bytes are a check over the rest, then the answers as lines of text (`lines`),
//! deflated against a preset text (`pack`). Records and confirmations stay behind: they belong to the machine where
//! they were made.
//!
//! Any letters give either a job or an error in words; what is read takes bounded room.

mod error;
mod letters;
mod lines;
mod pack;
#[cfg(test)]
mod tests;

pub use error::LinkError;

use crate::digest::{digest, fnv1a};
use crate::job::{ENGINE, JobFile};
use thinwright_core::answers::Answers;

/// What a fragment that holds a job begins with.
pub const LINK_START: &str = "j=";
/// The version that is written, as its letter.
const VERSION: u8 = b'1';
/// What stands at the end.
const END: u8 = b'Z';
/// Most letters that are read or written: more than any job of a few dozen cutters, less than any browser's bound.
const MOST_LETTERS: usize = 12_000;
/// Most bytes of the lines of answers.
const MOST_BYTES: usize = 64_000;
/// Bytes of the check in front.
const CHECK: usize = 4;

/// A job that goes by link: what was answered, and no more.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LinkedJob {
    /// Title, for people; the part's name if empty.
    pub title: String,
    /// What was answered, exactly as typed.
    pub answers: Answers,
    /// The engine that made the link.
    pub engine: String,
}

impl LinkedJob {
    /// What a link to a file of today takes along.
    pub fn of(file: &JobFile) -> LinkedJob {
        LinkedJob {
            title: file.title.clone(),
            answers: file.answers.clone(),
            engine: ENGINE.to_owned(),
        }
    }

    /// Whether a fragment, with or without its `#`, means to be a job.
    pub fn is_meant(fragment: &str) -> bool {
        fragment.trim_start_matches('#').starts_with(LINK_START)
    }

    /// The fragment, without its `#`: always the same for the same job.
    ///
    /// # Errors
    /// Where the answers are too long for a link, or a single one is longer than any file takes.
    pub fn write(&self) -> Result<String, LinkError> {
        let text = lines::put(self);
        if text.len() > MOST_BYTES {
            return Err(LinkError::TooMuch {
                bytes: text.len(),
                most: MOST_BYTES,
            });
        }
        // What is written can be read: a text or a rack that is too large shows here, not on the phone.
        lines::take(&text)?;
        let packed = pack::pack(text.as_bytes());
        let mut bytes = check(&packed).to_vec();
        bytes.extend_from_slice(&packed);
        let mut out = String::from(LINK_START);
        out.push(char::from(VERSION));
        letters::put(&bytes, &mut out);
        out.push(char::from(END));
        if out.len() > MOST_LETTERS {
            return Err(LinkError::TooLong {
                letters: out.len(),
                most: MOST_LETTERS,
            });
        }
        Ok(out)
    }

    /// Reads a fragment, with or without its `#`. Signs that mailers and messengers put in place of others, and white
    /// space, are seen through.
    ///
    /// # Errors
    /// The first fault. No letters make it panic, and none make it take more than bounded room.
    pub fn read(fragment: &str) -> Result<LinkedJob, LinkError> {
        // Each letter may have come as three: `%2B`.
        if fragment.len() > 3 * MOST_LETTERS {
            return Err(LinkError::TooLong {
                letters: fragment.len(),
                most: MOST_LETTERS,
            });
        }
        let plain = letters::plain(fragment.trim_start_matches('#'));
        if plain.len() > MOST_LETTERS {
            return Err(LinkError::TooLong {
                letters: plain.len(),
                most: MOST_LETTERS,
            });
        }
        let body = plain.strip_prefix(LINK_START).ok_or(LinkError::NoJob)?;
        let mut body = body.as_bytes().iter();
        match body.next() {
            Some(&VERSION) => {}
            Some(&other) => {
                return Err(LinkError::Version {
                    found: char::from(other),
                });
            }
            None => return Err(LinkError::CutOff),
        }
        if body.next_back() != Some(&END) {
            return Err(LinkError::CutOff);
        }
        let bytes = letters::take(body.as_slice())?;
        let (found, packed) = bytes.split_at_checked(CHECK).ok_or(LinkError::CutOff)?;
        if found != check(packed) {
            return Err(LinkError::Damaged);
        }
        let text = pack::unpack(packed, MOST_BYTES)?;
        let text = String::from_utf8(text).map_err(|e| LinkError::NotText {
            at: e.utf8_error().valid_up_to(),
        })?;
        lines::take(&text)
    }

    /// The job as a file, nothing run yet.
    pub fn file(&self) -> JobFile {
        JobFile::new(self.title.clone(), self.answers.clone())
    }

    /// Digest of the answers, as it stands on the sheet.
    pub fn digest(&self) -> String {
        digest(&self.answers)
    }

    /// Whether another engine made the link than reads it: the same answers may give another strategy.
    pub fn other_engine(&self) -> bool {
        self.engine != ENGINE
    }
}

/// Notices letters that were lost or changed on the way.
fn check(bytes: &[u8]) -> [u8; CHECK] {
    let hash = fnv1a(bytes).to_le_bytes();
    std::array::from_fn(|i| hash[i] ^ hash[i + CHECK])
}
