//! What each happening makes of the state.

use super::history::field_of;
use super::keep::is_pin;
use super::{Action, State, Theme, Work};
use crate::confirm::ticked;
use crate::starter;
use std::rc::Rc;
use thinwright_core::FieldId;
use thinwright_core::field::Field;
use thinwright_jobfile::JobFile;
use thinwright_jobfile::shop::{Content, Kind};
use yew::Reducible;

impl Reducible for State {
    type Action = Action;

    fn reduce(self: Rc<State>, action: Action) -> Rc<State> {
        let mut state = (*self).clone();
        state.apply(action);
        Rc::new(state)
    }
}

impl State {
    /// What a happening makes of the state; what it changes of the job can be taken back.
    pub(crate) fn apply(&mut self, action: Action) {
        match action {
            Action::Undo => self.undo(),
            Action::Redo => self.redo(),
            // None of it is a change that the person has made.
            Action::Shop(news) => self.hear_shop(news),
            action => {
                let (before, field) = (self.moment(), field_of(&action));
                let learns = super::run::learns(&action);
                self.act(action);
                if !learns {
                    self.follow_machine(&before);
                }
                self.note(before, field);
            }
        }
    }

    fn act(&mut self, action: Action) {
        match action {
            Action::Undo | Action::Redo | Action::Shop(_) => {}
            Action::Type(id, text) => self.typed(id, text),
            Action::Know(id, known) => {
                let text = self.answers.text(id).to_owned();
                self.change(Some(id), |a| a.set(id, text, known));
            }
            Action::Units(units) => self.restated(units),
            Action::AddCutter => self.change(None, |a| {
                a.add_cutter();
            }),
            Action::AddStarter(id) => self.add_starter(&id),
            Action::CopyCutter(row) => self.change(None, |a| starter::copy(a, row)),
            Action::RemoveCutter(row) => self.remove_cutter(row),
            Action::Keep(choices) => self.keep(choices),
            Action::LetGo(id) => self.let_go(id),
            Action::NoteRun(record) => self.note_run(*record),
            Action::Count(at, counts) => self.count(at, counts),
            Action::Confirm(key, holds) => {
                self.confirmed = Rc::new(ticked(&self.confirmed, &key, holds));
            }
            Action::ForgetTaught => self.forget_taught(),
            Action::Load(file) => self.load(*file),
            Action::Name(name) => self.title = name,
            Action::OpenJob(id) => self.open_job(&id),
            Action::NewJob => self.new_job(),
            Action::UseOwn(id) => self.use_own(&id),
            Action::Browse(kind) => self.browse = kind,
            Action::Light(lit) => self.lit = lit,
            Action::OpenStep(step) => self.step = step,
            Action::Squeal(step, tone) => {
                self.step = Some(step);
                self.squeal = Some((step, tone));
            }
            Action::Heard(generation, heard) => self.hear(generation, heard),
            Action::Stop => self.stop(),
            Action::GoOn => self.go_on(),
            Action::Broke(generation, message) => {
                if generation == self.generation {
                    self.work = Work::Broken;
                }
                self.tell(message);
            }
            Action::Tell(message) => self.tell(message),
            Action::PutAway(at) => {
                let mut messages = (*self.messages).clone();
                if at < messages.len() {
                    messages.remove(at);
                }
                self.messages = Rc::new(messages);
            }
            Action::Dress(theme) => self.dress(theme),
            Action::Speak(language) => self.language = language,
        }
    }

    fn typed(&mut self, id: FieldId, text: String) {
        if id.field == Field::Name {
            // The name on the sheet is the title from now on.
            self.title.clear();
        }
        if is_pin(id) && text.trim().is_empty() {
            self.let_go(id);
            return;
        }
        self.change(Some(id), |a| a.set_text(id, text));
    }

    fn add_starter(&mut self, id: &str) {
        let catalog = self.catalog.clone();
        if let Some(row) = catalog.cutter(id) {
            self.change(None, |a| starter::add(a, row));
        }
    }

    /// Another job comes into hand: one that the shop has as it is, or else a new one.
    fn load(&mut self, file: JobFile) {
        let content = Content::from(file);
        let same = self.stock.shop.of(Kind::Job);
        let same = same.into_iter().find(|t| t.content.same(&content));
        let id = match same {
            Some(thing) => thing.id.as_str().into(),
            None => self.fresh_id(),
        };
        if let Content::Job(file) = content {
            self.take_in_hand(*file, id);
        }
    }

    fn dress(&mut self, theme: Theme) {
        self.theme = theme;
    }
}
