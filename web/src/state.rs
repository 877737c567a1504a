//! All that the page knows, and what each happening makes of it: plain data and one pure function.

mod apply;
mod chart;
mod history;
mod keep;
mod look;
mod run;
mod stock;
#[cfg(test)]
mod tests;
mod work;

pub(crate) use chart::Charts;
pub(crate) use history::Difference;
pub(crate) use keep::{is_pin, pins};
pub(crate) use look::Looks;
pub(crate) use run::{Lesson, lesson};
pub(crate) use stock::{Lasting, ShopNews, Stock, Where};
pub(crate) use work::{Heard, Shown, Stage, Standing, Work};

use crate::units::restate;
use history::History;
use std::collections::BTreeMap;
use std::rc::Rc;
use thinwright_catalog::Catalog;
use thinwright_core::{Answers, FieldId, Job, Known, Outcome, Problem, read};
use thinwright_jobfile::shop::{Kind, Thing};
use thinwright_jobfile::{JobFile, Record};
use thinwright_quantity::UnitSystem;
use thinwright_words::language::{Language, language};

/// The job that a page has in hand before anything else is said.
const FIRST_ID: &str = "j-first";

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
    /// Cautions that the person has confirmed for this job.
    pub(crate) confirmed: Rc<Vec<String>>,
    /// Which job it is: where it is kept.
    pub(crate) id: Rc<str>,
    /// What ids are drawn from.
    pub(crate) seed: u64,
    /// What was, and what was taken back.
    history: History,
    /// The job of the last answers that could be read.
    pub(crate) job: Option<Rc<Job>>,
    pub(crate) problems: Rc<Vec<Problem>>,
    /// What the tables gave, by place.
    pub(crate) defaults: Rc<BTreeMap<FieldId, String>>,
    /// The last good answer of the search, which may belong to other answers.
    pub(crate) shown: Option<Shown>,
    /// What was shown when the field in hand was first touched: what changes are counted from.
    pub(crate) baseline: Option<Shown>,
    /// The field in hand.
    edited: Option<FieldId>,
    /// Counts the readings of the answers.
    pub(crate) generation: u32,
    pub(crate) work: Work,
    /// How far the search in hand is, or was.
    pub(crate) standing: Standing,
    /// The search that the person has stopped.
    pub(crate) stopped: Option<u32>,
    /// The field whose dimension is lit in the drawing.
    pub(crate) lit: Option<FieldId>,
    /// The step that is open, counted from 0 over all setups.
    pub(crate) step: Option<usize>,
    /// What was seen of the web.
    pub(crate) looks: Looks,
    /// Charts of stability.
    pub(crate) charts: Charts,
    /// The person's shop.
    pub(crate) stock: Rc<Stock>,
    /// How often a job in hand went on under another id.
    pub(crate) moves: usize,
    /// What of the shop is looked at, while its panel is open.
    pub(crate) browse: Option<Kind>,
    pub(crate) messages: Rc<Vec<Message>>,
    pub(crate) theme: Theme,
    /// A tone of chatter that was heard, Hz, and in which step.
    pub(crate) squeal: Option<(usize, f64)>,
    /// What the page is drawn in.
    pub(crate) language: Language,
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
    /// The last change is taken back.
    Undo,
    /// What was taken back is done again.
    Redo,
    /// The job in hand gets this name.
    Name(String),
    /// A job of the shop comes into hand, by its id.
    OpenJob(String),
    /// Another part on the same machine.
    NewJob,
    /// Something of one's own takes the place of the answers of its kind, by its id.
    UseOwn(String),
    /// The shop's panel is open, or not.
    Browse(Option<Kind>),
    /// The store tells something.
    Shop(ShopNews),
    Light(Option<FieldId>),
    OpenStep(Option<usize>),
    /// A tone of chatter was heard in a step, Hz: its cause is looked for.
    Squeal(usize, f64),
    /// The person keeps choices: these texts at these places.
    Keep(Vec<(FieldId, String)>),
    /// The person lets go of a choice.
    LetGo(FieldId),
    /// A step was run: it is noted.
    NoteRun(Box<Record>),
    /// A note, by its place, counts or does not.
    Count(usize, bool),
    /// A risk, by its key, is confirmed, or not any more.
    Confirm(String, bool),
    /// What was learned is let go of.
    ForgetTaught,
    /// The search of a generation tells something.
    Heard(u32, Heard),
    /// The person has seen enough.
    Stop,
    /// The person wants the rest after all.
    GoOn,
    /// The search broke down.
    Broke(u32, Message),
    Tell(Message),
    PutAway(usize),
    Dress(Theme),
    /// Another language is spoken.
    Speak(Language),
}

impl State {
    /// The page with a file and the things of a shop.
    pub(crate) fn new(catalog: Rc<Catalog>, file: JobFile, things: Vec<Thing>) -> State {
        let mut stock = Stock::default();
        things.into_iter().for_each(|thing| stock.shop.put(thing));
        let mut state = State {
            catalog,
            answers: Rc::new(file.answers),
            title: file.title,
            records: Rc::new(file.records),
            confirmed: Rc::new(file.confirmed),
            id: FIRST_ID.into(),
            seed: 0,
            history: History::default(),
            job: None,
            problems: Rc::default(),
            defaults: Rc::default(),
            shown: None,
            baseline: None,
            edited: None,
            generation: 0,
            work: Work::Idle,
            standing: Standing::default(),
            stopped: None,
            lit: None,
            step: None,
            looks: Looks::default(),
            charts: Charts::default(),
            stock: Rc::new(stock),
            moves: 0,
            browse: None,
            messages: Rc::default(),
            squeal: None,
            theme: Theme::System,
            language: language(),
        };
        state.reread();
        state
    }

    /// Whether what is shown belongs to other answers than those that stand there.
    pub(crate) fn stale(&self) -> bool {
        let current = |shown: &Shown| Rc::ptr_eq(&shown.answers, &self.answers);
        !self.shown.as_ref().is_some_and(current)
            || self.work == Work::Broken
            || !self.problems.is_empty()
    }

    /// What may be printed: a checked strategy for the answers that stand there.
    pub(crate) fn printable(&self) -> Option<&Shown> {
        let shown = self.shown.as_ref().filter(|_| !self.stale());
        shown.filter(|s| s.stage.stands() && matches!(*s.outcome, Outcome::Feasible(_)))
    }

    /// The file that saves what was typed.
    pub(crate) fn file(&self) -> JobFile {
        let mut file = JobFile::new(self.title.clone(), (*self.answers).clone());
        file.records = (*self.records).clone();
        file.confirmed = (*self.confirmed).clone();
        file
    }

    /// Reads the answers anew: what was in hand before is stale.
    fn reread(&mut self) {
        self.generation = self.generation.wrapping_add(1);
        self.stopped = None;
        self.standing = Standing::default();
        match read(&self.answers, &self.catalog) {
            Ok(job) => {
                let defaults = job.defaults.iter().map(|d| (d.field, d.value.clone()));
                self.defaults = Rc::new(defaults.collect());
                self.job = Some(Rc::new(job));
                self.problems = Rc::default();
                self.work = Work::Under;
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
            // What was only on its way is nothing to compare with.
            if self.shown.as_ref().is_none_or(|s| s.stage.stands()) {
                self.baseline.clone_from(&self.shown);
            }
            self.edited = field;
        }
        self.answers = Rc::new(answers);
        self.reread();
    }

    /// What is shown belongs to another job.
    fn forget_shown(&mut self) {
        self.shown = None;
        self.baseline = None;
        self.edited = None;
        self.step = None;
        self.job = None;
    }

    /// An id that nothing has: a pure function of the seed, which only a page draws by lot.
    fn fresh_id(&mut self) -> Rc<str> {
        // Steps and mixing of SplitMix64 (Steele, Lea, Flood 2014; from memory): ids have to differ, no more.
        self.seed = self.seed.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mixed = (self.seed ^ (self.seed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        format!("j-{:016x}", mixed ^ (mixed >> 31)).into()
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
