//! What each happening makes of the state.

use super::history::field_of;
use super::keep::is_pin;
use super::{Action, Message, State, Theme, Work};
use crate::starter;
use crate::text;
use crate::units::restate;
use std::rc::Rc;
use thinwright_core::FieldId;
use thinwright_core::field::Field;
use thinwright_jobfile::{JobFile, SavedMachine};
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
            action => {
                let (before, field) = (self.moment(), field_of(&action));
                self.act(action);
                self.note(before, field);
            }
        }
    }

    fn act(&mut self, action: Action) {
        match action {
            Action::Undo | Action::Redo => {}
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
            Action::Load(file) => self.load(*file),
            Action::SaveMachine(name) => self.save_machine(&name),
            Action::UseMachine(name) => self.use_machine(&name),
            Action::ForgetMachine(name) => {
                let mut machines = (*self.machines).clone();
                machines.retain(|m| m.name != name);
                self.machines = Rc::new(machines);
            }
            Action::Light(lit) => self.lit = lit,
            Action::OpenStep(step) => self.step = step,
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

    fn load(&mut self, file: JobFile) {
        self.title = file.title;
        self.records = Rc::new(file.records);
        self.confirmed = Rc::new(file.confirmed);
        self.answers = Rc::new(file.answers);
        self.id = self.fresh_id();
        self.forget_shown();
        self.reread();
    }

    /// A name that is there already is replaced.
    fn save_machine(&mut self, name: &str) {
        let name = name.trim();
        if name.is_empty() {
            return;
        }
        let mut machines = (*self.machines).clone();
        machines.retain(|m| m.name != name);
        machines.push(SavedMachine::of(name, &self.answers));
        machines.sort_by(|a, b| a.name.cmp(&b.name));
        self.machines = Rc::new(machines);
        self.tell(Message {
            text: text::machine_saved(name),
            alarm: false,
        });
    }

    fn use_machine(&mut self, name: &str) {
        let Some(mut machine) = self.machines.iter().find(|m| m.name == name).cloned() else {
            return;
        };
        machine.answers = restate(&machine.answers, self.answers.units);
        self.change(None, |a| {
            machine.put_into(a);
        });
    }

    fn dress(&mut self, theme: Theme) {
        self.theme = theme;
    }
}
