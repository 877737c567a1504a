//! The answers as lines of text: title, units and engine, then one line a field, the rack's fields with a column a cutter.
//!
//! ```text
//! part.web<TAB>m<TAB>4 mm
//! cutter.diameter<TAB>dd-e<TAB>6<TAB>3<TAB>1/8 in
//! ```
//! The letters say how each is known, `-` that a cutter has no such answer; one letter alone stands for all columns. In a
//! text, tab, line end and backslash are written `\t`, `\n` and `\\`.

use super::{LinkError, LinkedJob};
use crate::answers::{MOST_CUTTERS, UNIT_VALUES, UNITS, unit_word};
use crate::error::{JobFileError, Wanted};
use crate::object::{MOST_TEXT, inside, not, short};
use std::collections::BTreeMap;
use thinwright_core::answers::{Answer, Answers};
use thinwright_core::estimate::Known;
use thinwright_core::field::{Field, FieldId, Group};

/// The ways of knowing and their letters.
const KNOWN: [(char, Known); 3] = [
    ('m', Known::Measured),
    ('d', Known::DataSheet),
    ('e', Known::Estimated),
];
/// How the letters are told in a message.
const WORDS: &[&str] = &["m", "d", "e"];
/// A cutter without an answer.
const NO_ANSWER: char = '-';
/// Where answers stand in messages, as in job files.
const PLACE: &str = "answers";

/// The lines of a job.
pub(super) fn put(job: &LinkedJob) -> String {
    let mut out = String::new();
    for head in [&job.title, unit_word(job.answers.units), &job.engine] {
        escape(head, &mut out);
        out.push('\n');
    }
    let told = |(id, a): &(&FieldId, &Answer)| !a.text.is_empty() || id.row.is_some();
    let mut racked: BTreeMap<Field, BTreeMap<u8, &Answer>> = BTreeMap::new();
    for (id, answer) in job.answers.iter().filter(told) {
        match id.row {
            Some(row) if id.field.spec().group == Group::Cutters => {
                racked.entry(id.field).or_default().insert(row, answer);
            }
            _ => line(&id.key(), &[Some(answer)], &mut out),
        }
    }
    for (field, column) in racked {
        let last = column.last_key_value().map_or(0, |(row, _)| *row);
        let cells: Vec<_> = (0..=last).map(|row| column.get(&row).copied()).collect();
        line(field.spec().key, &cells, &mut out);
    }
    out
}

/// One line: key, letters, texts.
fn line(key: &str, cells: &[Option<&Answer>], out: &mut String) {
    out.push_str(key);
    out.push('\t');
    let letter = |cell: &Option<&Answer>| {
        let known = cell.map(|answer| answer.known);
        let found = KNOWN.iter().find(|(_, k)| Some(*k) == known);
        found.map_or(NO_ANSWER, |(letter, _)| *letter)
    };
    let letters: Vec<char> = cells.iter().map(letter).collect();
    let alike = letters.windows(2).all(|pair| pair[0] == pair[1]);
    out.extend(letters.iter().take(if alike { 1 } else { letters.len() }));
    for answer in cells.iter().flatten() {
        out.push('\t');
        escape(&answer.text, out);
    }
    out.push('\n');
}

/// The job of lines.
pub(super) fn take(text: &str) -> Result<LinkedJob, LinkError> {
    let mut lines = text.split_terminator('\n');
    let mut head = |place: &str| -> Result<String, LinkError> {
        let line = lines.next().ok_or_else(|| JobFileError::Missing {
            place: place.to_owned(),
        });
        let read = line.and_then(|line| unescape(place, line));
        read.map_err(|error| LinkError::Content {
            error,
            engine: String::new(),
        })
    };
    let (title, units, engine) = (head("title")?, head("units")?, head("engine")?);
    let content = |error| LinkError::Content {
        error,
        engine: engine.clone(),
    };
    let at = UNITS.iter().position(|word| *word == units);
    let units = at.and_then(|at| UNIT_VALUES.get(at)).copied();
    let units = units.ok_or_else(|| content(not("units", Wanted::OneOf(UNITS))))?;
    let mut answers = Answers::new(units);
    for line in lines {
        take_line(line, &mut answers).map_err(content)?;
    }
    Ok(LinkedJob {
        title,
        answers,
        engine,
    })
}

/// One line into the answers.
fn take_line(line: &str, answers: &mut Answers) -> Result<(), JobFileError> {
    let mut parts = line.split('\t');
    let key = parts.next().unwrap_or_default();
    let place = inside(PLACE, &short(key));
    let known = inside(&place, "known");
    let missing = |place| JobFileError::Missing { place };
    let letters = parts.next().ok_or_else(|| missing(known.clone()))?;
    let texts: Vec<&str> = parts.collect();
    if texts.is_empty() {
        return Err(missing(inside(&place, "text")));
    }
    let cells = cells(&known, letters, texts.len())?;
    for ((column, known), text) in cells.into_iter().zip(texts) {
        let id = cell_id(key, column).ok_or_else(|| JobFileError::UnknownKey {
            place: place.clone(),
        })?;
        if id.row.is_some_and(|row| row >= MOST_CUTTERS) {
            return Err(JobFileError::TooMany {
                place: inside(PLACE, "cutter"),
                most: usize::from(MOST_CUTTERS),
            });
        }
        if answers.iter().any(|(there, _)| *there == id) {
            return Err(JobFileError::Twice { place });
        }
        answers.set(id, unescape(&place, text)?, known);
    }
    Ok(())
}

/// The columns that have an answer, and how each is known: as many as there are texts.
fn cells(place: &str, letters: &str, texts: usize) -> Result<Vec<(usize, Known)>, JobFileError> {
    let wrong = || not(place, Wanted::OneOf(WORDS));
    let known = |letter: char| {
        let found = KNOWN.iter().find(|(l, _)| *l == letter);
        found.map(|(_, known)| *known).ok_or_else(wrong)
    };
    let mut marked = letters.chars().enumerate();
    if let (Some((_, only)), None) = (marked.next(), marked.next()) {
        let only = known(only)?;
        return Ok((0..texts).map(|column| (column, only)).collect());
    }
    let marked = letters.chars().enumerate();
    let told = marked.filter(|(_, letter)| *letter != NO_ANSWER);
    let cells: Vec<_> = told
        .map(|(column, letter)| Ok((column, known(letter)?)))
        .collect::<Result<_, _>>()?;
    if cells.len() == texts {
        Ok(cells)
    } else {
        Err(wrong())
    }
}

/// The place of a column of a line: the rack's keys stand for all its rows, every other key for itself.
fn cell_id(key: &str, column: usize) -> Option<FieldId> {
    let racked = |f: &Field| f.spec().group == Group::Cutters;
    if let Some(field) = Field::by_key(key).filter(racked) {
        return Some(FieldId::in_row(
            field,
            u8::try_from(column).unwrap_or(u8::MAX),
        ));
    }
    FieldId::by_key(key).filter(|id| column == 0 && !racked(&id.field))
}

fn escape(text: &str, out: &mut String) {
    for c in text.chars() {
        match c {
            '\t' => out.push_str("\\t"),
            '\n' => out.push_str("\\n"),
            '\\' => out.push_str("\\\\"),
            _ => out.push(c),
        }
    }
}

fn unescape(place: &str, text: &str) -> Result<String, JobFileError> {
    let mut out = String::with_capacity(text.len());
    let mut rest = text.chars();
    while let Some(c) = rest.next() {
        out.push(match c {
            '\\' => match rest.next() {
                Some('t') => '\t',
                Some('n') => '\n',
                Some('\\') => '\\',
                _ => return Err(not(place, Wanted::Text)),
            },
            '\t' => return Err(not(place, Wanted::Text)),
            _ => c,
        });
    }
    if out.len() > MOST_TEXT {
        return Err(JobFileError::TooLong {
            place: place.to_owned(),
            most: MOST_TEXT,
        });
    }
    Ok(out)
}
