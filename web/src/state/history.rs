//! Taking back and doing again, over everything that belongs to the job: answers, title, what was run, what was confirmed,
//! and which job it is.
//!
//! A moment is noted before each change of it, whatever made the change; typing in one field is one change. What was
//! taken back can be done again until something else is changed. It lasts as long as the page is open.

use super::{Action, State};
use std::rc::Rc;
use thinwright_core::{Answers, Field, FieldId};
use thinwright_jobfile::Record;

/// The job as it was at a moment.
#[derive(Clone)]
pub(crate) struct Moment {
    /// Which job.
    pub(crate) id: Rc<str>,
    pub(crate) answers: Rc<Answers>,
    title: String,
    records: Rc<Vec<Record>>,
    confirmed: Rc<Vec<String>>,
}

impl Moment {
    fn same(&self, other: &Moment) -> bool {
        let answers = Rc::ptr_eq(&self.answers, &other.answers) || self.answers == other.answers;
        let records = Rc::ptr_eq(&self.records, &other.records) || self.records == other.records;
        let rest = self.id == other.id && self.title == other.title;
        rest && answers && records && self.confirmed == other.confirmed
    }
}

/// What was, and what was taken back.
#[derive(Clone, Default)]
pub(crate) struct History {
    before: Rc<Vec<Moment>>,
    after: Rc<Vec<Moment>>,
    /// The field in which one change is still going on.
    field: Option<FieldId>,
}

/// What a step back or forth would change.
#[derive(Clone, Debug, PartialEq)]
pub(crate) enum Difference {
    /// One answer.
    Field(FieldId),
    /// The name alone, or several answers.
    Answers,
    /// What was run or confirmed.
    Records,
    /// Another job comes into hand.
    Job,
}

impl State {
    pub(super) fn moment(&self) -> Moment {
        Moment {
            id: self.id.clone(),
            answers: self.answers.clone(),
            title: self.title.clone(),
            records: self.records.clone(),
            confirmed: self.confirmed.clone(),
        }
    }

    /// Notes what was before an action, where the action has changed it.
    pub(super) fn note(&mut self, before: Moment, field: Option<FieldId>) {
        if before.same(&self.moment()) {
            return;
        }
        let history = &mut self.history;
        let going_on = field.is_some() && field == history.field && !history.before.is_empty();
        history.after = Rc::default();
        history.field = field;
        if going_on {
            return;
        }
        push(&mut history.before, before, self.catalog.numbers.undo_steps);
    }

    /// Takes the last change back.
    pub(super) fn undo(&mut self) {
        let now = self.moment();
        if let Some(moment) = Rc::make_mut(&mut self.history.before).pop() {
            Rc::make_mut(&mut self.history.after).push(now);
            self.bring_back(moment);
        }
    }

    /// Does again what was taken back last.
    pub(super) fn redo(&mut self) {
        let now = self.moment();
        if let Some(moment) = Rc::make_mut(&mut self.history.after).pop() {
            Rc::make_mut(&mut self.history.before).push(now);
            self.bring_back(moment);
        }
    }

    fn bring_back(&mut self, moment: Moment) {
        self.history.field = None;
        self.edited = None;
        let another = moment.id != self.id;
        let reread = another || !Rc::ptr_eq(&moment.answers, &self.answers);
        self.id = moment.id;
        self.title = moment.title;
        self.records = moment.records;
        self.confirmed = moment.confirmed;
        self.answers = moment.answers;
        if another {
            self.forget_shown();
        } else if self.shown.as_ref().is_none_or(|s| s.stage.stands()) {
            self.baseline.clone_from(&self.shown);
        }
        if reread {
            self.reread();
        }
    }

    /// A job goes on under another id and name: what was, too.
    pub(super) fn renumber(&mut self, from: &str, to: &Rc<str>, name: &str) {
        let now = self.moment();
        if *self.id == *from {
            self.id = to.clone();
            if named(&now) != name {
                name.clone_into(&mut self.title);
            }
        }
        let history = &mut self.history;
        for moments in [&mut history.before, &mut history.after] {
            for moment in Rc::make_mut(moments).iter_mut().filter(|m| *m.id == *from) {
                moment.id = to.clone();
                if named(moment) == named(&now) {
                    name.clone_into(&mut moment.title);
                }
            }
        }
    }

    /// What taking back would change; nothing where there is nothing to take back.
    pub(crate) fn undoable(&self) -> Option<Difference> {
        Some(self.difference(self.history.before.last()?))
    }

    /// What doing again would change.
    pub(crate) fn redoable(&self) -> Option<Difference> {
        Some(self.difference(self.history.after.last()?))
    }

    fn difference(&self, moment: &Moment) -> Difference {
        if moment.id != self.id {
            return Difference::Job;
        }
        if moment.answers == self.answers && moment.title == self.title {
            return Difference::Records;
        }
        let (here, there) = (&*self.answers, &*moment.answers);
        let ids = here.iter().chain(there.iter()).map(|(id, _)| *id);
        let differs =
            |id: &FieldId| here.text(*id) != there.text(*id) || here.known(*id) != there.known(*id);
        let mut changed: Vec<FieldId> = ids.filter(differs).collect();
        changed.sort_unstable();
        changed.dedup();
        match changed[..] {
            [id] if here.units == there.units => Difference::Field(id),
            _ => Difference::Answers,
        }
    }
}

/// What a job is called at a moment.
fn named(moment: &Moment) -> &str {
    match moment.title.trim() {
        "" => moment.answers.text(Field::Name.into()).trim(),
        title => title,
    }
}

/// The field that an action types in.
pub(super) fn field_of(action: &Action) -> Option<FieldId> {
    match action {
        Action::Type(id, _) | Action::Know(id, _) => Some(*id),
        _ => None,
    }
}

fn push(moments: &mut Rc<Vec<Moment>>, moment: Moment, most: f64) {
    let moments = Rc::make_mut(moments);
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a small count of the table"
    )]
    let most = most.max(1.0) as usize;
    if moments.len() >= most {
        moments.remove(0);
    }
    moments.push(moment);
}
