//! All that the page knows, and what each happening makes of it: plain data and one pure function.

mod apply;
#[cfg(test)]
mod tests;

use crate::units::restate;
use std::collections::BTreeMap;
use std::rc::Rc;
use thinwright_catalog::Catalog;
use thinwright_core::{Answers, FieldId, Job, Known, Outcome, Problem, read};
use thinwright_jobfile::{JobFile, Record, SavedMachine};
use thinwright_quantity::UnitSystem;

/// An answer of the search, with the answers and the job that it belongs to.
#[derive(Clone)]
pub(crate) struct Shown {
    pub(crate) answers: Rc<Answers>,
    pub(crate) job: Rc<Job>,
    pub(crate) outcome: Rc<Outcome>,
}

impl PartialEq for Shown {
    fn eq(&self, other: &Shown) -> bool {
        Rc::ptr_eq(&self.outcome, &other.outcome)
    }
}

/// Where the search stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Work {
    /// What is shown belongs to the answers.
    Idle,
    /// Under way: the share that is done.
    Under(f64),
    /// It broke down.
    Broken,
}

/// Light or dark.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Theme {
    /// As the system has it.
    System,
    Light,
    Dark,
}

/// Something to be told once, until it is put away.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Message {
    pub(crate) text: String,
    /// Something went wrong.
    pub(crate) alarm: bool,
}

/// All that the page knows.
#[derive(Clone)]
pub(crate) struct State {
    pub(crate) catalog: Rc<Catalog>,
    /// As typed, never cleared.
    pub(crate) answers: Rc<Answers>,
    /// Title of the file, and what was run, kept from file to file.
    pub(crate) title: String,
    pub(crate) records: Rc<Vec<Record>>,
    /// The job of the last answers that could be read.
    pub(crate) job: Option<Rc<Job>>,
    pub(crate) problems: Rc<Vec<Problem>>,
    /// What the tables gave, by place.
    pub(crate) defaults: Rc<BTreeMap<FieldId, String>>,
    /// The last good answer of the search.
    pub(crate) shown: Option<Shown>,
    /// A first look, while nothing checked can be shown.
    pub(crate) preview: Option<Shown>,
    /// What was shown when the field in hand was first touched: what changes are counted from.
    pub(crate) baseline: Option<Shown>,
    /// The field in hand.
    edited: Option<FieldId>,
    /// Counts the readings of the answers.
    pub(crate) generation: u32,
    pub(crate) work: Work,
    /// The field whose dimension is lit in the drawing.
    pub(crate) lit: Option<FieldId>,
    /// The step that is open, counted from 0 over all setups.
    pub(crate) step: Option<usize>,
    pub(crate) machines: Rc<Vec<SavedMachine>>,
    pub(crate) messages: Rc<Vec<Message>>,
    pub(crate) theme: Theme,
}

/// What can happen.
pub(crate) enum Action {
    Type(FieldId, String),
    Know(FieldId, Known),
    Units(UnitSystem),
    AddCutter,
    /// A cutter of the starter rack, by its id.
    AddStarter(String),
    CopyCutter(u8),
    RemoveCutter(u8),
    Load(Box<JobFile>),
    SaveMachine(String),
    UseMachine(String),
    ForgetMachine(String),
    Light(Option<FieldId>),
    OpenStep(Option<usize>),
    /// The search is at a share, maybe with a first look.
    Working(u32, f64, Option<Box<Outcome>>),
    Finished(u32, Box<Outcome>),
    /// The search broke down.
    Broke(u32, Message),
    Tell(Message),
    PutAway(usize),
    Dress(Theme),
}

impl State {
    /// The page with a file and saved machines.
    pub(crate) fn new(catalog: Rc<Catalog>, file: JobFile, machines: Vec<SavedMachine>) -> State {
        let mut state = State {
            catalog,
            answers: Rc::new(file.answers),
            title: file.title,
            records: Rc::new(file.records),
            job: None,
            problems: Rc::default(),
            defaults: Rc::default(),
            shown: None,
            preview: None,
            baseline: None,
            edited: None,
            generation: 0,
            work: Work::Idle,
            lit: None,
            step: None,
            machines: Rc::new(machines),
            messages: Rc::default(),
            theme: Theme::System,
        };
        state.reread();
        state
    }

    /// Whether what is shown belongs to other answers than those that stand there.
    pub(crate) fn stale(&self) -> bool {
        self.work != Work::Idle || !self.problems.is_empty()
    }

    /// What may be printed: a checked strategy for the answers that stand there.
    pub(crate) fn printable(&self) -> Option<&Shown> {
        let shown = self.shown.as_ref().filter(|_| !self.stale());
        shown.filter(|s| matches!(*s.outcome, Outcome::Feasible(_)))
    }

    /// The file that saves what was typed.
    pub(crate) fn file(&self) -> JobFile {
        let mut file = JobFile::new(self.title.clone(), (*self.answers).clone());
        file.records = (*self.records).clone();
        file
    }

    /// Reads the answers anew: what was in hand before is stale.
    fn reread(&mut self) {
        self.generation = self.generation.wrapping_add(1);
        match read(&self.answers, &self.catalog) {
            Ok(job) => {
                let defaults = job.defaults.iter().map(|d| (d.field, d.value.clone()));
                self.defaults = Rc::new(defaults.collect());
                self.job = Some(Rc::new(job));
                self.problems = Rc::default();
                self.work = Work::Under(0.0);
            }
            Err(problems) => {
                self.problems = Rc::new(problems);
                self.work = Work::Idle;
            }
        }
    }

    /// Changes the answers; those in hand at `field` go on being compared with what was shown before the first of them.
    fn change(&mut self, field: Option<FieldId>, how: impl FnOnce(&mut Answers)) {
        let mut answers = (*self.answers).clone();
        how(&mut answers);
        if answers == *self.answers {
            return;
        }
        if field.is_none() || field != self.edited {
            self.baseline.clone_from(&self.shown);
            self.edited = field;
        }
        self.answers = Rc::new(answers);
        self.reread();
    }

    fn tell(&mut self, message: Message) {
        let mut messages = (*self.messages).clone();
        messages.retain(|m| *m != message);
        messages.push(message);
        self.messages = Rc::new(messages);
    }

    fn restated(&mut self, units: UnitSystem) {
        let answers = restate(&self.answers, units);
        self.change(None, |a| *a = answers);
    }
}
