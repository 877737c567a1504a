//! What was run: records are noted, taken back and counted again; what they teach stands in the answers.

use super::history::Moment;
use super::{Action, Message, State};
use crate::text;
use std::rc::Rc;
use thinwright_core::field::{FIELDS, Field, Group};
use thinwright_core::learn::{Seen, is_machines, teach, texts};
use thinwright_core::{Answers, read};
use thinwright_jobfile::{JobFile, Learned, Record, untaught};

/// What records teach together.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Lesson {
    /// Each learned field with its text.
    pub(crate) texts: Vec<(Field, String)>,
    /// Places in the list of records that do not agree with the rest; then nothing is taught.
    pub(crate) at_odds: Vec<usize>,
}

/// Whether a happening is about what is learned itself.
pub(super) fn learns(action: &Action) -> bool {
    matches!(
        action,
        Action::NoteRun(_) | Action::Count(..) | Action::ForgetTaught
    )
}

impl State {
    /// What records teach of the machine; nothing while an answer is wrong.
    fn lesson(&self, records: &[Record]) -> Option<Lesson> {
        lesson(records, &self.answers, &self.catalog)
    }

    /// Notes what was run. If the file could not hold it, it is told and nothing changes.
    pub(super) fn note_run(&mut self, mut record: Record) {
        let mut records = (*self.records).clone();
        records.push(record.clone());
        let lesson = match record.counts() {
            true => self.lesson(&records).filter(|l| l.at_odds.is_empty()),
            false => None,
        };
        records.pop();
        if lesson.is_none() {
            // What no lesson comes of is kept as a note; what was learned stays as it is.
            record.judged.clear();
        }
        let texts = lesson.map_or_else(Vec::new, |lesson| lesson.texts);
        record.learned = self.learned(&texts);
        records.push(record);
        if let Err(error) = self.could_hold(&records) {
            self.tell(Message {
                text: text::not_noted(&error),
                alarm: true,
            });
            return;
        }
        self.records = Rc::new(records);
        self.take_over(texts);
    }

    /// Lets a record count, or not.
    pub(super) fn count(&mut self, at: usize, counts: bool) {
        let mut records = (*self.records).clone();
        let Some(record) = records.get_mut(at) else {
            return;
        };
        record.taken_back = !counts;
        let Some(lesson) = self.lesson(&records) else {
            self.tell(Message {
                text: text::answers_first().to_owned(),
                alarm: true,
            });
            return;
        };
        if !lesson.at_odds.is_empty() {
            self.tell(Message {
                text: text::at_odds_now(&lesson.at_odds),
                alarm: true,
            });
        }
        self.records = Rc::new(records);
        self.take_over(lesson.texts);
    }

    /// Lets go of everything that was learned; the records stay in the history.
    pub(super) fn forget_taught(&mut self) {
        self.all_elsewhere();
        self.take_over(all_fields().map(|field| (field, String::new())).collect());
    }

    /// After a change: where the job has gone to another machine or material, what was learned of the one before is left
    /// there.
    pub(super) fn follow_machine(&mut self, before: &Moment) {
        if *before.id != *self.id || Rc::ptr_eq(&before.answers, &self.answers) {
            return;
        }
        let (was, is) = (before.answers.clone(), self.answers.clone());
        let changed = |field: Field| was.text(field.into()).trim() != is.text(field.into()).trim();
        let fields = || all_fields().filter(|f| is_machines(*f));
        let (class, brought) = (changed(Field::Machine), fields().any(changed));
        let material = changed(Field::Material);
        if !(class || brought || material) {
            return;
        }
        self.all_elsewhere();
        let gone = all_fields().filter(|field| match is_machines(*field) {
            true => class && !brought,
            false => material,
        });
        self.take_over(gone.map(|field| (field, String::new())).collect());
    }

    fn all_elsewhere(&mut self) {
        if self.records.iter().any(|r| !r.elsewhere) {
            let mut records = (*self.records).clone();
            records.iter_mut().for_each(|r| r.elsewhere = true);
            self.records = Rc::new(records);
        }
    }

    /// What a lesson changes of the answers that stand there.
    fn learned(&self, texts: &[(Field, String)]) -> Vec<Learned> {
        let changed = texts.iter().filter_map(|(field, after)| {
            let before = self.answers.text((*field).into());
            (before != after).then(|| Learned {
                field: (*field).into(),
                before: before.to_owned(),
                after: after.clone(),
            })
        });
        changed.collect()
    }

    fn take_over(&mut self, texts: Vec<(Field, String)>) {
        self.change(None, |answers| {
            for (field, text) in texts {
                match text.is_empty() {
                    true => answers.clear(field),
                    false => answers.set_text(field, text),
                }
            }
        });
    }

    fn could_hold(&self, records: &[Record]) -> Result<(), String> {
        let mut file = self.file();
        file.records = records.to_vec();
        let read = JobFile::read(file.write().as_bytes());
        read.map(|_| ()).map_err(|error| error.to_string())
    }
}

/// What records teach over answers; nothing while an answer is wrong.
pub(crate) fn lesson(
    records: &[Record],
    answers: &Answers,
    catalog: &thinwright_catalog::Catalog,
) -> Option<Lesson> {
    let base = untaught(records, answers);
    let job = read(&base, catalog).ok()?;
    let counting = records.iter().enumerate().filter(|(_, r)| r.counts());
    let judged: Vec<(usize, Seen)> = counting
        .filter_map(|(at, r)| Some((at, Seen::from_numbers(&r.judged)?)))
        .collect();
    let seen: Vec<Seen> = judged.iter().map(|(_, seen)| *seen).collect();
    let taught = teach(&job.estimates, &job.numbers, &seen);
    Some(Lesson {
        texts: texts(&taught, &base, &job.material),
        at_odds: taught.at_odds.iter().map(|i| judged[*i].0).collect(),
    })
}

/// The fields that hold what was learned.
fn all_fields() -> impl Iterator<Item = Field> {
    let learned = FIELDS.iter().filter(|s| s.group == Group::Learned);
    learned.map(|s| s.field)
}
