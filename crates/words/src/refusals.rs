//! A reasoned no: what cannot be done, and the smallest change that would help.

use crate::Speaker;
use crate::limits::{limit_meaning, limit_name};
use crate::problems::kind;
use crate::say;
use crate::tasks::task_name;
use thinwright_core::limits::LimitId;
use thinwright_core::strategy::{Change, Refusal};

impl Speaker<'_> {
    /// The no in one sentence.
    pub fn refusal(&self, refusal: &Refusal) -> String {
        let task = task_name(refusal.task);
        match refusal.changes.first() {
            Some(change) => say!(
                "There is no way to {task}. The smallest change that would help: {change}.",
                task,
                change = self.change(change)
            ),
            None => say!(
                "There is no way to {task}, and no single change of an answer helps.",
                task
            ),
        }
    }

    /// The limits that cannot be met together, a line each.
    pub fn conflict(&self, refusal: &Refusal) -> Vec<String> {
        let line = |limit: &LimitId| format!("{}: {}", limit_name(*limit), limit_meaning(*limit));
        refusal.conflict.iter().map(line).collect()
    }

    /// A change of one answer: `cutter 1: reach below the shank 14 mm instead of 11 mm`.
    pub fn change(&self, change: &Change) -> String {
        let kind = kind(change.field.field);
        let place = self.place(change.field);
        say!(
            "{place} {to} instead of {from}",
            place,
            to = self.value(kind, change.to),
            from = self.value(kind, change.from)
        )
    }
}
