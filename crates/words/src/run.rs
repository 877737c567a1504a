//! What was run: the form, the history, what it has taught, and readings at the machine.

mod readings;
mod taught;

pub use readings::{READINGS, Reading};

use crate::Speaker;
use crate::language::tr;
use crate::say;
use crate::tasks::task_name;
use crate::text::upper_first;
use thinwright_core::strategy::Step;

macro_rules! texts {
    ($($(#[$doc:meta])* $name:ident: $text:literal;)*) => {
        $($(#[$doc])* pub fn $name() -> &'static str { tr($text) })*
    };
}

texts! {
    /// The section.
    section: "What was run";
    /// What the section is for.
    why: "Say how a step went: it is kept with the job, and this machine becomes better known.";
    /// The form.
    note_a_step: "Note a step";
    /// Which step.
    step: "Step that was run";
    /// What was really set.
    really_run: "Numbers that were really run";
    /// How it went.
    how_it_went: "How it went";
    /// Held.
    held: "It held: quiet, nothing broke";
    /// Sang.
    sang: "It sang";
    /// Gave way.
    gave: "The wall is off by";
    /// Broke.
    broke: "The cutter broke";
    /// Anything else.
    other: "Something else";
    /// How far the wall is off.
    off_by: "Off by";
    /// What that means.
    off_by_why: "How far the wall stands off where it should, each side: half of a width that is too small.";
    /// In one's own words.
    in_words: "In your words";
    /// Takes the record into the history and the lesson with it.
    note_and_learn: "Note it and learn from it";
    /// Takes the record into the history only.
    note_only: "Note it only";
    /// What the record would teach.
    would_teach: "What it would teach";
    /// It teaches nothing.
    teaches_nothing: "Nothing yet: what was seen fits every machine of the range. It is noted all the same. Held and sang say more once the cutter's tone is known; how far a wall is off says most.";
    /// Something is missing.
    say_how: "Say how it went first.";
    /// A number of the form is none.
    no_number: "This is no number with a unit that fits.";
    /// There is no strategy.
    no_strategy: "There is no checked strategy to say it of. What was noted stands below.";
    /// What becomes of what was learned.
    learned_use: "Depths, deflections and songs are reckoned with the narrower range from now on. What keeps machine, cutter and hold \
        safe stays as careful as before.";
    /// The history.
    history: "History";
    /// Nothing there yet.
    no_history: "Nothing was noted yet.";
    /// Takes a record back.
    take_back: "Take back";
    /// Undoes that.
    count_again: "Let it count again";
    /// It counts no more.
    taken_back: "taken back: it teaches nothing";
    /// It was run on another machine.
    elsewhere: "of a machine or material that this job has left: it teaches nothing here";
    /// It changed nothing.
    taught_nothing: "taught nothing";
    /// What the machine has taught.
    taught: "What this machine has taught";
    /// Nothing yet.
    taught_nothing_yet: "Nothing yet: the ranges are those of the answers and the tables.";
    /// Lets go of all.
    forget: "Let go of all of it";
    /// What that does.
    forget_why: "The notes stay in the history.";
    /// Readings.
    readings: "Readings at the machine";
    /// Which reading.
    which_reading: "What was read";
    /// Takes a reading into the note.
    into_note: "Take it into the note";
    /// Takes a reading into the answers.
    into_answers: "Take it as the answer";
    /// A column: the quantity.
    quantity: "quantity";
    /// A column: the range before.
    before: "before";
    /// A column: the range after.
    after: "after";
}

/// How a step can go, in the order in which it is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Went {
    /// It held.
    Held,
    /// It sang.
    Sang,
    /// Something gave.
    Gave,
    /// The cutter broke.
    Broke,
    /// Something else.
    Other,
}

impl Went {
    /// All of them.
    pub const ALL: [Went; 5] = [Went::Held, Went::Sang, Went::Gave, Went::Broke, Went::Other];

    /// In words.
    pub fn name(self) -> &'static str {
        match self {
            Went::Held => held(),
            Went::Sang => sang(),
            Went::Gave => gave(),
            Went::Broke => broke(),
            Went::Other => other(),
        }
    }
}

impl Speaker<'_> {
    /// A step in a list to choose from: its number and what is cut.
    pub fn step_to_choose(&self, step: &Step) -> String {
        say!(
            "{number}: {task}",
            number = step.number,
            task = upper_first(task_name(step.task))
        )
    }

    /// What a step is, for its record: what is cut; and how, with which cutter.
    pub fn step_noted(&self, step: &Step) -> (String, String) {
        let task = upper_first(task_name(step.task));
        let method = say!(
            "{method}, {cutter}",
            method = upper_first(crate::method_name(step.method)),
            cutter = self.cutter(step.cutter)
        );
        (task, method)
    }
}

/// The numbers of the form, in the order of a step's.
pub fn number_name(at: usize) -> &'static str {
    tr(match at {
        0 => "spindle speed",
        1 => "feed",
        2 => "stepover",
        _ => "step-down",
    })
}

/// The head of a record: which step, and what was cut if that is known.
pub fn record_head(step: u32, task: &str) -> String {
    match task.is_empty() {
        true => say!("Step {step}", step),
        false => say!("Step {step}: {task}", step, task),
    }
}

/// A value as it was written down, after its symbol.
pub fn value_written(name: &str, value: &str) -> String {
    match name {
        "off" => say!("off by {value}", value),
        "force" => value.to_owned(),
        _ => format!("{name}\u{A0}{value}"),
    }
}

/// The record that a button is about, for those who hear it.
pub fn record_number(number: usize, button: &str) -> String {
    say!("{button}: note {number}", button, number)
}

/// Notes that do not agree, by their numbers from 1.
pub fn at_odds(numbers: &[usize]) -> String {
    let numbers: Vec<String> = numbers.iter().map(usize::to_string).collect();
    say!(
        "No machine inside the ranges does all of this: notes {numbers} do not agree with the rest. Nothing is learned until one of \
         them is taken back.",
        numbers = crate::text::list(&numbers)
    )
}

/// The one at hand does not agree: with notes before it, or with the ranges alone.
pub fn this_at_odds(with_others: bool) -> &'static str {
    match with_others {
        true => tr(
            "No machine inside the ranges does this after what was noted before. It can be noted, but nothing is learned from it: look \
            for another cause first.",
        ),
        false => tr(
            "No machine inside the ranges does this. It can be noted, but nothing is learned from it: look for another cause first.",
        ),
    }
}
