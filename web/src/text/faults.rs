//! What is wrong with a file, in the language of the page.

use thinwright_jobfile::{JobFileError, Wanted};
use thinwright_words::language::tr;
use thinwright_words::say;

/// What is wrong with a job file or with what was kept, as its `Display` has it for the command line.
pub(crate) fn fault(error: &JobFileError) -> String {
    match error {
        JobFileError::TooLarge { bytes, most } => {
            say!(
                "the file has {bytes} bytes; a job file has {most} at most",
                bytes,
                most
            )
        }
        JobFileError::NotText { at } => say!("this is no text: byte {at} is not UTF-8", at),
        JobFileError::NotJson { line, column } => {
            say!("not JSON: line {line}, column {column}", line, column)
        }
        JobFileError::SomethingElse { wanted } => say!(
            "not a file of this program: \"{wanted}\" with a version is missing at its top",
            wanted
        ),
        JobFileError::Newer { version, newest } => say!(
            "written by a newer program: format {version}, this one reads up to {newest}",
            version,
            newest
        ),
        JobFileError::Older { version, oldest } => say!(
            "format {version} is not read any more; the oldest that is read is {oldest}",
            version,
            oldest
        ),
        JobFileError::UnknownKey { place } => say!("{place}: this key is not known", place),
        JobFileError::Twice { place } => say!("{place}: this key is there twice", place),
        JobFileError::Missing { place } => say!("{place}: this key is missing", place),
        JobFileError::Not { place, wanted } => {
            say!(
                "{place}: this must be {wanted}",
                place,
                wanted = wanted_here(wanted)
            )
        }
        JobFileError::TooMany { place, most } => {
            say!("{place}: more than {most} entries", place, most)
        }
        JobFileError::TooLong { place, most } => {
            say!("{place}: a text longer than {most} bytes", place, most)
        }
        // One that is new here is told as the command line has it.
        other => other.to_string(),
    }
}

fn wanted_here(wanted: &Wanted) -> String {
    match wanted {
        Wanted::WholeUpTo(most) => say!("a whole number from 0 to {most}", most),
        Wanted::OneOf(words) => say!("one of {words}", words = words.join(", ")),
        Wanted::Text => tr("a text in quotes").to_owned(),
        Wanted::Flag => tr("true or false").to_owned(),
        Wanted::Number => tr("a number").to_owned(),
        Wanted::List => tr("a list").to_owned(),
        Wanted::Object => tr("an object").to_owned(),
        Wanted::KnownName => tr("a name that is known here").to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Texts that are files of another kind each: what they are refused with is told alike on the page and elsewhere.
    #[test]
    fn faults_are_told_as_elsewhere() {
        let place = || "answers.part.1".to_owned();
        let not = |wanted| JobFileError::Not {
            place: place(),
            wanted,
        };
        let all = [
            JobFileError::TooLarge { bytes: 9, most: 8 },
            JobFileError::NotText { at: 3 },
            JobFileError::NotJson { line: 2, column: 7 },
            JobFileError::SomethingElse {
                wanted: "thinwright_job",
            },
            JobFileError::Newer {
                version: 9,
                newest: 2,
            },
            JobFileError::Older {
                version: 0,
                oldest: 1,
            },
            JobFileError::UnknownKey { place: place() },
            JobFileError::Twice { place: place() },
            JobFileError::Missing { place: place() },
            JobFileError::TooMany {
                place: place(),
                most: 5,
            },
            JobFileError::TooLong {
                place: place(),
                most: 5,
            },
            not(Wanted::Text),
            not(Wanted::Flag),
            not(Wanted::Number),
            not(Wanted::WholeUpTo(7)),
            not(Wanted::List),
            not(Wanted::Object),
            not(Wanted::OneOf(&["a", "b"])),
            not(Wanted::KnownName),
        ];
        for error in all {
            assert_eq!(fault(&error), error.to_string());
        }
    }
}
